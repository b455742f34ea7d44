"""The options of a dink: both feet of each opponent, the soft ball, and the speed-up."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.effects import Condition, Option, OptionId
from knowledge.situation import OnCourt
from knowledge.tactics.conditions import backhand_in_middle, in_front, other_of
from knowledge.tactics.dink_ball import DinkBall
from knowledge.tactics.dink_lanes import Lane, Spot, lane_to
from knowledge.tactics.shot_success import OurScatter
from knowledge.vocabulary import BallQuality, Side, Wing

SOFT = OptionId("soft")
"""Soft to the middle, at nobody."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Aim:
    """A dink at one foot of one opponent. `lane` and `wing` are None where not known."""

    target: OnCourt
    spot: Spot
    lane: Lane | None
    wing: Wing | None

    @property
    def id(self) -> OptionId:
        return OptionId(f"{self.target.player}:{self.spot}")

    @property
    def option(self) -> Option:
        return Option(id=self.id, label=f"{self.target.name} {self.spot}")


def aims_at(target: OnCourt, striker_side: Side | None) -> tuple[Aim, Aim]:
    """Both feet of an opponent, with lane and wing as far as known."""
    middle, sideline = (_aim(target, spot, striker_side) for spot in Spot)
    return middle, sideline


def _aim(target: OnCourt, spot: Spot, striker_side: Side | None) -> Aim:
    lane = None
    if target.side is not None and striker_side is not None:
        lane = lane_to(spot, in_front=target.side is not striker_side)
    wing = target.middle_wing()
    if wing is not None and spot is Spot.SIDELINE:
        wing = wing.other
    return Aim(target=target, spot=spot, lane=lane, wing=wing)


def attack_at(target: OnCourt) -> Option:
    """A speed-up at an opponent's body, when the ball is easy."""
    return Option(id=OptionId(f"{target.player}:attack"), label=f"speed up at {target.name}")


@dataclass(frozen=True, slots=True, kw_only=True)
class DinkQuestion:
    """Who is there: both opponents as far as known, our striker, the ball and our scatter."""

    pair: tuple[OnCourt, ...]
    striker: OnCourt | None
    striker_side: Side | None
    ball: BallQuality
    met: DinkBall
    scatter: OurScatter

    def partner(self, one: OnCourt) -> OnCourt | None:
        return other_of(one, self.pair)

    def in_front(self, one: OnCourt) -> Condition:
        return in_front(one, self.partner(one), self.striker_side)

    def backhand_at(self, aim: Aim) -> Condition:
        """Whether the backhand is the wing at that foot."""
        middle = backhand_in_middle(aim.target, self.partner(aim.target))
        return middle if aim.spot is Spot.MIDDLE else ~middle
