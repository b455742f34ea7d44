"""What a gain in rallies is worth in games: once, or kept; and what trying a read teaches.

A gain names its scope. `gain_this_rally`: one rally is played so much better. `gain_if_kept`:
every rally from here on is, if they do not adjust.
"""

from __future__ import annotations

from functools import lru_cache
from math import sqrt

from knowledge.chances.game_table import game_table, solved
from knowledge.chances.match_chance import match_chance
from knowledge.chances.rates import RallyRates, within_0_and_1
from knowledge.game import GameState, MatchState
from knowledge.normal import normal_cdf, normal_density
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
    better = RallyRates(
        serving=within_0_and_1(rates.serving + serving_points * POINT),
        receiving=within_0_and_1(rates.receiving + receiving_points * POINT),
    )
    return _chance(match, better, of_match) - _chance(match, rates, of_match)


def _chance(match: MatchState, rates: RallyRates, of_match: bool) -> float:
    if of_match:
        return match_chance(match, rates.serving, rates.receiving)
    return game_table(match.format, rates.serving, rates.receiving).win_chance(match.game)


_STEP = 1e-20
"""Imaginary: the derivative comes without cancellation, to full precision."""


@lru_cache(maxsize=256)
def weight_to_come(state: GameState, rates: RallyRates) -> float:
    """The sum of the weights of all rallies still to come in this game, on average.

    It is the slope of the win chance when both rally chances rise together: every rally
    counts with its weight. By a complex step (Squire and Trapp 1998, SIAM Review 40:110; from
    memory).
    """
    table = solved(state.format, rates.serving + _STEP * 1j, rates.receiving + _STEP * 1j)
    return table.win_chance(state).imag / _STEP


def worth_of_one_try(
    *,
    weight_to_come: float,
    share: float,
    behind_points: float,
    doubt_points: float,
    chance: float,
) -> float:
    """Game chance that one try of an unproven read is worth, in what it teaches.

    The knowledge gradient (Frazier, Powell and Dayanik 2008; from memory): one rally moves what
    we believe a little, and where that crosses to "better", every later use gains. The read
    seems `behind_points` worse than the usual ball, with `doubt_points` as standard deviation;
    it could be used in `share` of the later rallies, whose weights sum to `weight_to_come`;
    `chance` is the rally chance it acts on. Worth a try where it beats its cost,
    weight now × behind_points × POINT.
    """
    spread = chance * (1 - chance)
    doubt = doubt_points * LOGIT_PER_POINT
    learned = doubt * doubt / sqrt(doubt * doubt + 1 / spread)
    if learned == 0:
        return 0.0
    away = abs(behind_points) * LOGIT_PER_POINT / learned
    per_use = learned * (normal_density(away) - away * normal_cdf(-away))
    return per_use * spread * share * weight_to_come
