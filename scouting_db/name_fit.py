"""How well one player's name fits what was typed."""

from __future__ import annotations

from knowledge.dataclass import dataclass

BEGINNING = 1.0
"""Cost of a name cut short, such as `lindq`."""

NOBODY = -1.0
"""Allowed for another person's name, who is asked about only beside one that fits."""


@dataclass(frozen=True, slots=True)
class Fit:
    """How far a player's name lies from what was typed, and how far it may lie."""

    position: int
    cost: float
    allowed: float

    @property
    def is_likely(self) -> bool:
        return self.cost <= self.allowed

    @property
    def is_short(self) -> bool:
        """Whether the name was only cut short."""
        return self.cost == self.allowed == BEGINNING

    def rivals(self, cost: float) -> bool:
        """Whether it must be asked about beside one that is likely: another's name too."""
        return self.cost <= cost and (self.is_likely or self.allowed == NOBODY)
