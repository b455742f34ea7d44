"""Where to return: the third, the crash, the stack, the ball, our own feet, and what isn't known.

Sizes and judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from aim_cases import Case, cases, situation_of
from court_pictures import court_of
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import match, often_noted, player
from scipy.integrate import quad
from scipy.optimize import brentq

from knowledge.advice import CALL_LIMIT, Advice, Confidence, MatchFact
from knowledge.court import HALF_LENGTH_M, METRES_PER_FOOT
from knowledge.planning import cue
from knowledge.planning.line import Phase
from knowledge.planning.plan import plan_lines
from knowledge.situation import Asked, Situation
from knowledge.tactics import advise
from knowledge.tactics.aim_words import REASON_LIMIT
from knowledge.tactics.return_answer import answer_return
from knowledge.tactics.return_effects import Style
from knowledge.tactics.return_time import HARD_FLIGHT_S, HIGH_FLIGHT_S, ground_bought_ft, run_m
from knowledge.vocabulary import TRAITS, BallQuality, Side, Topic, TraitKind

CASES = cases("aim_return.toml")


def _said(advice: Advice) -> str:
    lines = [advice.call, *(one.text for one in advice.reasons), advice.number, advice.unless]
    return "\n".join(line for line in lines if line)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    situation = situation_of(case, Topic.AIM_RETURN)
    advice, answer = advise(situation), answer_return(situation)
    assert answer.option == case.get("option", answer.option)
    assert answer.option != case.get("not_option")
    assert answer.style is Style(case.get("style", answer.style))
    assert advice.call == case.get("call", advice.call)
    said = _said(advice)
    assert [text for text in case.get("says", ()) if text not in said] == []
    assert not any(text in said for text in case.get("never", ()))
    if "general" in case:
        assert (advice.confidence is Confidence.GENERAL_RULE) is case["general"]


def test_there_are_enough_cases() -> None:
    assert len(CASES) >= 25


def test_a_run_is_the_integral_of_its_speed() -> None:
    """Against scipy's quadrature of V (1 - exp(-t/T))."""
    from math import exp

    for time_s in (0.5, 0.775, 1.265, 3.0):
        area, _ = quad(lambda t: 8.591 * (1 - exp(-t / 0.811)), 0, time_s)
        assert run_m(time_s, top_speed_mps=8.591, rise_time_s=0.811) == pytest.approx(area)


@pytest.mark.parametrize(("metres", "split_s"), [(5, 1.158), (10, 1.893), (20, 3.149), (40, 5.444)])
def test_the_published_sprinter_runs_the_published_splits(metres: float, split_s: float) -> None:
    """Example of a sprint-modelling package: Vmax 8.591 m/s, tau 0.811 s (facts, section 5)."""
    found = brentq(lambda t: run_m(t, top_speed_mps=8.591, rise_time_s=0.811) - metres, 0.1, 10)
    assert found == pytest.approx(split_s, abs=0.06)


def test_height_buys_what_the_review_computed() -> None:
    """Coaching review, 2.4: 1.24 to 1.29 s against 0.76 to 0.79 s, half a second, 5 to 7 ft."""
    assert 1.24 <= HIGH_FLIGHT_S <= 1.29
    assert 0.76 <= HARD_FLIGHT_S <= 0.79
    assert pytest.approx(0.5, abs=0.02) == HIGH_FLIGHT_S - HARD_FLIGHT_S
    assert 5 <= ground_bought_ft(None) <= 7


def test_the_runner_reaches_the_line_when_the_review_says() -> None:
    """About 1.7 s to the line (the review's estimate): 15 ft and the start behind the baseline."""
    assert run_m(1.7) == pytest.approx(15 * METRES_PER_FOOT + 0.8, abs=0.3)


def test_a_slow_runner_gains_less_ground_from_the_same_time() -> None:
    slow = player(1, "Mira", None, *often_noted("forward_speed weakness"))
    assert ground_bought_ft(slow) < ground_bought_ft(None)


def test_plan_cue_and_topic_return_at_the_same_one() -> None:
    for case in CASES:
        situation = situation_of(case, Topic.AIM_RETURN)
        if set(case) & {"ball", "words", "from", "asker"} or len(situation.theirs) < 2:
            continue
        answer = answer_return(replace(situation, game=None))
        lines = plan_lines(replace(situation, topic=Topic.GAME_PLAN))
        found = next(line for line in lines if line.phase is Phase.RETURN)
        if answer.target is not None:
            assert answer.target.name in found.do
        else:
            assert not found.is_specific
        asked = replace(situation, topic=Topic.CUE, asked=Asked(we_serve=False))
        said = cue.advise(asked).call
        if answer.target is not None and found.is_specific and found.who is None:
            assert answer.target.name in said


