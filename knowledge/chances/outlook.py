"""Everything a reply needs to say of a score, in one call: chances, their range, the weight."""

from __future__ import annotations

from functools import lru_cache
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from knowledge.chances.belief import Beta, RateBelief
from knowledge.chances.counts import expected_rallies, serve_first_worth, shutout_chance
from knowledge.chances.game_table import GameTable, game_table
from knowledge.chances.match_chance import (
    after_this_game,
    chance_of_match,
    checked_match,
)
from knowledge.chances.rates import RallyRates
from knowledge.dataclass import dataclass
from knowledge.game import GameFormat, MatchState, after

DRAWS_EACH: Final = 16
"""Equally likely values of each rally chance; every pair of them is one draw, 256 in all. The
ends of the range are then within a hundredth of those of a fine grid."""

LOW, HIGH = 0.1, 0.9
"""The honest range leaves out one case in ten on either side."""

CACHED_SPREADS = 4
"""Arrays of tables kept in memory, about 1 MB each to 11 and 4 MB to 21; one takes 3 ms."""


CACHED_OUTLOOKS = 256
"""Answers kept for the score and the belief they were asked about."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """A chance at the mean rates, the middle 80 of 100 of what it may be, and its average."""

    chance: float
    low: float
    high: float
    average: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Outlook:
    """What the score says, from our side. Chances are of 1; `game` and `match` of winning those.

    `weight` is what the next rally swings the game, `match_weight` the match; 0 once over.
    """

    rates: RallyRates
    is_exact: bool
    game: Range
    match: Range
    if_won: float
    if_lost: float
    weight: float
    match_weight: float
    expected_rallies: float
    shutout: float
    shutout_theirs: float
    serve_first_worth: float

    def numbers(self) -> dict[str, float]:
        """Every figure by name, at full precision."""
        return {
            "serving_rally_chance": self.rates.serving,
            "receiving_rally_chance": self.rates.receiving,
            "win_chance": self.game.chance,
            "win_chance_low": self.game.low,
            "win_chance_high": self.game.high,
            "win_chance_average": self.game.average,
            "match_chance": self.match.chance,
            "match_chance_low": self.match.low,
            "match_chance_high": self.match.high,
            "match_chance_average": self.match.average,
            "win_chance_if_won": self.if_won,
            "win_chance_if_lost": self.if_lost,
            "rally_weight": self.weight,
            "match_rally_weight": self.match_weight,
            "expected_rallies": self.expected_rallies,
            "shutout_chance": self.shutout,
            "shutout_chance_theirs": self.shutout_theirs,
            "serve_first_worth": self.serve_first_worth,
        }


@lru_cache(maxsize=CACHED_OUTLOOKS)
def outlook(match: MatchState, belief: RateBelief) -> Outlook:
    """The score seen from our side; errors as in `game_table` and `match_chance`."""
    rates = belief.rates
    p, q, state = rates.serving, rates.receiving, match.game
    checked_match(match)
    table = game_table(match.format, p, q)
    if_won, if_lost = _next_values(match, table)
    after_win, after_loss = after_this_game(match, table)
    return Outlook(
        rates=rates,
        is_exact=belief.is_exact,
        game=_ranged(table.at(state), belief, lambda many: many.at(state), match.format),
        match=_ranged(
            chance_of_match(match, table),
            belief,
            lambda many: chance_of_match(match, many),
            match.format,
        ),
        if_won=if_won,
        if_lost=if_lost,
        weight=if_won - if_lost,
        match_weight=(if_won - if_lost) * (after_win - after_loss),
        expected_rallies=expected_rallies(state, p, q),
        shutout=shutout_chance(state, p, q, ours=True),
        shutout_theirs=shutout_chance(state, p, q, ours=False),
        serve_first_worth=serve_first_worth(match.format, p, q),
    )


def _next_values(match: MatchState, table: GameTable[float]) -> tuple[float, float]:
    """The game's chance after winning and after losing the next rally; the same once it is over."""
    state = match.game
    if state.is_over:
        return table.at(state), table.at(state)
    return table.at(after(state, won_by_us=True)), table.at(after(state, won_by_us=False))


def _ranged(chance: float, belief: RateBelief, value: Any, format: GameFormat) -> Range:
    if belief.is_exact:
        return Range(chance=chance, low=chance, high=chance, average=chance)
    values = np.broadcast_to(value(_spread(format, belief)), DRAWS_EACH * DRAWS_EACH)
    ordered = np.sort(values)
    low, high = _quantile(ordered, LOW), _quantile(ordered, HIGH)
    return Range(chance=chance, low=low, high=high, average=float(values.mean()))


def _quantile(ordered: NDArray[np.float64], share: float) -> float:
    """The value that so large a share lies below, linear between neighbours, to the last bit as
    `numpy.quantile` gives it: that loads masked arrays, 1.5 MB that nothing else here needs.
    """
    place = share * (len(ordered) - 1)
    below = int(place)
    lower, upper = float(ordered[below]), float(ordered[min(below + 1, len(ordered) - 1)])
    part = place - below
    if part < 0.5:
        return lower + (upper - lower) * part
    return upper - (upper - lower) * (1 - part)


@lru_cache(maxsize=CACHED_SPREADS)
def _spread(format: GameFormat, belief: RateBelief) -> GameTable[NDArray[np.float64]]:
    """One table for every pair of equally likely rally chances, taken as independent."""
    serving, receiving = np.meshgrid(_draws(belief.serving), _draws(belief.receiving))
    return game_table(format, serving.ravel(), receiving.ravel())


def _draws(one: Beta | float) -> NDArray[np.float64]:
    if isinstance(one, Beta):
        return one.quantiles(DRAWS_EACH)
    return np.full(DRAWS_EACH, one)
