"""Plans against each other over the same simulated opponents, books and luck.

A book is the unit: its share of rallies won under one plan less that under another, with the
interval of a mean over books. Every plan meets the same opponents with the same random numbers.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

import numpy as np
from numpy.typing import NDArray
from plan_choices import Plan, advised_plan, uniform_plan, weakest_plan
from plan_notes import Book, Scouting, scouted_book, unnoted
from plan_players import TruePair, drawn_pair
from plan_rallies import DRAWS, SLOPE, Court
from plan_reading import SHARPNESS, Draws, Reader
from plan_targets import met_of
from scipy.stats import t

Floats = NDArray[np.float64]

OURS: Final = "ours"
NO_EVIDENCE: Final = "no evidence"
WEAKEST: Final = "always the weakest wing"
AT_RANDOM: Final = "at random"
STRANGERS: Final = "ours, notes of others"
"""Our plan out of the next book's notes: as varied as ours and knowing nothing of these two."""

CONFIDENCE: Final = 0.95


@dataclass(frozen=True, slots=True, kw_only=True)
class Opponents:
    """Drawn pairs and our book of each."""

    pairs: tuple[TruePair, ...]
    books: tuple[Book, ...]

    @property
    def false_notes(self) -> float:
        """Part of the notes that are wrong about the truth."""
        notes = sum(book.notes for book in self.books)
        return sum(book.false_notes for book in self.books) / max(1, notes)


def opponents(scouting: Scouting, books: int, *, seed: int) -> Opponents:
    """So many pairs with a book of that kind of each; the pairs are the same for every kind."""
    drawing, noting = (np.random.default_rng([seed, n]) for n in (0, 1))
    pairs = tuple(drawn_pair(drawing) for _ in range(books))
    return Opponents(
        pairs=pairs, books=tuple(scouted_book(pair, scouting, noting) for pair in pairs)
    )


def checked_plans(them: Opponents) -> Mapping[str, tuple[Plan, ...]]:
    """Ours and the two that it must beat, a plan per book."""
    ours = tuple(advised_plan(book.theirs) for book in them.books)
    return MappingProxyType(
        {
            OURS: ours,
            NO_EVIDENCE: (advised_plan(unnoted(them.pairs[0])),) * len(ours),
            WEAKEST: tuple(weakest_plan(book.theirs) for book in them.books),
        }
    )


def plans_for(them: Opponents) -> Mapping[str, tuple[Plan, ...]]:
    """Every way to play them, a plan per book; ours comes first."""
    checked = checked_plans(them)
    ours = checked[OURS]
    return MappingProxyType(
        {
            **checked,
            AT_RANDOM: (uniform_plan(),) * len(ours),
            STRANGERS: (*ours[1:], *ours[:1]),
        }
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Learning:
    """How they read us: the weight of the last ball, and what being ready does (1: as stated)."""

    rate: float = 0.1
    strength: float = 1.0
    sharpness: float = SHARPNESS
    slope: float = SLOPE


@dataclass(frozen=True, slots=True, kw_only=True)
class Gain:
    """What one plan gains over another, in rallies of 100, with its interval."""

    mean: float
    margin: float

    @classmethod
    def of(cls, differences: Floats) -> Gain:
        """Book by book, with the interval of Student's t over books."""
        books = len(differences)
        error = differences.std(ddof=1) / books**0.5
        quantile = t.ppf((1 + CONFIDENCE) / 2, books - 1)
        return cls(mean=float(differences.mean()), margin=float(quantile * error))

    @property
    def low(self) -> float:
        return self.mean - self.margin

    @property
    def high(self) -> float:
        return self.mean + self.margin

    def __str__(self) -> str:
        return f"{self.mean:+.2f} ({self.low:+.2f} to {self.high:+.2f})"


@dataclass(frozen=True, slots=True, kw_only=True)
class Played:
    """The share of rallies won by each plan, book by book, in 100; and what rallies were like.

    `serving` is the share won on our serve, `lengths` the shots of some rallies of the last plan.
    """

    shares: Mapping[str, Floats]
    serving: Mapping[str, float]
    lengths: NDArray[np.int64]

    def share(self, plan: str) -> float:
        return float(self.shares[plan].mean())

    def gain(self, over: str, of: str = OURS) -> Gain:
        return Gain.of(self.shares[of] - self.shares[over])


def played(
    them: Opponents,
    plans: Mapping[str, Sequence[Plan]],
    learning: Learning,
    *,
    rallies: int,
    meetings: int = 1,
    seed: int,
) -> Played:
    """Every plan against every pair, `meetings` times so many rallies, luck and learning afresh."""
    books, blocks = len(them.pairs), len(plans)
    met = met_of(them.pairs).repeated(meetings).tiled(blocks)
    draws = Draws.of([plan for each in plans.values() for plan in each], meetings)
    reader = Reader.fresh(
        met.columns,
        rate=learning.rate,
        strength=learning.strength,
        sharpness=learning.sharpness,
    )
    court = Court.of(met, draws, reader, slope=learning.slope)
    luck = np.random.default_rng([seed, 2])
    won, on_serve = np.zeros(met.columns), np.zeros(met.columns)
    lengths = []
    for number in range(rallies):
        result = court.play(number, luck.random((DRAWS, books * meetings)))
        won += result
        if number % 2 == 0:
            on_serve += result
        lengths.append(court.shots[-books * meetings :].copy())
    shape = blocks, books, meetings
    shares = 100 * won.reshape(shape).mean(axis=2) / rallies
    serving = 100 * on_serve.reshape(shape).mean(axis=(1, 2)) / (rallies / 2)
    return Played(
        shares=dict(zip(plans, shares, strict=True)),
        serving=dict(zip(plans, map(float, serving), strict=True)),
        lengths=np.concatenate(lengths),
    )
