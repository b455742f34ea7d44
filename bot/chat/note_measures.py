"""Feet that measure a distance, a shot that is big, an age: none is somebody's feet or height."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.numbers import number
from bot.chat.said import Claim
from bot.chat.words import Word
from knowledge.vocabulary import Trait

_NEAR = 3
"""Words from a shot to what is said of it: "serve is just huge"."""
_SHOTS = word_set("owned_skills") - {"feet", "hands", "hip"}
_BIG = frozenset(["huge", "big", "massive"])
_MEASURES = frozenset(["feet", "foot", "ft"])
_IS = frozenset(["is", "was", "hes", "shes", "turned", "turns", "im", "about", "aged", "age"])
_YEARS = frozenset(["years", "year", "yrs", "yr", "yo", "old"])
_AFEW = frozenset(["couple", "few", "half"])


def measures(claim: Claim, said: Sequence[Word]) -> bool:
    """Whether the feet of a claim only measure: "they are 3 feet behind the line"."""
    first = next((at for at, word in enumerate(said) if word.span[0] >= claim.span[0]), 0)
    is_unit = first > 0 and said[first].folded in _MEASURES
    return is_unit and (number(said[first - 1]) is not None or said[first - 1].folded in _AFEW)


def is_of_shot(claim: Claim, said: Sequence[Word]) -> bool:
    """Whether what is huge or big is a shot and nobody's height: "his serve is huge"."""
    start, stop = claim.span
    own = {word.folded for word in said if start <= word.span[0] < stop}
    near = [word.folded for word in said if word.span[1] <= start][-_NEAR:]
    return claim.trait is Trait.HEIGHT and bool(_BIG & own) and bool(_SHOTS & {*near, *own})


def is_age(claim: Claim, said: Sequence[Word]) -> bool:
    """Whether a bare number is as likely an age: "shes 63". Feet and inches are typed with a mark
    or a space between them, or stand in a list ("okafor 63 lefty")."""
    if claim.trait is not Trait.HEIGHT:
        return False
    start, stop = claim.span
    own = [at for at, word in enumerate(said) if start <= word.span[0] < stop]
    if len(own) != 1 or not said[own[0]].typed.isdecimal():
        return False
    before = said[own[0] - 1].folded if own[0] else ""
    behind = {word.folded for word in said[own[0] + 1 : own[0] + 2]}
    return before in _IS or bool(_YEARS & behind)
