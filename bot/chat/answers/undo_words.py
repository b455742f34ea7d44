"""Undo and redo in words: one step at a time, and a slip of the score before anything else."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.serve_asked import drop_waiting
from bot.chat.answers.undo import can_be_put_back, redo, undo, undo_last
from bot.chat.answers.undo_entries import entry_words
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import UndoSaid
from bot.chat.wording import wording
from scouting_db.values import ChangeId, ChangeRow, MatchId, NoteId


def take_back(desk: Desk, said: UndoSaid) -> Reply:
    """Undo or redo in words. One step at a time, whatever was asked for."""
    if said.redo:
        return redo_last(desk)
    waited = drop_waiting(desk)
    if waited is not None:
        return waited
    if said.of_rally:
        _drop_details(desk)
    if said.of_score:
        return _undo_score(desk)
    if said.of_note:
        return _undo_note(desk)
    reply = undo_last(desk)
    following = desk.book.last_change(desk.chat.chat) if said.everything else None
    if following is None:
        return reply
    more = Button(label=wording("undo_more"), payload=tap(Verb.UNDO, following.change))
    return replace(reply, buttons=(*reply.buttons, *rows([more])))


_OF_NOTES = frozenset(["add_note", "delete_note", "part_note", "read_note", "add_claim"])


def _undo_note(desk: Desk) -> Reply:
    """The note written last, whatever was done since: no match goes because a note was meant."""
    last = desk.book.last_change(desk.chat.chat)
    if last is not None and last.verb in _OF_NOTES:
        return undo_last(desk)
    written = desk.book.last_change(desk.chat.chat, verb="add_note")
    row = None if written is None else desk.book.note(NoteId(written.targets["note"]))
    if written is None or row is None or row.deleted:
        return Reply(text=wording("no_note_to_undo"))
    return undo(desk, written.change)


MOST_DETAILS = 6
"""Details of one rally that are taken back with it. Our own bound."""


def _drop_details(desk: Desk) -> None:
    """What was told of the last rally goes before the rally itself does."""
    for _ in range(MOST_DETAILS):
        last = desk.book.last_change(desk.chat.chat)
        if last is None or last.verb != "rally_detail":
            return
        undo_last(desk)


def _undo_score(desk: Desk) -> Reply:
    """A slip in the running match; where something else was done last, it is asked which."""
    last = desk.book.last_change(desk.chat.chat)
    counted = desk.book.last_change(desk.chat.chat, verb="entry")
    match = desk.context.match
    if last is None or (counted is not None and counted.change == last.change):
        return undo_last(desk)
    changes = [last]
    if counted is not None and counted.targets["match"] == match:
        changes.insert(0, counted)
    buttons = [
        Button(
            label=wording("undo_this").format(what=_called(desk, one)),
            payload=tap(Verb.UNDO, one.change),
        )
        for one in changes
    ]
    return Reply(text=wording("undo_which"), buttons=rows(buttons))


def _called(desk: Desk, change: ChangeRow) -> str:
    """What a change is called on its button."""
    if change.verb != "entry":
        return _CHANGED.get(change.verb, "the last change")
    return entry_words(desk.book.entries(MatchId(change.targets["match"])), change.targets)


_CHANGED = {
    "add_note": "the note",
    "delete_note": "deleting the note",
    "part_note": "deleting that part",
    "read_note": "reading the note",
    "add_claim": "what you added",
    "announce": "the match",
    "coach": "whom you speak for",
    "pool": "the pool",
    "video": "the rallies of the video",
    "pool_match": "which match is next",
    "add_player": "the player",
    "pair": "who plays with whom",
    "agree": "what you agreed",
    "nickname": "the nickname",
    "rename": "the new name",
    "context": "your pair",
    "format": "the format",
    "rally_detail": "how the rally went",
    "import": "what came with the file",
    "open_book": "opening that book",
    "times": "times and reminders",
    "base_rates": "your usual rally numbers",
    "own_rates": "your rally numbers",
}
"""What a change is called on a button before it is taken back."""


def redo_last(desk: Desk) -> Reply:
    """Put back what was undone last, unless something newer stands or was counted since."""
    passed: set[ChangeId] = set()
    while (change := desk.book.last_undone(desk.chat.chat, but=passed)) is not None:
        if can_be_put_back(desk, change):
            return redo(desk, change.change)
        passed.add(change.change)
    return Reply(text=wording("nothing_to_redo"))
