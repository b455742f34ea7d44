"""Where a speed-up can go: hips, feet, shoulder of either opponent, the seam. Never the head.

The paddle hip is the one on the side of the hitting hand. A miss off the hip that faces the middle
stays in the seam; off the hip that faces the sideline it goes wide.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import StrEnum
from types import MappingProxyType

from knowledge.court import KITCHEN_DEPTH_M, Point, at_kitchen_line
from knowledge.dataclass import dataclass
from knowledge.effects import Option, OptionId
from knowledge.situation import JammedHip, OnCourt
from knowledge.vocabulary import Hand, PlayerId, Side, Trait, Value

CHEST = "chest"
"""The plain alternative: chest high, where they wait."""

SEAM_ID = "seam"


class Spot(StrEnum):
    """A place on a body; the ids are what a rally log writes too."""

    PADDLE_HIP = "paddle"
    OTHER_HIP = "other"
    FEET = "feet"
    SHOULDER = "shoulder"


NOBODY_JAMS: Mapping[PlayerId, JammedHip] = MappingProxyType({})
HIPS = (Spot.PADDLE_HIP, Spot.OTHER_HIP)
PADDLE_HIP: str = Spot.PADDLE_HIP.value
OTHER_HIP: str = Spot.OTHER_HIP.value

_HAND_SIDE = {Hand.LEFT: Side.LEFT, Hand.RIGHT: Side.RIGHT}
_UNKNOWN_HAND = {
    Spot.PADDLE_HIP: "paddle hip",
    Spot.OTHER_HIP: "off-hand hip",
    Spot.SHOULDER: "paddle shoulder",
    Spot.FEET: "feet",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class BodySpot:
    """A spot of one opponent. `jams` is the hip, or the shoulder, at which a note says they jam."""

    target: OnCourt
    spot: Spot
    jams: JammedHip | None = None

    @property
    def id(self) -> OptionId:
        return OptionId(f"{self.spot}:{self.target.player}")

    @property
    def is_hip(self) -> bool:
        return self.spot in HIPS

    @property
    def hip(self) -> Side | None:
        """Their own right or left hip or shoulder; None for the feet, or with an unknown hand."""
        if self.spot is Spot.FEET or self.target.hand is None:
            return None
        paddle = _HAND_SIDE.get(self.target.hand)
        if paddle is None:
            return None
        return paddle.other if self.spot is Spot.OTHER_HIP else paddle

    @property
    def label(self) -> str:
        """ "right hip" where the hand is known, else "paddle hip" or "off-hand hip"."""
        if self.jams is not None and self.jams.is_shoulder and self.is_noted:
            return f"{self._own_side} shoulder"
        if self.hip is None and self.is_noted is not None:
            return f"{self._own_side} hip"
        if self.hip is None:
            return _UNKNOWN_HAND[self.spot]
        return f"{self.hip} {'shoulder' if self.spot is Spot.SHOULDER else 'hip'}"

    @property
    def at(self) -> str:
        """Whose it is: "Okafor's right hip"; of nobody named "the right hip"."""
        return f"{self.target.name}'s {self.label}" if self.target.name else f"the {self.label}"

    @property
    def is_noted(self) -> bool | None:
        """Whether a note names this hip; None where notes name none, or for another spot.

        With a hand that nobody knows it is read as a right-hander's.
        """
        if self.jams is None or not self.is_hip:
            return None
        return self._own_side is self.jams.side

    @property
    def _own_side(self) -> Side:
        return self.hip or (Side.LEFT if self.spot is Spot.OTHER_HIP else Side.RIGHT)

    @property
    def faces_middle(self) -> bool | None:
        """Whether the hip is on the middle side of the court; None if hand or side is unknown."""
        if self.hip is None or self.target.side is None:
            return None
        return self.hip is not self.target.side

    @property
    def option(self) -> Option:
        return Option(id=self.id, label=self.at)


def spots_of(
    pair: Sequence[OnCourt], *, leaning: bool, jammed: Mapping[PlayerId, JammedHip] = NOBODY_JAMS
) -> tuple[BodySpot, ...]:
    """Every spot of both; the shoulder only of opponents who lean in."""
    kinds = [one for one in Spot if leaning or one is not Spot.SHOULDER]
    return tuple(
        BodySpot(target=one, spot=spot, jams=jammed.get(one.player))
        for one in pair
        for spot in kinds
    )


def counter_met(spot: BodySpot) -> Trait:
    """The counter that the spot meets: the backhand's, as a rule.

    Only at the paddle side of one who waits neutral or on the forehand it is the forehand's.
    """
    ready = spot.target.profile.fact(Trait.READY_POSITION)
    on_paddle_side = spot.spot in (Spot.PADDLE_HIP, Spot.SHOULDER)
    meets_forehand = on_paddle_side and ready in (Value.FOREHAND, Value.NEUTRAL)
    return Trait.COUNTER_FOREHAND if meets_forehand else Trait.COUNTER_BACKHAND


HIP_M = 0.35
"""How far beside the middle of a player the picture puts a hip: wide enough to be seen."""


def place_of(spot: BodySpot) -> Point | None:
    """Where the spot is on the court as we see it; None while their side is not known.

    They face us, so their right is on our left.
    """
    if spot.target.side is None:
        return None
    stands = at_kitchen_line(spot.target.side, ours=False)
    towards = {None: 0.0, Side.RIGHT: -1.0, Side.LEFT: 1.0}[spot.hip]
    y_m = KITCHEN_DEPTH_M if spot.spot is Spot.FEET else stands.y_m
    return Point(x_m=stands.x_m + towards * HIP_M, y_m=y_m)
