"""Where to put an overhead: by balance, depth, their places and the people.

Sizes and judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import nashpy
import numpy as np
import pytest
from aim_cases import Case, cases
from court_pictures import court_of
from high_ball_cases import check, everything_said, high_ball
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import MIRA, TOM, match, player

from knowledge.advice import CALL_LIMIT, Confidence
from knowledge.ball_facts import Depth, Footing
from knowledge.court import METRES_PER_FOOT
from knowledge.mixing.guessing import guessables, payoffs
from knowledge.normal import logit
from knowledge.situation import Situation
from knowledge.tactics import advise
from knowledge.tactics.aim_words import REASON_LIMIT
from knowledge.tactics.overhead_answer import answer_overhead
from knowledge.tactics.overhead_outcomes import Contact, Outcome, Spot, outcome
from knowledge.vocabulary import LOGIT_PER_POINT, Side, Topic

CASES = cases("aim_overhead.toml")


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    check(case, Topic.AIM_OVERHEAD)
    best = answer_overhead(high_ball(case, Topic.AIM_OVERHEAD)).best.spot
    assert best in case.get("spot", [best])


def test_there_are_enough_cases() -> None:
    assert len(CASES) >= 25


def test_a_shot_is_worth_its_wins_and_what_goes_on() -> None:
    """Facts section 3: w + (1 - w - e) v. By hand: 0.3 + 0.5 x 0.6 = 0.6."""
    assert Outcome(wins=0.3, errs=0.2, goes_on=0.6).worth == pytest.approx(0.6)


def _points_over_middle(footing: Footing, feet: float) -> float:
    contact = Contact(footing=footing, from_net_m=feet * METRES_PER_FOOT, height_m=2.2)
    angle, middle = (outcome(spot, contact, None).worth for spot in (Spot.ANGLE, Spot.MIDDLE))
    return (logit(angle) - logit(middle)) / LOGIT_PER_POINT


@pytest.mark.parametrize("feet", [12, 14, 16])
def test_moving_back_the_middle_gains_what_the_review_says(feet: float) -> None:
    """Common practice, no source: deep middle or feet against the angle +7 with a doubt of 4."""
    assert -_points_over_middle(Footing.BACKWARD, feet) == pytest.approx(7, abs=4)


@pytest.mark.parametrize("feet", [7, 8, 9])
def test_in_balance_inside_ten_feet_the_angle_gains_what_the_review_says(feet: float) -> None:
    """Row 21: +4, with the row's doubt of 4."""
    assert _points_over_middle(Footing.STILL, feet) == pytest.approx(4, abs=4)
    assert _points_over_middle(Footing.STILL, feet) > 0


@given(
    footing=st.sampled_from(Footing),
    feet=st.floats(5, 24),
    high=st.floats(1.6, 2.6),
    spot=st.sampled_from(Spot),
    theirs=st.sampled_from([None, *Depth]),
)
@settings(max_examples=80, deadline=None)
def test_chances_are_chances(
    footing: Footing, feet: float, high: float, spot: Spot, theirs: Depth | None
) -> None:
    contact = Contact(footing=footing, from_net_m=feet * METRES_PER_FOOT, height_m=high)
    one = outcome(spot, contact, theirs)
    assert 0 <= one.wins <= 1
    assert 0 <= one.errs <= 1
    assert one.wins + one.errs <= 1 + 1e-9
    assert one.errs <= one.worth + one.errs <= 1 + 1e-9


@pytest.mark.parametrize("spot", [Spot.MIDDLE, Spot.FEET, Spot.ANGLE])
def test_balance_is_never_worth_less(spot: Spot) -> None:
    worths = [
        outcome(spot, Contact(footing=one, from_net_m=3.5, height_m=2.2), None).worth
        for one in (Footing.STILL, Footing.SIDEWAYS, Footing.BACKWARD)
    ]
    assert worths == sorted(worths, reverse=True)


def _hale() -> Situation:
    hale, brandt = player(5, "Hale", Side.LEFT), player(6, "Brandt", Side.RIGHT)
    return match(Topic.AIM_OVERHEAD, hale, brandt, ours=(MIRA, TOM))


def test_no_gain_stands_beside_a_toss_up() -> None:
    """At whom is the smaller question: it was called close while the shot was worth a lot."""
    found = [advise(high_ball(case, Topic.AIM_OVERHEAD)) for case in CASES]
    assert not [one for one in found if one.number and one.confidence is Confidence.TOSS_UP]
    assert [one for one in found if one.number and one.confidence is Confidence.LEAN]


def test_lines_fit_a_phone() -> None:
    for case in CASES:
        advice = advise(high_ball(case, Topic.AIM_OVERHEAD))
        assert len(advice.call) <= CALL_LIMIT
        assert all(len(reason.text) <= REASON_LIMIT for reason in advice.reasons)
        assert len(advice.caution or "") <= REASON_LIMIT
        assert " head" not in everything_said(advice).replace("never at the head", "")


def test_what_decides_is_in_the_numbers() -> None:
    advice = advise(_hale())
    wins, errs = advice.numbers["middle_wins"], advice.numbers["middle_misses"]
    worth = wins + (1 - wins - errs) * advice.numbers["middle_goes_on"]
    assert advice.numbers["middle_worth"] == pytest.approx(worth)


def test_the_mix_leads_by_how_much_it_is_better_and_gives_a_best_guesser_little() -> None:
    """The value of the game by nashpy's vertex enumeration: whoever only learns our shares holds us
    to no less, and whoever guesses best gets at most an eighth of a guess more."""
    advice = advise(_hale())
    assert advice.mix is not None
    answer = answer_overhead(_hale())
    cost = {answer.aim(one.option).id: 0.06 for one in advice.mix.shares}
    matrix = payoffs(guessables(answer.ranking, cost, {}))
    game = nashpy.Game(matrix)
    ours, theirs = next(iter(game.vertex_enumeration()))
    value = game[ours, theirs][0]
    assert advice.mix.value >= value - 1e-6
    shares = {one.option: one.share for one in advice.mix.shares}
    by_row = np.array([shares[one.option] for one in guessables(answer.ranking, cost, {})])
    assert value - (by_row @ np.array(matrix)).min() <= 0.06 / 8


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_the_picture_shows_our_contact_and_an_aim_in_their_court(case: Case) -> None:
    situation = high_ball(case, Topic.AIM_OVERHEAD)
    drawn = court_of(advise(situation))
    for arrow in drawn.arrows:
        assert arrow.from_y_m < 0 < arrow.to_y_m <= 6.71
        assert abs(arrow.to_x_m) <= 3.05
    assert sum(marker.ours for marker in drawn.markers) == 1
    assert drawn.alt
