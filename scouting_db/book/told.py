"""Evidence by its name, as it was told: the words of notes, logged rallies, matches."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import Any, TypeVar

from sqlalchemy import and_, bindparam, func, select, tuple_

from knowledge.regex import regex
from knowledge.vocabulary import Ending, EvidenceId, PlayerId, Seen, Stroke
from scouting_db.book.scope import Scope
from scouting_db.book.taken_out import taken_out
from scouting_db.tables import book, entry, match, note, observation, pair, person, rally
from scouting_db.values import EntryKind, Micros, ToldMatch, ToldNote, ToldRally, Winner
from scouting_db.zones import local_day, local_time

_NOTES = (
    select(
        observation.c.note_id,
        observation.c.n,
        observation.c.player_id,
        observation.c.seen,
        observation.c.span_from,
        observation.c.span_to,
        note.c.text,
        note.c.at,
        person.c.name.label("author"),
        book.c.zone,
    )
    .select_from(
        observation.join(
            note,
            and_(note.c.book_id == observation.c.book_id, note.c.note_id == observation.c.note_id),
        )
        .outerjoin(person, person.c.person_id == note.c.author)
        .join(book, book.c.book_id == observation.c.book_id)
    )
    .where(
        observation.c.book_id == bindparam("book"),
        tuple_(observation.c.note_id, observation.c.n).in_(bindparam("which", expanding=True)),
    )
)
_RALLIES = (
    select(
        entry.c.match_id,
        entry.c.n,
        entry.c.at,
        entry.c.won_by,
        rally.c.ending,
        rally.c.by_player,
        rally.c.stroke,
        rally.c.words,
        book.c.zone,
    )
    .select_from(
        entry.outerjoin(
            rally,
            and_(
                rally.c.book_id == entry.c.book_id,
                rally.c.match_id == entry.c.match_id,
                rally.c.n == entry.c.n,
            ),
        ).join(book, book.c.book_id == entry.c.book_id)
    )
    .where(
        entry.c.book_id == bindparam("book"),
        tuple_(entry.c.match_id, entry.c.n).in_(bindparam("which", expanding=True)),
    )
)
_MATCHES = (
    select(
        match.c.match_id,
        match.c.made_at,
        pair.c.player_a,
        pair.c.player_b,
        book.c.zone,
        func.count().label("rallies"),
    )
    .select_from(
        match.join(book, book.c.book_id == match.c.book_id)
        .join(
            entry,
            and_(entry.c.book_id == match.c.book_id, entry.c.match_id == match.c.match_id),
        )
        .outerjoin(
            pair, and_(pair.c.book_id == match.c.book_id, pair.c.pair_id == match.c.their_pair)
        )
    )
    .where(
        match.c.book_id == bindparam("book"),
        match.c.match_id.in_(bindparam("which", expanding=True)),
        entry.c.kind == EntryKind.RALLY.value,
        tuple_(entry.c.match_id, entry.c.n).not_in(taken_out()),
    )
    .group_by(match.c.match_id, match.c.made_at, pair.c.player_a, pair.c.player_b, book.c.zone)
)

Named = TypeVar("Named", ToldNote, ToldRally, ToldMatch)


class Told(Scope):
    """What stands behind an answer, in the words in which it came."""

    def told_notes(self, evidence: Sequence[EvidenceId]) -> tuple[ToldNote, ...]:
        """Those of the names that are notes of this book, in the order of the names."""
        return _in_order(evidence, map(_note, self._named(_NOTES, evidence, "note", 2)))

    def told_rallies(self, evidence: Sequence[EvidenceId]) -> tuple[ToldRally, ...]:
        """Those of the names that are rallies of this book, in the order of the names."""
        return _in_order(evidence, map(_rally, self._named(_RALLIES, evidence, "rally", 2)))

    def told_matches(self, evidence: Sequence[EvidenceId]) -> tuple[ToldMatch, ...]:
        """Those of the names that are matches of this book, in the order of the names."""
        return _in_order(evidence, map(_match, self._named(_MATCHES, evidence, "match", 1)))

    def _named(
        self, statement: Any, evidence: Sequence[EvidenceId], kind: str, parts: int
    ) -> Iterable[Any]:
        """Rows of the names of a kind; nothing is asked of the database where there are none."""
        numbers = [each.split(":")[1:] for each in evidence if each.startswith(f"{kind}:")]
        keys = [tuple(map(int, one)) for one in numbers if len(one) == parts]
        if not keys:
            return ()
        which: list[Any] = [key[0] for key in keys] if parts == 1 else list(keys)
        return tuple(self._read(statement, {"which": which}))


def _in_order(evidence: Sequence[EvidenceId], found: Iterable[Named]) -> tuple[Named, ...]:
    place = {each: number for number, each in enumerate(evidence)}
    return tuple(sorted(found, key=lambda one: place[one.evidence]))


def _note(row: Any) -> ToldNote:
    words = row.text if row.span_from is None else _clause(row.text, row.span_from, row.span_to)
    return ToldNote(
        evidence=EvidenceId(f"note:{row.note_id}:{row.n}"),
        player=PlayerId(row.player_id),
        words=words,
        author=row.author,
        day=local_day(Micros(row.at), row.zone),
        heard=row.seen == Seen.HEARSAY.value,
    )


_CLAUSE_MARK = regex(r"[,;.!?\n]")
_CLAUSE_END = regex(r"[,;.!?\n]|$")


_NOT = (
    r"(?:not|no|never|neither|nor|none|without|hardly|barely|rarely|seldom|doubt|used to|cannot"
    r"|(?:is|are|was|were|do|does|did|has|have|had|ca|ai|wo|could|would|should)n['’]?t)"
)
_DENIED_AHEAD = regex(
    r"(?:\b(?:i|is|are|was|were|does|do|did|has|have|had|can|could|will|would|its|it['’]s)\s+)?"
    rf"\b{_NOT}(?:\s+(?!(?:and|but|so|because|though|while)\b)[^\s,;.!?]+){{0,5}}\s*$",
    re.IGNORECASE,
)
"""What is left of a clause before the words of a claim, from the "not" that belongs to them."""


def _clause(text: str, start: int, end: int) -> str:
    """The words from a place on, or from the "not" before them, to the end of the clause that the
    claim stands in.
    """
    closing = _CLAUSE_END.search(text, end)
    opened = [found.end() for found in _CLAUSE_MARK.finditer(text, 0, start)]
    denied = _DENIED_AHEAD.search(text, opened[-1] if opened else 0, start)
    begins = denied.start() if denied else start
    return text[begins : closing.start() if closing else end].strip()


def _rally(row: Any) -> ToldRally:
    at = local_time(Micros(row.at), row.zone)
    return ToldRally(
        evidence=EvidenceId(f"rally:{row.match_id}:{row.n}"),
        day=at.toordinal(),
        clock=f"{at:%H:%M}",
        won_by=None if row.won_by is None else Winner(row.won_by),
        ending=None if row.ending is None else Ending(row.ending),
        by_player=None if row.by_player is None else PlayerId(row.by_player),
        stroke=None if row.stroke is None else Stroke(row.stroke),
        words=row.words,
    )


def _match(row: Any) -> ToldMatch:
    pair_of = () if row.player_a is None else (PlayerId(row.player_a), PlayerId(row.player_b))
    return ToldMatch(
        evidence=EvidenceId(f"match:{row.match_id}"),
        day=local_day(Micros(row.made_at), row.zone),
        theirs=pair_of,
        rallies=row.rallies,
    )
