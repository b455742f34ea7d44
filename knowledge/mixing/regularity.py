"""Whether our logged aims give themselves away: order, win rates, and what chance alone would do.

Two questions of Walker and Wooders ("Minimax play at Wimbledon", 2001, American Economic Review
91:1521, the method from memory): do the options win alike, as they must in a mix that is right
(Pearson's statistic), and is each choice independent of the one before (runs)? Neither shows that
somebody mixes well: with a few dozen aims only gross faults come out.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from knowledge.dataclass import dataclass

MIN_LOGGED_AIMS = 30
"""Below this nothing is said: tests on 8 to 15 choices have no power (computed by the trade)."""

UNLIKELY = 0.05
"""A pattern that chance shows more rarely than this is worth a word; the usual level."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Runs:
    """How often the choice stays the same: `runs` of equal aims, and what a random order has."""

    aims: int
    runs: int
    expected: float
    sd: float

    @property
    def switches(self) -> int:
        return self.runs - 1

    @property
    def z(self) -> float:
        """Standard deviations from a random order; above 0 is too much alternating."""
        return (self.runs - self.expected) / self.sd

    @property
    def chance_as_far(self) -> float:
        """How often a random order is as far off, either way (normal approximation)."""
        return math.erfc(abs(self.z) / math.sqrt(2))


def runs_of(aims: Sequence[str]) -> Runs | None:
    """The runs of a sequence against its own shuffles; None where every order looks alike.

    For k kinds (Mood 1940, Annals of Mathematical Statistics 11:367, from memory):

    1. E = (n (n + 1) - sum n_i^2) / n
    2. Var = (s2 (s2 + n (n + 1)) - 2 n s3 - n^3) / (n^2 (n - 1)), s2 and s3 sums of n_i^2, n_i^3
    """
    n, counts = len(aims), Counter(aims).values()
    if len(counts) < 2 or n < 3:
        return None
    squares, cubes = sum(one**2 for one in counts), sum(one**3 for one in counts)
    variance = (squares * (squares + n * (n + 1)) - 2 * n * cubes - n**3) / (n**2 * (n - 1))
    if variance <= 0:
        return None
    return Runs(
        aims=n,
        runs=1 + sum(a != b for a, b in pairwise(aims)),
        expected=(n * (n + 1) - squares) / n,
        sd=math.sqrt(variance),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Pearson:
    """A chi-square statistic and how often chance alone reaches it."""

    statistic: float
    degrees: int
    chance: float


def equal_win_rates(results: Sequence[tuple[int, int]]) -> Pearson | None:
    """Whether options, each (won, played), win alike; None where it cannot be asked.

    Pearson's statistic of the table of options against won and lost, as Walker and Wooders
    compute it: the expected counts have the win rate of all options together. A large one says
    that the rates differ; a small one shows no more than that these rallies do not tell.
    """
    if any(not 0 <= won <= played for won, played in results):
        raise ValueError(f"won must lie between 0 and played: {results}")
    tried = [(won, played) for won, played in results if played]
    total = sum(played for _, played in tried)
    rate = sum(won for won, _ in tried) / total if total else 0.0
    if len(tried) < 2 or rate in (0.0, 1.0):
        return None
    statistic = sum(
        (won - rate * played) ** 2 / (rate * (1 - rate) * played) for won, played in tried
    )
    degrees = len(tried) - 1
    return Pearson(statistic=statistic, degrees=degrees, chance=chi_square_tail(statistic, degrees))


def fits_shares(counts: Sequence[int], shares: Sequence[float]) -> Pearson | None:
    """Whether choices counted per option look drawn from these shares; None if there is no doubt.

    A choice of an option without a share cannot have been drawn: its chance is 0.
    """
    n = sum(counts)
    if not n or sum(share > 0 for share in shares) < 2:
        return None
    degrees = sum(share > 0 for share in shares) - 1
    if any(count and share <= 0 for count, share in zip(counts, shares, strict=True)):
        return Pearson(statistic=math.inf, degrees=degrees, chance=0.0)
    statistic = sum(
        (count - n * share) ** 2 / (n * share)
        for count, share in zip(counts, shares, strict=True)
        if share > 0
    )
    return Pearson(statistic=statistic, degrees=degrees, chance=chi_square_tail(statistic, degrees))


def chi_square_tail(statistic: float, degrees: int) -> float:
    """Chance that a chi-square variable exceeds `statistic`: closed form, by whole degrees.

    Q(x; 1) = erfc(sqrt(x / 2)), Q(x; 2) = exp(-x / 2), and
    Q(x; k + 2) = Q(x; k) + (x / 2)^(k / 2) exp(-x / 2) / Gamma(k / 2 + 1).
    """
    half = statistic / 2
    is_odd = degrees % 2 == 1
    tail = math.erfc(math.sqrt(half)) if is_odd else math.exp(-half)
    for k in range(1 if is_odd else 2, degrees, 2):
        tail += half ** (k / 2) * math.exp(-half) / math.gamma(k / 2 + 1)
    return tail
