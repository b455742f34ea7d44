"""On the way in: go or split by their ball, the fifth and the fourth; how far one gets.

Judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from aim_cases import Case, cases
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp
from told_ball_cases import acting, idle, names, said_of, told_situation

from knowledge.advice import CALL_LIMIT, Confidence, MatchFact
from knowledge.ball_facts import BallFacts, Depth
from knowledge.court_picture import CourtPicture
from knowledge.flight import level_time_s
from knowledge.reach import Feet
from knowledge.side_flights import flown
from knowledge.side_view import SideView
from knowledge.situation import Asked, Situation
from knowledge.tactics import advise
from knowledge.tactics.transition_answer import answer_transition
from knowledge.tactics.transition_said import Stage, transition_said
from knowledge.tactics.transition_time import (
    FOLLOW_THROUGH_S,
    MET_BEHIND_NET_M,
    flight_s,
    run_in_m,
    to_the_line_m,
)
from knowledge.vocabulary import Topic
from knowledge.wind import DRAG_PER_M, TYPICAL, Stroke

CASES = cases("transition.toml")


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    situation = told_situation(case, Topic.TRANSITION)
    advice, answer = advise(situation), answer_transition(situation)
    assert advice.call == case.get("call", advice.call)
    said = said_of(advice)
    assert [text for text in case.get("says", ()) if text not in said] == []
    assert [text for text in case.get("never", ()) if text in said] == []
    assert answer.best.startswith(case.get("best", ""))
    acts = acting(answer.ranking)
    assert set(case.get("acts", ())) - acts == set()
    assert set(case.get("idle", ())) & acts == set()
    assert (advice.confidence is Confidence.GENERAL_RULE) >= case.get("general", False)


def test_every_effect_has_a_case_that_calls_for_it_and_one_that_does_not() -> None:
    rankings = [answer_transition(told_situation(case, Topic.TRANSITION)).ranking for case in CASES]
    declared = set().union(*(names(one.decision.effects) for one in rankings))
    called = set().union(*(set(case.get("acts", ())) for case in CASES))
    assert declared - called == set()
    spared = set().union(*(idle(one) for one in rankings))
    absent = set().union(*(declared - names(one.decision.effects) for one in rankings))
    assert declared - (spared | absent) == set()


@pytest.mark.parametrize(
    ("words", "stage"),
    [
        ("how do we get to the kitchen", Stage.MOVE),
        ("follow my third in?", Stage.MOVE),
        ("when do i split step", Stage.MOVE),
        ("5th ball after a so so drop", Stage.FIFTH),
        ("they hit at my feet on the way in", Stage.FIFTH),
        ("reset from the midcourt how", Stage.FIFTH),
        ("fourth shot", Stage.FOURTH),
        ("what do i do with the fourth ball when they drop", Stage.FOURTH),
    ],
)
def test_which_ball_is_asked_about(words: str, stage: Stage) -> None:
    asked = Asked(words=words)
    assert transition_said(Situation(topic=Topic.TRANSITION, asked=asked)).stage is stage


@pytest.mark.parametrize("stroke", [Stroke.DROP, Stroke.DRIVE])
def test_the_time_of_flight_is_that_of_drag_alone(stroke: Stroke) -> None:
    """Against scipy's solve_ivp of x'' = -k x'^2 (facts: v = v0 exp(-k x) exactly)."""
    launch = TYPICAL[stroke]
    speed = launch.speed_mps * math.cos(math.radians(launch.angle_deg))
    way = launch.from_net_m + MET_BEHIND_NET_M

    def there(_t: float, s: np.ndarray) -> float:
        return float(s[0]) - way

    there.terminal = True  # type: ignore[attr-defined]
    flown = solve_ivp(
        lambda _t, s: [s[1], -DRAG_PER_M * s[1] ** 2],
        (0, 5),
        [0, speed],
        events=there,
        rtol=1e-10,
        atol=1e-12,
    )
    assert flight_s(stroke, launch.from_net_m) == pytest.approx(flown.t_events[0][0], rel=1e-6)


def test_the_known_flight_over_the_court() -> None:
    """By hand from the closed form: 40 mph over 44 ft take 958 ms with drag alone, level."""
    assert float(level_time_s(np.array(44 * 0.3048), 40 * 0.44704)) == pytest.approx(
        0.958, abs=0.002
    )


def test_the_run_is_the_sprint_models() -> None:
    """Against scipy's quadrature of v = V (1 - exp(-t/T))."""
    feet = Feet()
    time_s = flight_s(Stroke.DROP) - FOLLOW_THROUGH_S
    run, _ = quad(lambda t: feet.forward_mps * (1 - math.exp(-t / feet.rise_s)), 0, time_s)
    assert run_in_m(Stroke.DROP, feet) == pytest.approx(run)


