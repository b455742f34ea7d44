"""How to vary our choice where they can anticipate it: the small game, solved exactly."""

from knowledge.mixing.advised import RALLIES_A_GAME, RECENT_AIMS, advised_mix
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
from knowledge.mixing.regularity import (
    MIN_LOGGED_AIMS,
    Pearson,
    Runs,
    chi_square_tail,
    equal_win_rates,
    fits_shares,
    runs_of,
)
from knowledge.mixing.solution import Mix, drawn, mix_of, of_ten, pattern_loss_of
from knowledge.mixing.watched import watched_mix_of

__all__ = [
    "COST_WHEN_GUESSED_POINTS",
    "MIN_LOGGED_AIMS",
    "MIXED_TOPICS",
    "PUNISHING_PART",
    "RALLIES_A_GAME",
    "RECENT_AIMS",
    "Guessable",
    "Mix",
    "Pearson",
    "Runs",
    "advised_mix",
    "chi_square_tail",
    "cost_when_guessed",
    "drawn",
    "equal_win_rates",
    "expected_shares",
    "fits_shares",
    "guessables",
    "mix_of",
    "of_ten",
    "pattern_loss_of",
    "payoffs",
    "runs_of",
    "unguessed_chances",
    "watched_mix_of",
]
