"""Small questions that the words before them settle: fair play, stalling, a lob, whose call, sides.

Ten seconds to serve: rulebook 2025, section 4. Forehands to the middle, and no aiming at an
injury: common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def in_match(demo: Talk) -> Talk:
    demo.say("next: okafor and lindqvist")
    return demo


@pytest.mark.parametrize(
    "text",
    [
        "hes stalling btwn points can i say smth",
        "okafor is wasting time before every serve is that allowed",
    ],
)
def test_who_stalls_has_ten_seconds(in_match: Talk, text: str) -> None:
    assert in_match.say(text).startswith("Serve within 10 seconds of the score call.")


@pytest.mark.parametrize(
    "text", ["is it mean to go at the knee", "is it ok to target her bad ankle"]
)
def test_an_injury_is_not_gone_at(in_match: Talk, text: str) -> None:
    assert in_match.say(text).startswith("Play the ball, not the injury.")


@pytest.mark.parametrize("who", ["ref isnt here", "no ref came,", "the ref never showed."])
def test_a_referee_who_is_not_there_decides_nothing(in_match: Talk, who: str) -> None:
    told = in_match.say(f"{who} who decides a line call we disagree on")
    assert "Appeal to the referee" not in told


@pytest.mark.parametrize(
    "text",
    ["dont think okafor can see lobs in the sun, lob him?", "okafor hates the sun so lob him?"],
)
def test_whom_we_may_lob_is_our_lob(in_match: Talk, text: str) -> None:
    assert "Lob " in in_match.say(text)
    assert "runs" not in in_match.sent[-1]


def test_after_lobs_who_calls_it_is_of_the_lob(in_match: Talk) -> None:
    told = in_match.say("who covers lobs")
    assert in_match.say("who calls it").splitlines()[0] in told


@pytest.mark.parametrize(
    ("text", "call"),
    [
        ("i keep missing returns", "Return higher"),
        ("we keep missing our serves", "Serve deep middle"),
        ("i keep missing my drops", "Drop thirds to the middle"),
    ],
)
def test_what_we_keep_missing_is_ours_to_change(in_match: Talk, text: str, call: str) -> None:
    in_match.say("where do i dink okafor")
    assert in_match.say(text).startswith(call)


TURNED = "Your sides put both backhands in the middle: swap"


@pytest.fixture
def lefty_on_the_left(demo: Talk) -> Talk:
    """A left-hander on the left has the backhand in the middle, as a right-hander on the right."""
    for said in (
        "we are petronella and bronagh",
        "bronagh is a lefty",
        "petronella is right handed",
        "bronagh plays left",
    ):
        demo.say(said)
    return demo


def test_sides_that_turn_both_backhands_in_are_swapped_at_once(lefty_on_the_left: Talk) -> None:
    told = lefty_on_the_left.say("stack?")
    assert told.startswith("Stack on serve, Petronella always left.")
    assert TURNED in told
    lefty_on_the_left.say("petronella plays right")
    assert TURNED in lefty_on_the_left.say("stack?")
    assert "swap sides" in lefty_on_the_left.say("who takes middle")


@pytest.mark.parametrize("text", ["isnt that both backhands in the middle", "so swap?"])
def test_after_the_middle_the_sides_are_asked(lefty_on_the_left: Talk, text: str) -> None:
    lefty_on_the_left.say("who takes middle")
    assert TURNED in lefty_on_the_left.say(text)


def test_sides_with_the_forehands_inside_are_kept(demo: Talk) -> None:
    for said in ("we are petronella and bronagh", "bronagh is a lefty", "bronagh plays right"):
        demo.say(said)
    assert TURNED not in demo.say("stack?")
