"""How far a typed name lies from a known one, and how far it may lie and still be that name."""

from __future__ import annotations

from rapidfuzz.distance import DamerauLevenshtein

from scouting_db.sounds import consonants, sound

SOUNDS_ALIKE = 0.5
"""Cost of a name that sounds the same but is spelled otherwise; one letter costs 1."""

_ALLOWED_COST = ((3, 0.0), (4, SOUNDS_ALIKE), (7, 1.5), (99, 2.5))
"""Letters of the longer name, and the cost up to which it still counts as the same name.
Common practice, no source; checked on tests/cases/names.jsonl and the open voices."""

_ALLOWED_LONG = 3.5
"""For ten letters and more whose consonants agree: dictated names lose their vowels."""

_LONG = 10
_SHORT = 6
_LETTERS_MORE = 2
_WHOLE_NAME = 4
_TELLING_CONSONANTS = 2
_VOWELS_APART = 1
_ENDINGS = ("ski", "sen", "son", "ek", "ik", "ak", "of", "ofa")
"""Endings of surnames as they sound; with another one it is another family. From memory."""

_VOWELS = frozenset("aeiou")


def cost_of(typed: str, key: str) -> float:
    if typed[0] != key[0] and sound(typed)[:1] != sound(key)[:1]:
        return float(max(len(typed), len(key)))
    spelled = DamerauLevenshtein.distance(typed, key)
    sounded = DamerauLevenshtein.distance(sound(typed), sound(key))
    is_far = 2 * spelled > max(len(typed), len(key))
    is_heard = sounded <= _VOWELS_APART and has_consonants_of(typed, key)
    if sounded and is_far and not is_heard:
        return float(spelled)
    return min(float(spelled), sounded + SOUNDS_ALIKE)


def has_consonants_of(typed: str, key: str) -> bool:
    """Whether both have the same three consonants or more: `keyst` and Quist."""
    heard = consonants(sound(typed))
    return len(heard) > _TELLING_CONSONANTS and heard == consonants(sound(key))


def is_cut(typed: str, key: str) -> bool:
    """Whether letters were only left out, to the eye or to the ear: `linqvst` of Lindqvist."""
    return _is_within(typed, key) or _is_within(sound(typed), sound(key))


def _is_within(shorter: str, longer: str) -> bool:
    letters = iter(longer)
    return all(letter in letters for letter in shorter)


def allowed_cost(typed: str, key: str) -> float:
    letters = max(len(typed), len(key))
    if letters - min(len(typed), len(key)) > _LETTERS_MORE and sound(typed) != sound(key):
        return 0.0
    if _are_two_names(sound(typed), sound(key)):
        return 0.0
    if letters >= _LONG and consonants(sound(typed)) == consonants(sound(key)):
        return _ALLOWED_LONG
    if letters <= _SHORT and _differ_by_a_vowel(typed, key):
        return 0.0
    return next(cost for longest, cost in _ALLOWED_COST if letters <= longest)


def _are_two_names(typed: str, key: str) -> bool:
    """`szymanski` and `szymanek`: an ending that makes another name."""
    ends = [next((end for end in _ENDINGS if one.endswith(end)), None) for one in (typed, key)]
    return None not in ends and ends[0] != ends[1]


def are_two_first_names(typed: str, key: str) -> bool:
    """`carla` and `karl`: an "a" more makes another first name."""
    one, other = sound(typed), sound(key)
    return one == f"{other}a" or other == f"{one}a"


def is_another_first_name(typed: str, given: str) -> bool:
    """Whether a first name long enough to be a whole one is another's: Philip is no Philippa."""
    is_whole = len(typed) >= _WHOLE_NAME
    return typed != given and is_whole and are_two_first_names(typed, given)


def _differ_by_a_vowel(typed: str, key: str) -> bool:
    """`muller` and `moller`: the first vowel makes two names of them, unless they sound alike."""
    if len(typed) != len(key) or sound(typed) == sound(key):
        return False
    other = [place for place, letter in enumerate(typed) if letter != key[place]]
    first = next((place for place, letter in enumerate(typed) if letter in _VOWELS), None)
    return other == [first] and key[other[0]] in _VOWELS
