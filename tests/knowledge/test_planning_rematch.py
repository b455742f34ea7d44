"""A rematch: whoever lost changes what lost; it is a guess with its reason, and marked as one."""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import TODAY, match, often_noted, player

from knowledge.given_plan import GivenLine, LastMeeting, Tried
from knowledge.planning import plan
from knowledge.planning.plan_b import variants
from knowledge.planning.plan_lines import plan_lines
from knowledge.planning.rematch import day_name, doing, expected, what_won
from knowledge.situation import Situation
from knowledge.vocabulary import Side, Topic

OKAFOR = player(
    3,
    "Okafor",
    Side.LEFT,
    "hand right",
    "ready_position backhand",
    *often_noted("backhand_dink weakness", 4),
)
LINDQVIST = player(
    4, "Lindqvist", Side.RIGHT, "hand right", *often_noted("third_shot_drop weakness", 2)
)
DINK = GivenLine(do="Dink Okafor's backhand, across", phase="dink", per_100=0.5)
RETURN = GivenLine(do="Return deep at Lindqvist", phase="return", per_100=0.8)
RESPECT = GivenLine(do="Respect Okafor, paddle up", phase="respect", per_100=5.0)
MET = LastMeeting(day=TODAY - 7, won=True, games="11-8 11-6", plan=(RETURN, DINK, RESPECT))


def _after(meeting: LastMeeting | None) -> Situation:
    return replace(match(Topic.GAME_PLAN, OKAFOR, LINDQVIST), last_meeting=meeting)


def test_what_led_the_plan_won_where_nothing_was_counted() -> None:
    assert what_won(MET) == RETURN


def test_what_was_counted_goes_before_what_led() -> None:
    counted = replace(
        MET, tried=(Tried(do=DINK.do, won=9, of=12), Tried(do=RETURN.do, won=2, of=3))
    )
    assert what_won(counted) == DINK


def test_after_a_win_they_change_what_costs_us_most() -> None:
    situation = _after(replace(MET, tried=(Tried(do=DINK.do, won=9, of=12),)))
    guess = expected(situation, plan_lines(situation))
    assert guess is not None
    assert guess.because == "You won 9 of 12 dinking Okafor's backhand"
    costliest = variants(situation, plan_lines(situation), target=OKAFOR)[0]
    assert guess.variant == costliest
    assert guess.change == "expect Okafor to move to the right side"
    assert guess.text.endswith("(a guess)")


def test_whoever_won_has_no_reason_to_change() -> None:
    situation = _after(replace(MET, won=False))
    guess = expected(situation, plan_lines(situation))
    assert guess is not None
    assert guess.text == "They won last time: expect the same again (a guess)"


@pytest.mark.parametrize("meeting", [None, replace(MET, won=None)])
def test_nothing_is_guessed_of_a_match_whose_end_nobody_told(meeting: LastMeeting | None) -> None:
    situation = _after(meeting)
    assert expected(situation, plan_lines(situation)) is None


def test_the_plan_of_a_rematch_says_it() -> None:
    said = plan.advise(_after(MET)).unless
    assert said is not None
    assert said.startswith("You won leading with returning deep at Lindqvist: expect ")
    first = plan.advise(_after(None)).unless
    assert first is None or "guess" not in first


@pytest.mark.parametrize(
    ("do", "said"),
    [
        ("Dink Okafor's backhand, across", "dinking Okafor's backhand"),
        ("Mira: dink Okafor's backhand, wide", "dinking Okafor's backhand"),
        ("Drop thirds behind Lindqvist", "dropping thirds behind Lindqvist"),
        ("Speed up at Okafor's right hip", "speeding up at Okafor's right hip"),
        ("Mira drops, Tom drives at Hale", "with Mira drops"),
    ],
)
def test_a_line_as_what_was_done(do: str, said: str) -> None:
    assert doing(do) == said


@pytest.mark.parametrize(
    ("days", "said"),
    [(0, "earlier today"), (1, "Monday"), (6, "Wednesday"), (7, "Tue 29 Apr")],
)
def test_the_day_as_people_say_it(days: int, said: str) -> None:
    """The ordinal 739,377 is Tuesday, 6 May 2025 (the proleptic Gregorian calendar)."""
    today = 739_377
    assert day_name(today - days, today=today) == said
