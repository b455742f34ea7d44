"""What is offered of a note, and never against it; the wordings are ours, no source."""

from __future__ import annotations

import pytest
from talk import Talk


def offers(talk: Talk, text: str) -> set[str]:
    """The labels of what may be tapped to add a claim."""
    talk.say(text)
    return {one.label for one in talk.buttons if one.label.endswith("?")}


def claims(talk: Talk) -> set[tuple[str, str, bool]]:
    assert talk.heard is not None
    return {(one.trait, one.value, one.denied) for one in talk.heard.trace["claims"]}


@pytest.mark.parametrize(
    ("text", "offered"),
    [
        ("okafor has the paddle low when he is standing at the net", "counter weak?"),
        ("okafor's paddle is low", "counter weak?"),
        ("okafor is hiding his backhand the whole time, he runs round it", "backhand dink weak?"),
        ("okafor runs around his backhand", "backhand dink weak?"),
        ("okafor lobs a lot, i am not sure", "lob often?"),
        ("okafor is a lefty, but i'm not sure", "left-handed?"),
        ("okafor's drop sits", "third-shot drop weak?"),
        ("okafor bangs everything", "third-shot drop rarely?"),
        ("okafor is a total banger", "third-shot drop rarely?"),
    ],
)
def test_what_the_note_may_say_is_offered_and_not_claimed(
    demo: Talk, text: str, offered: str
) -> None:
    assert offered in offers(demo, text)
    assert not claims(demo)


@pytest.mark.parametrize(
    ("text", "never"),
    [
        ("okafor has the paddle low at the net", "ready position neutral?"),
        ("okafor is not weak under high balls any more", "overhead weak?"),
        ("okafor doesnt bang everything", "third-shot drop rarely?"),
        ("okafor hits everything back", "third-shot drop rarely?"),
        ("okafor and lindqvist are maybe stacking, i am not sure", "stacking rarely?"),
        (
            "okafor is lefthanded and he plays on the right side, lindqvist is righty",
            "Lindqvist: plays right?",
        ),
    ],
)
def test_nothing_is_offered_against_the_note(demo: Talk, text: str, never: str) -> None:
    assert not {one for one in offers(demo, text) if one.endswith(never)}


@pytest.mark.parametrize(
    ("text", "claim"),
    [
        ("okafor's drop sits up", ("third_shot_drop", "weakness", False)),
        ("okafor's drop sits high", ("third_shot_drop", "weakness", False)),
        ("okafor's overhead is not weak anymore", ("overhead", "weakness", True)),
        ("okafor lobs a lot, not sure why", ("lob", "often", False)),
    ],
)
def test_what_is_plain_is_still_claimed(
    demo: Talk, text: str, claim: tuple[str, str, bool]
) -> None:
    demo.say(text)
    assert claim in claims(demo)


def test_a_drop_that_sits_among_praise_is_no_weak_one(demo: Talk) -> None:
    text = "okafor is better now, his head is up. his drop sits. but lindqvist hurries everything"
    assert "Okafor: third-shot drop weak?" not in offers(demo, text)
    assert claims(demo) == {("patience", "weakness", False)}
