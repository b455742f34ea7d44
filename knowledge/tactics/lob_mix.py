"""How often to lob instead of dinking: a game of being guessed, and a cap for grooving.

A dink and a lob off the same dead dink are a zero-sum game with their guess: expecting the lob
they hang back, expecting the dink they lean in. A guessed lob is an overhead, a guessed dink
little worse than any; so the lob's share is small, whatever it wins (mixing.solution).
"""

from __future__ import annotations

from typing import Final

from knowledge.advice import AdvisedMix, MixShare
from knowledge.effects import OptionId
from knowledge.mixing.advised import RALLIES_A_GAME
from knowledge.mixing.costs import PUNISHING_PART
from knowledge.mixing.guessing import guessables
from knowledge.mixing.solution import Mix, mix_of, of_ten, pattern_loss_of
from knowledge.tactics import lob_sizes as sizes
from knowledge.tactics import lob_words as words
from knowledge.tactics.lob_answer import LobAnswer
from knowledge.tactics.lob_effects import NO_LOB, over
from knowledge.vocabulary import Trait

ONE_A_GAME: Final = 1.25
"""Lobs a game up to which it's said as one; rounding, no more."""


def lob_mix(answer: LobAnswer) -> AdvisedMix | None:
    """Dink or lob over the target; None where the lob is out, or nobody stands out to lob."""
    if answer.target is None or not answer.target.name:
        return None
    mix = solved(answer)
    lob, dink = OptionId(over(answer.target)), OptionId(NO_LOB)
    if mix.shares[lob] <= 0 or mix.shares[dink] <= 0:
        return None
    counts = of_ten(mix.shares)
    tenths = {one: count / 10 for one, count in counts.items()}
    labels = {lob: f"lob over {answer.target.name}", dink: "dink"}
    calls = {lob: f"{words.off_a_dead_dink(answer)}.", dink: "Keep dinking."}
    return AdvisedMix(
        shares=tuple(
            MixShare(
                option=one,
                label=labels[one],
                call=calls[one],
                share=mix.shares[one],
                guess=mix.guesses[one],
            )
            for one in (dink, lob)
        ),
        trigger=words.TRIGGER,
        how_often=how_often(mix.shares[lob]),
        value=mix.value,
        worth_points=100 * mix.worth,
        cost_points=100 * sizes.GUESSED_LOB,
        of_ten_loss_points=100 * pattern_loss_of(mix, tenths),
    )


def solved(answer: LobAnswer) -> Mix:
    """The game between a dink and the lob over the target."""
    assert answer.target is not None
    overhead = answer.target.profile.skill(Trait.OVERHEAD).level
    cost = {
        OptionId(over(answer.target)): sizes.GUESSED_LOB * (1 + PUNISHING_PART * overhead),
        OptionId(NO_LOB): sizes.GUESSED_DINK,
    }
    return mix_of(guessables(answer.weighed.ranking, cost, {}))


def lobs_a_game(share: float) -> float:
    """Lobs in a game at that share of dead dinks, never more than the surprise survives."""
    return min(sizes.TWICE_A_GAME, share * RALLIES_A_GAME * sizes.DEAD_DINKS_SHARE / 100)


def how_often(share: float) -> str:
    return "once a game" if lobs_a_game(share) < ONE_A_GAME else "twice a game at most"
