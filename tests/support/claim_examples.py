"""The note writers' notes as the claim model learns them: once for every player meant."""

from __future__ import annotations

import hashlib
import json
import random
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

from near_duplicates import near_duplicates
from note_scores import OPEN_NOTE_VOICES, PlayerClaim, can_be_scored, claims_of, notes_of
from topic_examples import TESTS
from voices import IN_TALK, PEOPLE

from bot.chat.names import find_mentions
from bot.chat.note_features import SeenWord, players_meant, see_note
from bot.chat.note_line import note_line
from bot.chat.notes import ruled_note
from bot.chat.words import words
from knowledge.vocabulary import PlayerId, Trait, Value

HELD_OUT = ("ilse", "kay", "roz", "teun")

HARD_TIMES = 2
"""How often the model is shown one of these in a pass, of which there are few."""

RUN_TOGETHER = 0.5
"""Of pairs of notes of one player, how many are also shown as one; not searched over."""

_BETWEEN = (". ", ", ", "\n", " and ")

NOBODY = PlayerId(0)

Row = Mapping[str, Any]

WRITERS = TESTS / "train" / "note_writers"
LATER = TESTS / "train" / "later_notes"
"""Notes of seventy-five more voices, most of which claim one thing."""

PAIRED = TESTS / "train" / "paired_notes"
"""Notes of forty voices who told of two players in a line, or of one several things."""

HARD = TESTS / "train" / "hard_notes"
"""Notes for the claim model alone: what is hard to read, and what we ourselves call plain words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Taught:
    """A note as the model sees it when asked about one player, and what it claims of them.

    A claim is a trait, a value, and whether it is only denied.
    """

    text: str
    seen: tuple[SeenWord, ...]
    claims: tuple[tuple[Trait, Value, bool], ...]


def opening_words(text: str) -> tuple[SeenWord, ...]:
    """Words that open a note and are about nobody, as the model sees them."""
    note = note_line(words(text), (), IN_TALK)
    return see_note(note, (), NOBODY)


def writer_files() -> list[Path]:
    return sorted(WRITERS.glob("*.jsonl"))


def claim_files() -> list[Path]:
    """All that the claim model learns from."""
    folders = (WRITERS, LATER, PAIRED, HARD)
    return [path for folder in folders for path in sorted(folder.glob("*.jsonl"))]


def claims_digest() -> str:
    """A hash of the claim model's notes and of the lexicon: a model trained on others is stale."""
    return _digest(claim_files())


def sources_digest() -> str:
    """The same of the note writers alone, for the models that learn to tell notes by them."""
    return _digest(writer_files())


def _digest(paths: Iterable[Path]) -> str:
    digest = hashlib.sha256()
    for path in paths:
        digest.update(path.read_bytes())
    digest.update(files("bot.chat").joinpath("data/traits.toml").read_bytes())
    return digest.hexdigest()


def rows_of(path: Path) -> list[Row]:
    return [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines()]


@cache
def taught_by(path: Path) -> tuple[Taught, ...]:
    """A writer's notes; one that claims something of somebody we can't find in it is left out."""
    times = HARD_TIMES if path.parent == HARD else 1
    rows = [row for row in rows_of(path) if can_be_scored(row)]
    if path.parent == LATER:
        rows += _run_together(rows, random.Random(path.stem))
    return tuple(_taught(rows)) * times


def _run_together(rows: Sequence[Row], chance: random.Random) -> list[Row]:
    """Some notes with the next one of the same player behind them: people list what they see."""
    last: dict[str, Row] = {}
    together: list[Row] = []
    for row in chance.sample(rows, len(rows)):
        players = {one[0] for one in row["observations"]}
        if len(players) != 1:
            continue
        (player,) = players
        before = last.pop(player, None)
        if before is None:
            last[player] = row
        elif chance.random() < RUN_TOGETHER and not _traits(before) & _traits(row):
            together.append(
                {
                    "text": before["text"].rstrip(" .") + chance.choice(_BETWEEN) + row["text"],
                    "observations": [*before["observations"], *row["observations"]],
                }
            )
    return together


def _traits(row: Row) -> set[str]:
    return {one[1] for one in row["observations"]}


def apart_from(notes: Sequence[Taught], scored: Sequence[str]) -> list[Taught]:
    """The notes that repeat none of those that are scored."""
    repeats = near_duplicates([note.text for note in notes], scored)
    return [note for note, is_repeat in zip(notes, repeats, strict=True) if not is_repeat]


def scored_notes() -> list[str]:
    """The words of all notes that figures are taken from, held out or not."""
    return [note["text"] for voice in (*OPEN_NOTE_VOICES, *HELD_OUT) for note in notes_of(voice)]


def _denied_first(claim: PlayerClaim) -> tuple[bool, PlayerClaim]:
    """Of two claims of one head the last is learned: the one that is affirmed."""
    return not claim[-1], claim


def _taught(rows: Iterable[Row]) -> Iterator[Taught]:
    for row in rows:
        said = words(row["text"])
        note = note_line(said, find_mentions(said, IN_TALK), IN_TALK)
        ruled, players = ruled_note(note), players_meant(note)
        names = {PEOPLE[player - 1]: player for player in players}
        claims = claims_of(row)
        if not said or any(name not in names for name, *_ in claims):
            continue
        for name, player in names.items():
            yield Taught(
                text=row["text"],
                seen=see_note(note, ruled, player),
                claims=tuple(
                    (Trait(trait), Value(value), denied)
                    for whose, trait, value, denied in sorted(claims, key=_denied_first)
                    if whose == name
                ),
            )
