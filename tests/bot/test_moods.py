"""How a partner feels is no name: "my partner is tilting" makes nobody called Tilting."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.moods import tells_a_state
from bot.chat.words import words


def _ours(talk: Talk) -> set[str]:
    with talk.book() as book:
        return {row.name for row in book.players() if row.ours}


@pytest.mark.parametrize(
    "said",
    [
        "my partner is tilting keeps saying sorry",
        "my partner is frustrated and sulking",
        "my partner is crying",
        "my partner is injured",
        "my partner is choking",
        "my partner is pouting",
        "my partner is furious with me",
        "my partner is tilting and wants to quit",
        "my partner's silent and moody",
        "we are tilting and crying",
        "we're fuming and tilted",
        "im playing with confidence",
    ],
)
def test_a_feeling_is_nobodys_name(demo: Talk, said: str) -> None:
    ours = _ours(demo)
    assert "You are" not in demo.say(said)
    assert _ours(demo) == ours


@pytest.mark.parametrize(
    ("said", "pair"),
    [
        ("my partner is jared", "Mira and Jared"),
        ("my partner is Manning", "Mira and Manning"),
        ("were sana and ahmed", "Sana and Ahmed"),
        ("wtf tilting isnt a name my partner is idris", "Mira and Idris"),
        ("thats not a name, my partner is idris", "Mira and Idris"),
        ("no my partner is grace", "Mira and Grace"),
    ],
)
def test_a_name_still_is_one(demo: Talk, said: str, pair: str) -> None:
    assert demo.say(said) == f"You are {pair}."


@pytest.mark.parametrize("said", ["my partner is sulking", "tom is so rattled", "partner is livid"])
def test_a_partners_mood_is_answered_with_what_helps(demo: Talk, said: str) -> None:
    notes = demo.notes()
    demo.say(said)
    assert demo.heard is not None
    assert getattr(demo.heard.understood, "topic", None) == "reset_head"
    assert demo.notes() == notes


@pytest.mark.parametrize("name", ["jared", "ahmed", "fred", "sterling", "Manning", "idris"])
def test_names_that_end_like_verbs_are_names(name: str) -> None:
    assert not tells_a_state(words(name)[0])
