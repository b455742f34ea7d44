"""Who gets to a ball: the definition by a second method, and what must hold of any player."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from plain_paths import PlainPath, plain_path
from scipy.optimize import brentq
from scouted import Noted, player

from knowledge.court import KITCHEN_DEPTH_M, Point
from knowledge.flight import Launch, path
from knowledge.reach import (
    Mover,
    Placed,
    chance_in_time,
    meeting,
    move_time_s,
    mover,
    mover_of,
    points_in_time,
    reaction_s,
    slack_s,
)
from knowledge.reach.body import BEHIND_M
from knowledge.reach.meeting import LONGEST_S, NEVER_S
from knowledge.vocabulary import Hand, Trait, Value, Wing

HOME = Point(x_m=1.2, y_m=-2.5)
FLIP = {Hand.LEFT: Hand.RIGHT, Hand.RIGHT: Hand.LEFT, Hand.AMBIDEXTROUS: Hand.AMBIDEXTROUS}

levels = st.floats(-1, 1)
places = st.tuples(st.floats(-3, 3), st.floats(-6.5, -1.0))
hands = st.sampled_from([None, *Hand])


def ball(x_m: float, y_m: float, *, speed_mps: float = 9.0, height_m: float = 0.8) -> PlainPath:
    """One ball from their right court over a place of ours."""
    return plain_path(
        Point(x_m=-1.5, y_m=2.4),
        (np.asarray(x_m), np.asarray(y_m)),
        contact_m=0.6,
        speed_mps=speed_mps,
        height_m=height_m,
        lasts_s=1.8,
    )


def mirrored(path: PlainPath) -> PlainPath:
    return PlainPath(times_s=path.times_s, points=path.points * np.asarray([-1.0, 1.0, 1.0]))


def move_s(
    one: Placed, x_m: float, y_m: float, height_m: float, *, volleyed: bool = False
) -> float:
    found = move_time_s(
        one,
        np.asarray(x_m),
        np.asarray(y_m),
        np.asarray(height_m),
        volleyed=np.asarray(volleyed),
    )
    return float(found)


def by_root(one: Placed, x_m: float, y_m: float, height_m: float) -> float:
    """The same by scipy's brentq on the ellipse of arm and feet, written down again."""
    body, feet = one.mover.body, one.mover.feet
    aside, ahead = x_m - one.at.x_m, y_m - one.at.y_m
    off = max(0.0, height_m - body.shoulder_m, body.low_shoulder_m - height_m) / body.arm_m
    left = float(np.sqrt(1 - off**2))
    side = float(one.mover.side_reach_m(np.asarray(aside)))
    deep = body.arm_m if ahead >= 0 else BEHIND_M

    def beyond(time: float) -> float:
        moment = np.asarray(time)
        out = 0.5 * 45.0 * time**2
        along = float(feet.ahead_m(moment) if ahead >= 0 else feet.back_m(moment))
        across = left * min(out, side) + float(feet.aside_m(moment))
        return (aside / across) ** 2 + (ahead / (left * min(out, deep) + along)) ** 2 - 1

    return float(brentq(beyond, 0.02, LONGEST_S))


@pytest.mark.parametrize(
    ("x_m", "y_m", "height_m"),
    [(0.0, -2.4, 1.0), (-1.5, -2.0, 0.5), (2.6, -5.0, 1.8), (1.3, -6.5, 0.3), (0.2, -1.2, 0.2)],
)
def test_the_time_to_a_place_is_the_root_of_its_definition(
    x_m: float, y_m: float, height_m: float
) -> None:
    """Second method: scipy.optimize.brentq, within 10 ms, the step between two moments."""
    one = Placed(mover=mover(hand=Hand.RIGHT), at=HOME)
    assert move_s(one, x_m, y_m, height_m) == pytest.approx(
        by_root(one, x_m, y_m, height_m), abs=0.010
    )


@settings(max_examples=60, deadline=None)
@given(places, hands, levels, levels, st.booleans())
def test_mirrored_player_and_ball_have_the_same_slack(
    place: tuple[float, float],
    hand: Hand | None,
    foot: float,
    reach: float,
    two_handed: bool,
) -> None:
    path = ball(*place)
    here = mover(foot_speed=foot, reach=reach, hand=hand, two_handed=two_handed)
    there = replace(here, hand=None if hand is None else FLIP[hand])
    other = Placed(mover=there, at=Point(x_m=-HOME.x_m, y_m=HOME.y_m))
    first = slack_s(path, Placed(mover=here, at=HOME))
    # a ball straight ahead is a forehand for either hand: its side has no mirror image
    if not np.isclose(path.points[:, 0], HOME.x_m).any():
        assert slack_s(mirrored(path), other) == pytest.approx(first, abs=1e-9)


