"""Facts that two notes tell differently: said when the second is written, with a way out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from bot.chat.answers.desk import Desk
from bot.chat.answers.evidence_read import said_of
from bot.chat.book_evidence import note_of
from bot.chat.payload import Verb, tap
from bot.chat.reply import Button
from bot.chat.said import Claim
from bot.chat.wording import wording
from knowledge.dataclass import dataclass
from knowledge.evidence import Observation, estimate_fact
from knowledge.vocabulary import TRAITS, TraitKind, Value
from scouting_db.values import NewObservation, NoteId, NoteRow

MOST_DROPPED = 2
"""Buttons to drop an older note; who has more of them sorts them out note by note."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """A fact that a note tells, `told` by other notes otherwise, and which value counts now."""

    claim: Claim
    told: tuple[Observation, ...]
    counts: Value | None


def clashes(desk: Desk, claims: Sequence[Claim], note: NoteId) -> Iterator[Clash]:
    """The facts of a note just written that other notes contradict."""
    for claim in claims:
        if TRAITS[claim.trait].kind is not TraitKind.FACT:
            continue
        said = [one for one in said_of(desk, claim.player) if one.trait is claim.trait]
        own = [one for one in said if note_of(one) == note and one.value is claim.value]
        told = tuple(
            one
            for one in said
            if note_of(one) != note and any(one.contradicts(mine) for mine in own)
        )
        if told:
            fact = estimate_fact(said, today=desk.day)
            yield Clash(claim=claim, told=told, counts=None if fact is None else fact.known)


def drop_buttons(desk: Desk, clash: Clash) -> tuple[Button, ...]:
    """A button per older note that says nothing else: a tap must lose nothing besides."""
    rows = [desk.book.note(each) for each in dict.fromkeys(map(note_of, clash.told))]
    droppable = [row for row in rows if row is not None and _says_only(row, clash)]
    return tuple(
        Button(
            label=wording("note.drop_older").format(words=_short(row.text)),
            payload=tap(Verb.NOTE, "delete", row.note),
        )
        for row in droppable[-MOST_DROPPED:]
    )


def _says_only(row: NoteRow, clash: Clash) -> bool:
    return all(_is_of(one, clash.claim) for one in row.observations)


def _is_of(one: NewObservation, claim: Claim) -> bool:
    return (one.player, one.trait) == (claim.player, claim.trait)


_LONGEST_LABEL = 20


def _short(words: str) -> str:
    return words if len(words) <= _LONGEST_LABEL else f"{words[: _LONGEST_LABEL - 1].rstrip()}…"
