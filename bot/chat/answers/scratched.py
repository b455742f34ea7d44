"""A note put right by telling it anew: "scratch that, Idris plays right" after "Idris plays left".

Without a last note that says otherwise such words take back a note of what they tell.
"""

from __future__ import annotations

import re
from dataclasses import replace

from bot.chat.answers import notes
from bot.chat.answers.desk import Desk
from bot.chat.answers.note_rewritten import replace_claims
from bot.chat.reply import Reply
from bot.chat.said import BookSaid, NoteSaid
from bot.chat.understand import understand_note
from knowledge.regex import regex
from scouting_db.values import NoteId, NoteRow

_SCRATCHES = regex(
    r"^\W*(?:(?:no|nope|oops|wait|sorry|ok|actually|please|pls)\W+)*"
    r"(?:(?:scratch|strike)\s+that\b[\s,.:;!-]*"
    r"|(?:forget|delete|cancel|scrap|ignore|undo)\s+that\s*[,.:;!-][\s,.:;!-]*)",
    re.IGNORECASE,
)
"""Without a pause "forget that okafor is slow" says what is to be forgotten, not what is right."""

_OF_A_NOTE = ("add_note", "read_note", "add_claim")


def told_anew(desk: Desk, said: BookSaid) -> Reply | None:
    """What is right noted instead of the last note, where the two differ; None for all else."""
    scratched = _SCRATCHES.match(said.text)
    last = _last_note(desk)
    if scratched is None or last is None:
        return None
    told = understand_note(said.text[scratched.end() :], chat=desk.chat_view())
    if not _differs(last, told):
        return None
    right = {(one.player, one.trait) for one in told.claims}
    if not {(one.player, one.trait) for one in last.observations} <= right:
        # The note says more than what is put right: the rest of it stays.
        desk.book.add_note(said.text, chat=desk.chat.chat, parser=notes.PARSER_VERSION)
        return replace_claims(desk, last, notes.observations(told))
    deleted = notes.delete(desk, last.note)
    reply = notes.take(desk, told)
    return replace(reply, text="\n".join([deleted.text, reply.text]))


def _last_note(desk: Desk) -> NoteRow | None:
    change = desk.book.last_change(desk.chat.chat)
    if change is None or change.verb not in _OF_A_NOTE:
        return None
    row = desk.book.note(NoteId(change.targets["note"]))
    return None if row is None or row.deleted else row


def _differs(last: NoteRow, told: NoteSaid) -> bool:
    """Whether both speak of the same trait of somebody, and not the same of it."""
    was = {(one.player, one.trait): (one.value, one.denied) for one in last.observations}
    return any(
        (one.player, one.trait) in was and was[one.player, one.trait] != (one.value, one.denied)
        for one in told.claims
    )
