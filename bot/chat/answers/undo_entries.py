"""Lines of a match's log taken back and put back, and the match opened or closed with them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from bot.chat.answers.desk import Desk
from bot.chat.answers.pool_order import moved_on_from
from bot.chat.context import Context
from bot.chat.match_log import fold, format_from_json, unvoided
from knowledge.vocabulary import Mode
from scouting_db.values import EntryKind, EntryRow, MatchId, MatchState, Winner


def void_entry(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    """Take a line of a match's log out, and open the match again if that line closed it."""
    match = MatchId(targets["match"])
    entries = desk.book.entries(match)
    for n in reversed(_lines_of(targets)):
        desk.book.void(match, n, inbox=desk.inbox)
    if not _is_over(desk, match):
        left = unvoided(desk.book.entries(match))
        desk.book.set_state(match, MatchState.RUNNING if left else MatchState.ANNOUNCED)
        if "context" in before:
            _remember_match(desk, match, before)
    return entry_words(entries, targets)


def unvoid_entry(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    """Put a line back, and close the match if it ends it."""
    match = MatchId(targets["match"])
    entries = desk.book.entries(match)
    for n in _lines_of(targets):
        voids = [one.n for one in entries if one.voids == n]
        if voids:
            desk.book.void(match, voids[-1], inbox=desk.inbox)
    over = _is_over(desk, match)
    desk.book.set_state(match, MatchState.OVER if over else MatchState.RUNNING)
    if match == desk.context.match:
        mode = _mode_of(desk, match, entries, targets)
        desk.context = desk.context.after_result() if over else replace(desk.context, mode=mode)
    return entry_words(entries, targets)


def _mode_of(
    desk: Desk, match: MatchId, entries: Sequence[EntryRow], targets: Mapping[str, Any]
) -> Mode:
    """A break where a time-out is back or a game is over, else the match goes on."""
    rested = any(one.n == targets["n"] and one.kind is EntryKind.TIMEOUT for one in entries)
    between_games = fold(desk.book.entries(match), desk.format()).game.is_over
    return Mode.BREAK if rested or between_games else Mode.MATCH


def _lines_of(targets: Mapping[str, Any]) -> tuple[int, ...]:
    """The log lines of one change in order; a correction's own void is one of them."""
    return (*targets.get("also", ()), targets["n"])


def is_superseded(entries: Sequence[EntryRow], targets: Mapping[str, Any]) -> bool:
    """Whether the log went on since these lines were taken back: they can't be put back then.

    It goes on with a new line, and with an older one that was taken back later and still is:
    what was undone last is put back first.
    """
    lines = _lines_of(targets)
    kinds = {one.n: one.kind for one in entries}
    undone_at = max((one.n for one in entries if one.voids in lines), default=None)
    if undone_at is None:
        return False
    put_back = {one.voids for one in entries if one.kind is EntryKind.VOID}
    for one in entries:
        if one.n <= undone_at or one.voids in lines:
            continue
        is_undo = one.voids is not None and kinds.get(one.voids) is not EntryKind.VOID
        if one.kind is not EntryKind.VOID or (is_undo and one.n not in put_back):
            return True
    return False


def _remember_match(desk: Desk, match: MatchId, before: Mapping[str, Any]) -> None:
    """A match closed by what was taken back is on again; another one that is on stays on."""
    if desk.context.match == match:
        desk.context = replace(desk.context, mode=Context.from_json(before["context"]).mode)
    elif desk.context.match is None or moved_on_from(desk, match):
        remember_before(desk, before)


def _is_over(desk: Desk, match: MatchId) -> bool:
    """Whether what is left of the log ends the match, whichever match the chat is in."""
    entries, row = desk.book.entries(match), desk.book.match(match)
    if any(one.kind is EntryKind.RESULT for one in unvoided(entries)):
        return True
    return row is not None and fold(entries, format_from_json(row.format)).we_won is not None


_ENTRY_WORDS = {
    EntryKind.GAME: "who serves first",
    EntryKind.SCORE: "the score",
    EntryKind.TIMEOUT: "the time-out",
    EntryKind.SIDES: "who plays where",
    EntryKind.RESULT: "the result",
}


def entry_words(entries: Sequence[EntryRow], targets: Mapping[str, Any]) -> str:
    """What a change of the log was about."""
    found = next((one for one in entries if one.n == targets["n"]), None)
    if found is not None and found.kind is EntryKind.RALLY and found.won_by is not None:
        return "our rally" if found.won_by is Winner.US else "their rally"
    return "that entry" if found is None else _ENTRY_WORDS.get(found.kind, "that entry")


def remember_before(desk: Desk, before: Mapping[str, Any]) -> None:
    """The chat's memory as it was, but names still asked about stay asked about.

    Their numbers must never be given out twice: a button would settle the wrong name.
    """
    asked = desk.context
    desk.context = replace(
        Context.from_json(before["context"]),
        pendings=asked.pendings,
        pending_count=asked.pending_count,
    )
