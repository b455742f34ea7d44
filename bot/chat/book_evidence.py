"""What a book's notes and rallies say, kept between turns: only what has changed is read again."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import field, replace
from types import MappingProxyType
from typing import Protocol

from knowledge.dataclass import dataclass
from knowledge.evidence import Observation, RateCount
from knowledge.vocabulary import PlayerId, Trait
from scouting_db.match_rates import MatchRates
from scouting_db.values import MatchId, NoteChanges, NoteId

KEPT_PLAYERS = 128
"""Players of one book whose notes are kept in memory, the one asked about longest ago leaving."""

STANCE_TRAITS = (Trait.HAND, Trait.SIDE_PLAYED)
"""What makes players alike; read of everybody, where others' rallies are looked at."""

Said = tuple[Observation, ...]


class EvidenceReader(Protocol):
    """What is read of a book (scouting_db.book.Book)."""

    def observations(self, players: Sequence[PlayerId]) -> Said: ...

    def observations_of(self, *traits: Trait) -> Said: ...

    def note_changes(self, since: int) -> NoteChanges: ...

    def match_rates(self, since: int = ...) -> tuple[MatchRates, ...]: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class BookEvidence:
    """A book's evidence as of a version, its days counted in `zone`: notes of those asked about,
    and every match's rates.

    What nothing changed in is the same object in the next version's, so that whoever built on it
    sees at a glance that it still holds. None: not read yet.
    """

    version: int
    zone: str = "UTC"
    notes: Mapping[PlayerId, Said] = field(default_factory=lambda: MappingProxyType({}))
    stances: Said | None = None
    matches: Mapping[MatchId, MatchRates] | None = None
    counts: tuple[RateCount, ...] = ()

    @property
    def claims(self) -> int:
        """How many it holds in memory."""
        stances = () if self.stances is None else self.stances
        return sum(map(len, self.notes.values())) + len(stances)

    def brought_to(
        self,
        version: int,
        book: EvidenceReader,
        *,
        notes_changed: bool = True,
        matches_changed: bool = True,
    ) -> BookEvidence:
        """The same as of a later version: a statement or two for what changed since, whatever the
        size of the book.
        """
        if version == self.version:
            return self
        has_read = bool(self.notes) or self.stances is not None
        read = notes_changed and has_read
        changes = book.note_changes(self.version) if read else NoteChanges()
        found = replace(self, version=version)
        if changes.notes:
            found = found._with_notes(changes)
        if matches_changed and self.matches is not None:
            found = found._with_matches(book.match_rates(self.version))
        return found

    def knowing(self, players: Sequence[PlayerId], book: EvidenceReader) -> BookEvidence:
        """The same with these players' notes and all rates, as far as they were not read yet."""
        notes = dict(self.notes)
        missing = [one for one in players if one not in notes]
        if not missing and self.matches is not None:
            return self
        notes |= _by_player(missing, book.observations(missing) if missing else ())
        notes |= {one: notes.pop(one) for one in players}
        kept = dict([*notes.items()][-max(KEPT_PLAYERS, len(players)) :])
        found = replace(self, notes=MappingProxyType(kept))
        return found if self.matches is not None else found._with_matches(book.match_rates())

    def knowing_stances(self, book: EvidenceReader) -> BookEvidence:
        """The same with everybody's hand and side as noted."""
        if self.stances is not None:
            return self
        return replace(self, stances=book.observations_of(*STANCE_TRAITS))

    def _with_notes(self, changes: NoteChanges) -> BookEvidence:
        fresh = _by_player(self.notes, changes.observations)
        stances = self.stances
        if stances is not None:
            told = (one for one in changes.observations if one.trait in STANCE_TRAITS)
            stances = _renewed(stances, tuple(told), changes.notes)
        notes = {who: _renewed(said, fresh[who], changes.notes) for who, said in self.notes.items()}
        return replace(self, notes=MappingProxyType(notes), stances=stances)

    def _with_matches(self, changed: Iterable[MatchRates]) -> BookEvidence:
        matches = dict(self.matches or {})
        counts_differ = False
        for one in changed:
            known = matches.get(one.match)
            counts_differ |= one.counts != (() if known is None else known.counts)
            if one.tallies or known is not None:
                matches[one.match] = one
        matches = dict(sorted(matches.items()))
        counts = self.counts
        if counts_differ:
            counts = tuple(count for one in matches.values() for count in one.counts)
        return replace(self, matches=MappingProxyType(matches), counts=counts)


def _renewed(said: Said, fresh: Said, changed: frozenset[int]) -> Said:
    """What stood, but what the changed notes say instead; the same object where nothing differs."""
    if not fresh and not any(note_of(one) in changed for one in said):
        return said
    kept = [one for one in said if note_of(one) not in changed]
    renewed = tuple(sorted((*kept, *fresh), key=_place))
    return said if renewed == said else renewed


def _by_player(players: Iterable[PlayerId], said: Iterable[Observation]) -> dict[PlayerId, Said]:
    found: dict[PlayerId, list[Observation]] = {player: [] for player in players}
    for one in said:
        if one.player in found:
            found[one.player].append(one)
    return {player: tuple(group) for player, group in found.items()}


def note_of(one: Observation) -> NoteId:
    """The note that says it."""
    return NoteId(_place(one)[0])


def _place(one: Observation) -> tuple[int, int]:
    """The numbers in its name: of the note, and of the claim in it."""
    _, note, n = one.evidence.split(":")
    return int(note), int(n)
