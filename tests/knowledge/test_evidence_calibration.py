"""Intervals cover what they claim, on simulated opponents of known strength.

Source: the definition of a credible interval under its own prior; the truths are drawn here.
Measured with `python tests/benchmarks/calibration.py --players 600`, covered by 50/80/95% ranges:
the doubt as stated 47-56 / 79-86 / 95-97, halved 25-48 / 50-73 / 71-93, doubled 50-60 / 79-92 /
94-99.
"""

from __future__ import annotations

import random
from collections.abc import Callable
from functools import partial

import pytest
from evidence_simulation import (
    COVERAGES,
    Covers,
    covered,
    level_of_a_trait,
    rally_chance,
    rate_of_a_player,
)

from knowledge.vocabulary import Rate

PLAYERS = 300
CHANCE_ALONE = 3.5
"""Standard deviations of a count: one check in two thousand fails by chance, and none here does,
for the truths are the same every time."""

_Kind = Callable[..., Covers]

KINDS: dict[str, _Kind] = {
    "rate": lambda rng, doubt: rate_of_a_player(rng, Rate.RETURN_DEEP, 20, doubt=doubt),
    "notes": lambda rng, doubt: level_of_a_trait(rng, 6, 0, doubt=doubt),
    "notes and rallies": lambda rng, doubt: level_of_a_trait(rng, 3, 60, doubt=doubt),
    "pair": lambda rng, doubt: rally_chance(rng, 30, 0, doubt=doubt),
    "pair and others": lambda rng, doubt: rally_chance(rng, 30, 400, doubt=doubt),
}


def measured(kind: str, doubt: float) -> tuple[float, ...]:
    one: Callable[[random.Random], Covers] = partial(KINDS[kind], doubt=doubt)
    return covered(kind, one, doubt=doubt, players=PLAYERS).found


@pytest.mark.parametrize("kind", KINDS)
def test_with_the_doubt_as_stated_ranges_cover_what_they_claim(kind: str) -> None:
    for claim, found in zip(COVERAGES, measured(kind, 1.0), strict=True):
        spread = CHANCE_ALONE * (claim * (1 - claim) / PLAYERS) ** 0.5
        assert claim - spread <= found <= claim + spread + 0.03, (claim, found)


@pytest.mark.parametrize("kind", ["rate", "notes", "pair"])
def test_with_half_the_doubt_they_would_promise_too_much(kind: str) -> None:
    _, of_eighty, _ = measured(kind, 0.5)
    assert of_eighty < 0.75


@pytest.mark.parametrize("kind", ["rate", "notes", "pair"])
def test_with_twice_the_doubt_they_cover_at_least_what_they_claim(kind: str) -> None:
    for claim, found in zip(COVERAGES, measured(kind, 2.0), strict=True):
        assert found >= claim - 0.05, (claim, found)
