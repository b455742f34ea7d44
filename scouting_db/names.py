"""Who is meant by a typed name: one player for sure, several to ask about, or nobody.

A wrong match is worse than a question, so one player comes back only when every part of what
was typed fits them and nobody else fits nearly as well.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import takewhile

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from scouting_db.name_cost import allowed_cost, are_two_first_names, cost_of
from scouting_db.name_forms import Form, Strength, forms, is_particles
from scouting_db.name_parts import (
    all_begin,
    begins_with,
    initial_of,
    squeeze,
    traces,
    without_titles,
)
from scouting_db.sounds import consonants, fold, sound
from scouting_db.values import PlayerRow

__all__ = ["Alike", "Found", "Match", "NameIndex", "Nobody", "fold", "lookup"]

NEAREST = 3
"""How many near names are offered where nobody is close enough."""

SHORT_FORM = 3
"""Letters of a name so short that a longer word like it is another name."""

ASKED_AT_MOST = 6
"""More alike names than this do not fit on buttons."""

MARGIN = 0.75
"""A second name within this cost of the best must be asked about."""

BEGINNING = 1.0
"""Cost of a name cut short, such as `lindq`."""

TELLING_BEGINNING = 4
"""Letters of a beginning that names somebody however long the name is: `cast`, `szym`."""

SHORT_GIVEN = 0.2
"""Cost of a first name cut short before the surname as it stands: `ben hale` for Benedict Hale."""

NOT_THIS_PERSON = 4.0
"""Cost of a surname that fits under a first name or an initial that does not."""


_SHORTEST_BEGINNING = 3
_CANDIDATES = 60
_SMALL_ROSTER = 2_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Exactly one player, for sure."""

    player: PlayerRow


@dataclass(frozen=True, slots=True, kw_only=True)
class Alike:
    """Several players; it must be asked which.

    `likeliest` goes by exactly what was typed, while the others only bear it as the later part of
    a double surname (Brandt beside Nguyen-Brandt): a reply that names them in full may go ahead.
    """

    players: tuple[PlayerRow, ...]
    likeliest: PlayerRow | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Nobody:
    """Nobody on the roster; the nearest few, best first, perhaps none."""

    nearest: tuple[PlayerRow, ...] = ()


Match = Found | Alike | Nobody


