"""How far a typed word lies from a name when thumbs typed it: slips of theirs cost less."""

from __future__ import annotations

from functools import lru_cache

from scouting_db.name_slips import are_neighbours

_SLIP = 0.5
"""Cost of a neighbouring key for another, two letters swapped, one doubled or not, or a vowel for
another; any other letter costs 1. These costs are guesses of ours."""

_KEY_MORE = 0.6
"""Cost of a key pressed along with its neighbour, and of a vowel left out."""

_VOWELS = frozenset("aeiou")
_SOUNDED = frozenset("aeiouy")


@lru_cache(maxsize=1 << 10)
def thumb_cost(typed: str, name: str) -> float:
    """The cheapest way from the name to what was typed, both folded and without spaces.

    Damerau and Levenshtein's table (optimal string alignment) with the costs above.
    """
    before: list[float] = []
    above = [0.0]
    for letter in name:
        above.append(above[-1] + (_KEY_MORE if letter in _VOWELS else 1.0))
    for at, letter in enumerate(typed):
        row = [above[0] + 1.0]
        for place, its in enumerate(name):
            cost = min(
                above[place] + _instead(letter, its),
                above[place + 1] + _typed_too(typed, at, its),
                row[place] + _left_out(name, place),
            )
            if at and place and letter == name[place - 1] and typed[at - 1] == its:
                cost = min(cost, before[place - 1] + _SLIP)
            row.append(cost)
        before, above = above, row
    return above[-1]


def _instead(typed: str, letter: str) -> float:
    if typed == letter:
        return 0.0
    is_vowel = typed in _SOUNDED and letter in _SOUNDED
    return _SLIP if is_vowel or are_neighbours(typed, letter) else 1.0


def _typed_too(typed: str, at: int, letter: str) -> float:
    if at and typed[at - 1] == typed[at]:
        return _SLIP
    return _KEY_MORE if are_neighbours(typed[at], letter) else 1.0


def _left_out(name: str, place: int) -> float:
    if place and name[place - 1] == name[place]:
        return _SLIP
    return _KEY_MORE if name[place] in _VOWELS else 1.0
