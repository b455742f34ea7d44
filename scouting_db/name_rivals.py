"""Who else may be meant where a name fits one player exactly, or fits two by halves."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from itertools import product

from rapidfuzz.distance import DamerauLevenshtein

from scouting_db.name_forms import Strength, forms, given_name, surname_of
from scouting_db.name_keys import CANDIDATES, HOLDERS, NameKeys
from scouting_db.name_persons import are_alike, are_loosely_alike
from scouting_db.sounds import consonants, fold, sound
from scouting_db.values import PlayerRow

_LETTERS_OF_A_LONGER_NAME = 2
"""`doug` may be Douglas; one letter more is another first name, as Simone is no Simon."""

_LETTERS_FARTHER = 2

_SOUNDS_OF_A_LONG_NAME, _FIRST_UNSTRESSED = 6, 3
_VOWELS = "aeiou"


def longer_given(keys: NameKeys, key: str) -> set[int]:
    """`chris` is Chris, but it may be Christine as well."""
    return {
        position
        for longer in keys.given_beginning_with(key)
        if len(longer) >= len(key) + _LETTERS_OF_A_LONGER_NAME
        for position in keys.bearers(longer)[:HOLDERS]
    }


def said_alike(keys: NameKeys, key: str, strengths: Collection[Strength]) -> set[int]:
    """Whose name is said as `key` is but spelled otherwise: Lindqvist beside Lindquist.

    A long one that differs in a vowel counts too: nobody hears a Sorensen from a Sorenson.
    """
    sounds = {sound(key), *_other_vowels(sound(key))}
    alike = {one for heard in sounds for one in keys.by_sound.get(heard, ())} - {key}
    holders = (one for near in alike for one in keys.held(near)[:HOLDERS])
    return {position for strength, position in holders if strength in strengths}


def _other_vowels(heard: str) -> Iterator[str]:
    if len(heard) < _SOUNDS_OF_A_LONG_NAME:
        return
    places = [at for at in range(_FIRST_UNSTRESSED, len(heard)) if heard[at] in _VOWELS]
    for at in places:
        yield from (f"{heard[:at]}{vowel}{heard[at + 1 :]}" for vowel in _VOWELS)


def twins(keys: NameKeys, near: Collection[str]) -> set[int]:
    """Beside a Castellano there may be a Castellanos."""
    other = {f"{one}s" for one in near} | {one[:-1] for one in near if one.endswith("s")}
    return {each for twin in other for each in keys.holders(twin)}


def has_consonants(row: PlayerRow, key: str) -> bool:
    """Whether the whole name has the consonants that were typed: dictation changes the vowels."""
    return consonants(sound(fold(row.name).replace(" ", ""))) == consonants(sound(key))


def nearest_spelled(players: Sequence[PlayerRow], key: str) -> PlayerRow | None:
    """Who is spelled so but for one letter, where everybody else only sounds so: `kiern` is Kieran
    and not Ciaran."""
    near = sorted((_letters_off(row, key), at) for at, row in enumerate(players))
    (best, at), (next_best, _) = near[:2]
    is_clear = best <= 1 and next_best >= best + _LETTERS_FARTHER
    return players[at] if is_clear else None


def only_begun(players: Sequence[PlayerRow], key: str) -> PlayerRow | None:
    """Whose first name alone is spelled so at its start: `steph` is Stephanie before Stefan."""
    begun = [row for row in players if given_name(row.name).startswith(key)]
    return begun[0] if len(begun) == 1 else None


def _letters_off(row: PlayerRow, key: str) -> int:
    spelled = (one.key for one in forms(row.name, row.aliases) if not one.heard)
    return min(DamerauLevenshtein.distance(key, one) for one in spelled)


def given_alike(keys: NameKeys, key: str) -> set[int]:
    """Whose first name sounds as a surname does: Gail beside Gale."""
    near = (one for one in keys.by_sound.get(sound(key), ()) if one != key)
    return {position for one in near for position in keys.bearers(one)}


def said_the_other_way(keys: NameKeys, folded: str, position: int) -> set[int]:
    """`dean carol` is Carol Dean turned round, but it sounds as Dean Carroll does."""
    if fold(keys.roster[position].name).startswith(folded.split()[0]):
        return set()
    key = folded.replace(" ", "")
    alike = (one for near in keys.by_sound[sound(key)] for one in keys.held(near))
    return {each for strength, each in alike if strength is Strength.WHOLE}


def crossed(keys: NameKeys, words: list[str]) -> set[int]:
    """`lina fontaine` where there are a Lina Fontana and a Dario Fontaine: either is meant.

    Only if one of them comes near in the other part too: Megan O'Dell is not "Megan Brandt".
    """
    found: set[int] = set()
    for at in range(1, len(words)):
        either = ("".join(words[:at]), "".join(words[at:]))
        found |= _crossed(keys, *either) | _crossed(keys, *reversed(either))
    return found


def _crossed(keys: NameKeys, given: str, surname: str) -> set[int]:
    first = keys.bearers(given)
    last = _surnamed(keys, surname) if first else []
    if not last:
        return set()
    if len(first) * len(last) > CANDIDATES or set(first) & set(last):
        return set()
    fits_one = sound(given) in {sound(keys.given(each)) for each in last}
    alike = are_alike if fits_one else are_loosely_alike
    return {
        each
        for one, other in product(first, last)
        if alike(surname, surname_of(keys.roster[one].name))
        or (alike(given, keys.given(other)) and not fits_one)
        for each in (one, other)
    }


def _surnamed(keys: NameKeys, key: str) -> list[int]:
    strengths = (Strength.SURNAME, Strength.PART, Strength.LATER)
    return [position for strength, position in keys.held(key) if strength in strengths]


def plain_bearer(holders: Sequence[tuple[Strength, int]]) -> int | None:
    """Who bears it as a surname where the others bear it as the later part of a double one."""
    plain = [position for strength, position in holders if strength is Strength.SURNAME]
    rest = {strength for strength, _ in holders} - {Strength.SURNAME}
    return plain[0] if len(plain) == 1 and rest == {Strength.LATER} else None


def namesakes(keys: NameKeys, words: Sequence[str]) -> set[int]:
    """`Linda Kvist` may be Lindqvist, but also some Linda whose surname we mishear."""
    rest = "".join(words[1:])
    if not rest or keys.held(rest):
        return set()
    return set(keys.bearers(words[0])[:HOLDERS])


def is_only_bearer(
    keys: NameKeys, position: int, initial: tuple[str, str] | None, others: set[int]
) -> bool:
    """Whether nobody else's first name sounds as the one typed: `jose p` beside Josephine P."""
    given = initial[1] if initial else ""
    return all(sound(keys.given(each)) != sound(given) for each in others - {position})
