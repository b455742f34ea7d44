"""Body spots by hand, ready position and side really played: never mirrored.

Common practice, no source: the paddle hip jams who waits on the backhand, the other hip who waits
neutral or on the forehand; a miss off the hip that faces the middle stays in the seam.
"""

from __future__ import annotations

import pytest
from noted_players import match, player

from knowledge.planning.hands import hands_aim, hands_line
from knowledge.tactics.attack_spots import BodySpot, Spot
from knowledge.vocabulary import Side, Topic


@pytest.mark.parametrize("side", [Side.LEFT, Side.RIGHT])
@pytest.mark.parametrize(
    ("hand", "ready", "hip"),
    [
        ("right", "backhand", Side.RIGHT),
        ("right", "forehand", Side.LEFT),
        ("right", "neutral", Side.LEFT),
        ("left", "backhand", Side.LEFT),
        ("left", "forehand", Side.RIGHT),
        ("left", "neutral", Side.RIGHT),
    ],
)
def test_spot_by_hand_and_ready_position(hand: str, ready: str, hip: Side, side: Side) -> None:
    target = player(3, "Okafor", side, f"hand {hand}", f"ready_position {ready}")
    spot = hands_aim(match(Topic.GAME_PLAN, target)).spot
    assert spot is not None
    assert spot.hip is hip
    assert spot.label == f"{hip} hip"


@pytest.mark.parametrize(
    ("hand", "side", "faces_middle"),
    [
        ("right", Side.LEFT, True),
        ("right", Side.RIGHT, False),
        ("left", Side.LEFT, False),
        ("left", Side.RIGHT, True),
    ],
)
def test_the_paddle_hip_faces_the_middle_by_hand_and_side(
    hand: str, side: Side, faces_middle: bool
) -> None:
    target = player(3, "Okafor", side, f"hand {hand}")
    spot = BodySpot(target=target, spot=Spot.PADDLE_HIP)
    assert spot.faces_middle is faces_middle


def test_a_hip_is_never_left_or_right_while_the_hand_is_not_known() -> None:
    target = player(3, "Okafor", Side.LEFT, "ready_position backhand")
    line = hands_line(match(Topic.GAME_PLAN, target))
    assert line is not None
    assert "paddle hip" in line.do
    assert "left" not in line.do
    assert "right" not in line.do


def test_of_two_alike_the_one_whose_miss_stays_in_the_seam() -> None:
    notes = ("hand right", "ready_position backhand")
    seam = player(3, "Okafor", Side.LEFT, *notes)
    wide = player(4, "Lindqvist", Side.RIGHT, *notes)
    spot = hands_aim(match(Topic.GAME_PLAN, wide, seam)).spot
    assert spot is not None
    assert spot.target == seam


def test_a_strong_counter_sends_the_speed_up_to_the_partner() -> None:
    strong = player(3, "Okafor", Side.LEFT, "counter strength", "counter strength by tom")
    jammed = player(4, "Lindqvist", Side.RIGHT, "body_jam weakness")
    spot = hands_aim(match(Topic.GAME_PLAN, strong, jammed)).spot
    assert spot is not None
    assert spot.target == jammed


def test_only_the_one_of_us_who_owns_the_shot_is_named() -> None:
    ours = (
        player(1, "Mira", Side.RIGHT, "speed_up weakness"),
        player(2, "Tom", Side.LEFT, "speed_up strength"),
    )
    target = player(3, "Okafor", Side.LEFT, "hand right", "ready_position backhand")
    line = hands_line(match(Topic.GAME_PLAN, target, ours=ours))
    assert line is not None
    assert line.do == "Tom: speed up at Okafor's right hip"
