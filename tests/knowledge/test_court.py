"""The court: sizes, the net along its length, lanes, and whose right is where.

Sizes: national rulebook, 2025 edition, 2.A to 2.C.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.court import (
    HALF_LENGTH_M,
    HALF_WIDTH_M,
    KITCHEN_DEPTH_M,
    POST_FROM_CENTRE_M,
    Lane,
    Point,
    Zone,
    at_baseline,
    at_kitchen_line,
    is_in,
    is_in_kitchen,
    lane_ends,
    lane_in_court_m,
    net_crossing_x_m,
    net_height_m,
    room_m,
    x_of_side_m,
    zone_of,
)
from knowledge.vocabulary import Side

FOOT_M = 0.3048
ACROSS = st.floats(-HALF_WIDTH_M, HALF_WIDTH_M)
OUR_LENGTH = st.floats(-HALF_LENGTH_M, -0.1)
THEIR_LENGTH = st.floats(0.1, HALF_LENGTH_M)


def test_sizes() -> None:
    """2.A: 20 by 44 ft; 2.B: kitchen 7 ft on each side."""
    assert pytest.approx(20 * FOOT_M) == 2 * HALF_WIDTH_M
    assert pytest.approx(44 * FOOT_M) == 2 * HALF_LENGTH_M
    assert pytest.approx(2.13, abs=0.005) == KITCHEN_DEPTH_M


def test_net_heights() -> None:
    """2.C: 36 in at the sidelines, 34 in at the centre."""
    assert net_height_m(0) == pytest.approx(34 * 0.0254)
    assert net_height_m(HALF_WIDTH_M) == net_height_m(-HALF_WIDTH_M)
    assert net_height_m(HALF_WIDTH_M) == pytest.approx(36 * 0.0254)
    assert net_height_m(HALF_WIDTH_M + 0.2) == net_height_m(HALF_WIDTH_M)


@given(ACROSS, ACROSS)
def test_the_net_only_rises_towards_the_sidelines(one: float, other: float) -> None:
    low, high = sorted((abs(one), abs(other)))
    assert net_height_m(low) <= net_height_m(high)


@given(ACROSS, OUR_LENGTH, ACROSS, THEIR_LENGTH)
def test_a_lane_crosses_the_net_on_the_straight_line(
    x0: float, y0: float, x1: float, y1: float
) -> None:
    crossing = net_crossing_x_m(Point(x_m=x0, y_m=y0), Point(x_m=x1, y_m=y1))
    share = -y0 / (y1 - y0)
    assert crossing == pytest.approx(x0 + share * (x1 - x0), abs=1e-9)


def test_a_lane_on_one_side_crosses_nothing() -> None:
    with pytest.raises(ValueError, match="one half to the other"):
        net_crossing_x_m(Point(x_m=0, y_m=-1), Point(x_m=0, y_m=-2))


@given(ACROSS, OUR_LENGTH, ACROSS, THEIR_LENGTH)
def test_room_ends_on_a_line(x0: float, y0: float, x1: float, y1: float) -> None:
    """Walking the lane on by its room leads to the edge of the court and no further."""
    start, target = Point(x_m=x0, y_m=y0), Point(x_m=x1, y_m=y1)
    room, length = room_m(start, target), start.distance_m(target)
    end_x = x1 + room * (x1 - x0) / length
    end_y = y1 + room * (y1 - y0) / length
    off_line = min(abs(abs(end_x) - HALF_WIDTH_M), abs(abs(end_y) - HALF_LENGTH_M))
    assert off_line == pytest.approx(0, abs=1e-6)
    assert max(abs(end_x) - HALF_WIDTH_M, abs(end_y) - HALF_LENGTH_M) <= 1e-6


def test_no_room_out_of_court() -> None:
    assert room_m(Point(x_m=0, y_m=-2), Point(x_m=3.2, y_m=2)) == 0


def test_across_is_a_longer_lane_over_a_lower_net_than_down_the_line() -> None:
    """Common practice, no source: from sideline to sideline at the kitchen line."""
    start = Point(x_m=2.6, y_m=-2.3)
    line, cross = Point(x_m=2.6, y_m=1.5), Point(x_m=-2.6, y_m=1.5)
    over_line = net_height_m(net_crossing_x_m(start, line))
    assert net_height_m(net_crossing_x_m(start, cross)) < over_line
    in_court = {
        name: lane_in_court_m(start, target) for name, target in (("line", line), ("x", cross))
    }
    assert in_court["line"] == pytest.approx(HALF_LENGTH_M)
    assert start.distance_m(cross) > start.distance_m(line)


@pytest.mark.parametrize("side", Side)
def test_facing_pairs_see_the_same_side_mirrored(side: Side) -> None:
    """Our right faces their left along the line, and their right diagonally."""
    assert x_of_side_m(side, ours=True) == -x_of_side_m(side, ours=False)
    assert x_of_side_m(Side.RIGHT, ours=True) > 0


@pytest.mark.parametrize("ours", [True, False])
@pytest.mark.parametrize("side", Side)
def test_standing_places(side: Side, ours: bool) -> None:
    line, base = at_kitchen_line(side, ours=ours), at_baseline(side, ours=ours)
    assert not is_in_kitchen(line)
    assert is_in(line)
    assert not is_in(base)
    assert line.x_m == base.x_m
    assert (line.y_m < 0) is (base.y_m < 0) is ours


def test_lines_are_in_and_the_kitchen_line_is_kitchen() -> None:
    """2.A, 2.B: lines belong to the court; non-volley-zone lines to the zone."""
    assert is_in(Point(x_m=HALF_WIDTH_M, y_m=-HALF_LENGTH_M))
    assert not is_in(Point(x_m=math.nextafter(HALF_WIDTH_M, 9), y_m=0))
    assert is_in_kitchen(Point(x_m=0, y_m=KITCHEN_DEPTH_M))
    assert not is_in_kitchen(Point(x_m=0, y_m=KITCHEN_DEPTH_M + 0.01))


def test_posts() -> None:
    """2.C: posts 22 ft apart."""
    assert pytest.approx(22 * FOOT_M) == 2 * POST_FROM_CENTRE_M


@given(st.floats(-4, 4), st.floats(-8, 8))
def test_zones_agree_with_the_lines(x: float, y: float) -> None:
    """2.A, 2.B; a mid-court from 7 to 15 ft is common practice, no source. Both halves alike."""
    place = Point(x_m=x, y_m=y)
    zone = zone_of(place)
    assert (zone is Zone.OUT) is not is_in(place)
    assert (zone is Zone.KITCHEN) is (is_in(place) and is_in_kitchen(place))
    assert zone is zone_of(Point(x_m=-x, y_m=-y))


@pytest.mark.parametrize(
    ("feet", "zone"),
    [(7, Zone.KITCHEN), (10, Zone.MID_COURT), (15.5, Zone.BACK_COURT), (22.1, Zone.OUT)],
)
def test_zones_by_depth(feet: float, zone: Zone) -> None:
    assert zone_of(Point(x_m=1.0, y_m=-feet * FOOT_M)) is zone


def test_lanes_lengthen_and_the_net_lowers_from_line_to_cross() -> None:
    """Common practice, no source: down the line the highest part of the net and the least court."""
    ends = [lane_ends(lane, from_net_m=2.3, depth_m=1.5) for lane in Lane]
    lengths = [start.distance_m(target) for start, target in ends]
    nets = [net_height_m(net_crossing_x_m(start, target)) for start, target in ends]
    assert lengths == sorted(lengths)
    assert nets[0] > max(nets[1:])
    assert all(is_in(target) for _, target in ends)
