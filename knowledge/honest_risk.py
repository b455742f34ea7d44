"""What a miss costs: the chance we would otherwise have had, never a point on the score sheet."""

from __future__ import annotations

from knowledge.vocabulary import RallyChance, RallyPoints


def misses_paid_for(points: RallyPoints, chance: RallyChance) -> float:
    """Extra misses in 100 that a gain of so many rally points pays for, at that rally chance.

    A miss loses the rally that we would have won with `chance`, so m misses in 100 cost
    m * chance points: +1 pays for 2.3 of them at .44 and for 1.8 at .56.
    """
    return points / chance


def cost_of_misses(misses_in_100: float, chance: RallyChance) -> RallyPoints:
    """Rally points that so many extra misses in 100 cost."""
    return RallyPoints(misses_in_100 * chance)
