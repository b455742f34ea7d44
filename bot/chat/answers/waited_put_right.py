"""Notes that waited for a name, one of which put the other right: "no I said it wrong, it is Piet".

While they wait nothing of them is read, so the one is taken back once both are.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers import note_rewritten
from bot.chat.answers.claims_told import observed_line
from bot.chat.answers.desk import Desk
from bot.chat.note_put_right import told_instead
from bot.chat.pending import Pending
from bot.chat.reply import Reply
from bot.chat.wording import wording
from bot.chat.words import words
from scouting_db.values import NewObservation, NoteId, NoteRow

_AS_WELL = frozenset(["too", "also", "both", "likewise", "well"])
"""What is true of another as well: "no, piet has fast hands too" puts nothing right."""


def with_waited_put_right(desk: Desk, reply: Reply, waited: Sequence[Pending]) -> Reply:
    """The reply, and what an earlier note said of one that a later one says of another instead."""
    rows = [(one, row) for one in waited if (row := _row(desk, one)) is not None]
    for at, (later, right) in enumerate(rows):
        if told_instead(later.text) is None or _AS_WELL & {
            word.folded for word in words(later.text)
        }:
            continue
        for _, wrong in rows[:at]:
            gone = [one for one in wrong.observations if _is_of_another(one, right)]
            if gone:
                kept = [one for one in wrong.observations if one not in gone]
                told = wording("note.taken_back_of").format(claims=observed_line(desk, gone))
                changed = note_rewritten.rewrite(desk, wrong, kept)
                reply = replace(
                    reply,
                    text=f"{reply.text}\n{told}",
                    buttons=(*reply.buttons, *changed.buttons),
                )
    return reply


def _row(desk: Desk, pending: Pending) -> NoteRow | None:
    return None if pending.note is None else desk.book.note(NoteId(pending.note))


def _is_of_another(one: NewObservation, right: NoteRow) -> bool:
    said = (one.trait, one.value, one.denied)
    same = [each for each in right.observations if (each.trait, each.value, each.denied) == said]
    return bool(same) and all(each.player != one.player for each in same)