class NameIndex:
    """A roster prepared for look-ups whose cost hardly grows with the roster."""

    def __init__(self, roster: Iterable[PlayerRow]) -> None:
        self.roster = tuple(roster)
        self._by_key: dict[str, list[tuple[Strength, int]]] = defaultdict(list)
        self._by_consonants: dict[str, list[str]] = defaultdict(list)
        self._by_sound: dict[str, list[str]] = defaultdict(list)
        self._sorted: list[str] = []
        for position, row in enumerate(self.roster):
            for form in forms(row.name, row.aliases):
                self._add(form, position)
        self._keys = sorted(self._by_key)
        self._sorted = [key for key in self._keys if self._holders(key)]

    def _add(self, form: Form, position: int) -> None:
        holders = self._by_key[form.key]
        holders.append((form.strength, position))
        if len(holders) > 1:
            return
        sounding = sound(form.key)
        self._by_sound[sounding].append(form.key)
        if form.strength is not Strength.INITIALS:
            for trace in traces(consonants(sounding)):
                self._by_consonants[trace].append(form.key)

    def has(self, typed: str, *, initials: bool = True) -> bool:
        """Whether the folded words are exactly some player's form, `ana r` among them or not."""
        holders = self._by_key.get(squeeze(fold(typed)), [])
        return any(initials or held is not Strength.INITIALS for held, _ in holders)

    def sounds_like_one(self, typed: str) -> bool:
        """Whether the words sound exactly as some player's form: "win Brandt"."""
        return sound(squeeze(fold(typed))) in self._by_sound

    def begins(self, folded: str) -> bool:
        """Whether some form begins with these folded letters."""
        at = bisect_left(self._keys, folded)
        return at < len(self._keys) and self._keys[at].startswith(folded)

    def lookup(self, typed: str, *, nearest: bool = True) -> Match:
        """Who is meant by `typed`, a name and nothing else; `nearest` wants names for Nobody."""
        folded = without_titles(fold(typed))
        key = squeeze(folded)
        if not key:
            return Nobody()
        return self._exact(key) or self._near(folded, key, nearest=nearest)

    def _exact(self, key: str) -> Match | None:
        holders = self._by_key.get(key, [])
        whole = {position for strength, position in holders if strength is Strength.WHOLE}
        if whole:
            return self._match(whole)
        if holders and all(strength <= Strength.GIVEN for strength, _ in holders):
            kinds = {strength for strength, _ in holders}
            alike = [one for near in self._by_sound[sound(key)] for one in self._by_key[near]]
            holders = [one for one in alike if one[0] in kinds]
        if not holders:
            return None
        match = self._match({position for _, position in holders})
        likeliest = self._plain_bearer(holders)
        return replace(match, likeliest=likeliest) if isinstance(match, Alike) else match

    def _plain_bearer(self, holders: Sequence[tuple[Strength, int]]) -> PlayerRow | None:
        plain = [position for strength, position in holders if strength is Strength.SURNAME]
        rest = {strength for strength, _ in holders} - {Strength.SURNAME}
        return self.roster[plain[0]] if len(plain) == 1 and rest == {Strength.LATER} else None

    def _near(self, folded: str, key: str, *, nearest: bool) -> Match:
        costs = self._costs(folded, key)
        likely = {position: cost for position, (cost, allowed) in costs.items() if cost <= allowed}
        if likely:
            best = min(likely.values())
            meant = {each for each, cost in likely.items() if cost <= best + MARGIN}
            meant |= self._namesakes(folded.split()) | self._twins(key, best)
            return self._likely(meant, key, best)
        if not nearest:
            return Nobody()
        close = [position for position, (cost, _) in costs.items() if 2 * cost <= len(key)]
        near = sorted(close, key=lambda position: costs[position][0]) or self._spelled_like(key)
        return Nobody(nearest=tuple(self.roster[each] for each in near[:NEAREST]))

    def _likely(self, meant: set[int], key: str, best: float) -> Match:
        match = self._match(meant)
        keys = {near for near in self._sounding_like(key) if cost_of(key, near) <= best}
        holders = [one for near in keys for one in self._by_key[near] if one[1] in meant]
        if not isinstance(match, Alike) or {position for _, position in holders} != meant:
            return match
        return replace(match, likeliest=self._plain_bearer(holders))

    def _twins(self, key: str, best: float) -> set[int]:
        """Beside a misspelt Castellano there may be a Castellanos."""
        near = {one for one in self._sounding_like(key) if cost_of(key, one) <= best}
        twins = {f"{one}s" for one in near} | {one[:-1] for one in near if one.endswith("s")}
        return {each for twin in twins & self._by_key.keys() for each in self._holders(twin)}

    def _namesakes(self, words: Sequence[str]) -> set[int]:
        """`Linda Kvist` may be Lindqvist, but also some Linda whose surname we mishear."""
        rest = squeeze(" ".join(words[1:]))
        if not rest or rest in self._by_key:
            return set()
        holders = self._by_key.get(words[0], [])
        return {position for strength, position in holders if strength is Strength.GIVEN}

    def _costs(self, folded: str, key: str) -> dict[int, tuple[float, float]]:
        costs: dict[int, tuple[float, float]] = {}
        for position, cost, allowed in self._fits(folded, key):
            known = costs.get(position)
            if known is None or cost - allowed < known[0] - known[1]:
                costs[position] = (cost, allowed)
        return costs

    def _fits(self, folded: str, key: str) -> Iterator[tuple[int, float, float]]:
        words = folded.split()
        initial = initial_of(words)
        if initial:
            yield from self._begun(words)
            yield from self._with_initial(*initial)
            return
        yield from self._alike(key)
        if len(words) > 1:
            yield from self._begun(words)
            yield from self._shortened(words[0], squeeze(" ".join(words[1:])))

    def _alike(self, key: str) -> Iterator[tuple[int, float, float]]:
        for near in self._sounding_like(key):
            if is_particles(near) and near != key:
                continue
            if len(near) <= SHORT_FORM and len(key) - len(near) > 1:
                continue  # Tomas is no Tom
            fit = (cost_of(key, near), allowed_cost(key, near))
            is_other = are_two_first_names(key, near)
            for strength, position in self._by_key[near]:
                if strength is Strength.INITIALS or (is_other and strength is Strength.GIVEN):
                    continue
                yield position, *fit
        for longer in self._beginning_with(key):
            is_half = 2 * len(key) >= len(longer) or len(key) >= TELLING_BEGINNING
            allowed = BEGINNING if is_half else 0.0
            yield from ((position, BEGINNING, allowed) for position in self._holders(longer))

    def _holders(self, key: str) -> list[int]:
        return [each for strength, each in self._by_key[key] if strength is not Strength.INITIALS]

    def _with_initial(self, letter: str, word: str) -> Iterator[tuple[int, float, float]]:
        """`P. Simanski`, `Hale B`: the word as usual, and the letter must begin another part."""
        for position, cost, allowed in self._alike(word):
            parts = fold(self.roster[position].name).split()
            others = [part for part in parts if cost_of(word, part) > cost]
            fits = any(part.startswith(letter) for part in others)
            yield position, cost if fits else cost + NOT_THIS_PERSON, allowed

    def _shortened(self, first: str, rest: str) -> Iterator[tuple[int, float, float]]:
        """`Ben Hale` for Benedict Hale, `Simon Ski` for Simone Skarsen; others stay unlikely."""
        for position in self._holders(rest) if rest in self._by_key else ():
            given = fold(self.roster[position].name).split()[0]
            yield position, SHORT_GIVEN if given.startswith(first) else NOT_THIS_PERSON, BEGINNING
        for position, cost, allowed in self._alike(first):
            surname = fold(self.roster[position].name).split()[1:]
            if cost <= allowed and any(begins_with(word, rest) for word in surname):
                yield position, max(cost, BEGINNING), allowed

    def _begun(self, words: Sequence[str]) -> Iterator[tuple[int, float, float]]:
        """`ng-b` for Nguyen-Brandt: every word begins the next part of one name."""
        if sum(map(len, words)) < _SHORTEST_BEGINNING or len(words[0]) < 2:
            return
        start = bisect_left(self._sorted, words[0])
        ahead = takewhile(
            lambda one: one.startswith(words[0]), self._sorted[start : start + _CANDIDATES]
        )
        for position in dict.fromkeys(each for key in ahead for each in self._holders(key)):
            parts = fold(self.roster[position].name).split()
            if any(all_begin(parts[at:], words) for at in range(len(parts))):
                cost = SHORT_GIVEN if words[0] in parts else BEGINNING
                yield position, cost, BEGINNING

    def _beginning_with(self, key: str) -> list[str]:
        if len(key) < _SHORTEST_BEGINNING:
            return []
        start = bisect_left(self._sorted, key)
        ahead = self._sorted[start : start + _CANDIDATES]
        return list(takewhile(lambda one: one.startswith(key), ahead))

    def _sounding_like(self, key: str) -> list[str]:
        near = {
            one
            for trace in traces(consonants(sound(key)))
            for one in self._by_consonants.get(trace, [])
        }
        if len(near) <= _CANDIDATES:
            return list(near)
        scorer = DamerauLevenshtein.normalized_similarity
        return [one for one, *_ in process.extract(key, near, scorer=scorer, limit=_CANDIDATES)]

    def _spelled_like(self, key: str) -> list[int]:
        """The nearest spellings of a small roster, for the buttons under "nobody"."""
        if len(self.roster) > _SMALL_ROSTER:
            return []
        scorer = DamerauLevenshtein.normalized_similarity
        begun = sound(key)[:1]
        keys = [k for k in self._by_key if sound(k)[:1] == begun and not is_particles(k)]
        found = process.extract(key, keys, scorer=scorer, limit=4, score_cutoff=0.4)
        return list(dict.fromkeys(each for one, *_ in found for _, each in self._by_key[one]))

    def _match(self, positions: set[int]) -> Match:
        rows = tuple(self.roster[each] for each in sorted(positions)[:ASKED_AT_MOST])
        return Found(player=rows[0]) if len(rows) == 1 else Alike(players=rows)


def lookup(typed: str, roster: Sequence[PlayerRow]) -> Match:
    """Who of the roster is meant by `typed`; keep a NameIndex where you look up more often."""
    return _index_of(tuple(roster)).lookup(typed)


@lru_cache(maxsize=64)
def _index_of(roster: tuple[PlayerRow, ...]) -> NameIndex:
    return NameIndex(roster)
