"""Training of the claim model on the note writers' notes, and its curve on writers kept out.

A note says what it claims, not which clause claims it: a clause of a note with several is given a
claim where the rules read it there, else where a first model, taught by one-clause notes, sees it
most clearly.
"""

from __future__ import annotations

import hashlib
import json
import tomllib
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

import numpy as np
from linear_training import fit, matrix_of, quantised
from sklearn.linear_model import LogisticRegression
from topic_examples import TESTS
from voices import IN_TALK

from bot.chat.claim_model import COLUMNS, ClaimModel, Label, candidates
from bot.chat.feature_table import Numbers
from bot.chat.features import Seen
from bot.chat.names import find_mentions
from bot.chat.notes import parts_read
from bot.chat.words import words
from knowledge.vocabulary import TRAITS, Trait, Value

WRITERS = TESTS / "train" / "note_writers"
RIDGE = 0.5  # not searched over
FOLDS = 4
MADE_FROM = 0.55
"""The chance from which a claim is made: on the open note voices a lower one invents as much as it
finds, a higher one loses more than it spares."""

LABELS: tuple[Label, ...] = tuple(
    (trait, value) for trait in Trait for value in TRAITS[trait].values
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TaughtClause:
    """A clause as the model sees it, what the rules read in it, and its note's number."""

    note: int
    seen: Seen
    ruled: frozenset[Label]


@dataclass(frozen=True, slots=True, kw_only=True)
class Taught:
    """Notes with the labels they claim (row a note), who wrote them, and their clauses."""

    writers: tuple[str, ...]
    claimed: Numbers
    clauses: tuple[TaughtClause, ...]

    def of(self, names: Sequence[str]) -> list[TaughtClause]:
        chosen = set(names)
        return [one for one in self.clauses if self.writers[one.note] in chosen]


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """Candidates of clauses that a model scored without having read their writers."""

    signals: Numbers
    right: np.ndarray[Any, np.dtype[np.bool_]]


def writer_files() -> list[Path]:
    return sorted(WRITERS.glob("*.jsonl"))


def sources_digest() -> str:
    """A hash of the notes and of the lexicon: a model trained on others is stale."""
    digest = hashlib.sha256()
    for path in writer_files():
        digest.update(path.read_bytes())
    digest.update(files("bot.chat").joinpath("data/traits.toml").read_bytes())
    return digest.hexdigest()


@cache
def taught() -> Taught:
    writers: list[str] = []
    claimed: list[Numbers] = []
    clauses: list[TaughtClause] = []
    for path in writer_files():
        for line in path.read_text(encoding="utf-8").splitlines():
            row = json.loads(line)
            clauses += _clauses(row["text"], len(writers))
            claimed.append(_row(row["observations"]))
            writers.append(path.stem)
    return Taught(writers=tuple(writers), claimed=np.array(claimed), clauses=tuple(clauses))


def _row(observations: Sequence[Sequence[str]]) -> Numbers:
    """Ones where a label is claimed; what is only denied claims nothing."""
    said = {(Trait(one[1]), Value(one[2])) for one in observations if len(one) == 3}
    return np.array([label in said for label in LABELS], dtype=np.float32)


def _clauses(text: str, note: int) -> list[TaughtClause]:
    said = words(text)
    parts = parts_read(said, find_mentions(said, IN_TALK), IN_TALK)
    return [
        TaughtClause(
            note=note,
            seen=part.seen,
            ruled=frozenset((one.trait, one.value) for one in part.judged if not one.denied),
        )
        for part in parts
    ]


def train(given: Taught, names: Sequence[str]) -> tuple[Any, Numbers]:
    """Feature table and weights by COLUMNS, from the notes of these writers."""
    clauses = given.of(names)
    by_note: dict[int, list[int]] = defaultdict(list)
    for at, clause in enumerate(clauses):
        by_note[clause.note].append(at)
    alone = [places[0] for places in by_note.values() if len(places) == 1]
    table, weights = fit(
        [clauses[at].seen for at in alone],
        given.claimed[[clauses[at].note for at in alone]],
        np.ones(len(alone), dtype=np.float32),
        ridge=RIDGE,
    )
    seen = [clause.seen for clause in clauses]
    targets = _factors(_aligned(given, clauses, by_note, matrix_of(seen, table) @ weights))
    bare, spoken_of = _bare()
    seen += bare
    weight = np.ones(len(seen), dtype=np.float32)
    return fit(seen, np.concatenate([targets, spoken_of]), weight, ridge=RIDGE)


@cache
def _bare() -> tuple[list[Seen], Numbers]:
    """Clauses that only name a skill ("hale serve", "the overhead of hale"): a trait, no value.

    Nobody writes such notes, so without these the model would take the commoner value for said.
    """
    seen: list[Seen] = []
    rows: list[Numbers] = []
    for trait in Trait:
        column = (np.arange(len(COLUMNS)) == COLUMNS.index(trait)).astype(np.float32)
        for name in sorted({TRAITS[trait].label, trait.value.replace("_", " "), *_nouns(trait)}):
            for text in (
                f"hale {name}",
                f"hales {name} hm",
                f"the {name} of hale",
                f"{name}: hale",
            ):
                found = _clauses(text, 0)
                seen += [one.seen for one in found]
                rows += [column] * len(found)
    return seen, np.array(rows)


def _nouns(trait: Trait) -> list[str]:
    """The lexicon's plain names of a skill."""
    text = files("bot.chat").joinpath("data/traits.toml").read_text(encoding="utf-8")
    return [
        phrase
        for entry in tomllib.loads(text)["noun"]
        if entry["trait"] == trait
        for phrase in entry["words"]
        if phrase.replace(" ", "").isalpha()
    ]


def _aligned(
    given: Taught,
    clauses: Sequence[TaughtClause],
    by_note: dict[int, list[int]],
    scores: Numbers,
) -> Numbers:
    targets = np.zeros((len(clauses), len(LABELS)), dtype=np.float32)
    for note, places in by_note.items():
        for label in np.flatnonzero(given.claimed[note]):
            ruled = [at for at in places if LABELS[label] in clauses[at].ruled]
            clearest = places[int(np.argmax(scores[places, label]))]
            targets[ruled[0] if ruled else clearest, label] = 1
    return targets


def _factors(targets: Numbers) -> Numbers:
    """Of claimed labels the traits and the values apart, in the order of COLUMNS."""
    factors = np.zeros((len(targets), len(COLUMNS)), dtype=np.float32)
    for at, (trait, value) in enumerate(LABELS):
        for column in (COLUMNS.index(trait), COLUMNS.index(value)):
            factors[:, column] = np.maximum(factors[:, column], targets[:, at])
    return factors


def kept_out(given: Taught) -> Weighed:
    """Every writer's candidates, scored by a model trained on the writers of the other folds."""
    names = sorted(set(given.writers))
    signals: list[tuple[float, ...]] = []
    right: list[bool] = []
    for fold in range(FOLDS):
        out = names[fold::FOLDS]
        table, weights = train(given, [name for name in names if name not in out])
        clauses = given.of(out)
        scores = matrix_of([one.seen for one in clauses], table) @ weights
        for clause, row in zip(clauses, scores, strict=True):
            for one in candidates(row, clause.seen.words, dict.fromkeys(clause.ruled)):
                signals.append(one.signals)
                right.append(bool(given.claimed[clause.note, LABELS.index(one.label)]))
    return Weighed(signals=np.array(signals), right=np.array(right))


def train_shipped(given: Taught, weighed: Weighed) -> ClaimModel:
    """The model on all writers, its curve fitted on those kept out."""
    centre, spread = weighed.signals.mean(axis=0), weighed.signals.std(axis=0)
    curve = LogisticRegression(C=10, max_iter=1000)
    curve.fit((weighed.signals - centre) / spread, weighed.right)
    weights = curve.coef_[0] / spread
    bias = round(float(curve.intercept_[0] - weights @ centre), 5)
    rounded = tuple(round(float(one), 5) for one in weights)
    recipe = {
        "sources": sources_digest(),
        "trained_on": "tests/train/note_writers",
        "notes": len(given.writers),
        "command": "python tests/train/train_claims.py",
        "ridge": RIDGE,
        "curve": {"bias": bias, "weights": rounded, "made_from": MADE_FROM},
    }
    return ClaimModel(
        linear=quantised(*train(given, sorted(set(given.writers)))),
        bias=bias,
        curve=rounded,
        made_from=MADE_FROM,
        recipe=recipe,
    )
