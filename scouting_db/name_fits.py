"""Which players a typed name may mean that is nobody's as it stands, and how well it fits them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from scouting_db.known_names import Known, is_no_name, known_first_name, known_surname
from scouting_db.name_begun import SHORTEST_SLIP, cut_short
from scouting_db.name_cost import (
    SOUNDS_ALIKE,
    allowed_cost,
    are_two_first_names,
    cost_of,
    has_consonants_of,
    is_another_first_name,
    is_cut,
)
from scouting_db.name_ear import SAME_TO_THE_EAR, likeness
from scouting_db.name_fit import BEGINNING, NOBODY, Fit
from scouting_db.name_forms import Strength, is_particles
from scouting_db.name_keys import HOLDERS, SHORTEST_BEGINNING, NameKeys
from scouting_db.name_parts import all_begin, begins_with, initial_of, squeeze
from scouting_db.name_persons import is_somebody_else, lacks_a_vowel, parts_cost
from scouting_db.name_rivals import said_alike
from scouting_db.name_slips import is_slip, lacks_vowels
from scouting_db.short_names import is_short_for
from scouting_db.sounds import consonants, fold, sound, spoken

SHORT_FORM = 3
"""Letters of a name so short that a longer word like it is another name."""

SHORT_GIVEN = 0.2
"""Cost of a first name cut short before the surname as it stands: `ben hale` for Benedict Hale."""

NOT_THIS_PERSON = 4.0
"""Cost of a surname that fits under a first name or an initial that does not."""

FAR, FAR_FROM_LETTERS = 1.5, 7
"""Cost from which one word is taken for another only where letters were left out, or where it has
so many letters and the same consonants."""

FAR_IN_VOWELS, FAR_FROM_VOWELS = 2.0, 6
"""Cost up to which a word that is no name may differ from a first name in vowels alone, and its
letters. A surname in other vowels may be another one."""

_CONSONANTS_HEARD = 4
_VOWELS = frozenset("aeiouy")

SLURRED = 2.0
"""Cost of a word that is no name beside the right initial, where its consonants are a name's."""

ONE_SLIP = 1.0
"""Cost of one slip of the thumb that makes no name of it."""

NAMESAKES = 300
"""Bearers of one surname among whom a first name cut short is looked for."""

_WORDS_OF_A_NAME = 2
"""More of them may be one name as dictated."""


def fits(keys: NameKeys, folded: str) -> dict[int, Fit]:
    """Every player who comes near, with the best fit of each."""
    best: dict[int, Fit] = {}
    for fit in _all_fits(keys, folded.split()):
        known = best.get(fit.position)
        if known is None or (fit.is_likely, -fit.cost) > (known.is_likely, -known.cost):
            best[fit.position] = fit
    return best


def _all_fits(keys: NameKeys, words: list[str]) -> Iterator[Fit]:
    initial = initial_of(words)
    if initial:
        yield from _begun(keys, words)
        yield from _with_initial(keys, *initial)
        return
    yield from _alike(keys, words)
    if len(words) > 1:
        yield from _begun(keys, words)
        yield from _shortened(keys, words[0], squeeze(" ".join(words[1:])))


def _alike(keys: NameKeys, words: list[str]) -> Iterable[Fit]:
    if len(words) > 1:
        return _sounding(keys, words)
    return keys.kept(words[0], lambda: tuple(_sounding(keys, words)))


def _sounding(keys: NameKeys, words: list[str]) -> Iterator[Fit]:
    key = "".join(words)
    is_known = len(words) == 1 and not is_no_name(key)
    for near in keys.sounding_like(key):
        if is_particles(near) and near != key:
            continue
        if len(near) <= SHORT_FORM and len(key) - len(near) > 1:
            continue  # Tomas is no Tom
        if len(words) > 1 and len(sound(near)) <= SHORT_FORM and words[0][0] != near[0]:
            continue  # "fh fine" is no Nguyen
        whole = _as_a_whole(key, near, is_one_word=len(words) == 1 or is_particles(words[0]))
        is_other = are_two_first_names(key, near)
        for strength, position in keys.held(near)[:HOLDERS]:
            if strength is Strength.INITIALS:
                continue
            if whole.cost > FAR and (near, position) in keys.heard:
                continue  # of a name as it is only heard hardly a letter may differ
            is_both = is_known and _is_both_names(keys, position, near)
            if is_both or (is_other and strength is Strength.GIVEN):
                is_near = whole.is_likely or whole.cost <= BEGINNING
                yield Fit(position, whole.cost, NOBODY if is_near else 0.0)
            elif (
                len(words) == 1
                and _says_given(keys, strength, position, near)
                and (_is_in_vowels(key, near))
            ):
                yield Fit(position, whole.cost, max(whole.allowed, FAR_IN_VOWELS))
            elif strength in (Strength.WHOLE, Strength.PART) and len(words) > 1:
                yield _by_parts(keys, position, near, words, whole)
            else:
                yield replace(whole, position=position)
    yield from cut_short(keys, key)


def _says_given(keys: NameKeys, strength: Strength, position: int, near: str) -> bool:
    """Whether a key is a first name or runs on from one: Dmitri, `jeanluc`."""
    return strength is Strength.GIVEN or (
        strength is Strength.PART and _is_both_names(keys, position, near)
    )


def _is_both_names(keys: NameKeys, position: int, near: str) -> bool:
    """Whether a key is a first name with a surname: `bill` is a name, and no Bea Hale."""
    given = keys.given(position)
    return near != given and near.startswith(given)


