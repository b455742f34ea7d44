"""A match that its games have not decided, closed as it stands: it was one game only."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.entries import close
from bot.chat.answers.formats import take_format
from bot.chat.answers.results import score_of
from bot.chat.format_said import SaidFormat
from bot.chat.match_log import format_from_json, read_log
from bot.chat.match_results import Games
from bot.chat.payload import Verb, tap
from bot.chat.render import rows, with_buttons
from bot.chat.reply import Button, Reply
from bot.chat.said import FormatTold, RemarkSaid
from bot.chat.wording import wording
from scouting_db.values import EntryKind, EntryRow, MatchId, MatchRow, MatchState, Winner

LOOKED_AT = 5
"""Newest matches looked through for one that was left open."""


def take_over(desk: Desk, said: RemarkSaid) -> Reply:
    """ "That was the whole match": of the one at hand, else of the one before that was left open.

    Before anything is played "one game" tells how the next match is played.
    """
    if said.number == 1:
        told = FormatTold(text=said.text, format=SaidFormat(best_of=1))
        return one_game_told(desk, told) or take_format(desk, told)
    current = desk.match_row() if desk.log().is_begun else left_open(desk)
    closed = None if current is None else _close(desk, current, said.text)
    return closed or Reply(text=wording("match.over_how"))


def one_game_told(desk: Desk, said: FormatTold) -> Reply | None:
    """One game told as the format once it is played: it closes that match.

    Of a match that was left open before the one at hand; then it is how this one is played too.
    None where it closes nothing.
    """
    if said.of_game or said.format.best_of != 1:
        return None
    current = desk.match_row()
    if current is not None and desk.log().is_begun:
        return _close(desk, current, said.text)
    left = left_open(desk)
    closed = None if left is None else _close(desk, left, said.text)
    if closed is None or current is None:
        return closed
    following = take_format(desk, said)
    return replace(closed, text=f"{closed.text}\n{following.text}")


def close_by_tap(desk: Desk, match: MatchId) -> Reply:
    """The button under the next announcement; a second press finds it closed."""
    row = desk.book.match(match)
    if row is None:
        return Reply(text=wording("unclear.too_old"))
    if row.state is MatchState.OVER:
        return Reply(text=wording("already_counted"))
    return _close(desk, row, wording("match.one_game")) or Reply(text=wording("unclear.too_old"))


def asking_if_over(desk: Desk, reply: Reply, before: MatchRow | None) -> Reply:
    """The announcement of the next match, and whether the one before it was one game only."""
    games = () if before is None else open_games(desk, before)
    if before is None or not games or _won(games) is None:
        return reply
    them = before.their_pair
    names = "/".join(desk.names(() if them is None else them.players))
    asked = wording("match.left_open").format(names=names, games=score_of(games))
    button = Button(label=wording("match.one_game"), payload=tap(Verb.OVER, before.match))
    return with_buttons(replace(reply, text=f"{reply.text}\n{asked}"), [button])


def left_open(desk: Desk) -> MatchRow | None:
    """The newest match that stopped between its games, if it is not the one at hand."""
    others = (row for row in desk.book.matches(limit=LOOKED_AT) if row.match != desk.context.match)
    return next((row for row in others if open_games(desk, row)), None)


def open_games(desk: Desk, row: MatchRow) -> Games:
    """The games of a match that is not over, where no further one was begun; ours first."""
    if row.state is not MatchState.RUNNING:
        return ()
    log = read_log(desk.book.entries(row.match), format_from_json(row.format))
    return log.games if log.match.game.is_over and log.match.we_won is None else ()


def _close(desk: Desk, row: MatchRow, text: str) -> Reply | None:
    games = open_games(desk, row)
    won = _won(games)
    if won is None:
        return None
    is_current = row.match == desk.context.match
    entry = desk.book.append(
        row.match,
        EntryKind.RESULT,
        won_by=Winner.US if won else Winner.THEM,
        detail={"games": [list(game) for game in games], "words": text},
        inbox=desk.inbox,
    )
    assert isinstance(entry, EntryRow), "an entry without an expected number always lands"
    change = desk.record(
        "entry", {"match": row.match, "n": entry.n}, {"context": desk.context.to_json()}
    )
    if is_current:
        return close(desk, row.match, won=won, games=score_of(games))
    desk.book.set_state(row.match, MatchState.OVER)
    desk.changed()
    key = "match.before_won" if won else "match.before_lost"
    names = "/".join(desk.names(() if row.their_pair is None else row.their_pair.players))
    told = wording(key).format(games=score_of(games), names=names)
    return Reply(text=told, buttons=rows([undo_button(change)]), about=("match", row.match))


def _won(games: Games) -> bool | None:
    """Who is ahead in games; None where nobody is."""
    ours = sum(first > second for first, second in games)
    return None if 2 * ours == len(games) else 2 * ours > len(games)
