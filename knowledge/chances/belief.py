"""What we believe of the two rally chances, and how sure we are: beta beliefs from won and lost.

Only who won a rally counts, never how; all rallies of one kind weigh the same.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import inf, sqrt
from types import MappingProxyType
from typing import Final

import numpy as np
from numpy.typing import NDArray

from knowledge.chances.rates import RallyRates
from knowledge.dataclass import dataclass
from knowledge.vocabulary import EvidenceId, Level

_GRID = 2001
"""Points at which a beta's distribution is summed: quantiles are good to about 1e-4."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Beta:
    """A beta belief about one chance: `wins` and `losses` are its two parameters, above 0."""

    wins: float
    losses: float

    def __post_init__(self) -> None:
        if not (0 < self.wins < inf and 0 < self.losses < inf):
            raise ValueError(f"a beta needs two positive counts, not {self.wins}, {self.losses}")

    @property
    def mean(self) -> float:
        return self.wins / self.rallies

    @property
    def rallies(self) -> float:
        """Rallies that the belief weighs, the prior's included."""
        return self.wins + self.losses

    @property
    def sd(self) -> float:
        return sqrt(self.mean * (1 - self.mean) / (self.rallies + 1))

    def quantiles(self, parts: int) -> NDArray[np.float64]:
        """The middles of `parts` equally likely parts, in rising order."""
        edges = np.linspace(0, 1, _GRID)
        x = (edges[1:] + edges[:-1]) / 2
        log_density = (self.wins - 1) * np.log(x) + (self.losses - 1) * np.log1p(-x)
        mass = np.cumsum(np.exp(log_density - log_density.max()))
        middles = (np.arange(parts) + 0.5) / parts
        return np.interp(middles, np.concatenate(([0.0], mass / mass[-1])), edges)


@dataclass(frozen=True, slots=True, kw_only=True)
class RateBelief:
    """Beliefs about both rally chances, or exact ones that somebody stated."""

    serving: Beta | float
    receiving: Beta | float

    @property
    def rates(self) -> RallyRates:
        """The numbers to compute with: the means."""
        return RallyRates(serving=_mean(self.serving), receiving=_mean(self.receiving))

    @property
    def is_exact(self) -> bool:
        return not (isinstance(self.serving, Beta) or isinstance(self.receiving, Beta))


def _mean(one: Beta | float) -> float:
    return one.mean if isinstance(one, Beta) else one


@dataclass(frozen=True, slots=True, kw_only=True)
class RallyTally:
    """Rallies won and lost, serving and receiving, and what one of them counts (0 to 1).

    `evidence` names where they were logged.
    ValueError for a negative count, or a weight outside 0 to 1.
    """

    served_won: int = 0
    served_lost: int = 0
    received_won: int = 0
    received_lost: int = 0
    weight: float = 1.0
    evidence: tuple[EvidenceId, ...] = ()

    def __post_init__(self) -> None:
        counts = (self.served_won, self.served_lost, self.received_won, self.received_lost)
        if min(counts) < 0 or not 0 <= self.weight <= 1:
            raise ValueError(f"rallies are counted from 0, each for 0 to 1: {self}")

    @property
    def rallies(self) -> int:
        return self.served_won + self.served_lost + self.received_won + self.received_lost


PRIOR_RALLIES: Final = 100.0
"""What the default weighs, in rallies of one kind: each rally chance is then believed to 5 points
up or down, and three lost rallies hardly move it. Common practice, no source."""

RECEIVING_BY_LEVEL: Final[Mapping[Level, float]] = MappingProxyType(
    {
        Level.L3_0: 0.53,
        Level.L3_5: 0.53,
        Level.L4_0: 0.54,
        Level.L4_5: 0.55,
        Level.L5_0: 0.57,
    }
)
"""How often the side that receives wins the rally, by level. Common practice, no source."""

RECEIVING_USUALLY: Final = 0.56
"""The same where no level is known: good tournament doubles. Common practice, no source."""

RECEIVING_IN_SINGLES: Final = 0.50
"""In singles nothing is assumed for either side. Common practice, no source."""

MIXED_LESS: Final = 0.01
"""Mixed doubles: one point less for the receiving side. Common practice, no source."""


def prior_rates(
    *, level: Level | None = None, mixed: bool | None = None, singles: bool = False
) -> RateBelief:
    """Two even sides, before any rally: in doubles the receivers win somewhat more than half."""
    receiving = RECEIVING_USUALLY if level is None else RECEIVING_BY_LEVEL[level]
    receiving -= MIXED_LESS if mixed else 0.0
    receiving = RECEIVING_IN_SINGLES if singles else receiving
    return base_rates(RallyRates(serving=1 - receiving, receiving=receiving))


def base_rates(rates: RallyRates) -> RateBelief:
    """A prior around these rates, such as a book's own; they weigh PRIOR_RALLIES each."""
    return RateBelief(serving=_around(rates.serving), receiving=_around(rates.receiving))


_LEAST: Final = 0.01


def _around(rate: float) -> Beta:
    # A book may say 0 or 100 in 100; a prior that nothing can move would not be one.
    kept = min(max(rate, _LEAST), 1 - _LEAST)
    return Beta(wins=kept * PRIOR_RALLIES, losses=(1 - kept) * PRIOR_RALLIES)


def learned_rates(prior: RateBelief, tallies: Iterable[RallyTally]) -> RateBelief:
    """The prior after rallies won and lost; conjugate, so their order does not matter."""
    serving, receiving = prior.serving, prior.receiving
    for tally in tallies:
        serving = _after(serving, tally.served_won, tally.served_lost, tally.weight)
        receiving = _after(receiving, tally.received_won, tally.received_lost, tally.weight)
    return RateBelief(serving=serving, receiving=receiving)


def _after(belief: Beta | float, won: int, lost: int, weight: float) -> Beta | float:
    if not isinstance(belief, Beta):
        return belief
    return Beta(wins=belief.wins + weight * won, losses=belief.losses + weight * lost)
