"""In the air or off the bounce: reach, landing, our volleys, the rulebook; what a bounce costs.

Judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from aim_cases import Case, cases
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from told_ball_cases import acting, idle, names, said_of, told_situation

from knowledge.advice import CALL_LIMIT, Confidence, MatchFact
from knowledge.ball_facts import BallFacts
from knowledge.flight.ball import GRAVITY_MPS2
from knowledge.planning import sizes as plan_sizes
from knowledge.side_view import SideView
from knowledge.situation import Asked, Situation
from knowledge.sources import SourceKind
from knowledge.tactics import advise, bounce_sizes, lob_sizes
from knowledge.tactics.bounce_time import (
    BALL_RADIUS_M,
    DINK_FALLING_MPS,
    DINK_FORWARD_MPS,
    RESTITUTION,
    TAKEN_AT_M,
    bounce_of,
    dink_of,
)
from knowledge.tactics.take_or_let_bounce import answer_bounce
from knowledge.vocabulary import Topic
from knowledge.wind import DRAG_PER_M

CASES = cases("take_or_let_bounce.toml")
INCH_M = 0.0254


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    situation = told_situation(case, Topic.TAKE_OR_LET_BOUNCE)
    advice, answer = advise(situation), answer_bounce(situation)
    assert advice.call == case.get("call", advice.call)
    said = said_of(advice)
    assert [text for text in case.get("says", ()) if text not in said] == []
    assert [text for text in case.get("never", ()) if text in said] == []
    assert answer.ranking.best.option.id == case.get("best", answer.ranking.best.option.id)
    assert set(case.get("acts", ())) <= acting(answer.ranking)
    assert not set(case.get("idle", ())) & acting(answer.ranking)
    assert (advice.confidence is Confidence.GENERAL_RULE) >= case.get("general", False)


def test_every_effect_has_a_case_that_calls_for_it_and_one_that_does_not() -> None:
    rankings = [
        answer_bounce(told_situation(case, Topic.TAKE_OR_LET_BOUNCE)).ranking for case in CASES
    ]
    declared = set().union(*(names(one.decision.effects) for one in rankings))
    assert declared <= set().union(*(set(case.get("acts", ())) for case in CASES))
    assert declared <= set().union(*(idle(one) for one in rankings))


def test_the_bounce_is_that_of_the_drop_test() -> None:
    """National rulebook, drop test: from 78 in onto granite, 30 to 34 in to the top of the ball."""
    height_m = 78 * INCH_M - BALL_RADIUS_M  # both measured to the top of the ball
    dropped = bounce_of(height_m=height_m, forward_mps=0, falling_mps=0)
    assert 30 <= (dropped.top_m + BALL_RADIUS_M) / INCH_M <= 34


@given(height=st.floats(0.1, 3), forward=st.floats(0, 8), falling=st.floats(0, 5))
def test_the_closed_form_is_the_integrated_fall_and_rise(
    height: float, forward: float, falling: float
) -> None:
    """Against scipy's solve_ivp, without drag."""
    found = bounce_of(height_m=height, forward_mps=forward, falling_mps=falling)

    def fall(_t: float, state: np.ndarray) -> list[float]:
        return [float(state[1]), -GRAVITY_MPS2]

    def ground(_t: float, state: np.ndarray) -> float:
        return float(state[0]) - BALL_RADIUS_M

    def top(_t: float, state: np.ndarray) -> float:
        return float(state[1])

    ground.terminal = top.terminal = True  # type: ignore[attr-defined]
    tight = {"rtol": 1e-10, "atol": 1e-12, "max_step": 0.05}
    down = solve_ivp(fall, (0, 5), [height, -falling], events=ground, **tight)
    landed = down.t_events[0][0]
    rising = -RESTITUTION * down.y_events[0][0][1]
    up = solve_ivp(fall, (0, 5), [BALL_RADIUS_M, rising], events=top, **tight)
    assert found.time_s == pytest.approx(landed + up.t_events[0][0], abs=1e-6)
    assert found.lands_after_m == pytest.approx(forward * landed, abs=1e-6)
    assert found.top_m == pytest.approx(up.y_events[0][0][0], abs=1e-6)