def never_less(more: Mover, less: Mover, place: tuple[float, float]) -> None:
    path = ball(*place)
    quicker, slower = (slack_s(path, Placed(mover=one, at=HOME)) for one in (more, less))
    assert quicker >= slower - 1e-9


@settings(max_examples=60, deadline=None)
@given(places, levels, levels, hands)
def test_a_faster_player_never_has_less_slack(
    place: tuple[float, float], one: float, two: float, hand: Hand | None
) -> None:
    low, high = sorted((one, two))
    for fast, slow in (
        (mover(foot_speed=high, hand=hand), mover(foot_speed=low, hand=hand)),
        (mover(forward_speed=high, hand=hand), mover(forward_speed=low, hand=hand)),
    ):
        never_less(fast, slow, place)


@settings(max_examples=60, deadline=None)
@given(places, levels, levels)
def test_a_longer_reach_never_has_less_slack(
    place: tuple[float, float], one: float, two: float
) -> None:
    low, high = sorted((one, two))
    never_less(mover(reach=high), mover(reach=low), place)


@settings(max_examples=40, deadline=None)
@given(places, st.floats(0, 1), st.floats(0, 1))
def test_who_reads_more_or_has_split_has_more_time(
    place: tuple[float, float], one: float, two: float
) -> None:
    low, high = sorted((one, two))
    never_less(
        mover(reaction=reaction_s(anticipation=high)),
        mover(reaction=reaction_s(anticipation=low)),
        place,
    )
    never_less(mover(), mover(reaction=reaction_s(is_split=False)), place)


def test_a_forehand_reaches_further_than_a_backhand_and_that_than_two_hands() -> None:
    right = Placed(mover=mover(hand=Hand.RIGHT), at=HOME)
    two = Placed(mover=mover(hand=Hand.RIGHT, two_handed=True), at=HOME)
    aside = 1.6
    forehand = move_s(right, HOME.x_m + aside, HOME.y_m, 1.0)
    backhand = move_s(right, HOME.x_m - aside, HOME.y_m, 1.0)
    both = move_s(two, HOME.x_m - aside, HOME.y_m, 1.0)
    assert forehand < backhand < both
    assert move_s(two, HOME.x_m + aside, HOME.y_m, 1.0) == forehand


@pytest.mark.parametrize(
    ("hand", "x_m", "wing"),
    [
        (Hand.RIGHT, 2.0, Wing.FOREHAND),
        (Hand.RIGHT, 0.0, Wing.BACKHAND),
        (Hand.LEFT, 2.0, Wing.BACKHAND),
        (Hand.LEFT, 0.0, Wing.FOREHAND),
        (Hand.AMBIDEXTROUS, 0.0, Wing.FOREHAND),
        (None, 0.0, None),
    ],
)
def test_the_wing_a_ball_is_met_on(hand: Hand | None, x_m: float, wing: Wing | None) -> None:
    found = meeting(ball(x_m, -2.5, height_m=1.0), Placed(mover=mover(hand=hand), at=HOME))
    assert found.wing is wing
    assert found.slack_ms == pytest.approx(1000 * found.slack_s)


def test_a_ball_at_the_body_is_met_in_time_and_one_far_off_is_not() -> None:
    one = Placed(mover=mover(hand=Hand.RIGHT), at=HOME)
    near = meeting(ball(1.4, -2.5, height_m=1.0), one)
    assert near.slack_s > 0
    assert near.earliest_s is not None
    assert near.earliest_s <= near.at_s
    far = meeting(ball(-2.8, -2.5, speed_mps=16.0, height_m=1.0), one)
    assert far.slack_s < 0
    assert far.earliest_s is None


def test_no_ball_is_met_on_their_half_or_above_the_paddle() -> None:
    one = Placed(mover=mover(), at=HOME)
    times = np.linspace(0, 1, 20)
    theirs = np.stack((np.full(20, 1.2), np.linspace(2.4, 0.1, 20), np.full(20, 1.0)), axis=-1)
    assert slack_s(PlainPath(times_s=times, points=theirs), one) == NEVER_S
    high = np.stack((np.full(20, 1.2), np.linspace(-0.1, -6.0, 20), np.full(20, 2.6)), axis=-1)
    assert slack_s(PlainPath(times_s=times, points=high), one) == NEVER_S


