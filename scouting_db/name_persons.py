"""Whether two names are one person's: a slip and a short form are, another real name is not."""

from __future__ import annotations

from collections.abc import Sequence

from rapidfuzz.distance import DamerauLevenshtein

from knowledge.regex import regex
from scouting_db.known_names import Known, known_first_name, known_surname
from scouting_db.name_cost import SOUNDS_ALIKE, allowed_cost, cost_of, is_another_first_name
from scouting_db.short_names import is_short_for
from scouting_db.sounds import consonants, sound, spoken

_SHORT = 0.8
"""Cost of a short form where the surname does not fit as it stands either."""

_ONE_SLIP_OF_MANY = 10
"""Letters from which one wrong letter is a slip, even where it makes another real name."""

_ONE_LETTER = 4
"""Letters of a name that may be one letter off where the other part of it fits."""

_DICTATED = 6
_ALLOWED_VOWELS = 2.5
"""Letters of a first name whose vowels dictation may all have changed, and what that may cost."""

_LIKENESS = 0.7
"""Share of letters in common (Damerau-Levenshtein) from which two names may be mixed up."""

_ALIKE_LETTERS = 3
"""Letters in common at the start from which they may where all the rest fits. These costs and
shares were set on the nine line writers that were read."""

_STRESSED = 3
_ONE_VOWEL = 1.0
"""Letters at the start of a surname that are heard well, and the cost of a vowel after them
beside a first name that fits. A guess of ours."""

_VOWELS = frozenset("aeiou")
_DOUBLES = regex(r"([^aeiou])\1+")


def is_somebody_else(typed: str, name: str) -> bool:
    """Whether `typed` is a real name that is said otherwise: `lister` is no slip for Lismore."""
    return _is_another(typed, name, max(known_surname(typed), known_first_name(typed)))


def parts_cost(words: Sequence[str], given: str, surname: str) -> float | None:
    """The cost of a first name and a surname, each of a word or more and either one first.

    None if either part is another one: Milo Brennecke is not "Milo Brenner".
    """
    costs = (
        _both(first, last, given, surname)
        for at in range(1, len(words))
        for first, last in _either_way("".join(words[:at]), "".join(words[at:]))
    )
    return min((cost for cost in costs if cost is not None), default=None)


def are_loosely_alike(one: str, other: str) -> bool:
    """Whether one may have been meant by the other where everything else fits."""
    if one[:_ALIKE_LETTERS] == other[:_ALIKE_LETTERS]:
        return True
    return are_alike(one, other)


def are_alike(one: str, other: str) -> bool:
    """Whether two names differ by little: Lindgren and Lundgren."""
    likeness = DamerauLevenshtein.normalized_similarity(one, other)
    return likeness >= _LIKENESS or consonants(sound(one)) == consonants(sound(other))


def lacks_a_vowel(typed: str, name: str) -> bool:
    """`lemire` for Lemaire, `dorn` for Doran: a vowel more or less inside; Berge is not Berg."""
    shorter, longer = sorted((typed, name), key=len)
    if len(longer) != len(shorter) + 1:
        return False
    inside = range(1, len(longer) - 1)
    return any(longer[at] in _VOWELS and longer[:at] + longer[at + 1 :] == shorter for at in inside)


def _is_another(typed: str, name: str, known: Known) -> bool:
    if known is Known.NO or spoken(typed) == spoken(name):
        return False
    if lacks_a_vowel(typed, name) and known_first_name(typed) is Known.NO:
        return False  # but `moira` is no Mira, nor `mark` Marek
    if _DOUBLES.sub(r"\1", typed) == _DOUBLES.sub(r"\1", name):
        return False  # `halle` for Hale
    is_one_slip = DamerauLevenshtein.distance(typed, name) == 1
    if is_one_slip and len(typed) >= _ONE_SLIP_OF_MANY:
        return False
    is_rare = known is Known.RARELY and known_surname(name) is Known.COMMONLY
    begins_alike = spoken(typed)[:1] == spoken(name)[:1]
    return not (is_one_slip and is_rare and begins_alike)


def _either_way(first: str, second: str) -> tuple[tuple[str, str], tuple[str, str]]:
    return (first, second), (second, first)


def _both(typed_given: str, typed_surname: str, given: str, surname: str) -> float | None:
    first = _given_cost(typed_given, given)
    if first is None:
        return None
    last = _surname_cost(typed_surname, surname)
    return None if last is None else first + last


def _given_cost(typed: str, given: str) -> float | None:
    known = known_first_name(typed)
    if typed != given and is_short_for(typed, given):
        return None if is_another_first_name(typed, given) else _SHORT
    allowed = 0.0
    if known is Known.NO and len(typed) >= _DICTATED:
        is_vowels_only = consonants(sound(typed)) == consonants(sound(given))
        allowed = _ALLOWED_VOWELS if is_vowels_only else 0.0
    return _part_cost(typed, given, known, allowed)


def _surname_cost(typed: str, surname: str) -> float | None:
    if f"{surname}s" == typed or surname == f"{typed}s":
        return SOUNDS_ALIKE
    if _differ_unstressed(typed, surname):
        return _ONE_VOWEL
    return _part_cost(typed, surname, known_surname(typed), 0.0)


def _differ_unstressed(one: str, other: str) -> bool:
    """`sobel` and Sobol, `madson` and Madsen: a vowel that is hardly heard, after the first three
    letters."""
    apart = [at for at, pair in enumerate(zip(one, other, strict=False)) if len(set(pair)) > 1]
    if len(one) != len(other) or len(apart) != 1 or apart[0] < _STRESSED:
        return False
    at = apart[0]
    is_inside = at < len(one) - 1
    return is_inside and one[at] in _VOWELS and other[at] in _VOWELS


def _part_cost(typed: str, part: str, known: Known, at_least: float) -> float | None:
    if typed == part:
        return 0.0
    if _is_another(typed, part, known):
        return None
    if sound(typed) == sound(part) or spoken(typed) == spoken(part):
        return SOUNDS_ALIKE
    if known is Known.NO and len(part) >= _ONE_LETTER:
        at_least = max(at_least, 1.0)
    cost = cost_of(typed, part)
    return cost if cost <= max(at_least, allowed_cost(typed, part)) else None
