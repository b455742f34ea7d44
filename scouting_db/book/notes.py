"""Notes whole as typed, and the observations derived from them."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any
from sqlalchemy import Connection
from knowledge.evidence import Observation
from knowledge.vocabulary import *  # noqa
from scouting_db.values import *  # noqa
from scouting_db.book.scope import Scope


class Notes(Scope):
    """Notes and observations."""

    def add_note(
        self,
        text: str,
        observations: Sequence[NewObservation] = (),
        *,
        parser: int = 1,
        chat: ChatId | None = None,
        external_message_id: int | None = None,
        unread: bool = False,
        at: Micros | None = None,
    ) -> NoteId:
        """Keep the words whole with what was understood; `unread` where understanding failed; `at` is now unless said."""
        raise NotImplementedError

    def replace_observations(
        self,
        note: NoteId,
        observations: Sequence[NewObservation],
        *,
        origin: str | None = "corrected",
        parser: int = 1,
    ) -> None:
        """What the note says instead, and the note counts as read; origin None keeps each one's own."""
        raise NotImplementedError

    def delete_note(self, note: NoteId) -> None:
        """Mark it deleted: its observations no longer count."""
        raise NotImplementedError

    def restore_note(self, note: NoteId) -> None:
        """"""
        raise NotImplementedError

    def note(self, note: NoteId) -> NoteRow | None:
        """One note, deleted ones included."""
        raise NotImplementedError

    def note_of_message(self, chat: ChatId, external_message_id: int) -> NoteRow | None:
        """The note a message became, for edits."""
        raise NotImplementedError

    def notes_of(self, player: PlayerId, *, limit: int = 20) -> tuple[NoteRow, ...]:
        """Undeleted notes with a claim about the player, newest first."""
        raise NotImplementedError

    def recent_notes(self, *, limit: int = 20) -> tuple[NoteRow, ...]:
        """Undeleted notes, newest first."""
        raise NotImplementedError

    def unread_notes(self) -> tuple[NoteRow, ...]:
        """Undeleted notes nobody understood yet, oldest first."""
        raise NotImplementedError

    def observations(self, players: Collection[PlayerId] | None = None) -> tuple[Observation, ...]:
        """What undeleted notes say of these players (None: of everyone), as evidence; days in the book's zone."""
        raise NotImplementedError
