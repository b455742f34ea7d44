"""What they can anticipate: our options with their payoffs, guessed and not guessed.

An estimate x is an average over what they happened to expect in whatever stands behind it. With
r the shares of that and c what being guessed costs, an option that they do not expect is worth
a = x + r c, and a guessed one a - c; so the average over their guesses is x again. Estimates come
from notes, rates and rules of thumb (no rally is counted for an option), about players who
expected nothing in particular: every option counts alike, for else a shot that we always play
would excuse itself.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from knowledge.dataclass import dataclass
from knowledge.effects import OptionId
from knowledge.engine import Ranking
from knowledge.vocabulary import RallyChance


@dataclass(frozen=True, slots=True, kw_only=True)
class Guessable:
    """One of our options as the mix sees it.

    `chance` is today's estimate, an average over what they happened to expect. `cost` is the
    chance lost when they guess it, 0 to 1; 0 says that guessing it helps them nothing. `recent`
    counts how often we chose it lately. ValueError for anything else: a cost below 0 would say
    that being guessed helps us.
    """

    option: OptionId
    chance: RallyChance
    cost: float
    recent: int = 0

    def __post_init__(self) -> None:
        if not (math.isfinite(self.chance) and 0 <= self.chance <= 1):
            raise ValueError(f"{self.option}: a chance lies between 0 and 1, not at {self.chance}")
        if not (math.isfinite(self.cost) and 0 <= self.cost <= 1):
            raise ValueError(f"{self.option}: being guessed costs 0 to 1, not {self.cost}")
        if self.recent < 0:
            raise ValueError(f"{self.option}: a count is 0 or more, not {self.recent}")


def guessables(
    ranking: Ranking, cost: Mapping[OptionId, float], recent: Mapping[OptionId, int]
) -> tuple[Guessable, ...]:
    """The ranked options that have a cost, best first; an option without one is not in the mix."""
    return tuple(
        Guessable(
            option=one.option.id,
            chance=one.chance,
            cost=cost[one.option.id],
            recent=recent.get(one.option.id, 0),
        )
        for one in ranking.ranked
        if one.option.id in cost
    )


def expected_shares(options: Sequence[Guessable]) -> tuple[float, ...]:
    """What they expected behind the estimates, option by option: nothing in particular."""
    return (1 / len(options),) * len(options)


def unguessed_chances(options: Sequence[Guessable]) -> tuple[float, ...]:
    """Our chance with each option when they do not guess it: a = x + r c."""
    return tuple(
        one.chance + share * one.cost
        for one, share in zip(options, expected_shares(options), strict=True)
    )


def payoffs(options: Sequence[Guessable]) -> tuple[tuple[float, ...], ...]:
    """Our chance for each option (row) against each guess of theirs (column)."""
    return tuple(
        tuple(chance - (one.cost if guess is one else 0.0) for guess in options)
        for one, chance in zip(options, unguessed_chances(options), strict=True)
    )
