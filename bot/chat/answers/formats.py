"""How a match is played, told after it was announced."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.entries import with_score
from bot.chat.answers.game_start import open_game
from bot.chat.match_log import format_to_json, unvoided
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.said import FormatTold
from bot.chat.wording import wording
from knowledge.game import Discipline, FormatError, GameFormat, Scoring, is_opening
from scouting_db.values import EntryKind, EntryRow, MatchId

_PLAYED = frozenset({EntryKind.RALLY, EntryKind.SCORE, EntryKind.TIMEOUT, EntryKind.RESULT})


def take_format(desk: Desk, said: FormatTold) -> Reply:
    """The announced match is played so from now on; once rallies are played it stays as it is."""
    row, standing = desk.match_row(), desk.format()
    try:
        format = said.format.over(standing)
    except FormatError as error:
        return Reply(text=wording("format.cannot_be").format(fault=error))
    if row is None:
        key = "format.no_pool" if said.of_pool else "format.no_match"
        return Reply(text=wording(key).format(format=format_words(format)))
    if said.of_game and format.target != standing.target:
        return _of_one_game(desk, row.match, said, other=format.target)
    if said.of_game and said.we_serve is not None:
        return _opened(desk, row.match, we_serve=said.we_serve) or with_score(
            desk, row.match, wording("format.is_so").format(format=format_words(format))
        )
    if said.asks:
        return Reply(text=wording("format.asked").format(format=format_words(standing)))
    if format == standing:
        return Reply(text=wording("format.is_so").format(format=format_words(format)))
    if is_under_way(desk.entries()):
        text = wording("format.under_way").format(format=format_words(standing))
        return with_score(desk, row.match, text)
    desk.book.replace_match(replace(row, format=format_to_json(format)))
    desk.match_changed()
    change = desk.record(
        "format",
        {"match": row.match, "format": format_to_json(format)},
        {"format": dict(row.format)},
    )
    return Reply(
        text=wording("format.set").format(format=format_words(format)),
        buttons=rows([undo_button(change)]),
        about=("match", row.match),
    )


def _of_one_game(desk: Desk, match: MatchId, said: FormatTold, *, other: int) -> Reply:
    """A match has one target in the log: it is said that a single game to another has none.

    Who serves that game first holds all the same.
    """
    text = wording("format.of_game").format(target=desk.format().target, other=other)
    opened = None if said.we_serve is None else _opened(desk, match, we_serve=said.we_serve)
    if opened is None:
        return with_score(desk, match, text)
    return replace(opened, text=f"{text}\n{opened.text}")


def _opened(desk: Desk, match: MatchId, *, we_serve: bool) -> Reply | None:
    """The game that begins now, with its first server; None in the middle of one."""
    game = desk.log().match.game
    is_beginning = game.is_over or is_opening(game)
    return open_game(desk, match, we_serve=we_serve) if is_beginning else None


def is_under_way(entries: Sequence[EntryRow]) -> bool:
    """Whether anything of the match was played or told: its format is settled then."""
    return any(entry.kind in _PLAYED for entry in unvoided(entries))


def format_as_stored(desk: Desk, match: MatchId, stored: GameFormat) -> None:
    """The match's format put back or set again."""
    row = desk.book.match(match)
    if row is not None:
        desk.book.replace_match(replace(row, format=format_to_json(stored)))
        desk.match_changed()


def format_words(format: GameFormat) -> str:
    """`best of 3 to 11, rally scoring`."""
    games = "one game" if format.best_of == 1 else f"best of {format.best_of}"
    parts = [
        f"{games} to {format.target}",
        "singles" if format.discipline is Discipline.SINGLES else "",
        "rally scoring" if format.scoring is Scoring.RALLY else "",
        "frozen game point" if format.freeze_on_serve else "",
        "win by 1" if format.win_by == 1 else "",
        f"cap {format.cap}" if format.cap is not None else "",
        _timeouts_words(format),
    ]
    return ", ".join(part for part in parts if part)


def _timeouts_words(format: GameFormat) -> str:
    """Only where the event has another number than the rulebook."""
    match format.timeouts_each:
        case None:
            return ""
        case 0:
            return "no time-outs"
        case 1:
            return "1 time-out each"
        case more:
            return f"{more} time-outs each"
