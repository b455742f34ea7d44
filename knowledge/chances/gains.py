"""What a gain in rallies is worth in games: once, or kept; and what the rallies left weigh.

A gain names its scope. `gain_this_rally`: one rally is played so much better. `gain_if_kept`:
every rally from here on is, if they do not adjust.
"""

from __future__ import annotations

from functools import lru_cache

from knowledge.chances.game_table import game_table, solved
from knowledge.chances.match_chance import chance_of_match, match_chance
from knowledge.chances.rates import RallyRates, within_0_and_1
from knowledge.game import MatchState
from knowledge.vocabulary import POINT


def gain_this_rally(match: MatchState, rates: RallyRates, rally_points: float) -> float:
    """Game chance gained by playing the next rally so many points better, within 0 to 1."""
    table = game_table(match.format, rates.serving, rates.receiving)
    chance = rates.of_rally(we_serve=match.game.we_serve)
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
