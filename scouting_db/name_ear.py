"""How much of one name an ear hears in another: sounds of a kind count less than others.

After Zobel and Dart, "Phonetic string matching: lessons from information retrieval" (SIGIR 1996):
an edit distance in which letters of one group cost less (Editex). The groups and costs are ours,
set on the voices that were read.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from scouting_db.sounds import sound

SAME_TO_THE_EAR = 0.8
"""Likeness from which a real name may still be another one misheard."""

_VOWELS = frozenset("aeiouy")
_VOWEL = 0.5
"""What a vowel weighs beside a consonant's 1; dictation changes it the most."""

_ANOTHER_VOWEL, _VOWEL_MORE = 0.3, 0.35
_WEAK_MORE = 0.4
"""Cost of a sound more or less that is often swallowed: `h`, `r` after a vowel, a last `t`."""

_KINDS = (("sxj", 0.4), ("xkh", 0.5), ("mn", 0.5), ("lr", 0.7), ("pf", 0.6))
_GLIDES = {"f": "uo", "j": "i", "h": "i"}
"""A `w` and a `y` are half vowels; sounds as `sound` writes them."""

_GLIDE = 0.5


@lru_cache(maxsize=1 << 14)
def likeness(typed: str, name: str) -> float:
    """From 0 to 1, how much two folded words without spaces sound alike."""
    one, other = sound(typed), sound(name)
    longest = max(_weight(one), _weight(other))
    return max(0.0, 1.0 - _distance(one, other) / longest) if longest else 0.0


def _weight(heard: str) -> float:
    return sum(_VOWEL if letter in _VOWELS else 1.0 for letter in heard)


def _distance(one: str, other: str) -> float:
    """Wagner and Fischer's table, a row at a time."""
    left_out = _costs_of_leaving_out(one), _costs_of_leaving_out(other)
    row = [0.0]
    for cost in left_out[1]:
        row.append(row[-1] + cost)
    for letter, cost in zip(one, left_out[0], strict=True):
        above, row = row, [row[0] + cost]
        for at, (beside, its_cost) in enumerate(zip(other, left_out[1], strict=True)):
            instead = above[at] + _instead(letter, beside)
            row.append(min(instead, above[at + 1] + cost, row[at] + its_cost))
    return row[-1]


def _costs_of_leaving_out(heard: str) -> list[float]:
    costs: list[float] = []
    for before, letter in pairwise(f" {heard}"):
        is_last_t = letter == "t" and len(costs) == len(heard) - 1 and before not in _VOWELS
        if letter in _VOWELS:
            costs.append(_VOWEL_MORE)
        elif letter == "h" or (letter == "r" and before in _VOWELS) or is_last_t:
            costs.append(_WEAK_MORE)
        else:
            costs.append(1.0)
    return costs


@lru_cache(maxsize=1 << 10)
def _instead(one: str, other: str) -> float:
    if one == other:
        return 0.0
    if one in _VOWELS and other in _VOWELS:
        return _ANOTHER_VOWEL
    if other in _GLIDES.get(one, "") or one in _GLIDES.get(other, ""):
        return _GLIDE
    return min((cost for kind, cost in _KINDS if one in kind and other in kind), default=1.0)
