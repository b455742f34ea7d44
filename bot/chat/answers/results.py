"""Results in words: a finished game counts as one, a finished match ends what was said of it."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.answers.desk import Desk
from bot.chat.answers.entries import after_entry, close
from bot.chat.question import ResultSaid
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.game import GameFormat, faults, state_at
from scouting_db.values import EntryKind, EntryRow, MatchId, Winner


def take_result(desk: Desk, said: ResultSaid) -> Reply:
    """ "Won 11-8 9-11 11-6" ends the match; "won 11-8" in a best of three is its next game."""
    match = desk.context.match
    if match is None:
        return Reply(text=wording("match.none"))
    wrong = [fault for game in said.games for fault in _faults(game, desk.format())]
    if wrong:
        return Reply(text=wording("score.questioned").format(fault=wrong[0]))
    desk.trace |= {"match": match}
    if len(said.games) == 1 and not _decides(said.games, desk.format()):
        return _take_game(desk, match, said.games[0])
    won = said.won
    if won is None:
        won = sum(ours > theirs for ours, theirs in said.games) * 2 > len(said.games)
    row = desk.book.append(
        match,
        EntryKind.RESULT,
        won_by=Winner.US if won else Winner.THEM,
        detail={"games": [list(game) for game in said.games], "words": said.text},
        inbox=desk.inbox,
    )
    assert isinstance(row, EntryRow), "an entry without an expected number always lands"
    desk.record("entry", {"match": match, "n": row.n}, {"context": desk.context.to_json()})
    return close(desk, match, won=won, games=" ".join(f"{a}-{b}" for a, b in said.games))


def _decides(games: Sequence[tuple[int, int]], format: GameFormat) -> bool:
    """Whether these games alone win the match for somebody."""
    ours = sum(first > second for first, second in games)
    return max(ours, len(games) - ours) > format.best_of // 2


def _take_game(desk: Desk, match: MatchId, game: tuple[int, int]) -> Reply:
    """The running game ends at this score, and the match goes on or ends with it."""
    row = desk.book.append(
        match,
        EntryKind.SCORE,
        game_no=desk.log().next_game_no,
        ours=game[0],
        theirs=game[1],
        we_serve=game[0] > game[1],
        inbox=desk.inbox,
    )
    return after_entry(desk, match, row)


def _faults(game: tuple[int, int], format: GameFormat) -> tuple[str, ...]:
    """Of a finished game; whichever server won it, whoever won it was serving or scored last."""
    server = 1 if format.has_two_servers else None
    won = game[0] > game[1]
    return faults(state_at(format, ours=game[0], theirs=game[1], we_serve=won, server=server))
