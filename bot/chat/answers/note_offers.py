"""Claims that a note only may hold: one tap adds what was half understood, another takes it out.

The change that read the note keeps what was offered with it, so a button carries two numbers and
nothing can be added that was not offered.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from bot.chat.answers.claims_told import SHOWN_CLAIMS, claim_words, observed_line
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.notes import (
    OFFERED,
    PARSER_VERSION,
    observation_of,
    offer_buttons,
    stored,
)
from bot.chat.payload import BadPayloadError
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId, Trait, Value
from scouting_db.values import ChangeId, ChangeRow, NewObservation, NoteId, NoteRow

_READINGS = frozenset({"add_note", "read_note"})

Said = tuple[PlayerId, Trait, Value, bool]
"""What of an observation must not be there twice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Reading:
    """A change that read a note and offered something, and the note as it is now."""

    change: ChangeRow
    note: NoteRow

    @property
    def offered(self) -> list[NewObservation]:
        return [observation_of(plain) for plain in self.change.targets["offered"]]

    @property
    def is_deleted(self) -> bool:
        return self.note.deleted

    @property
    def stands(self) -> bool:
        """Whether the note still says what it said then, but for what was added since."""
        read = {_said(observation_of(plain)) for plain in self.change.targets["read"]}
        says = {_said(one) for one in self.note.observations if one.origin != OFFERED}
        return not self.change.undone and not self.note.deleted and says == read

    def has(self, one: NewObservation) -> bool:
        return _said(one) in map(_said, self.note.observations)


def add(desk: Desk, change: ChangeId, number: int) -> Reply:
    """The claim of that button becomes one of its note's; a second tap changes nothing."""
    reading = _reading(desk, change)
    if reading is None or not 1 <= number <= len(reading.offered):
        raise BadPayloadError(f"change {change} offers no claim {number}")
    offered = reading.offered[number - 1]
    if reading.is_deleted:
        return Reply(text=wording("note.offer_deleted"))
    if not reading.stands or desk.view.player(offered.player) is None:
        return Reply(text=wording("note.offer_stale"))
    if reading.has(offered):
        return Reply(text=wording("note.there"))
    return _added(desk, reading, offered)


def _reading(desk: Desk, change: ChangeId) -> _Reading | None:
    """None for a change that is not of this book or that offered nothing."""
    row = desk.book.change(change)
    if row is None or row.verb not in _READINGS or "offered" not in row.targets:
        return None
    note = desk.book.note(NoteId(row.targets["note"]))
    return None if note is None else _Reading(change=row, note=note)


def _added(desk: Desk, reading: _Reading, offered: NewObservation) -> Reply:
    note, before = reading.note.note, reading.note.observations
    says = (*before, offered)
    desk.book.replace_observations(note, says, origin=None, parser=PARSER_VERSION)
    change = desk.record(
        "add_claim",
        {"note": note, "claim": stored([offered])[0], "reading": reading.change.change},
        {},
    )
    desk.changed()
    players = dict.fromkeys(one.player for one in says)
    desk.context = replace(desk.context.looking_at(*players), asked_last=False)
    left = [one for one in reading.offered if one != offered and not reading.has(one)]
    there = [n for n, one in enumerate(reading.offered, start=1) if one not in left]
    desk.trace |= {"claims": says, "note": note}
    text = wording("note.added").format(claims=observed_line(desk, _shown(before, offered)))
    again = offer_buttons(desk, reading.change.change, reading.change.targets, but=there)
    return Reply(text=text, buttons=rows([undo_button(change), *again]), about=("note", note))


def _shown(before: Sequence[NewObservation], added: NewObservation) -> list[NewObservation]:
    """In order, but what was just added never falls behind the "+2" of a long line."""
    own = [one for one in before if one.player == added.player]
    hidden = own[SHOWN_CLAIMS - 1 :]
    return [*(one for one in before if one not in hidden), added, *hidden]


def take_out(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    """Undo: the note without the claim; what else was added to it stays."""
    note, claim = desk.book.note(NoteId(targets["note"])), observation_of(targets["claim"])
    if note is not None:
        left = [one for one in note.observations if _said(one) != _said(claim)]
        _say(desk, note, left)
    return _words(desk, claim)


def put_in(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    """Redo: the note with the claim again."""
    note, claim = desk.book.note(NoteId(targets["note"])), observation_of(targets["claim"])
    if note is not None:
        _say(desk, note, [*note.observations, claim])
    return _words(desk, claim)


def can_be_added_again(desk: Desk, change: ChangeRow) -> bool:
    """Whether the note still says what it said when the claim was offered, and not the claim."""
    reading = _reading(desk, ChangeId(change.targets["reading"]))
    claim = observation_of(change.targets["claim"])
    return reading is not None and reading.stands and not reading.has(claim)


def _say(desk: Desk, note: NoteRow, observations: Sequence[NewObservation]) -> None:
    desk.book.replace_observations(note.note, observations, origin=None, parser=PARSER_VERSION)


def _words(desk: Desk, claim: NewObservation) -> str:
    return f"“{desk.view.short_name(claim.player)}: {claim_words(claim)}”"


def _said(one: NewObservation) -> Said:
    return (one.player, one.trait, one.value, one.denied)
