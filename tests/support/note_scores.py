"""How notes are read: claims found and claims invented, by one labeller or by either of two.

`ilse`, `kay`, `roz` and `teun` are never read: only the logged held-out command scores them.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any
from unittest.mock import patch

from voices import CASES, IN_TALK, OPEN_VOICES, PEOPLE, VOICES

from bot.chat import note_weighing
from bot.chat.claim_model import ClaimModel
from bot.chat.message import read_message
from bot.chat.said import Claim
from bot.chat.understand import understand_note
from knowledge.vocabulary import PlayerId
from scouting_db.names import Alike, Found, NameIndex

LATER_VOICES = ("pip", "halvard", "june", "zed")
"""Writers of notes only, who wrote after the lexicon was made; nothing was trained on them."""

READ_LATER_VOICES = ("moss", "tala", "bert", "yuki")
"""Written later still; read while the names in notes were mended. Nobody labelled them twice."""

OPEN_NOTE_VOICES = (*OPEN_VOICES, *LATER_VOICES)
LATER = CASES / "note_voices"
SECOND_LABELS = CASES / "second_labels"

PlayerClaim = tuple[str, str, str, bool]
Reader = Callable[[str], set[PlayerClaim]]


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteScore:
    """Claims of the labels and how many of them were found; claims made and how many invented."""

    labelled: int
    found: int
    claimed: int
    invented: int

    @property
    def found_share(self) -> float:
        return self.found / self.labelled

    @property
    def invented_share(self) -> float:
        return self.invented / max(1, self.claimed)

    def __add__(self, other: NoteScore) -> NoteScore:
        return NoteScore(
            labelled=self.labelled + other.labelled,
            found=self.found + other.found,
            claimed=self.claimed + other.claimed,
            invented=self.invented + other.invented,
        )

    def __str__(self) -> str:
        return (
            f"{self.labelled:5d} found {self.found_share:6.1%} invented {self.invented_share:6.1%}"
        )


def notes_of(voice: str) -> list[Mapping[str, Any]]:
    folder = LATER if voice in (*LATER_VOICES, *READ_LATER_VOICES) else VOICES
    return list(_rows(folder / f"{voice}.notes.jsonl"))


def second_labels(voice: str) -> list[Mapping[str, Any]]:
    """A blind labeller's claims of each note of the voice, and those that may be read in it."""
    return list(_rows(SECOND_LABELS / f"{voice}.notes.jsonl"))


def _rows(path: Path) -> Iterator[Mapping[str, Any]]:
    lines = path.read_text(encoding="utf-8").splitlines()
    return (json.loads(line) for line in lines if line.strip())


def read_claims(text: str) -> set[PlayerClaim]:
    """What the bot reads in a note, in the form of the labels."""
    return told_claims(understand_note(text, chat=IN_TALK).claims)


def shown_claims(text: str) -> set[PlayerClaim]:
    """The same with those that it offers as buttons."""
    note = understand_note(text, chat=IN_TALK)
    return told_claims((*note.claims, *note.offered))


def rules_alone(text: str) -> set[PlayerClaim]:
    """The same before the model of many writers' notes weighs it."""
    return told_claims(read_message(text, IN_TALK).note.claims)


def reader_of(model: ClaimModel, made_from: float) -> Reader:
    """How notes are read with another model, and claims made from another chance."""

    def read(text: str) -> set[PlayerClaim]:
        with (
            patch.object(note_weighing, "the_claim_model", lambda: model),
            patch.object(note_weighing, "MADE_FROM", made_from),
        ):
            return read_claims(text)

    return read


def told_claims(claims: Iterable[Claim]) -> set[PlayerClaim]:
    return {(_name(one.player), one.trait.value, one.value.value, one.denied) for one in claims}


def score_notes(voice: str, *, read: Reader = read_claims) -> NoteScore:
    """Against the labels of whoever wrote the notes."""
    return score_rows(notes_of(voice), read)


def score_rows(rows: Iterable[Mapping[str, Any]], read: Reader) -> NoteScore:
    labels = ((note["text"], claims_of(note), claims_of(note)) for note in rows)
    return _score(labels, read)


def score_notes_under_either(voice: str, *, read: Reader = read_claims) -> NoteScore:
    """What both labellers read must be found; what neither even thought possible is invented."""
    labels = (
        (first["text"], claims_of(first) & claims_of(second), claims_of(first) | possible(second))
        for first, second in zip(notes_of(voice), second_labels(voice), strict=True)
    )
    return _score(labels, read)


def _score(
    labels: Iterable[tuple[str, set[PlayerClaim], set[PlayerClaim]]], read: Reader
) -> NoteScore:
    """Of texts, the claims that must be found and those that may be made."""
    labelled = found = claimed = invented = 0
    for text, needed, allowed in labels:
        got = read(text)
        labelled, found = labelled + len(needed), found + len(needed & got)
        claimed, invented = claimed + len(got), invented + len(got - allowed)
    return NoteScore(labelled=labelled, found=found, claimed=claimed, invented=invented)


def claims_of(case: Mapping[str, Any]) -> set[PlayerClaim]:
    return {_labelled(each) for each in case["observations"]}


def possible(case: Mapping[str, Any]) -> set[PlayerClaim]:
    return claims_of(case) | {_labelled(each) for each in case.get("maybe", ())}


def can_be_scored(case: Mapping[str, Any]) -> bool:
    """Whether everybody of the labels is on the roster."""
    return all(_player(one[0]) is not None for one in case["observations"])


def _labelled(observation: list[str]) -> PlayerClaim:
    player = _player(observation[0])
    assert player is not None, observation
    return (_name(player), observation[1], observation[2], observation[3:] == ["denied"])


@cache
def _player(name: str) -> PlayerId | None:
    match = NameIndex(IN_TALK.roster).lookup(name)
    row = match.likeliest if isinstance(match, Alike) else None
    row = match.player if isinstance(match, Found) else row
    return None if row is None else row.player


def _name(player: PlayerId) -> str:
    return PEOPLE[player - 1]
