"""How to vary against one who learns our shares: each ball is waited for as often as we play it.

Players who must commit early match what they have seen (probability matching; smooth fictitious
play in Fudenberg and Levine 1998, The Theory of Learning in Games, chapter 4, both from memory)
and do not find the best reply at once. With a the unguessed chances, c what being guessed costs and
f our shares, such a pair holds us to V(f) = sum of f a - sum of c f^2, which is best where every
option that is in has the same a - 2 c f:

1. Leave out the options that cost nothing when guessed; the best of them is worth its chance z.
2. Take the others from the best a down while a > m, with
   S = sum of 1/c and m = (sum of a/c - 2)/S over those taken.
3. If z > m, then m is z: what the others leave of the balls goes to that one.
4. Each share is (a - m)/(2 c).

So an option leads by how much better it is, not only by what a guess costs, and is every ball only
from a lead of 2 c on: in between the exact solution of the zero-sum game (mixing.solution) plays
both alike, then one alone. The price: from n options of one cost c, one who guesses best gets up to
(n - 1)/(8 n) of c more than against the exact solution, and whatever the costs are less than an
eighth of the largest (found by search, and held so in the tests). `pattern_loss_of` says it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from types import MappingProxyType

from knowledge.mixing.guessing import Guessable, unguessed_chances
from knowledge.mixing.solution import LEAST_COST, Mix, mix_of


def watched_mix_of(options: Sequence[Guessable]) -> Mix:
    """The shares against one who learns them; all figures stay those against the best reply.

    So `value` is what the exact solution is sure of, whoever plays, and no figure is better for
    being said to a pair that learns slowly. ValueError for no option, or two of one name.
    """
    shares = zip((one.option for one in options), _shares(options), strict=True)
    return replace(mix_of(options), shares=MappingProxyType(dict(shares)))


def _shares(options: Sequence[Guessable]) -> list[float]:
    unguessed = unguessed_chances(options)
    free = [place for place, one in enumerate(options) if one.cost < LEAST_COST]
    sure = max(free, key=unguessed.__getitem__, default=None)
    level = _level(options, unguessed)
    if sure is not None:
        level = max(level, unguessed[sure])
    shares = [
        0.0 if place in free else max(0.0, unguessed[place] - level) / (2 * one.cost)
        for place, one in enumerate(options)
    ]
    if sure is not None:
        shares[sure] = max(0.0, 1 - sum(shares))
    total = sum(shares)
    return [share / total for share in shares]


def _level(options: Sequence[Guessable], unguessed: Sequence[float]) -> float:
    """The m that the options with a cost reach among themselves."""
    costly = [place for place, one in enumerate(options) if one.cost >= LEAST_COST]
    inverse = weighted = 0.0
    level = float("-inf")
    for place in sorted(costly, key=lambda place: -unguessed[place]):
        if unguessed[place] <= level:
            break
        inverse += 1 / options[place].cost
        weighted += unguessed[place] / options[place].cost
        level = (weighted - 2) / inverse
    return level
