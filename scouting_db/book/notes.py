"""Notes whole as typed, and the claims derived from their words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Any

from sqlalchemy import and_, bindparam, delete, insert, literal, select, update

from knowledge.vocabulary import PlayerId, Seen, Tag, Trait, Value
from scouting_db.book.scope import Scope
from scouting_db.tables import note, observation, person
from scouting_db.values import ChatId, Micros, NewObservation, NoteId, NoteRow, Part

_ADD = insert(note)
_ADD_OBSERVATIONS = insert(observation)
_OF_BOOK = note.c.book_id == bindparam("book")
_THIS = (_OF_BOOK, note.c.note_id == bindparam("note"))
_CHANGE = update(note).where(*_THIS).values(changed=bindparam("version"))
_SET_DELETED = _CHANGE.values(deleted_at=bindparam("when"))
_SET_READ = _CHANGE.values(unread=False)
_DROP_OBSERVATIONS = delete(observation).where(
    observation.c.book_id == bindparam("book"), observation.c.note_id == bindparam("note")
)

_NOTES = (
    select(
        note.c.note_id,
        note.c.text,
        note.c.at,
        note.c.unread,
        note.c.deleted_at,
        person.c.name.label("author"),
    )
    .select_from(note.outerjoin(person, person.c.person_id == note.c.author))
    .where(_OF_BOOK)
)
_LIVE = _NOTES.where(note.c.deleted_at.is_(None))
_NEWEST = _LIVE.order_by(note.c.at.desc(), note.c.note_id.desc()).limit(bindparam("limit"))
_NOTE = _NOTES.where(note.c.note_id == bindparam("note"))
_OF_MESSAGE = (
    _NOTES.where(
        note.c.chat_id == bindparam("chat"), note.c.external_message_id == bindparam("message")
    )
    .order_by(note.c.note_id.desc())
    .limit(1)
)
_WORDS = (
    select(note.c.note_id, note.c.text)
    .where(_OF_BOOK, note.c.deleted_at.is_(None))
    .order_by(note.c.at.desc(), note.c.note_id.desc())
)
_THESE = _NOTES.where(note.c.note_id.in_(bindparam("these", expanding=True)))
_OF_PLAYER = _NEWEST.where(
    select(observation.c.n)
    .where(
        observation.c.book_id == note.c.book_id,
        observation.c.note_id == note.c.note_id,
        observation.c.player_id == bindparam("player"),
    )
    .exists()
)
_CLAIM_COLUMNS = (
    observation.c.note_id,
    observation.c.player_id,
    observation.c.trait,
    observation.c.value,
    observation.c.weight,
    observation.c.seen,
    observation.c.denied,
    observation.c.tag,
    observation.c.span_from,
    observation.c.span_to,
    observation.c.origin,
)
_CLAIMS = (
    select(*_CLAIM_COLUMNS)
    .where(
        and_(
            observation.c.book_id == bindparam("book"),
            observation.c.note_id.in_(bindparam("notes", expanding=True)),
        )
    )
    .order_by(observation.c.note_id, observation.c.n)
)

_NEWEST_NUMBERS = (
    select(note.c.note_id)
    .where(_OF_BOOK, note.c.deleted_at.is_(None))
    .order_by(note.c.at.desc(), note.c.note_id.desc())
    .limit(bindparam("limit"))
)
_NEWEST_CLAIMED = (
    select(
        note.c.note_id.label("of_note"),
        note.c.text,
        note.c.at,
        note.c.unread,
        note.c.deleted_at,
        literal(None).label("author"),
        *_CLAIM_COLUMNS,
    )
    .select_from(
        note.outerjoin(
            observation,
            and_(
                observation.c.book_id == note.c.book_id,
                observation.c.note_id == note.c.note_id,
            ),
        )
    )
    .where(_OF_BOOK, note.c.note_id.in_(_NEWEST_NUMBERS))
    .order_by(note.c.at.desc(), note.c.note_id.desc(), observation.c.n)
)


class Notes(Scope):
    """Notes and what they were understood to say."""

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
        """Keep the words whole with what was understood of them.

        `parser` is the version of the understanding, `unread` marks words that wait for a
        better one, `at` is now unless said.
        """
        number = NoteId(self._number(Part.NOTES))
        self._insert(
            _ADD,
            {
                "note_id": number,
                "author": self._person,
                "at": self._now if at is None else at,
                "text": text,
                "chat_id": chat,
                "external_message_id": external_message_id,
                "unread": unread,
                "changed": self._stamp(Part.NOTES),
            },
        )
        self._add_observations(number, observations, origin=None, parser=parser)
        return number

    def replace_observations(
        self,
        note: NoteId,
        observations: Sequence[NewObservation],
        *,
        origin: str | None = "corrected",
        parser: int = 1,
    ) -> None:
        """What the note says instead; it then counts as read. Origin None keeps each one's own."""
        self._write(_DROP_OBSERVATIONS, {"note": note})
        self._add_observations(note, observations, origin=origin, parser=parser)
        self._write(_SET_READ, {"note": note, "version": self._stamp(Part.NOTES)})

    def _add_observations(
        self,
        note: NoteId,
        observations: Sequence[NewObservation],
        *,
        origin: str | None,
        parser: int,
    ) -> None:
        rows = [
            _values(one, note=note, n=n, origin=origin or one.origin, parser=parser)
            for n, one in enumerate(observations, start=1)
        ]
        self._insert(_ADD_OBSERVATIONS, *rows)

    def delete_note(self, note: NoteId) -> None:
        """Mark it deleted: its claims no longer count."""
        self._mark(note, deleted_at=self._now)

    def restore_note(self, note: NoteId) -> None:
        """Undo of `delete_note`."""
        self._mark(note, deleted_at=None)

    def _mark(self, note: NoteId, *, deleted_at: Micros | None) -> None:
        values = {"note": note, "when": deleted_at, "version": self._stamp(Part.NOTES)}
        self._write(_SET_DELETED, values)

    def note(self, note: NoteId) -> NoteRow | None:
        """One note, deleted ones included; None for a number that is not of this book."""
        return next(iter(self._note_rows(self._read(_NOTE, {"note": note}))), None)

    def note_of_message(self, chat: ChatId, external_message_id: int) -> NoteRow | None:
        """The note that a message became, for edits."""
        key = {"chat": chat, "message": external_message_id}
        return next(iter(self._note_rows(self._read(_OF_MESSAGE, key))), None)

    def notes_of(self, player: PlayerId, *, limit: int = 20) -> tuple[NoteRow, ...]:
        """Undeleted notes with a claim about the player, newest first."""
        return self._note_rows(self._read(_OF_PLAYER, {"player": player, "limit": limit}))

    def words_of_notes(self) -> tuple[tuple[NoteId, str], ...]:
        """The words of undeleted notes, newest first."""
        found = self._read(_WORDS)
        return tuple((NoteId(row.note_id), row.text) for row in found)

    def notes_in(self, notes: Sequence[NoteId]) -> tuple[NoteRow, ...]:
        """These notes in their order, deleted ones included."""
        if not notes:
            return ()
        rows = {row.note: row for row in self._note_rows(self._read(_THESE, {"these": [*notes]}))}
        return tuple(rows[note] for note in notes if note in rows)

    def recent_notes(self, *, limit: int = 20) -> tuple[NoteRow, ...]:
        """Undeleted notes, newest first."""
        return self._note_rows(self._read(_NEWEST, {"limit": limit}))

    def newest_with_claims(self, *, limit: int) -> tuple[NoteRow, ...]:
        """Undeleted notes with what they claim, newest first, in one statement; no authors."""
        by_note: dict[int, list[Any]] = {}
        for row in self._read(_NEWEST_CLAIMED, {"limit": limit}):
            by_note.setdefault(row.of_note, []).append(row)
        return tuple(
            replace(
                _note_row(rows[0], [_claim(one) for one in rows if one.note_id is not None]),
                note=NoteId(number),
            )
            for number, rows in by_note.items()
        )

    def _note_rows(self, found: Iterable[Any]) -> tuple[NoteRow, ...]:
        rows = list(found)
        claims: dict[int, list[NewObservation]] = {row.note_id: [] for row in rows}
        if rows:
            for one in self._read(_CLAIMS, {"notes": list(claims)}):
                claims[one.note_id].append(_claim(one))
        return tuple(_note_row(row, claims[row.note_id]) for row in rows)


