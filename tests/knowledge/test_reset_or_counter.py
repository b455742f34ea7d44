"""Counter, reset or leave: height, footing, place, who leans, who sleeps, and our own shots.

Sizes and judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import product
from typing import Any

import numpy as np
import pytest
from aim_cases import Case, cases
from attack_cases import ball_situation, facts_of, said
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import match, often_noted, player

from knowledge.advice import CALL_LIMIT, Confidence
from knowledge.court import METRES_PER_FOOT
from knowledge.flight import MPS_PER_MPH, leave_height_m
from knowledge.general_rule import LINE_LIMIT
from knowledge.situation import Asked, OnCourt, Situation, Wind
from knowledge.tactics import advise
from knowledge.tactics.reset_answer import COUNTER, LEAVE, RESET, answer_attacked
from knowledge.tactics.reset_flight import CONTACTS_M, Passing, chance_out, flat_share
from knowledge.vocabulary import BallKind, PlayerId, Side, Topic, Wing

CASES = cases("reset_or_counter.toml")
OKAFOR = player(3, "Okafor", Side.LEFT, "hand right")
LINDQVIST = player(4, "Lindqvist", Side.RIGHT, "hand right")


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    advice = advise(ball_situation(case, Topic.RESET_OR_COUNTER))
    assert advice.call == case["call"]
    assert all(text in said(advice) for text in case.get("says", ()))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_answers_fit_a_phone(case: Case) -> None:
    advice = advise(ball_situation(case, Topic.RESET_OR_COUNTER))
    assert len(advice.call) <= CALL_LIMIT
    assert all(len(one.text) <= LINE_LIMIT for one in advice.reasons)
    assert 1 <= len(advice.reasons) <= 3
    for line in (advice.number, advice.unless, advice.assumed, advice.caution):
        assert line is None or len(line) <= LINE_LIMIT


def _situation(
    ours: tuple[OnCourt, ...] | None = None, *, wing: Wing | None = None, **facts: Any
) -> Situation:
    pair = ours or (player(1, "Mira", Side.RIGHT), player(2, "Tom", Side.LEFT))
    situation = match(Topic.RESET_OR_COUNTER, OKAFOR, LINDQVIST, ours=pair)
    asked = Asked(facts=facts_of(facts), wing=wing)
    return replace(situation, asked=asked, striker=PlayerId(1))


def _chances(situation: Situation) -> dict[str, float]:
    _, ranking = answer_attacked(situation)
    return {one.option.id: float(one.chance) for one in ranking.ranked}


def test_sizes_are_those_of_row_18() -> None:
    """Row 18: +4 for the counter waist up, at the line, balanced; reset +6 below the net."""
    high = _chances(_situation(height_m=0.95, footing="still"))
    assert 100 * (high[COUNTER] - high[RESET]) == pytest.approx(4, abs=0.2)
    low = _chances(_situation(height_m=0.6, footing="still"))
    assert 100 * (low[RESET] - low[COUNTER]) == pytest.approx(6, abs=0.3)


def test_what_is_left_is_won_as_often_as_it_flies_out() -> None:
    """Row 19 by arithmetic: out we win it, in we have lost it."""
    for height_m in (1.0, 1.1, 1.2, 1.3):
        chances = _chances(_situation(height_m=height_m, footing="still"))
        out = chance_out(Passing(height_m=height_m))
        assert chances[LEAVE] == pytest.approx(out, abs=0.01)


def test_leave_from_fifty_five_to_sixty_in_a_hundred_on() -> None:
    """Row 19: "leave when you think at least 55 to 60% of such balls go out"."""
    switched = None
    for height_m in np.arange(0.9, 1.5, 0.005):
        situation = _situation(height_m=float(height_m), footing="still", spin="flat")
        if advise(situation).call.startswith("Leave"):
            switched = chance_out(Passing(height_m=float(height_m), flat_share=1.0))
            break
    assert switched is not None
    assert 0.5 < switched < 0.62


@pytest.mark.parametrize(
    ("belt_ft", "spin", "leaves"),
    [(3.6, "flat", True), (3.0, "flat", False), (3.6, "topspin", False), (4.6, "topspin", True)],
)
def test_flat_above_the_belt_topspin_above_the_chest(
    belt_ft: float, spin: str, leaves: bool
) -> None:
    """2.11b, computed by the review: "flat hitter: belt; heavy topspin: chest or shoulder"."""
    situation = _situation(height_m=belt_ft * METRES_PER_FOOT, footing="still", spin=spin)
    assert advise(situation).call.startswith("Leave") is leaves


@settings(max_examples=40, deadline=None)
@given(st.floats(0.95, 1.6), st.floats(0.0, 1.0), st.floats(-4.0, 4.0))
def test_higher_and_flatter_ones_fly_out_more(
    height_m: float, share: float, wind_mps: float
) -> None:
    ball = Passing(height_m=height_m, flat_share=share, wind_mps=wind_mps)
    out = chance_out(ball)
    assert 0 <= out <= 1
    assert chance_out(replace(ball, height_m=height_m + 0.1)) >= out - 1e-9
    assert chance_out(replace(ball, flat_share=min(1.0, share + 0.2))) >= out - 0.02


@settings(max_examples=60, deadline=None)
@given(st.floats(0.9, 1.3), st.floats(13.0, 20.0), st.floats(-4.0, 3.0))
def test_wind_behind_a_ball_lowers_the_height_to_leave_it_at(
    height_m: float, speed_mps: float, wind_mps: float
) -> None:
    """Ball by ball: over all that may come, wind also changes which of them clear the net."""
    now, more = (
        leave_height_m(height_m, 2.7, speed_mps=speed_mps, wind_mps=wind)
        for wind in (wind_mps, wind_mps + 1)
    )
    assert more <= now


AGREEMENT = list(
    product(
        (0.5, 0.9, 1.0, 1.1, 1.2, 1.3, 1.5),
        (None, 13.0, 16.0, 20.0),
        (None, "flat", "topspin"),
        (None, -4.0, 3.0),
        ((None, "still"), (4.5, "still"), (None, "backward")),
        (None, BallKind.DRIVE),
    )
)[::5]
"""Heights, paces, spins, winds, where and how we meet it (at the line, in mid-court, moving), and
whether it is called a drive. Every fifth of all: no list is a multiple of five long, so each value
meets each of any other list.
"""


def test_let_it_go_and_reset_or_counter_call_the_same_ball_alike() -> None:
    """One ball, one call: two pages that answer it apart would contradict each other."""
    left = 0
    for height_m, pace_mps, spin, wind_mps, (from_net_m, footing), kind in AGREEMENT:
        facts: dict[str, Any] = {
            "height_m": height_m,
            "pace_mps": pace_mps,
            "spin": spin,
            "wind_mps": wind_mps,
            "from_net_m": from_net_m,
            "footing": footing,
        }
        asked = _situation(**{name: fact for name, fact in facts.items() if fact is not None})
        asked = replace(asked, asked=replace(asked.asked, ball_kind=kind))
        windy = replace(asked, wind=None if wind_mps is None else Wind.AGAINST_US)
        calls = [
            advise(replace(windy, topic=topic)).call.startswith("Leave it")
            for topic in (Topic.LET_IT_GO, Topic.RESET_OR_COUNTER)
        ]
        assert calls[0] is calls[1], facts
        left += calls[0]
    assert 0 < left < len(AGREEMENT)


@settings(max_examples=40, deadline=None)
@given(st.floats(0.7, 1.0), st.floats(14.0, 20.0))
def test_a_flat_ball_told_in_full_flies_out_above_the_height_let_it_go_names(
    contact_m: float, pace_mps: float
) -> None:
    """One set of heights: well above the table's for every contact that may be, it is out."""
    heights = [leave_height_m(one, 2.74, speed_mps=pace_mps) for one in (*CONTACTS_M, contact_m)]
    possible = [one for one in heights if 0 < one < math.inf]
    if not possible:
        return
    above = Passing(
        height_m=max(possible) + 0.4,
        met_from_net_m=2.13,
        pace_mps=pace_mps,
        flat_share=1.0,
    )
    assert chance_out(above) > 0.85


