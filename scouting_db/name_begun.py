"""Whose name begins with what was typed: cut short, a pet name, or without its vowels."""

from __future__ import annotations

from collections.abc import Iterator

from scouting_db.known_names import Known, is_no_name, known_surname
from scouting_db.name_fit import BEGINNING, NOBODY, Fit
from scouting_db.name_keys import HOLDERS, SHORTEST_BEGINNING, NameKeys
from scouting_db.name_slips import without_vowels
from scouting_db.short_names import is_doubled, is_short_for, long_forms, stem_of
from scouting_db.sounds import sound

TELLING_BEGINNING = 4
"""Letters of a beginning that names somebody however long the name is: `cast`, `szym`."""

SHORTEST_SLIP = 4
"""Letters of a name of which a slip is still known for one."""

_STAYS = 2  # letters that any swap behind them leaves as they are


def cut_short(keys: NameKeys, key: str) -> Iterator[Fit]:
    """Whose name begins so: a first name of any length, or a surname whose beginning tells."""
    for position in (each for long in long_forms(key) for each in keys.bearers(long)[:HOLDERS]):
        yield Fit(position, BEGINNING, BEGINNING)
    yield from _diminutives(keys, key)
    yield from _swapped(keys, key)
    if without_vowels(key) == key:
        yield from _without_vowels(keys, key)
    if len(key) < SHORTEST_BEGINNING:
        if len(key) > 1:
            for one in keys.given_beginning_with(key):
                yield from (Fit(each, BEGINNING, BEGINNING) for each in keys.bearers(one)[:HOLDERS])
        return
    longer = keys.beginning_with(key)
    given = {each for one in keys.given_beginning_with(key) for each in keys.bearers(one)[:HOLDERS]}
    begun = {each for one in longer for each in keys.holders(one)[:HOLDERS]}
    tells = len(key) >= TELLING_BEGINNING or any(2 * len(key) >= len(one) for one in longer)
    if len(begun) == 1 and known_surname(key) is Known.COMMONLY:
        tells = False  # one Hollister, and Hollis is a name of its own
    elif len(begun) > 1:
        tells = True  # which of them is asked in any case
    for position in begun:
        yield Fit(position, BEGINNING, BEGINNING if tells or position in given else 0.0)
    for one in keys.given_heard_from(sound(key)):
        is_heard = len(sound(key)) >= TELLING_BEGINNING and is_no_name(key)
        allowed = BEGINNING if is_heard else NOBODY
        yield from (Fit(each, BEGINNING, allowed) for each in keys.bearers(one)[:HOLDERS])


def _swapped(keys: NameKeys, key: str) -> Iterator[Fit]:
    """`gewn` for Gwendolyn: a beginning that is no name, with two letters swapped."""
    if not SHORTEST_SLIP <= len(key) <= keys.longest_given:
        return
    is_begun = bool(keys.given_beginning_with(key[:_STAYS]))
    for at in range(len(key) - 1 if is_begun else _STAYS):
        begun = f"{key[:at]}{key[at + 1]}{key[at]}{key[at + 2 :]}"
        found = keys.given_beginning_with(begun)
        for given in found if found and is_no_name(key) else ():
            yield from (Fit(each, BEGINNING, BEGINNING) for each in keys.bearers(given)[:HOLDERS])


def _without_vowels(keys: NameKeys, key: str) -> Iterator[Fit]:
    """`frn`, where it is Fran, may be Francesca as well."""
    for given in keys.given_beginning_with(key[0]):
        if without_vowels(given).startswith(key):
            yield from (Fit(each, BEGINNING, NOBODY) for each in keys.bearers(given)[:HOLDERS])


def _diminutives(keys: NameKeys, key: str) -> Iterator[Fit]:
    """`sunny` for Sunniva; `sami`, where it fits Samira, may be Samuel as well."""
    stem = stem_of(key)
    begun = stem[:-1] if is_doubled(stem) else stem
    for given in keys.given_beginning_with(begun) if stem else ():
        if is_short_for(key, given):
            allowed = BEGINNING if is_doubled(stem) else NOBODY
            yield from (Fit(each, BEGINNING, allowed) for each in keys.bearers(given)[:HOLDERS])