def test_behind_a_drop_one_gets_further_than_behind_a_drive_and_never_past_the_line() -> None:
    feet = Feet()
    for back_m in (2.0, 3.0, 5.0, 6.7, 8.0):
        drop, drive = (run_in_m(each, feet, back_m) for each in (Stroke.DROP, Stroke.DRIVE))
        assert 0 <= drive <= drop <= to_the_line_m(back_m)
    assert run_in_m(Stroke.DROP, feet) < to_the_line_m(6.7)  # nobody reaches it behind one ball


def test_row_nine_has_its_size() -> None:
    """Waiting behind a bad third against running in: 5 points, and still feet beside it."""
    asked = Asked(words="bad drop")
    advice = advise(Situation(topic=Topic.TRANSITION, asked=asked))
    assert 4.5 <= advice.numbers["points_over_next"] <= 6.5


def test_the_other_branch_is_a_button() -> None:
    def facts(words: str) -> set[str | None]:
        choices = advise(Situation(topic=Topic.TRANSITION, asked=Asked(words=words))).choices
        return {f"{one.fact}={one.value}" for one in choices}

    height = MatchFact.HEIGHT
    assert facts("") == {f"{height}=below_net", f"{height}=above_net"}
    assert facts("bad drop") == {f"{height}=below_net"}
    assert facts("fifth at my feet") == {f"{MatchFact.BALL}=easy"}


@given(
    words=st.text(max_size=60) | st.sampled_from(["fifth", "fourth", "bad drop", "together"]),
    height=st.none() | st.floats(0, 3),
    back=st.none() | st.floats(0, 9),
    theirs=st.none() | st.sampled_from(Depth),
    ours=st.none() | st.sampled_from(Depth),
)
def test_any_words_fit_a_phone(
    words: str,
    height: float | None,
    back: float | None,
    theirs: Depth | None,
    ours: Depth | None,
) -> None:
    facts = BallFacts(height_m=height, from_net_m=back, theirs=theirs, ours=ours)
    advice = advise(Situation(topic=Topic.TRANSITION, asked=Asked(words=words, facts=facts)))
    assert 0 < len(advice.call) <= CALL_LIMIT
    lines = [advice.number, advice.unless, advice.assumed, advice.caution]
    assert all(len(line) <= 60 for line in lines if line)
    assert all(len(reason.text) <= 50 for reason in advice.reasons)


def _drawn(words: str, **facts: Any) -> CourtPicture | SideView | None:
    asked = Asked(words=words, facts=BallFacts(**facts))
    found = advise(Situation(topic=Topic.TRANSITION, asked=asked)).picture
    assert found is None or isinstance(found, CourtPicture | SideView)
    return found


def test_from_the_back_the_way_in_is_drawn_from_the_side_with_its_feet() -> None:
    view = _drawn("when do i run in after my third")
    assert isinstance(view, SideView)
    numbers = advise(Situation(topic=Topic.TRANSITION)).numbers
    start, split = (one.along_m for one in view.figures if one.ours)
    assert split - start == pytest.approx(numbers["run_in_behind_a_drop_m"])
    feet = round(numbers["run_in_behind_a_drop_m"] / 0.3048)
    assert f"{feet} ft in" in view.alt
    assert [one.lands_in for one in flown(view).paths] == [True]


def test_a_run_to_the_line_is_drawn_and_a_split_where_one_stands_is_not() -> None:
    court = _drawn("their ball is below the tape", from_net_m=4.4)
    assert isinstance(court, CourtPicture)
    assert all(-2.6 < arrow.to_y_m <= -2.1 for arrow in court.arrows)
    assert _drawn("my drop was high", from_net_m=4.4) is None


@pytest.mark.parametrize(
    ("words", "facts", "low_m", "high_m"),
    [
        ("fifth ball at my feet", {}, 0.0, 2.14),
        ("fifth ball sits up", {}, 2.2, 6.71),
        ("fourth shot where", {}, 4.5, 6.71),
        ("fourth shot low at my feet", {}, 0.0, 2.14),
        ("fourth shot where", {"theirs": Depth.COMING_IN}, 3.5, 5.0),
    ],
)
def test_the_fourth_and_the_fifth_are_drawn_where_the_call_says(
    words: str, facts: dict[str, Any], low_m: float, high_m: float
) -> None:
    """The kitchen is 7 ft deep, the half 22 ft (2025 edition, 2.A)."""
    court = _drawn(words, **facts)
    assert isinstance(court, CourtPicture)
    (arrow,) = court.arrows
    assert low_m < arrow.to_y_m <= high_m
    assert abs(arrow.to_x_m) <= 3.05