def test_faster_balls_fly_out_more() -> None:
    speeds = [25, 30, 35, 40, 45]
    found = [chance_out(Passing(height_m=1.1, pace_mps=mph * MPS_PER_MPH)) for mph in speeds]
    assert found == sorted(found)


def test_a_noted_habit_moves_the_share_of_flat_balls() -> None:
    assert flat_share(None, 0.9) < flat_share(None, 0.0) < flat_share(None, -0.9)


def test_a_strong_counter_of_our_own_counts_and_a_weak_one_is_no_option() -> None:
    def ours(*claims: str) -> tuple[OnCourt, ...]:
        return player(1, "Mira", Side.RIGHT, *claims), player(2, "Tom", Side.LEFT)

    plain = _chances(_situation(height_m=0.95, footing="still"))[COUNTER]
    strong = _situation(ours(*often_noted("counter strength")), height_m=0.95, footing="still")
    assert _chances(strong)[COUNTER] > plain
    weak = _situation(ours("counter weakness"), height_m=0.95, footing="still")
    assert COUNTER not in _chances(weak)
    wing = _situation(
        ours("counter_backhand weakness"), wing=Wing.BACKHAND, height_m=0.95, footing="still"
    )
    assert COUNTER not in _chances(wing)
    other = replace(wing, asked=replace(wing.asked, wing=Wing.FOREHAND))
    assert COUNTER in _chances(other)


