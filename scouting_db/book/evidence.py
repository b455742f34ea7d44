"""What the notes say of players, as evidence for the engine."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from sqlalchemy import and_, bindparam, select

from knowledge.evidence import Observation
from knowledge.vocabulary import EvidenceId, PlayerId, Seen, Tag, Trait, Value
from scouting_db.book.scope import Scope
from scouting_db.tables import book, note, observation, player
from scouting_db.values import Micros
from scouting_db.zones import local_day

_ALL = (
    select(
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
_OF_PLAYERS = _ALL.where(observation.c.player_id.in_(bindparam("players", expanding=True)))


class Evidence(Scope):
    """Observations."""

    def observations(self, players: Collection[PlayerId] | None = None) -> tuple[Observation, ...]:
        """What undeleted notes say of these players, or of everyone on the roster.

        Days are the book's own; the author is the person's number, or "" where nobody is
        known; the words are those that carry the claim, or the whole note.
        """
        if players is None:
            return tuple(map(_observation, self._read(_ALL)))
        return tuple(map(_observation, self._read(_OF_PLAYERS, {"players": list(players)})))


def _observation(row: Any) -> Observation:
    return Observation(
        evidence=EvidenceId(f"note:{row.note_id}:{row.n}"),
        player=PlayerId(row.player_id),
        trait=Trait(row.trait),
        value=Value(row.value),
        weight=row.weight,
        seen=Seen(row.seen),
        author="" if row.author is None else str(row.author),
        day=local_day(Micros(row.at), row.zone),
        words=row.text if row.span_from is None else row.text[row.span_from : row.span_to],
        tag=None if row.tag is None else Tag(row.tag),
        denied=row.denied,
    )
