"""What it costs us when they guess our choice: per topic, more against a wing that punishes."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from knowledge.evidence import TraitEstimate
from knowledge.vocabulary import RallyPoints, Topic

COST_WHEN_GUESSED_POINTS: Final[Mapping[Topic, RallyPoints]] = MappingProxyType(
    {
        Topic.AIM_SERVE: RallyPoints(2),
        Topic.AIM_RETURN: RallyPoints(2),
        Topic.THIRD_SHOT: RallyPoints(3),
        Topic.AIM_ATTACK: RallyPoints(10),
        Topic.AIM_OVERHEAD: RallyPoints(6),
    }
)
"""Points lost when they wait for the ball instead of covering all: common practice, no source."""

MIXED_TOPICS: Final = frozenset(COST_WHEN_GUESSED_POINTS)
"""Where they must commit before they see the ball. Dinks groove them instead (dink_effects)."""

PUNISHING_PART: Final = 0.5
"""How much more a wing of full strength makes of a guessed ball, and a weak one less: common
practice, no source."""


def cost_when_guessed(topic: Topic, punishes: TraitEstimate | None = None) -> float:
    """Chance, 0 to 1, that a guessed ball loses us; `punishes` is the skill it then meets.

    A weak wing punishes less, so it gets more of the balls. KeyError for a topic without a size.
    """
    level = 0.0 if punishes is None else punishes.level
    return COST_WHEN_GUESSED_POINTS[topic] / 100 * (1 + PUNISHING_PART * level)
