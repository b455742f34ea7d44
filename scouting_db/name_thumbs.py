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
    left_out = [_left_out(name, place) for place in range(len(name))]
    before: list[float] = []
    above = [0.0]
    for letter in name:
        above.append(above[-1] + (_KEY_MORE if letter in _VOWELS else 1.0))
    last = ""
    for letter in typed:
        cost = above[0] + 1.0
        row = [cost]
        for place, its in enumerate(name):
            instead, too = _costs(letter, its)
            too = _SLIP if letter == last else too
            cost = min(above[place] + instead, above[place + 1] + too, cost + left_out[place])
            if place and last == its and letter == name[place - 1]:
                cost = min(cost, before[place - 1] + _SLIP)
            row.append(cost)
        before, above, last = above, row, letter
    return above[-1]


@lru_cache(maxsize=1 << 11)
def _costs(typed: str, letter: str) -> tuple[float, float]:
    """Of a letter typed instead of another, and of one typed beside it."""
    is_near = are_neighbours(typed, letter)
    if typed == letter:
        return 0.0, _KEY_MORE if is_near else 1.0
    is_vowel = typed in _SOUNDED and letter in _SOUNDED
    return _SLIP if is_vowel or is_near else 1.0, _KEY_MORE if is_near else 1.0


def _left_out(name: str, place: int) -> float:
    if place and name[place - 1] == name[place]:
        return _SLIP
    return _KEY_MORE if name[place] in _VOWELS else 1.0
