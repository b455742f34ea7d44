"""At whom to drive: what notes say of pace, resets and counters, else the middle or the late one.

Sizes and judgements: the team's coaching review, 2.5 (common practice, no source).
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import match, often_noted, player

from knowledge.advice import Advice, Confidence
from knowledge.situation import Asked, OnCourt, Wind
from knowledge.tactics import advise
from knowledge.tactics.third_drive import CALL_AT_NOBODY, LATE_ONE, ONLY_SHORT
from knowledge.vocabulary import Side, Topic

GELL, RUDD = player(3, "Gell", None), player(4, "Rudd", None)
OURS_WITHOUT_A_DRIVE = (
    player(1, "Mira", Side.RIGHT, "forehand_drive weakness"),
    player(2, "Tom", Side.LEFT, "forehand_drive weakness"),
)


def asked(words: str, *theirs: OnCourt, about: tuple[OnCourt, ...] = ()) -> Advice:
    situation = match(Topic.THIRD_SHOT, *theirs)
    named = tuple(one.player for one in about)
    return advise(replace(situation, asked=Asked(words=words, about=named)))


def rudd(*claims: str) -> OnCourt:
    return player(4, "Rudd", None, *claims)


@pytest.mark.parametrize(
    "words",
    ["drive who", "who do i drive at", "whom to drive at", "drive at who?", "best drive target"],
)
@pytest.mark.parametrize(
    ("claim", "said"),
    [
        ("handles_pace weakness", "Rudd: dislikes pace"),
        ("reset weakness", "Rudd: weak reset"),
        ("forward_speed weakness", "Rudd: slow forward"),
    ],
)
def test_notes_on_pace_resets_and_feet_say_at_whom(words: str, claim: str, said: str) -> None:
    advice = asked(words, GELL, rudd(claim))
    assert advice.call == "Drive at Rudd, then drop the fifth."
    assert advice.reasons[0].text == said
    assert advice.unless == ONLY_SHORT
    assert advice.assumed is None


def test_two_named_are_a_choice_and_one_named_gets_the_better_one() -> None:
    weak = rudd("reset weakness")
    assert asked("drive at gell or rudd", GELL, weak, about=(GELL, weak)).call.startswith(
        "Drive at Rudd"
    )
    assert asked("drive at gell?", GELL, weak, about=(GELL,)).call.startswith("Drive at Rudd")


def test_never_at_a_set_counter() -> None:
    advice = asked("drive who", GELL, rudd("counter strength"))
    assert advice.call == "Drive at Gell, then drop the fifth."
    assert advice.reasons[0].text == "Not Rudd: strong counter"
    both = asked("drive who", player(3, "Gell", None, "counter strength"), rudd("counter strength"))
    assert both.call == CALL_AT_NOBODY


def test_nothing_noted_is_the_rule_for_a_drive() -> None:
    advice = asked("drive who", GELL, RUDD)
    assert advice.call == CALL_AT_NOBODY
    assert advice.confidence is Confidence.GENERAL_RULE
    assert LATE_ONE in [one.text for one in advice.reasons]
    assert asked("drive who").call == CALL_AT_NOBODY


def test_the_wind_is_said() -> None:
    situation = replace(
        match(Topic.THIRD_SHOT, GELL, RUDD), asked=Asked(words="drive who"), wind=Wind.AGAINST_US
    )
    assert any("dip" in one.text.casefold() for one in advise(situation).reasons)


@pytest.mark.parametrize(
    "words",
    [
        "drop or drive",
        "should we drive",
        "who hits the third drive",
        "who drives our third",
        "drive middle or sideline",
        "drop thirds at who",
        "they drive at us who",
    ],
)
def test_another_question_keeps_its_answer(words: str) -> None:
    weak = rudd("handles_pace weakness")
    assert asked(words, GELL, weak).call == asked("third shot", GELL, weak).call


def test_a_told_ball_is_weighed_against_the_drop() -> None:
    weak = rudd(*often_noted("handles_pace weakness", 2))
    assert asked("short return drive at who", GELL, weak).call.startswith("Drive at Rudd")
    assert asked("deep return drive at who", GELL, RUDD).call.startswith("Drop it")


@pytest.mark.parametrize("words", ["where do i drive my third", "where should we rip the third"])
def test_where_to_drive_is_answered_with_a_drive(words: str) -> None:
    weak = rudd(*often_noted("handles_pace weakness", 2))
    assert asked(words, GELL, weak).call.startswith("Drive at Rudd")
    assert asked("where do they drive", GELL, weak).call == asked("third shot", GELL, weak).call


def test_the_mix_goes_behind_a_poacher_as_its_call_does() -> None:
    mix = asked("third shot", GELL, rudd(*often_noted("poaching often"))).mix
    assert mix is not None
    assert [one.label for one in mix.shares if "Rudd" in one.label] == [
        "drop behind Rudd",
        "drive behind Rudd",
    ]


def test_without_a_drive_of_our_own_none_is_called() -> None:
    situation = match(Topic.THIRD_SHOT, GELL, RUDD, ours=OURS_WITHOUT_A_DRIVE)
    advice = advise(replace(situation, asked=Asked(words="drive who")))
    assert advice.call == "Drop thirds to the middle, short ones too."


def test_who_cannot_reset_is_driven_at_and_who_can_is_not() -> None:
    told = "short return sits up"
    assert asked(told, GELL, rudd(*often_noted("reset weakness"))).call.startswith("Drive at Rudd")
    assert "Rudd" not in asked(told, GELL, rudd(*often_noted("reset strength"))).call