def test_pace_and_reset_of_our_own_count_both_ways() -> None:
    def chances(claim: str) -> dict[str, float]:
        pair = (
            player(1, "Mira", Side.RIGHT, *often_noted(claim)),
            player(2, "Tom", Side.LEFT),
        )
        return _chances(_situation(pair, height_m=0.95, footing="still"))

    assert (
        chances("handles_pace strength")[COUNTER]
        > _chances(_situation(height_m=0.95, footing="still"))[COUNTER]
        > chances("handles_pace weakness")[COUNTER]
    )
    assert chances("reset strength")[RESET] > 0.5


def test_a_counter_comes_with_the_caution_for_eyes() -> None:
    """Facts of the trade, 6: of eye injuries the ball does 43%; eyewear to ASTM F3164."""
    for case in CASES:
        advice = advise(ball_situation(case, Topic.RESET_OR_COUNTER))
        counters = "straight back" in advice.call or advice.call.startswith("Counter at")
        assert (advice.caution is not None) is counters
        if advice.caution is not None:
            assert "eye" in advice.caution


def test_left_in_mid_court_the_rest_is_reset_and_the_pace_taken_is_told() -> None:
    """Row 18: in mid-court a counter is no second choice. A ball at the shoulder there is out."""
    case = {"facts": {"height_m": 1.45, "from_net_m": 4.5, "footing": "still"}}
    advice = advise(ball_situation(case, Topic.RESET_OR_COUNTER))
    assert advice.call.startswith("Leave it")
    assert advice.unless == "It dips or comes slower: reset it."
    assert advice.assumed == "Taken as: 35 mph from their line, straight."


def test_in_advance_it_is_called_a_general_rule_with_both_branches_as_buttons() -> None:
    advice = advise(Situation(topic=Topic.RESET_OR_COUNTER))
    assert advice.confidence is Confidence.GENERAL_RULE
    assert [one.label for one in advice.choices] == ["waist up, set", "low or moving", "out balls"]
    assert advice.choices[-1].topic is Topic.LET_IT_GO


def test_how_it_is_taken_to_be_met_is_a_button_away() -> None:
    """What is assumed is said, and the other branch is offered; what was said is not."""

    def labels(**facts: Any) -> set[str]:
        return {one.label for one in advise(_situation(**facts)).choices}

    assert {"I'm in mid court", "moving back"} <= labels(height_m=1.05)
    assert "I'm in mid court" not in labels(height_m=1.05, from_net_m=2.4)
    assert "moving back" not in labels(height_m=1.05, footing="still")
    assert labels(height_m=1.05, from_net_m=4.5) == {"out balls"}
