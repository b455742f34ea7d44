"""What a note takes back in the same breath. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk
from voices import IN_TALK, PEOPLE

from bot.chat.understand import understand_note


def read(text: str) -> set[str]:
    return {
        f"{PEOPLE[claim.player - 1].removesuffix(' (Bones)').split()[-1]}: "
        f"{claim.trait} {claim.value}{' denied' if claim.denied else ''}"
        for claim in understand_note(text, chat=IN_TALK).claims
    }


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("hale is a lefty no wait righty", {"Hale: hand right"}),
        ("hales a lefty no scratch that hes a righty", {"Hale: hand right"}),
        ("hale is a lefty sorry righty", {"Hale: hand right"}),
        ("hale is left handed make that right handed", {"Hale: hand right"}),
        ("lefty ruiz no wait righty", {"Ruiz: hand right"}),
        ("hale is a lefty no wait righty no sorry lefty", {"Hale: hand left"}),
        ("ruiz is slow to her left no sorry to her right", {"Ruiz: moves_right weakness"}),
        ("ruiz plays the left side no wait right", {"Ruiz: side_played right"}),
        ("ruiz is quick no wait she is slow", {"Ruiz: foot_speed weakness"}),
        ("hale has a weak backhand dink no wait forehand", {"Hale: forehand_dink weakness"}),
        (
            "ruiz pops up backhand dinks i mean forehand dinks",
            {"Ruiz: forehand_dink weakness"},
        ),
        ("ruiz has a weak serve no sorry return", {"Ruiz: return weakness"}),
        (
            "tom says ruiz is slow but i saw her and she is really quick",
            {"Ruiz: foot_speed strength"},
        ),
        ("people say ruiz lobs a lot, but i never saw her lob", {"Ruiz: lob rarely"}),
        ("ruiz has a weak serve no sorry strong", {"Ruiz: serve strength"}),
        (
            "hale has a two handed backhand i thought no its one handed definitely",
            {"Hale: two_handed_backhand no"},
        ),
        ("hale lobs a lot scratch that he poaches a lot", {"Hale: poaching often"}),
        ("hale hates the ball at his right hip no left hip sorry", {"Hale: body_jam weakness"}),
        ("ruiz has a weak forehand no backhand sorry", {"Ruiz: backhand_dink weakness"}),
        ("ruiz is slow to her left no her right i mean", {"Ruiz: moves_right weakness"}),
        ("hale is not a lefty sorry, righty", {"Hale: hand right"}),
        ("hale isnt left handed no wait right handed", {"Hale: hand right"}),
        (
            "hale hates the ball at his right hip no left hip sorry, hates it",
            {"Hale: body_jam weakness"},
        ),
        ("hale has stopped poaching no wait hes going even more now", {"Hale: poaching often"}),
        ("hale isnt bad at resets no wait hes great at them", {"Hale: reset strength"}),
        ("ruiz good forehand no backhand, he says sorry a lot", {"Ruiz: forehand_dink strength"}),
    ],
)
def test_what_is_said_instead_counts(text: str, claims: set[str]) -> None:
    assert read(text) == claims


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("hale can handle lobs well no he cant really", {"Hale: lob_defense weakness"}),
        ("ruiz poaches a lot no she doesnt", {"Ruiz: poaching rarely"}),
        ("ruiz poaches a lot. no wait, rarely", {"Ruiz: poaching rarely"}),
        ("hale doesnt lob no wait he does", {"Hale: lob often"}),
        ("hale lobs a lot no thats not true", set()),
    ],
)
def test_what_is_only_denied_is_turned(text: str, claims: set[str]) -> None:
    assert read(text) == claims


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        (
            "brandt and ruiz are both righties no sorry ruiz is lefty",
            {"Brandt: hand right", "Ruiz: hand left"},
        ),
        (
            "hale and ruiz are both slow no wait hale is quick",
            {"Ruiz: foot_speed weakness", "Hale: foot_speed strength"},
        ),
        (
            "ruiz is a lefty, correction, righty, and she poaches",
            {"Ruiz: hand right", "Ruiz: poaching often"},
        ),
    ],
)
def test_what_is_not_taken_back_stays(text: str, claims: set[str]) -> None:
    assert read(text) == claims


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("hale has no backhand", {"Hale: backhand_dink weakness"}),
        ("hale is slow, no lefty", {"Hale: foot_speed weakness", "Hale: hand left denied"}),
        ("hale is slow i mean really slow", {"Hale: foot_speed weakness"}),
        (
            "hale is a lefty, sorry to say, brandt poaches a lot",
            {"Hale: hand left", "Brandt: poaching often"},
        ),
        (
            "brandt is quick no overhead",
            {"Brandt: foot_speed strength", "Brandt: overhead weakness"},
        ),
        (
            "hale has a good forehand no backhand",
            {"Hale: forehand_dink strength", "Hale: backhand_dink weakness"},
        ),
        (
            "hale is slow no lefty sorry",
            {"Hale: foot_speed weakness", "Hale: hand left denied"},
        ),
        ("hale is not a lefty sorry, not a righty", {"Hale: hand right denied"}),
        ("i mean hale is slow", {"Hale: foot_speed weakness"}),
        ("hale patient? no", {"Hale: patience weakness"}),
    ],
)
def test_what_takes_nothing_back_is_read_as_ever(text: str, claims: set[str]) -> None:
    assert read(text) == claims


def test_what_no_trait_takes_is_kept_as_words(demo: Talk) -> None:
    demo.say("okafor speeds up from the backhand no sorry forehand at the chest")
    assert ("forehand_dink", "weakness", True) not in demo.claims("Okafor")
    assert demo.notes()[0].text.endswith("forehand at the chest")


def test_it_is_shown_and_undone_as_any_note(demo: Talk) -> None:
    before = demo.claims("Hale")
    assert demo.say("hale is a lefty no wait righty") == "Noted. Hale: right-handed."
    demo.tap("undo")
    assert demo.claims("Hale") == before
