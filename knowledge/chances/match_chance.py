"""From games to the match: games are independent, and the first serve changes sides each game.

That the initial service switches after each game is the rulebook's 5.B (from memory).
"""

from __future__ import annotations

from knowledge.chances.game_table import GameTable, StateError, game_table
from knowledge.chances.rates import Number
from knowledge.game import GameFormat, MatchState, match_faults, start


def match_chance(match: MatchState, serving: Number, receiving: Number) -> Number:
    """Our chance to win the match; StateError, with every fault, for a state no match reaches."""
    checked_match(match)
    return chance_of_match(match, game_table(match.format, serving, receiving))


def chance_of_match(match: MatchState, table: GameTable[Number]) -> Number:
    """The same from a game's table, for a match that is known to be sound."""
    game = table.at(match.game)
    after_win, after_loss = after_this_game(match, table)
    return game * after_win + (1 - game) * after_loss


def checked_match(match: MatchState) -> None:
    """StateError, with every fault, unless a match reaches the state."""
    wrong = match_faults(match)
    if wrong:
        raise StateError(" ".join(wrong))


def after_this_game(match: MatchState, table: GameTable[Number]) -> tuple[Number, Number]:
    """Our chance to win the match once this game is won, and once it is lost."""
    if match.game.we_started is None:
        # Nobody said who began: taken as even. No matter in side-out doubles; in singles and in
        # rally scoring it may be up to 2 in 100 of the match.
        both = [_after(match, table, we_start=we_start) for we_start in (True, False)]
        return (both[0][0] + both[1][0]) / 2, (both[0][1] + both[1][1]) / 2
    return _after(match, table, we_start=not match.game.we_started)


def _after(match: MatchState, table: GameTable[Number], *, we_start: bool) -> tuple[Number, Number]:
    won, lost, format = match.games_ours, match.games_theirs, match.format
    return (
        _from_games(won + 1, lost, table, format, we_start=we_start),
        _from_games(won, lost + 1, table, format, we_start=we_start),
    )


def _from_games(
    won: int, lost: int, table: GameTable[Number], format: GameFormat, *, we_start: bool
) -> Number:
    needed = format.games_needed
    if max(won, lost) >= needed:
        return (table.won if won > lost else table.lost)[0]
    game = table.at(start(format, we_serve=we_start))
    return game * _from_games(won + 1, lost, table, format, we_start=not we_start) + (
        1 - game
    ) * _from_games(won, lost + 1, table, format, we_start=not we_start)
