"""What thumbs do to a name: a neighbouring key, two letters swapped, doubled or left out.

A word that is no name anybody commonly bears is such a slip more likely than another person.
"""

from __future__ import annotations

from rapidfuzz.distance import DamerauLevenshtein

from scouting_db.sounds import consonants, sound

_ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
_ROW_SHIFT = 0.5
"""How far each row of keys stands to the right of the one above, in keys."""

_REACH = 1.1
"""Keys apart, along a row, that a thumb still mixes up."""

_KEYS = {
    letter: (row, column + row * _ROW_SHIFT)
    for row, letters in enumerate(_ROWS)
    for column, letter in enumerate(letters)
}
_NO_VOWELS = str.maketrans("", "", "aeiou")
_TELLING_CONSONANTS = 3
"""Consonants that name somebody without any vowel: `vlkv`, `nkmra`. A guess of ours."""

_DROPPED_FIRST = 5
"""Letters of a name whose first may be missing: `orling`; `ale` is no Hale. A guess of ours."""


def are_neighbours(one: str, other: str) -> bool:
    """Whether two letters are neighbours on a phone's English keys."""
    if one not in _KEYS or other not in _KEYS:
        return False
    (row, at), (other_row, other_at) = _KEYS[one], _KEYS[other]
    return abs(row - other_row) <= 1 and abs(at - other_at) <= _REACH


def is_slip(typed: str, name: str) -> bool:
    """Whether one slip of the thumb makes `typed` of the name: `halr`, `hlae`, `halle`, `hle`."""
    if DamerauLevenshtein.distance(typed, name) != 1:
        return False
    apart = [at for at, pair in enumerate(zip(typed, name, strict=False)) if len(set(pair)) > 1]
    if len(typed) == len(name):
        return len(apart) > 1 or are_neighbours(typed[apart[0]], name[apart[0]])
    if len(typed) > len(name):
        at = apart[0] if apart else len(name)
        beside = typed[max(at - 1, 0) : at] + typed[at + 1 : at + 2]
        return any(one == typed[at] or are_neighbours(one, typed[at]) for one in beside)
    return name[1:] != typed or len(name) >= _DROPPED_FIRST


def lacks_vowels(typed: str, name: str) -> bool:
    """Whether vowels alone were left out, most or all of them: `bmgrtnr` of Baumgartner."""
    if typed[0] != name[0] or len(typed) >= len(name):
        return False
    written = without_vowels(typed)
    if len(written) < _TELLING_CONSONANTS:
        return False
    if written == typed:
        return consonants(sound(typed)) == consonants(sound(name)) or typed == without_vowels(name)
    letters = iter(name)
    is_left = all(letter in letters for letter in typed) and typed[-1] == name[-1]
    return is_left and written == without_vowels(name)


def without_vowels(word: str) -> str:
    """The letters of a folded word that are no vowels."""
    return word.translate(_NO_VOWELS)
