"""What a gain in rallies is worth in games: once, or kept; and what trying a read teaches.

A gain names its scope. `gain_this_rally`: one rally is played so much better. `gain_if_kept`:
every rally from here on is, if they do not adjust.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import comb

import numpy as np
from numpy.typing import NDArray

from knowledge.chances.game_table import game_table, solved
from knowledge.chances.match_chance import chance_of_match, match_chance
from knowledge.chances.rates import RallyRates, within_0_and_1
from knowledge.game import MatchState
from knowledge.normal import logit
from knowledge.vocabulary import LOGIT_PER_POINT, POINT


def gain_this_rally(match: MatchState, rates: RallyRates, rally_points: float) -> float:
    """Game chance gained by playing the next rally so many points better, within 0 to 1."""
    table = game_table(match.format, rates.serving, rates.receiving)
    chance = rates.serving if match.game.we_serve else rates.receiving
    return table.rally_weight(match.game) * (within_0_and_1(chance + rally_points * POINT) - chance)


def gain_if_kept(
    match: MatchState,
    rates: RallyRates,
    *,
    serving_points: float = 0.0,
    receiving_points: float = 0.0,
    of_match: bool = False,
) -> float:
    """Game (or match) chance gained by playing all rallies from here so many points better.

    Rally points serving and receiving apart; a gain that arises in part of the rallies is
    scaled by its share first. Rates stay within 0 to 1.
    """
    better = rates.shifted(serving_points, receiving_points)
    return _chance(match, better, of_match) - _chance(match, rates, of_match)


def _chance(match: MatchState, rates: RallyRates, of_match: bool) -> float:
    if of_match:
        return match_chance(match, rates.serving, rates.receiving)
    return game_table(match.format, rates.serving, rates.receiving).win_chance(match.game)


_STEP = 1e-20
"""Imaginary: the derivative comes without cancellation, to full precision."""


@lru_cache(maxsize=256)
def weight_to_come(match: MatchState, rates: RallyRates, *, of_match: bool = False) -> float:
    """The sum of the weights of all rallies still to come, on average, in this game or the match.

    It is the slope of the win chance when both rally chances rise together: every rally
    counts with its weight. By a complex step (Squire and Trapp 1998, SIAM Review 40:110; from
    memory). Errors as in `game_table`.
    """
    table = solved(match.format, rates.serving + _STEP * 1j, rates.receiving + _STEP * 1j)
    value = chance_of_match(match, table) if of_match else table.win_chance(match.game)
    return float(value.imag / _STEP)


@dataclass(frozen=True, slots=True, kw_only=True)
class Read:
    """An unproven read: how it looks beside the usual ball, in rally points, and how surely.

    `doubt_points` is a standard deviation; `share` the part of the later rallies in which it
    could be used.
    """

    behind_points: float
    doubt_points: float
    share: float


MOST_TRIES = 6
"""A read is tried a few times, not for ever: the first points of a game. Common practice."""


def worth_of_a_try(read: Read, *, chance: float, later_weight: float) -> float:
    """Game (or match) chance that one try of a read is worth, in what it teaches for later.

    The value of sample information (Raiffa and Schlaifer 1961; from memory), exact for rallies
    that are won or lost: after n tries the read is used for good if it looks better than the
    usual ball, of rally chance `chance`, and what that gains in the later rallies, whose
    weights sum to `later_weight`, is shared by the n tries; of 1 to MOST_TRIES the best n
    counts. A try pays where this exceeds its cost, the rally's weight × behind_points × POINT.

    1. The read's chance x: logit x = logit(chance) + LOGIT_PER_POINT × (-behind + doubt z).
    2. Over nodes of z: the chance of k wins in n, and the mean gain x - chance given k.
    3. Only a gain is acted on; the sum over k is what n tries teach.
    """
    if not 0 < chance < 1:
        return 0.0
    nodes, weights = np.polynomial.hermite_e.hermegauss(_NODES)
    points = read.doubt_points * nodes - read.behind_points
    x = 1 / (1 + np.exp(-(logit(chance) + LOGIT_PER_POINT * points)))
    share = weights / weights.sum()
    best = max(_learned(x, share, chance, tries) / tries for tries in range(1, MOST_TRIES + 1))
    return best * read.share * later_weight


_NODES = 31


def _learned(
    x: NDArray[np.float64], share: NDArray[np.float64], chance: float, tries: int
) -> float:
    """The expected gain per later rally, in chances, once so many tries are seen."""
    wins = np.arange(tries + 1)
    ways = np.array([comb(tries, k) for k in wins])
    seen = ways[:, None] * x ** wins[:, None] * (1 - x) ** (tries - wins[:, None])
    gains = seen @ (share * (x - chance))
    return float(gains[gains > 0].sum())
