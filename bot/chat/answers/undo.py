"""Undo and redo of anything: each change says what it did, and what stood before."""

from __future__ import annotations

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.formats import is_under_way
from bot.chat.answers.note_offers import can_be_added_again
from bot.chat.answers.notes import stored
from bot.chat.answers.pool_undo import (
    can_come_again,
)
from bot.chat.answers.rally_details import stands_as
from bot.chat.answers.scoreboard import scoreboard
from bot.chat.answers.scout_card import is_of_card, with_question
from bot.chat.answers.undo_entries import (
    is_superseded,
)
from bot.chat.answers.undo_ways import REDO, TAKES_OUT, UNDO
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from scouting_db.values import (
    ChangeId,
    ChangeRow,
    MatchId,
    MatchState,
    NoteId,
)


def undo_last(desk: Desk) -> Reply:
    """Take back the newest change of this chat that stands."""
    change = desk.book.last_change(desk.chat.chat)
    if change is None:
        return Reply(text=wording("nothing_to_undo"))
    return _undo(desk, change)


def can_be_put_back(desk: Desk, change: ChangeRow) -> bool:
    """Whether it is of a kind that can be, and its match's log or its note did not go on."""
    too_late = _is_overtaken(desk, change) or _comes_too_late(desk, change)
    return change.verb in REDO and not too_late


def _is_overtaken(desk: Desk, change: ChangeRow) -> bool:
    if change.verb == "add_claim":
        return not can_be_added_again(desk, change)
    if change.verb == "rally_detail":
        return not stands_as(desk, change.targets, change.before)
    if change.verb == "read_note":
        return not _reads_as_before(desk, change)
    if change.verb == "pool":
        return not can_come_again(change.targets)
    if change.verb != "entry":
        return False
    return is_superseded(desk.book.entries(MatchId(change.targets["match"])), change.targets)


def _reads_as_before(desk: Desk, change: ChangeRow) -> bool:
    """Whether the note still says what it said before that reading, and may be read so again."""
    row = desk.book.note(NoteId(change.targets["note"]))
    if row is None or row.deleted or "after" not in change.targets:
        return False
    return bool(stored(row.observations) == change.before["observations"])


def undo(desk: Desk, change_id: ChangeId) -> Reply:
    """Take back one change by its button; a second press says so and does nothing."""
    change = desk.book.change(change_id)
    if change is None or change.verb not in UNDO:
        return Reply(text=wording("unclear.too_old"))
    if change.undone:
        return Reply(text=wording("already_undone"))
    return _undo(desk, change)


def redo(desk: Desk, change_id: ChangeId) -> Reply:
    """Put back what was undone."""
    change = desk.book.change(change_id)
    if change is None or not change.undone or change.verb not in REDO:
        return Reply(text=wording("unclear.too_old"))
    if _is_overtaken(desk, change) or _comes_too_late(desk, change):
        return _told(desk, change, wording("superseded"), None)
    what = REDO[change.verb](desk, change.targets, change.before)
    desk.book.mark_redone(change.change)
    desk.changed()
    key = "taken_out_again" if change.verb in TAKES_OUT else "redone"
    return _told(desk, change, wording(key).format(what=what), undo_button(change.change))


def _comes_too_late(desk: Desk, change: ChangeRow) -> bool:
    """A format once it is played in, and numbers of ours once another match is on."""
    match = change.targets.get("match")
    if change.verb == "format":
        return match is not None and is_under_way(desk.book.entries(MatchId(match)))
    return change.verb == "own_rates" and match != desk.context.match


def _undo(desk: Desk, change: ChangeRow) -> Reply:
    if _comes_too_late(desk, change):
        return Reply(text=wording("unclear.too_old"))
    if change.verb == "rally_detail" and not stands_as(
        desk, change.targets, change.targets["after"]
    ):
        return Reply(text=wording("unclear.too_old"))
    was_over = _closed_match(desk, change)
    what = UNDO[change.verb](desk, change.targets, change.before)
    desk.book.mark_undone(change.change)
    desk.changed()
    key = "brought_back" if change.verb in TAKES_OUT else "undone"
    text = wording(key).format(what=what)
    if was_over and not _closed_match(desk, change):
        text = "\n".join([text, wording("match.on_again")])
    if change.verb not in REDO or (change.verb == "pool" and not can_come_again(change.targets)):
        return Reply(text=text)
    again = Button(label=wording("redo"), payload=tap(Verb.REDO, change.change))
    return _told(desk, change, text, again)


def _closed_match(desk: Desk, change: ChangeRow) -> bool:
    """Whether the change is of a match's log, and that match is over."""
    row = desk.book.match(MatchId(change.targets["match"])) if change.verb == "entry" else None
    return row is not None and row.state is MatchState.OVER


def _told(desk: Desk, change: ChangeRow, text: str, button: Button | None) -> Reply:
    """What was done; in a running match with the score as it now stands and the taps to go on."""
    match, more = change.targets.get("match"), [] if button is None else [button]
    if is_of_card(desk, change):
        return with_question(desk, Reply(text=text, buttons=rows(more)))
    if change.verb not in ("entry", "rally_detail") or match is None or match != desk.context.match:
        return Reply(text=text, buttons=rows(more))
    score, taps = scoreboard(desk, MatchId(match))
    return Reply(
        text="\n".join([text, score]), buttons=rows([*taps, *more]), about=("match", match)
    )