def _as_a_whole(key: str, near: str, *, is_one_word: bool) -> Fit:
    """How well a key fits, whoever holds it."""
    if is_one_word and is_somebody_else(key, near):
        cost = cost_of(key, near)
        is_near = cost <= allowed_cost(key, near) or not lacks_a_vowel(key, near)
        return Fit(0, cost, NOBODY if is_near else 0.0)
    if spoken(key) == spoken(near):
        return Fit(0, SOUNDS_ALIKE, SOUNDS_ALIKE)
    if is_one_word and len(near) >= SHORTEST_SLIP and is_no_name(key):
        if is_slip(key, near):
            return Fit(0, ONE_SLIP, ONE_SLIP)
        if lacks_vowels(key, near):
            return Fit(0, FAR, FAR)
    cost, allowed = cost_of(key, near), allowed_cost(key, near)
    if cost >= FAR and is_one_word and not _may_be_far(key, near):
        return Fit(0, cost, NOBODY)
    return Fit(0, cost, allowed)


def _is_in_vowels(key: str, near: str) -> bool:
    """`demetri` and Dmitri."""
    if len(key) < FAR_FROM_VOWELS or not is_no_name(key):
        return False
    if (key[-1] in _VOWELS) is not (near[-1] in _VOWELS):
        return False
    heard = consonants(sound(key))
    return len(heard) >= _CONSONANTS_HEARD and heard == consonants(sound(near))


def _may_be_far(key: str, near: str) -> bool:
    """Of one word alone: `oosterhaus` for Oosterhuis, but no `thorston` for Thorsen."""
    is_long = len(key) >= FAR_FROM_LETTERS
    return is_long and (is_cut(key, near) or has_consonants_of(key, near))


def _by_parts(keys: NameKeys, position: int, near: str, words: list[str], whole: Fit) -> Fit:
    """A key that holds a first name and a surname: both must fit."""
    given = keys.given(position)
    surname = near.removeprefix(given) if near.startswith(given) else near.removesuffix(given)
    if not surname or surname == near:
        rest = squeeze(" ".join(words[1:]))
        is_other = near.endswith(rest) and _is_other_given(words[0], near.removesuffix(rest))
        return Fit(position, whole.cost, NOBODY if is_other else whole.allowed)
    cost = parts_cost(words, given, surname)
    if cost is not None:
        return Fit(position, cost, cost)
    is_dictated = len(words) > _WORDS_OF_A_NAME and not _is_other_given(words[0], given)
    return Fit(position, whole.cost, whole.allowed if is_dictated else NOBODY)


def _is_other_given(typed: str, given: str) -> bool:
    """`claude dubrow` is not Marie-Claire Dubrow: a first name that is said otherwise."""
    is_real = known_first_name(typed) is not Known.NO
    return is_real and likeness(typed, given) < SAME_TO_THE_EAR


def _with_initial(keys: NameKeys, letter: str, word: str) -> Iterator[Fit]:
    """`P. Simanski`, `Hale B`: the word as usual, and the letter must begin another part."""
    for fit in _alike(keys, [word]):
        parts = fold(keys.roster[fit.position].name).split()
        others = [part for part in parts if cost_of(word, part) > fit.cost]
        is_theirs = any(part.startswith(letter) for part in others)
        cost = fit.cost if is_theirs else fit.cost + NOT_THIS_PERSON
        is_slurred = is_no_name(word) and any(has_consonants_of(word, part) for part in parts)
        yield Fit(fit.position, cost, max(fit.allowed, SLURRED) if is_slurred else fit.allowed)


def _shortened(keys: NameKeys, first: str, rest: str) -> Iterator[Fit]:
    """`Ben Hale` for Benedict Hale, `Simon Ski` for Simone Skarsen; others stay unlikely."""
    for position in keys.holders(rest)[:NAMESAKES]:
        given = keys.given(position)
        is_theirs = given.startswith(first) or is_short_for(first, given)
        if is_another_first_name(first, given):
            is_theirs = False
        yield Fit(position, SHORT_GIVEN if is_theirs else NOT_THIS_PERSON, BEGINNING)
    may_be_short = len(first) >= SHORT_FORM and keys.has_one_called(first)
    for position in said_alike(keys, rest, (Strength.SURNAME,)) if may_be_short else ():
        given = keys.given(position)
        if first != given and is_short_for(first, given):
            yield Fit(position, SHORT_GIVEN + SOUNDS_ALIKE, BEGINNING)
    for fit in _alike(keys, [first]):
        given, *surname = fold(keys.roster[fit.position].name).split()
        if is_another_first_name(first, given):
            continue
        if fit.is_likely and any(_is_begun(word, rest) for word in surname):
            yield Fit(fit.position, max(fit.cost, BEGINNING), fit.allowed)


def _is_begun(word: str, typed: str) -> bool:
    if word.startswith(typed):
        return True
    is_heard = len(typed) < len(word) and known_surname(typed) is not Known.COMMONLY
    return is_heard and begins_with(word, typed)


def _begun(keys: NameKeys, words: Sequence[str]) -> Iterator[Fit]:
    """`ng-b` for Nguyen-Brandt: every word begins the next part of one name."""
    if sum(map(len, words)) < SHORTEST_BEGINNING or len(words[0]) < 2:
        return
    ahead = keys.beginning_with(words[0])
    for position in dict.fromkeys(each for key in ahead for each in keys.holders(key)[:HOLDERS]):
        parts = fold(keys.roster[position].name).split()
        if is_another_first_name(words[0], parts[0]):
            continue
        if any(all_begin(parts[at:], words) for at in range(len(parts))):
            cost = SHORT_GIVEN if words[0] in parts else BEGINNING
            yield Fit(position, cost, BEGINNING)