def test_drag_may_be_left_out_of_a_dink() -> None:
    """Against solve_ivp with drag (Lindsey's coefficient, see knowledge.wind): within a tenth."""
    found = bounce_of()

    def fly(_t: float, s: np.ndarray) -> list[float]:
        speed = math.hypot(s[2], s[3])
        return [s[2], s[3], -DRAG_PER_M * speed * s[2], -GRAVITY_MPS2 - DRAG_PER_M * speed * s[3]]

    def ground(_t: float, s: np.ndarray) -> float:
        return float(s[1]) - BALL_RADIUS_M

    ground.terminal = True  # type: ignore[attr-defined]
    start = [0.0, TAKEN_AT_M, DINK_FORWARD_MPS, -DINK_FALLING_MPS]
    flown = solve_ivp(fly, (0, 2), start, events=ground, rtol=1e-9, atol=1e-12)
    assert found.lands_after_m == pytest.approx(flown.y_events[0][0][0], rel=0.1)


def test_off_the_bounce_a_dink_is_met_below_the_net() -> None:
    """Which is why the air is the default: 34 in at the centre (2025 edition, 2.C)."""
    assert bounce_of().top_m < 34 * INCH_M
    tops = [bounce_of(height_m=height).top_m for height in (0.5, 1, 2, 3)]
    assert tops == sorted(tops)


def test_the_kitchen_rule_stands_beside_a_volley_with_its_edition() -> None:
    advice = advise(Situation(topic=Topic.TAKE_OR_LET_BOUNCE))
    ruled = [one for one in advice.reasons if one.source.kind is SourceKind.RULEBOOK]
    assert [one.source.citation[:4] for one in ruled] == ["2025"]


def test_the_other_branch_is_a_button() -> None:
    def values(case: Case) -> list[str | None]:
        choices = advise(told_situation(case, Topic.TAKE_OR_LET_BOUNCE)).choices
        assert all(one.fact == MatchFact.FOOTING for one in choices)
        return [one.value for one in choices]

    assert values({}) == ["sideways", "still"]
    assert values({"ball": "stretched"}) == ["still"]
    assert values({"ball": "easy"}) == ["sideways"]
    assert values({"facts": {"footing": "sideways"}}) == ["still"]


@given(
    words=st.text(max_size=80) | st.sampled_from(["lob", "their return", "dead", "feet"]),
    height=st.none() | st.floats(0, 3),
    back=st.none() | st.floats(0, 9),
)
def test_any_words_fit_a_phone(words: str, height: float | None, back: float | None) -> None:
    facts = BallFacts(height_m=height, from_net_m=back)
    advice = advise(
        Situation(topic=Topic.TAKE_OR_LET_BOUNCE, asked=Asked(words=words, facts=facts))
    )
    assert 0 < len(advice.call) <= CALL_LIMIT
    lines = [advice.number, advice.unless, advice.assumed, advice.caution]
    assert all(len(line) <= 60 for line in lines if line)
    assert all(len(reason.text) <= 50 for reason in advice.reasons)


@pytest.mark.parametrize("words", ["", "dead short ball over the net", "dink at my feet"])
def test_the_ball_drawn_clears_the_net_and_is_met_where_the_numbers_say(words: str) -> None:
    """34 in at the centre (2025 edition, 2.C); time, ground and top are those of the answer."""
    advice = advise(Situation(topic=Topic.TAKE_OR_LET_BOUNCE, asked=Asked(words=words)))
    view = advice.picture
    assert isinstance(view, SideView)
    flight, bounce = view.paths
    along, up = np.array(flight.places[::-1]).T
    assert np.interp(0.0, along, up) - BALL_RADIUS_M >= 34 * INCH_M
    air, off = view.levels
    assert air.along_m - off.along_m == pytest.approx(advice.numbers["bounce_costs_m"])
    assert bounce.places[-1][1] == pytest.approx(advice.numbers["bounce_top_m"])
    assert f"{advice.numbers['bounce_costs_s']:.1f} s later" in view.alt
    assert np.interp(air.along_m, along, up) == pytest.approx(air.height_m, abs=0.02)


@pytest.mark.parametrize("words", ["a lob, take it in the air", "it floats high", "their serve"])
def test_no_dink_is_drawn_where_it_is_none(words: str) -> None:
    asked = Asked(words=words if words != "their serve" else "volley their serve")
    assert advise(Situation(topic=Topic.TAKE_OR_LET_BOUNCE, asked=asked)).picture is None


def test_the_dinks_fall_is_the_one_that_clears_the_net() -> None:
    assert dink_of().falling_mps == pytest.approx(DINK_FALLING_MPS, abs=0.1)
    assert dink_of().height_at_m(0.0) - BALL_RADIUS_M >= 34 * INCH_M


def test_the_share_of_lobs_is_one_number() -> None:
    assert bounce_sizes.LOB_SHARE == lob_sizes.LOB_SHARE == plan_sizes.LOB_SHARE