def test_the_kitchen_is_entered_for_a_bounced_ball_alone() -> None:
    """2025 edition, 9.A: all volleys start outside the non-volley zone."""
    one = Placed(mover=mover(), at=HOME)
    short_y_m = -KITCHEN_DEPTH_M + 1.4
    assert move_s(one, 1.2, short_y_m, 0.8, volleyed=True) == LONGEST_S
    assert move_s(one, 1.2, short_y_m, 0.8) < 1.0
    leaning_y_m = -KITCHEN_DEPTH_M + 0.5
    assert move_s(one, 1.2, leaning_y_m, 0.8, volleyed=True) < 0.6


def test_a_ball_that_has_bounced_twice_is_gone() -> None:
    times = np.linspace(0, 2, 41)
    height = np.abs(np.sin(times * 5)) + 0.04
    points = np.stack((np.full(41, 1.2), np.linspace(2.0, -5.0, 41), height), axis=-1)
    far_back = Placed(mover=mover(), at=Point(x_m=1.2, y_m=-6.5))
    found = meeting(PlainPath(times_s=times, points=points), far_back)
    assert found.at_s < 2 * np.pi / 5 + 0.1  # |sin| touches the ground at each multiple of pi


def test_the_path_of_knowledge_flight_serves() -> None:
    """A drop between two players at the line bounces once and is met after it, or before."""
    dropped = path(
        Launch(x_m=0.0, y_m=6.0, z_m=0.6, speed_mps=11.5, elevation_deg=20, azimuth_deg=180)
    )
    found = meeting(dropped, Placed(mover=mover(hand=Hand.LEFT), at=HOME))
    assert found.slack_s > 0
    assert found.wing is Wing.FOREHAND
    in_kitchen = Placed(mover=mover(), at=Point(x_m=0.0, y_m=-1.0))
    bounced = meeting(dropped, in_kitchen)
    assert bounced.at_s > dropped.landing_s


def test_notes_move_the_mover() -> None:
    def of(*noted: Noted) -> Mover:
        return mover_of(player(1, "Mira", noted=noted).profile)

    usual = of()
    assert usual == mover()
    quick, slow = (of((Trait.FOOT_SPEED, value, 3)) for value in (Value.STRENGTH, Value.WEAKNESS))
    assert quick.feet.shuffle_mps > usual.feet.shuffle_mps > slow.feet.shuffle_mps
    forward = of((Trait.FORWARD_SPEED, Value.STRENGTH, 3))
    assert forward.feet.forward_mps > usual.feet.forward_mps
    assert forward.feet.shuffle_mps == usual.feet.shuffle_mps
    assert of((Trait.REACH, Value.STRENGTH, 3)).body.forehand_m > usual.body.forehand_m
    tall, short = (of((Trait.HEIGHT, value, 2)) for value in (Value.TALL, Value.SHORT))
    assert tall.body.overhead_m > usual.body.overhead_m > short.body.overhead_m
    assert of((Trait.HAND, Value.LEFT, 2)).hand is Hand.LEFT
    assert of((Trait.TWO_HANDED_BACKHAND, Value.YES, 2)).two_handed
    assert not of((Trait.NERVES, Value.STRENGTH, 3)).two_handed


def test_slack_to_chance_is_the_normal_distribution() -> None:
    """Tables of the standard normal: Phi(1) = .8413, Phi(-2) = .0228; spread 60 ms by default."""
    assert chance_in_time(0.060) == pytest.approx(0.8413, abs=1e-4)
    assert chance_in_time(-0.120) == pytest.approx(0.0228, abs=1e-4)
    assert chance_in_time(0.1, spread_s=0.1) == pytest.approx(0.8413, abs=1e-4)


def test_points_of_being_late() -> None:
    """By hand: always in time costs nothing; at v = .5 and half the rally lost to being late,
    x = .25 and logit .25 = -1.0986, which is 27.5 points of .04."""
    assert points_in_time(1.0, worth=0.5) == pytest.approx(0)
    assert points_in_time(0.0, worth=0.5, late_share=0.5) == pytest.approx(-1.0986 / 0.04, abs=0.01)
    assert points_in_time(0.4, worth=0.5) < points_in_time(0.6, worth=0.5)
