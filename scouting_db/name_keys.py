"""A roster's names as keys to look up: by spelling, by sound, by consonants, by beginning."""

from __future__ import annotations

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import takewhile

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from scouting_db.name_fit import Fit
from scouting_db.name_forms import Form, Strength, forms, given_name, is_particles
from scouting_db.name_parts import traces
from scouting_db.short_names import is_doubled, long_forms, stem_of
from scouting_db.sounds import consonants, sound
from scouting_db.values import PlayerRow

CANDIDATES = 60
"""Keys looked at closely, however many names the roster holds."""

HOLDERS = 12
"""Holders of one key that are looked at: of more namesakes nobody is told apart without asking."""

SHORTEST_BEGINNING = 3
_ALIKE_AT_MOST = 500
"""Keys of the same consonants that are compared letter by letter."""

_SHORTEST_SLIP, _SHORT_KEY = 4, 6
"""Letters of a key that one wrong letter is looked for in: in its first place, or in any."""

_SMALL_ROSTER = 2_000

_KEPT_NEAR = 8
"""Typed keys whose near ones are kept: one look-up asks for them several times."""

_KEPT_WORDS = 4096
"""Words whose fits are kept: a word is looked up alone and beside others, and most come again."""


class NameKeys:
    """Every form of every player, prepared so that finding one hardly depends on how many."""

    def __init__(self, roster: Iterable[PlayerRow]) -> None:
        self.roster = tuple(roster)
        self.by_key: dict[str, list[tuple[Strength, int]]] = defaultdict(list)
        self.by_sound: dict[str, list[str]] = defaultdict(list)
        self._by_consonants: dict[str, list[str]] = defaultdict(list)
        self._by_rest: dict[str, list[str]] = defaultdict(list)
        """Keys by what is left without their first letter, short ones without any of them."""
        self._near: dict[str, tuple[str, ...]] = {}
        self._fits: dict[str, tuple[Fit, ...]] = {}
        self.heard: set[tuple[str, int]] = set()
        """Keys that only sound like the name of the player at that position."""
        for position, row in enumerate(self.roster):
            for form in forms(row.name, row.aliases):
                self._add(form, position)
        self.keys = sorted(self.by_key)
        self._sorted = [key for key in self.keys if self.holders(key)]
        self._given = [key for key in self._sorted if self.bearers(key)]
        self._given_names = [given_name(row.name) for row in self.roster]
        self._first_names = sorted({*self._given_names})
        self.longest_given = max(map(len, self._given), default=0)
        self._given_heard = sorted((sound(key), key) for key in self._given)

    def _add(self, form: Form, position: int) -> None:
        holders = self.by_key[form.key]
        holders.append((form.strength, position))
        if form.heard:
            self.heard.add((form.key, position))
        if len(holders) > 1:
            return
        sounding = sound(form.key)
        self.by_sound[sounding].append(form.key)
        if form.strength is not Strength.INITIALS:
            for trace in traces(consonants(sounding)):
                self._by_consonants[trace].append(form.key)
            for rest in _rests(form.key):
                self._by_rest[rest].append(form.key)

    def given(self, position: int) -> str:
        """The first name of a player, the only name of who has but one."""
        return self._given_names[position]

    def held(self, key: str) -> Sequence[tuple[Strength, int]]:
        return self.by_key.get(key, ())

    def holders(self, key: str) -> list[int]:
        """Who goes by a key that is more than initials."""
        return [each for strength, each in self.held(key) if strength is not Strength.INITIALS]

    def bearers(self, key: str) -> list[int]:
        """Whose first name it is."""
        return [each for strength, each in self.held(key) if strength is Strength.GIVEN]

    def begins(self, folded: str) -> bool:
        """Whether some form begins with these folded letters."""
        return bool(_from(self.keys, folded, at_most=1))

    def beginning_with(self, start: str) -> list[str]:
        return _from(self._sorted, start)

    def given_beginning_with(self, start: str) -> list[str]:
        return _from(self._given, start)

    def given_heard_from(self, start: str) -> list[str]:
        """First names that begin with these sounds: `stef` of Stephanie, `madd` of Madison."""
        at = bisect_left(self._given_heard, (start, ""))
        ahead = self._given_heard[at : at + CANDIDATES]
        return [key for _, key in takewhile(lambda one: one[0].startswith(start), ahead)]

    def has_one_called(self, short: str) -> bool:
        """Whether it may be short for a first name: what nobody is called need not be looked at."""
        begun = [short, *long_forms(short)]
        stem = stem_of(short)
        if stem:
            begun.append(stem[:-1] if is_doubled(stem) else stem)
        return any(_from(self._first_names, one, at_most=1) for one in begun)

    def kept(self, word: str, found: Callable[[], tuple[Fit, ...]]) -> tuple[Fit, ...]:
        """Who a single word fits, as found at first: the roster stays as it is."""
        fits = self._fits.get(word)
        if fits is None:
            while len(self._fits) >= _KEPT_WORDS:
                self._fits.pop(next(iter(self._fits)), None)
            fits = self._fits[word] = found()
        return fits

    def sounding_like(self, key: str) -> tuple[str, ...]:
        """The nearest keys of nearly the same consonants, at most `CANDIDATES`."""
        near = self._near.get(key)
        if near is None:
            while len(self._near) >= _KEPT_NEAR:
                self._near.pop(next(iter(self._near)), None)
            near = self._near[key] = self._compared(key)
        return near

    def _compared(self, key: str) -> tuple[str, ...]:
        traced = sorted(traces(consonants(sound(key))))
        near = dict.fromkeys(
            one for trace in traced for one in self._by_consonants.get(trace, ())[:_ALIKE_AT_MOST]
        )
        near |= dict.fromkeys(self._one_letter_off(key))
        if len(near) <= CANDIDATES:
            return tuple(near)
        scorer = DamerauLevenshtein.normalized_similarity
        found = process.extract(key, list(near), scorer=scorer, limit=CANDIDATES)
        return tuple(one for one, *_ in found)

    def _one_letter_off(self, key: str) -> Iterator[str]:
        """Keys of which the first letter, or any one of a short key, is another, less or more."""
        for rest in (key, *sorted(_rests(key))):
            yield from self._by_rest.get(rest, ())[:CANDIDATES]
            if rest in self.by_key:
                yield rest

    def spelled_like(self, key: str) -> list[int]:
        """The nearest spellings of a small roster, for the buttons under "nobody"."""
        if len(self.roster) > _SMALL_ROSTER:
            return []
        scorer = DamerauLevenshtein.normalized_similarity
        begun = sound(key)[:1]
        keys = [k for k in self.by_key if sound(k)[:1] == begun and not is_particles(k)]
        found = process.extract(key, keys, scorer=scorer, limit=4, score_cutoff=0.4)
        return list(dict.fromkeys(each for one, *_ in found for _, each in self.by_key[one]))


def _rests(key: str) -> set[str]:
    if len(key) < _SHORTEST_SLIP - 1:
        return set()
    places = range(len(key)) if len(key) <= _SHORT_KEY else range(1)
    return {key[:at] + key[at + 1 :] for at in places}


def _from(ordered: Sequence[str], start: str, *, at_most: int = CANDIDATES) -> list[str]:
    """The words that begin so, of a sorted row."""
    at = bisect_left(ordered, start)
    found: list[str] = []
    for each in ordered[at : at + at_most]:
        if not each.startswith(start):
            break
        found.append(each)
    return found
