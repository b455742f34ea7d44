"""The toss: what serving first is worth, and which end first, exactly for the format.

An end is better or worse by some rally points; how many, wind and sun say (common practice).
"""

from __future__ import annotations

from knowledge.chances.counts import serve_first_worth
from knowledge.chances.game_table import loop_of, points_needed, tie_and_beyond
from knowledge.chances.match_chance import match_chance
from knowledge.chances.rates import RallyRates
from knowledge.dataclass import dataclass
from knowledge.game import GameFormat, MatchState, start


@dataclass(frozen=True, slots=True, kw_only=True)
class TossWorth:
    """What the toss may win, in chances of the match: serving first, and the better end first.

    Negative where the other choice is the better one. `serve_first_game` is of one game.
    """

    serve_first_game: float
    serve_first_match: float
    better_end_first: float


def toss_worth(format: GameFormat, rates: RallyRates, *, end_points: float) -> TossWorth:
    """What the toss is worth at these rates; the better end is worth `end_points` a rally to us.

    Half of that is added at the better end and taken off at the other, serving and receiving.
    """
    p, q = rates.serving, rates.receiving
    serving, receiving = (
        match_chance(MatchState(game=start(format, we_serve=first)), p, q)
        for first in (True, False)
    )
    half = end_points / 2
    good, bad = rates.shifted(half, half), rates.shifted(-half, -half)
    return TossWorth(
        serve_first_game=serve_first_worth(format, p, q),
        serve_first_match=serving - receiving,
        better_end_first=_by_end(format, good, bad) - _by_end(format, bad, good),
    )


def _by_end(format: GameFormat, first: RallyRates, then: RallyRates) -> float:
    """Our chance of the match starting at the end of rates `first`, either side serving first."""
    return sum(_match(format, first, then, we_serve=serve) for serve in (True, False)) / 2


def _match(
    format: GameFormat,
    first: RallyRates,
    then: RallyRates,
    *,
    we_serve: bool,
    won: int = 0,
    lost: int = 0,
) -> float:
    """Ends and first serve change after every game, and ends once more within the last."""
    needed = format.games_needed
    if max(won, lost) == needed:
        return float(won > lost)
    last = won + lost == format.best_of - 1
    game = game_across_ends(format, first, then if last else first, we_serve=we_serve)
    after_win, after_loss = (
        _match(format, then, first, we_serve=not we_serve, won=won + gained, lost=lost + 1 - gained)
        for gained in (1, 0)
    )
    return game * after_win + (1 - game) * after_loss


def game_across_ends(
    format: GameFormat, first: RallyRates, then: RallyRates, *, we_serve: bool
) -> float:
    """Our chance of a game whose rates are `then` once a side has reached the end-change score.

    The same sweep as `game_table`, with each score solved at the end it is played at.
    """
    ways = 4 if format.has_two_servers else 2
    won, lost = (1.0,) * ways, (0.0,) * ways
    before, later = (
        loop_of(format, rates.serving, rates.receiving, won=won, lost=lost)
        for rates in (first, then)
    )
    length, change = points_needed(format), format.end_change_at
    tie, _ = tie_and_beyond(format, later, won, lost, lost)
    row = [tie, *later.row([won] * (length - 1), tie)]
    for ours in range(length - 2, -1, -1):
        changed = length if ours >= change else max(0, length - change)
        after_change = later.row(row[:changed], lost)
        row = after_change + before.row(row[changed:], after_change[-1] if after_change else lost)
    state = start(format, we_serve=we_serve)
    return row[-1][(0 if we_serve else ways // 2) + (state.server == 2)]
