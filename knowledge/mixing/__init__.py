"""How to vary our choice where they can anticipate it: the small zero-sum game, solved exactly."""

from knowledge.mixing.costs import (
    COST_WHEN_GUESSED_POINTS,
    MIXED_TOPICS,
    PUNISHING_PART,
    cost_when_guessed,
)
from knowledge.mixing.guessing import (
    Guessable,
    expected_shares,
    guessables,
    payoffs,
    unguessed_chances,
)
from knowledge.mixing.solution import Mix, draw, drawn, mix_of, of_ten, pattern_loss_of

__all__ = [
    "COST_WHEN_GUESSED_POINTS",
    "MIXED_TOPICS",
    "PUNISHING_PART",
    "Guessable",
    "Mix",
    "cost_when_guessed",
    "draw",
    "drawn",
    "expected_shares",
    "guessables",
    "mix_of",
    "of_ten",
    "pattern_loss_of",
    "payoffs",
    "unguessed_chances",
]