def test_the_picture_goes_deep_from_the_court_asked_about() -> None:
    theirs = (
        player(3, "Okafor", Side.RIGHT),
        player(4, "Lindqvist", Side.LEFT, *often_noted("third_shot_drop weakness")),
    )
    situation = match(Topic.AIM_RETURN, *theirs)
    asked = replace(situation, asked=Asked(striker_side=Side.LEFT))
    arrow = court_of(advise(asked)).arrows[0]
    assert arrow.from_x_m < 0 < arrow.to_x_m  # from our left, across, to their left on our right
    assert HALF_LENGTH_M - 5 * METRES_PER_FOOT <= arrow.to_y_m <= HALF_LENGTH_M
    assert advise(situation).picture is None


def test_the_ball_is_offered_until_it_is_said() -> None:
    situation = match(Topic.AIM_RETURN, player(3, "Okafor", None), player(4, "Lindqvist", None))
    offered = {
        choice.value for choice in advise(situation).choices if choice.fact == MatchFact.BALL
    }
    assert offered == {BallQuality.STRETCHED, BallQuality.EASY}
    said = replace(situation, asked=Asked(ball=BallQuality.EASY))
    assert not any(choice.fact == MatchFact.BALL for choice in advise(said).choices)


def test_nothing_noted_offers_what_to_look_for_and_the_hands() -> None:
    situation = match(Topic.AIM_RETURN, player(3, "Okafor", None), player(4, "Lindqvist", None))
    choices = advise(situation).choices
    assert any(choice.topic is Topic.PROBE for choice in choices)
    assert {choice.about for choice in choices if choice.fact == "hand"} == {3, 4}


def test_a_mix_against_a_stack_or_a_poacher_and_not_else() -> None:
    weak = often_noted("third_shot_drop weakness", 1)
    plain = match(Topic.AIM_RETURN, player(3, "Okafor", None, *weak), player(4, "Lindqvist", None))
    poacher = player(4, "Lindqvist", None, *often_noted("poaching often", 2))
    assert advise(plain).mix is None
    mix = advise(replace(plain, theirs=(plain.theirs[0], poacher))).mix
    assert mix is not None
    assert {share.option for share in mix.shares} == {"middle", "at:3", "at:4"}
    recent = replace(
        plain,
        theirs=(plain.theirs[0], poacher),
        recent_aims={Topic.AIM_RETURN: ("at:3",) * 10},
        aims_won={Topic.AIM_RETURN: (None,) * 10},
    )
    logged = advise(recent).mix
    assert logged is not None
    assert logged.logged_aims == 10
    safe = replace(recent, asked=Asked(ball=BallQuality.STRETCHED))
    assert advise(safe).mix is None


_CLAIMS = [
    f"{trait} {value}"
    for trait, row in TRAITS.items()
    if row.kind is not TraitKind.FACT
    for value in row.values
]


@settings(max_examples=40)
@given(
    names=st.tuples(*[st.sampled_from(["Ruiz", "Ana Ruiz-Peña", "Nguyen-Brandt"])] * 2),
    claims=st.tuples(*[st.lists(st.sampled_from(_CLAIMS), max_size=6)] * 4),
    court=st.sampled_from([Side.LEFT, Side.RIGHT, None]),
    ball=st.sampled_from([*BallQuality, None]),
)
def test_any_notes_fit_a_phone_and_no_weak_return_aims(
    names: tuple[str, str],
    claims: tuple[list[str], ...],
    court: Side | None,
    ball: BallQuality | None,
) -> None:
    situation = Situation(
        topic=Topic.AIM_RETURN,
        ours=tuple(player(1 + n, ("Mira", "Tom")[n], None, *claims[n]) for n in (0, 1)),
        theirs=tuple(
            player(3 + n, names[n], (Side.LEFT, Side.RIGHT)[n], *claims[2 + n]) for n in (0, 1)
        ),
        asked=Asked(striker_side=court, ball=ball),
    )
    advice = advise(situation)
    assert len(advice.call) <= CALL_LIMIT
    assert all(len(reason.text) <= REASON_LIMIT for reason in advice.reasons)
    if all("return weakness" in each and "return strength" not in each for each in claims[:2]):
        assert answer_return(situation).target is None
