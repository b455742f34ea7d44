"""What the notes say of players, as evidence for the engine."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from typing import Any

from sqlalchemy import and_, bindparam, select

from knowledge.evidence import Observation
from knowledge.vocabulary import EvidenceId, PlayerId, Seen, Tag, Trait, Value
from scouting_db.book.scope import Scope
from scouting_db.tables import book, note, observation, player
from scouting_db.values import Micros, NoteChanges
from scouting_db.zones import local_day

_SAID = (
    observation.c.note_id,
    observation.c.n,
    observation.c.player_id,
    observation.c.trait,
    observation.c.value,
    observation.c.denied,
    observation.c.weight,
    observation.c.seen,
    observation.c.tag,
    observation.c.span_from,
    observation.c.span_to,
    note.c.author,
    note.c.at,
    note.c.text,
    book.c.zone,
)
"""In the order in which `_observations` unpacks them."""

_ALL = (
    select(*_SAID)
    .select_from(
        observation.join(
            note,
            and_(note.c.book_id == observation.c.book_id, note.c.note_id == observation.c.note_id),
        )
        .join(
            player,
            and_(
                player.c.book_id == observation.c.book_id,
                player.c.player_id == observation.c.player_id,
            ),
        )
        .join(book, book.c.book_id == observation.c.book_id)
    )
    .where(
        observation.c.book_id == bindparam("book"),
        note.c.deleted_at.is_(None),
        player.c.forgotten_at.is_(None),
    )
    .order_by(observation.c.note_id, observation.c.n)
)
_OF_TRAITS = _ALL.where(observation.c.trait.in_(bindparam("which", expanding=True)))
_OF_PLAYERS = _ALL.where(observation.c.player_id.in_(bindparam("players", expanding=True)))
_said_by = and_(
    observation.c.book_id == note.c.book_id,
    observation.c.note_id == note.c.note_id,
    note.c.deleted_at.is_(None),
    observation.c.player_id.in_(
        select(player.c.player_id).where(
            player.c.book_id == bindparam("book"), player.c.forgotten_at.is_(None)
        )
    ),
)
_CHANGED = (
    select(note.c.note_id.label("changed_note"), *_SAID)
    .select_from(note.join(book, book.c.book_id == note.c.book_id).outerjoin(observation, _said_by))
    .where(note.c.book_id == bindparam("book"), note.c.changed > bindparam("since"))
    .order_by(note.c.note_id, observation.c.n)
)
"""A row for each claim of a changed note, and one without a claim for a note that says nothing."""


class Evidence(Scope):
    """Observations."""

    def observations(self, players: Collection[PlayerId] | None = None) -> tuple[Observation, ...]:
        """What undeleted notes say of these players, or of everyone on the roster.

        Days are the book's own; the author is the person's number, or "" where nobody is
        known; the words are those that carry the claim, or the whole note.
        """
        if players is None:
            return tuple(_observations(self._read(_ALL)))
        return tuple(_observations(self._read(_OF_PLAYERS, {"players": list(players)})))

    def observations_of(self, *traits: Trait) -> tuple[Observation, ...]:
        """What undeleted notes say of these traits, of everyone on the roster."""
        which = [trait.value for trait in traits]
        return tuple(_observations(self._read(_OF_TRAITS, {"which": which})))

    def note_changes(self, since: int) -> NoteChanges:
        """The notes that a later version than `since` changed, and what they say now, of all."""
        rows = self._read(_CHANGED, {"since": since}).all()
        claims = (row[1:] for row in rows if row.note_id is not None)
        return NoteChanges(
            notes=frozenset(row.changed_note for row in rows),
            observations=tuple(_observations(claims)),
        )


_TRAITS = {trait.value: trait for trait in Trait}
_VALUES = {value.value: value for value in Value}
_SEEN = {seen.value: seen for seen in Seen}


def _observations(rows: Iterable[Any]) -> Iterator[Observation]:
    """Thousands of rows are read in one go: unpacked by place, each day worked out once, and equal
    words and weights kept once.
    """
    days: dict[tuple[int, str], int] = {}
    once: dict[Any, Any] = {}
    for (
        note_id, n, who, trait, value, denied, weight, seen, tag, start, end, author, at, text, zone
    ) in rows:  # fmt: skip
        day = days.get((at, zone))
        if day is None:
            day = days[at, zone] = local_day(Micros(at), zone)
        words = text if start is None else text[start:end]
        yield Observation(
            evidence=EvidenceId(f"note:{note_id}:{n}"),
            player=who,
            trait=_TRAITS[trait],
            value=_VALUES[value],
            weight=once.setdefault(weight, weight),
            seen=_SEEN[seen],
            author="" if author is None else str(author),
            day=day,
            words=once.setdefault(words, words),
            tag=None if tag is None else Tag(tag),
            denied=denied,
        )