def _values(
    one: NewObservation, *, note: NoteId, n: int, origin: str, parser: int
) -> dict[str, Any]:
    return {
        "note_id": note,
        "n": n,
        "player_id": one.player,
        "trait": one.trait.value,
        "value": one.value.value,
        "denied": one.denied,
        "weight": one.weight,
        "seen": one.seen.value,
        "tag": None if one.tag is None else one.tag.value,
        "span_from": None if one.span is None else one.span[0],
        "span_to": None if one.span is None else one.span[1],
        "origin": origin,
        "parser": parser,
    }


def _claim(row: Any) -> NewObservation:
    return NewObservation(
        player=PlayerId(row.player_id),
        trait=Trait(row.trait),
        value=Value(row.value),
        weight=row.weight,
        seen=Seen(row.seen),
        denied=row.denied,
        tag=None if row.tag is None else Tag(row.tag),
        span=None if row.span_from is None else (row.span_from, row.span_to),
        origin=row.origin,
    )


def _note_row(row: Any, claims: Sequence[NewObservation]) -> NoteRow:
    return NoteRow(
        note=NoteId(row.note_id),
        text=row.text,
        author=row.author,
        at=Micros(row.at),
        observations=tuple(claims),
        unread=row.unread,
        deleted=row.deleted_at is not None,
    )
