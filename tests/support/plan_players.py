"""Simulated opponents whose true skills nobody is told: what a plan is really up against.

A skill is in standard deviations among the players of one event: 0 is the usual, 1 better than 84
in 100. A player's skills share a level of their own; backhands are a little worse. Distribution,
means and all frequencies are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

import numpy as np

from knowledge.vocabulary import Hand, Side, Trait, Value, Wing

SKILLS: Final = (
    Trait.RETURN,
    Trait.RETURN_DEPTH,
    Trait.FOREHAND_DRIVE,
    Trait.BACKHAND_DRIVE,
    Trait.THIRD_SHOT_DROP,
    Trait.FOREHAND_DINK,
    Trait.BACKHAND_DINK,
    Trait.FOREHAND_VOLLEY,
    Trait.BACKHAND_VOLLEY,
    Trait.COUNTER_FOREHAND,
    Trait.COUNTER_BACKHAND,
    Trait.BODY_JAM,
    Trait.HANDLES_PACE,
    Trait.FORWARD_SPEED,
)
HABITS: Final = (Trait.POACHING,)

OWN_LEVEL_SHARE: Final = 0.4
"""Part of a skill's variance that a player's skills have in common."""

BACKHAND_MEAN: Final = -0.3
_BACKHANDS = (
    Trait.BACKHAND_DRIVE,
    Trait.BACKHAND_DINK,
    Trait.BACKHAND_VOLLEY,
    Trait.COUNTER_BACKHAND,
)

LEFT_HANDED: Final = 0.1
READY: Final = ((Value.BACKHAND, 0.7), (Value.NEUTRAL, 0.15), (Value.FOREHAND, 0.15))

SIDES: Final = (Side.RIGHT, Side.LEFT)
"""The first opponent plays the right court all day, the second the left."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TruePlayer:
    """One opponent as they really are; `skills` holds habits too (0 is as often as usual)."""

    side: Side
    hand: Hand
    ready: Value
    skills: Mapping[Trait, float]

    @property
    def middle_wing(self) -> Wing:
        """The wing on the middle side of their court."""
        is_forehand = (self.hand is Hand.RIGHT) is (self.side is Side.LEFT)
        return Wing.FOREHAND if is_forehand else Wing.BACKHAND

    def of_wing(self, wing: Wing, forehand: Trait, backhand: Trait) -> float:
        return self.skills[forehand if wing is Wing.FOREHAND else backhand]


TruePair = tuple[TruePlayer, TruePlayer]


def usual(trait: Trait) -> float:
    """The mean of a trait over players."""
    return BACKHAND_MEAN if trait in _BACKHANDS else 0.0


def drawn_pair(rng: np.random.Generator) -> TruePair:
    """Two opponents, drawn independently."""
    return _drawn(rng, SIDES[0]), _drawn(rng, SIDES[1])


def _drawn(rng: np.random.Generator, side: Side) -> TruePlayer:
    level = rng.standard_normal()
    own, rest = OWN_LEVEL_SHARE**0.5, (1 - OWN_LEVEL_SHARE) ** 0.5
    skills = {
        trait: float(usual(trait) + own * level + rest * rng.standard_normal()) for trait in SKILLS
    }
    skills |= {trait: float(rng.standard_normal()) for trait in HABITS}
    ways = [value for value, _ in READY]
    return TruePlayer(
        side=side,
        hand=Hand.LEFT if rng.random() < LEFT_HANDED else Hand.RIGHT,
        ready=ways[int(rng.choice(len(ways), p=[share for _, share in READY]))],
        skills=MappingProxyType(skills),
    )
