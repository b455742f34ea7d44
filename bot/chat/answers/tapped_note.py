"""A note that was tapped, not typed: one claim, seen live, in the words one would have typed."""

from __future__ import annotations

from typing import Final

from bot.chat.answers import notes
from bot.chat.answers.desk import Desk
from knowledge.vocabulary import PlayerId, Seen, Trait, Value
from scouting_db.values import ChangeId, NewObservation, NoteId

TAPPED_WEIGHT: Final = 1.0
"""A tap says no more and no less than the plain words."""


def tapped_note(
    desk: Desk, player: PlayerId, trait: Trait, value: Value, *, words: str
) -> tuple[NoteId, ChangeId]:
    """The note as stored, and the change that undoes it."""
    observation = NewObservation(
        player=player,
        trait=trait,
        value=value,
        weight=TAPPED_WEIGHT,
        seen=Seen.LIVE,
        origin="tapped",
    )
    note = desk.book.add_note(
        words, [observation], parser=notes.PARSER_VERSION, chat=desk.chat.chat
    )
    change = desk.record("add_note", {"note": note}, {})
    desk.changed()
    return note, change
