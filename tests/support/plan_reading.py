"""An opponent who learns: where they expect our next ball, and what being expected does to it.

Smoothed fictitious play: they keep an exponentially weighted share of what we played in each
decision (the learning rate is the weight of the last ball), and get ready for each option in
proportion to that share to the power of SHARPNESS. Readiness adds to the skill that the ball
meets, and takes as much from the balls not waited for, so that an opponent who waits for all alike
plays at their true skill. The partner of whoever is expected to get the ball moves over as well.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

import numpy as np
from numpy.typing import NDArray
from plan_choices import OPTIONS, Decision, Plan

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

SHARPNESS: Final = 1.0
"""1 is to match our shares; the more, the nearer to waiting only for what we play most."""

READY_SKILL: Final[Mapping[Decision, float]] = MappingProxyType(
    {
        Decision.SERVE_RIGHT: 0.18,
        Decision.SERVE_LEFT: 0.18,
        Decision.RETURN: 0.24,
        Decision.THIRD_SHORT: 0.24,
        Decision.THIRD_DEEP: 0.24,
        Decision.DINK_RIGHT: 0.30,
        Decision.DINK_LEFT: 0.30,
        Decision.ATTACK: 0.45,
    }
)
"""Standard deviations of skill between a ball waited for and one that was not: least where there
is time anyhow, most against a speed-up (common practice, no source). Their level is set by what
the trade says of feeding one player: best at 65 to 75 balls of 100, and nothing left of the edge
at all of them (common practice, no source). `benchmarks/plans.py --fed` shows that here."""


@dataclass(slots=True, kw_only=True)
class Reader:
    """What every simulated pair expects, a row per pair, and how they are ready for it."""

    rate: float
    strength: float
    sharpness: float
    expected: dict[Decision, Floats]

    @classmethod
    def fresh(
        cls, columns: int, *, rate: float, strength: float = 1.0, sharpness: float = SHARPNESS
    ) -> Reader:
        """Nobody has seen us play; `strength` scales what readiness does."""
        return cls(
            rate=rate,
            strength=strength,
            sharpness=sharpness,
            expected={
                one: np.full((columns, len(options)), 1 / len(options))
                for one, options in OPTIONS.items()
            },
        )

    def ready(self, decision: Decision, rows: Ints) -> Floats:
        """How ready these pairs are for each option, adding up to 1."""
        weight = self.expected[decision][rows] ** self.sharpness
        found: Floats = weight / weight.sum(axis=1, keepdims=True)
        return found

    def gained(self, decision: Decision, ready: Floats) -> Floats:
        """The skill that readiness adds at each option, or takes away below an even share."""
        found: Floats = self.strength * READY_SKILL[decision] * (ready - 1 / ready.shape[1])
        return found

    def saw(self, decision: Decision, played: Ints, rows: Ints) -> None:
        """These pairs learn from the ball that each of them got."""
        told = self.expected[decision]
        told[rows] *= 1 - self.rate
        told[rows, played] += self.rate


@dataclass(frozen=True, slots=True, kw_only=True)
class Draws:
    """Plans as cumulative shares, a row per simulated pair, to draw from with one number."""

    reached: Mapping[Decision, Floats]

    @classmethod
    def of(cls, plans: Sequence[Plan], times: int) -> Draws:
        """Each plan for so many pairs in a row. ValueError for a share of no option."""
        for plan in plans:
            for decision, shares in plan.items():
                if not set(shares) <= set(OPTIONS[decision]):
                    raise ValueError(f"{decision}: {set(shares)} holds no option of the rally")
        return cls(
            reached={
                decision: np.repeat(
                    np.cumsum(
                        [[plan[decision].get(one, 0.0) for one in options] for plan in plans],
                        axis=1,
                    ),
                    times,
                    axis=0,
                )
                for decision, options in OPTIONS.items()
            }
        )

    def draw(self, decision: Decision, uniform: Floats, rows: Ints) -> Ints:
        """The option that each number in [0, 1) draws, for these pairs."""
        reached = self.reached[decision][rows]
        found: Ints = (uniform[:, None] * reached[:, -1:] >= reached[:, :-1]).sum(axis=1)
        return found
