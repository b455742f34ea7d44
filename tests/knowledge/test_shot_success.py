"""A shot's success and what it is worth: the formula of facts section 3, doubt, notes, monotone.

Outside checks: the formula w + (1 - w - e) v in its textbook form (Walker, Wooders and Amir 2011 as
facts section 3 gives it), scipy's logit.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from noted_players import often_noted, player
from scipy.special import logit

from knowledge.effects import OptionId
from knowledge.flight import FORMS, Shot
from knowledge.tactics.shot_success import (
    SCATTER_DOUBT,
    Ball,
    Leaves,
    OurScatter,
    of_ten,
    our_scatter,
    points_over,
    success_effect,
    success_points,
)
from knowledge.vocabulary import Level, Trait

DROP = Ball(shot=Shot.DROP, height_m=0.5, from_net_m=6.7)
LEAVES = Leaves(meant=0.5, loose=0.3)


def test_worth_is_the_formula_with_winners_errors_and_the_rest() -> None:
    """w = 0: what is in play leaves v on average, and (1 - e) v is what the formula says."""
    aim = DROP.aimed()
    errs = 1 - aim.legal
    v = (aim.meant * 0.5 + (aim.legal - aim.meant) * 0.3) / aim.legal
    assert LEAVES.after(aim) == pytest.approx((1 - errs) * v)


def test_points_are_log_odds_of_four_hundredths() -> None:
    assert points_over(0.5, 0.44) == pytest.approx((logit(0.5) - logit(0.44)) / 0.04)
    assert points_over(0.44, 0.44) == 0


def test_a_strength_scatters_less_and_unknown_levels_count_as_four_and_a_half() -> None:
    strong = player(1, "Mira", None, *often_noted("third_shot_drop strength", 3))
    plain = player(2, "Tom", None)
    trait = Trait.THIRD_SHOT_DROP
    assert our_scatter(strong, trait).factor < our_scatter(plain, trait).factor
    assert our_scatter(plain, trait).factor == our_scatter(None, trait).factor == 1.0
    assert our_scatter(plain, trait, Level.L3_5).factor > 1.0
    assert our_scatter(plain, trait).log_sd > our_scatter(None, trait).log_sd == SCATTER_DOUBT


def test_notes_go_with_the_effect_and_do_not_count_twice() -> None:
    strong = player(1, "Mira", None, *often_noted("third_shot_drop strength", 3))
    scatter = our_scatter(strong, Trait.THIRD_SHOT_DROP)
    points = success_points(lambda f: LEAVES.after(DROP.aimed(f)), scatter, level=0.44)
    effect = success_effect(OptionId("drop"), points, scatter, because="x", one=strong)
    assert effect.scale is not None
    assert effect.scale.level == 1.0
    assert len(effect.scale.estimate.evidence) == 3
    bare = success_effect(OptionId("drop"), points, OurScatter(), because="x")
    assert bare.scale is None


def test_more_doubt_about_the_scatter_is_more_doubt_in_points() -> None:
    def sd(log_sd: float) -> float:
        scatter = OurScatter(log_sd=log_sd)
        return success_points(lambda f: LEAVES.after(DROP.aimed(f)), scatter, level=0.44).sd

    assert 0 < sd(0.1) < sd(0.2) < sd(0.3)


@settings(max_examples=60)
@given(
    shot=st.sampled_from(Shot),
    height=st.floats(0.2, 1.3),
    away=st.floats(0.8, 8.0),
    factors=st.tuples(st.floats(0.6, 2.2), st.floats(0.6, 2.2)),
)
def test_more_scatter_is_never_more_success(
    shot: Shot, height: float, away: float, factors: tuple[float, float]
) -> None:
    """In play and as meant together, which is what an aim is chosen by; tables round by 1/2000.

    Where most aims fail, one that scatters hits by chance what a steady one misses: so it was in
    308 of 60,000 draws, all of them with less than two in ten in play.
    """
    tight, wild = sorted(factors)
    ball = Ball(shot=shot, height_m=height, from_net_m=away, lane=FORMS[shot].lanes[0])
    better, worse = ball.aimed(tight), ball.aimed(wild)
    assume(better.legal >= 0.3)
    assert worse.legal + worse.meant <= better.legal + better.meant + 2e-3


def test_of_ten_is_never_none_and_never_all() -> None:
    assert [of_ten(chance) for chance in (0.0, 0.04, 0.55, 0.94, 1.0)] == [1, 1, 6, 9, 9]
    assert of_ten(math.nextafter(0.65, 1)) == 7
