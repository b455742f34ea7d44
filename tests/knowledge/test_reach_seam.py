"""The seam between two partners, and the places that each covers."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.court import HALF_LENGTH_M, HALF_WIDTH_M, METRES_PER_FOOT, Point
from knowledge.reach import Mover, Placed, Seam, Shot, cover, mover, seam
from knowledge.reach.covering import KEPT_SEAMS, _kept_seam, rounded
from knowledge.vocabulary import Hand, Side

OUT_M = 1.2
BACK_M = -2.4
DRIVE = Shot(start=Point(x_m=0.0, y_m=6.0), speed_mps=18.0, height_m=0.9)
DINK = Shot(start=Point(x_m=0.0, y_m=2.3), speed_mps=5.2, height_m=0.4, volleyed=False)
FLIP = {Hand.LEFT: Hand.RIGHT, Hand.RIGHT: Hand.LEFT, Hand.AMBIDEXTROUS: Hand.AMBIDEXTROUS}

hands = st.sampled_from([None, *Hand])
levels = st.floats(-1, 1)


def pair(left: Mover, right: Mover, *, right_x_m: float = OUT_M) -> tuple[Placed, Placed]:
    return (
        Placed(mover=left, at=Point(x_m=-OUT_M, y_m=BACK_M)),
        Placed(mover=right, at=Point(x_m=right_x_m, y_m=BACK_M)),
    )


def flipped(one: Mover) -> Mover:
    return one if one.hand is None else replace(one, hand=FLIP[one.hand])


@settings(max_examples=25, deadline=None)
@given(levels, levels, levels, st.sampled_from([DRIVE, DINK]))
def test_the_seam_of_equal_partners_lies_in_the_middle(
    foot: float, forward: float, reach: float, shot: Shot
) -> None:
    one = mover(foot_speed=foot, forward_speed=forward, reach=reach)
    assert seam(*pair(one, one), shot).x_m == pytest.approx([0.0] * 7, abs=0.01)


@settings(max_examples=25, deadline=None)
@given(levels, levels, hands, hands)
def test_mirroring_the_pair_mirrors_the_seam(
    one: float, two: float, left: Hand | None, right: Hand | None
) -> None:
    first, second = mover(foot_speed=one, hand=left), mover(foot_speed=two, hand=right)
    here = seam(*pair(first, second), DRIVE)
    there = seam(*pair(flipped(second), flipped(first)), DRIVE)
    assert here.x_m == pytest.approx([-x_m for x_m in there.x_m], abs=0.03)


@settings(max_examples=25, deadline=None)
@given(levels, levels)
def test_the_quicker_partner_owns_more(one: float, two: float) -> None:
    slow, quick = sorted((one, two))
    found = seam(*pair(mover(foot_speed=quick), mover(foot_speed=slow)), DRIVE)
    assert min(found.x_m) >= -0.02


def test_pulled_wide_moves_the_seam_by_half_the_step() -> None:
    """Two equal runners are equally early halfway between them (geometry)."""
    one = mover()
    usual = seam(*pair(one, one), DRIVE)
    wide = seam(*pair(one, one, right_x_m=OUT_M + 2.0), DRIVE)
    assert wide.moved_ft(usual) == pytest.approx(1.0 / METRES_PER_FOOT, abs=0.1)
    assert usual.moved_ft(wide) == -wide.moved_ft(usual)


def test_a_left_hander_brings_a_forehand_to_the_middle() -> None:
    """Two right-handers: the left player's forehand meets a backhand, the seam lies to the right.
    A left-hander on the right has a forehand there too; on the left, both have backhands."""
    right, left = mover(hand=Hand.RIGHT), mover(hand=Hand.LEFT)
    both_right, forehands, backhands, both_left = (
        seam(*pair(*hands), DRIVE).mean_x_m
        for hands in ((right, right), (right, left), (left, right), (left, left))
    )
    assert both_right > 0.01
    assert forehands == pytest.approx(0, abs=0.005)
    assert backhands == pytest.approx(0, abs=0.005)
    assert both_left == pytest.approx(-both_right, abs=0.005)


def test_stacking_takes_the_seam_along() -> None:
    """Who swaps sides takes speed and hand with them."""
    quick, slow = mover(foot_speed=1, hand=Hand.RIGHT), mover(foot_speed=-1, hand=Hand.LEFT)
    straight = seam(*pair(quick, slow), DINK)
    stacked = seam(*pair(slow, quick), DINK)
    assert straight.mean_x_m > 0.1
    assert stacked.mean_x_m < -0.1


def test_two_hands_give_up_ground_on_their_side() -> None:
    right, two = mover(hand=Hand.RIGHT), mover(hand=Hand.RIGHT, two_handed=True)
    assert seam(*pair(right, two), DRIVE).x_at_m(-2.4) > seam(*pair(right, right), DRIVE).x_at_m(
        -2.4
    )


def test_a_seam_is_read_between_its_depths() -> None:
    one = Seam(y_m=(-2.0, -4.0, -6.0), x_m=(0.0, 1.0, 0.5))
    assert [one.x_at_m(y_m) for y_m in (-1.0, -2.0, -3.0, -5.0, -6.5)] == [0.0, 0.0, 0.5, 0.75, 0.5]


def test_each_covers_their_own_half_of_a_fast_ball() -> None:
    left, right = pair(mover(), mover())
    found = cover(left, right, DRIVE)
    ours, theirs = found.in_time(Side.LEFT), found.in_time(Side.RIGHT)
    assert ours.shape == theirs.shape == (found.y_m.size, found.x_m.size)
    at_line = int(np.abs(found.y_m - BACK_M).argmin())
    covered = found.x_m[ours[at_line]]
    assert covered.min() < -OUT_M < covered.max() < OUT_M
    assert np.array_equal(ours[:, ::-1], theirs)
    assert found.x_m[0] == -HALF_WIDTH_M
    assert -HALF_LENGTH_M <= found.y_m.min() < found.y_m.max() < 0


def test_slow_balls_and_long_arms_leave_fewer_holes() -> None:
    usual = cover(*pair(mover(), mover()), DRIVE).share_covered
    long = cover(*pair(mover(reach=1), mover(reach=1)), DRIVE).share_covered
    slow = cover(*pair(mover(), mover()), DINK).share_covered
    assert 0 < usual < long < 1
    assert usual < slow


def test_near_enough_players_share_a_kept_seam_and_few_are_kept() -> None:
    one = Placed(mover=mover(foot_speed=0.501), at=Point(x_m=-1.201, y_m=-2.4))
    other = Placed(mover=mover(foot_speed=0.502), at=Point(x_m=-1.199, y_m=-2.4))
    assert rounded(one) == rounded(other)
    assert rounded(rounded(one)) == rounded(one)
    right = Placed(mover=mover(), at=Point(x_m=1.2, y_m=-2.4))
    assert seam(one, right, DRIVE) is seam(other, right, DRIVE)
    assert _kept_seam.cache_info().maxsize == KEPT_SEAMS
