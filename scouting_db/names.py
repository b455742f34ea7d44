"""Who is meant by a typed name: one player for sure, several to ask about, or nobody.

A wrong match is worse than a question, so one player comes back only when every part of what
was typed fits them and nobody else fits nearly as well.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache

from rapidfuzz.distance import DamerauLevenshtein

from scouting_db.heard import plainly
from scouting_db.name_cost import cost_of
from scouting_db.name_cut import both_cut
from scouting_db.name_dictated import clearest_by_ear, dictated
from scouting_db.name_fit import BEGINNING, Fit
from scouting_db.name_fits import fits
from scouting_db.name_forms import Strength, forms
from scouting_db.name_keys import HOLDERS, NameKeys
from scouting_db.name_matches import Alike, Found, Match, Nobody, likeliest_of, players_of
from scouting_db.name_parts import (
    bare,
    initial_of,
    squeeze,
    undigited,
    unstretched,
    without_aside,
    without_titles,
)
from scouting_db.name_retold import retold
from scouting_db.name_rivals import (
    crossed,
    given_alike,
    has_consonants,
    is_only_bearer,
    longer_given,
    namesakes,
    nearest_spelled,
    only_begun,
    plain_bearer,
    said_alike,
    said_the_other_way,
    twins,
)
from scouting_db.name_supposed import supposed
from scouting_db.sounds import fold, sound
from scouting_db.values import PlayerRow

__all__ = ["Alike", "Found", "Match", "NameIndex", "Nobody", "fold", "likeliest_of", "lookup"]

NEAREST = 3
"""How many near names are offered where nobody is close enough."""

ASKED_AT_MOST = 6
"""More alike names than this do not fit on buttons."""

MARGIN = 0.75
"""A second name within this cost of the best must be asked about."""

FARTHER, FARTHER_IN_FULL = 1.0, 1.5
"""Within this cost it is named beside the likeliest: of one word, and of a name in several."""

SHORTEST_DICTATED = 6
"""Letters of everyday words that may be a name as dictation heard it: `sur sha`."""

SHORTEST_SOUND = 5
"""Sounds of everyday words that may be a name; "way in" sounds as Nguyen does."""

DICTATED = 1.0
"""The same for a whole name in other vowels: dictation writes one Shavonne and Siobhan."""

_NAMES = (Strength.WHOLE, Strength.SURNAME, Strength.PART)
_EITHER = " or "

KEPT_LOOKUPS = 4096
"""Answers kept of one roster: most words that are looked up come again, and are nobody's name."""


class NameIndex:
    """A roster prepared for look-ups whose cost hardly grows with the roster.

    A roster never changes under its index, so an answer given once is kept.
    """

    def __init__(self, roster: Iterable[PlayerRow]) -> None:
        self._keys = NameKeys(roster)
        self.roster = self._keys.roster
        self._answers: dict[tuple[str, bool], Match] = {}

    def has(self, typed: str, *, initials: bool = True) -> bool:
        """Whether the folded words are exactly some player's form, `ana r` among them or not."""
        holders = self._keys.held(squeeze(fold(typed)))
        return any(initials or held is not Strength.INITIALS for held, _ in holders)

    def sounds_like_one(self, typed: str) -> bool:
        """Whether the words sound exactly as some player's form: "win Brandt"."""
        return sound(squeeze(fold(typed))) in self._keys.by_sound

    def is_said_as(self, typed: str, row: PlayerRow) -> bool:
        """Whether the words sound as some form of the player's name but for one sound."""
        heard = sound(squeeze(fold(typed)))
        if len(heard) < SHORTEST_SOUND:
            return False
        spelled = (one.key for one in forms(row.name, row.aliases) if one.strength > Strength.GIVEN)
        return any(DamerauLevenshtein.distance(heard, sound(key)) <= 1 for key in spelled)

    def begins(self, folded: str) -> bool:
        """Whether some form begins with these folded letters."""
        return self._keys.begins(folded)

    def lookup(self, typed: str, *, nearest: bool = True) -> Match:
        """Who is meant by `typed`, a name and nothing else; `nearest` wants names for Nobody."""
        kept = self._answers.get((typed, nearest))
        if kept is None:
            while len(self._answers) >= KEPT_LOOKUPS:
                self._answers.pop(next(iter(self._answers)), None)
            kept = self._answers[typed, nearest] = self._looked_up(typed, nearest=nearest)
        return kept

    def _looked_up(self, typed: str, *, nearest: bool) -> Match:
        match = self._by_rules(typed, nearest=nearest)
        if nearest and isinstance(match, Nobody):
            return supposed(self._keys, bare(without_aside(typed)).split(), match)
        return match

    def _by_rules(self, typed: str, *, nearest: bool) -> Match:
        folded = unstretched(undigited(without_titles(fold(typed))))
        if not folded:
            return Nobody()
        match = self._exact(folded) or self._near(folded, nearest=nearest)
        if not isinstance(match, Nobody):
            return match
        plain = bare(without_aside(typed))
        if plain and plain != folded:
            return self._exact(plain) or self._near(plain, nearest=nearest)
        return self._retold(typed, nearest=nearest) or self._either(folded, match)

    def _retold(self, typed: str, *, nearest: bool) -> Match | None:
        """Whoever is meant where it was meant otherwise: `jay lobato` as `j lobato`."""
        for other in retold(without_titles(typed)):
            match = self._exact(other) or self._near(other, nearest=nearest)
            if not isinstance(match, Nobody):
                return match
        return None

    def _either(self, folded: str, match: Nobody) -> Match:
        """Whoever may be meant by one side or the other of `kim or kimm`, else `match`."""
        sides = folded.split(_EITHER)
        if len(sides) == 1:
            return match
        found = [self._exact(side) or self._near(side, nearest=False) for side in sides if side]
        if len(found) > 1 and not any(isinstance(one, Nobody) for one in found):
            rows = dict.fromkeys(row for one in found for row in players_of(one))
            return Alike(players=tuple(rows)[:ASKED_AT_MOST])
        return match

    def _exact(self, folded: str) -> Match | None:
        holders = self._keys.held(squeeze(folded))
        whole = {position for strength, position in holders if strength is Strength.WHOLE}
        if len(whole) == 1:
            return self._whole(folded, min(whole))
        if whole:
            return self._match(whole)
        if not holders:
            return None
        if all(strength <= Strength.GIVEN for strength, _ in holders):
            return self._by_first_name(folded, holders)
        return self._by_surname(squeeze(folded), holders)

    def _whole(self, folded: str, position: int) -> Match:
        """Who is written so, and who is said so."""
        turned = said_the_other_way(self._keys, folded, position)
        if turned - {position}:
            return self._match({position} | turned)
        key = squeeze(folded)
        alike = said_alike(self._keys, key, (Strength.WHOLE,))
        near = fits(self._keys, folded).items()
        if " " in folded:
            alike |= {each for each, fit in near if fit.is_likely and fit.cost <= DICTATED}
        else:
            alike |= {each for each, fit in near if fit.is_short}
        match = self._match({position} | alike, likeliest=self.roster[position])
        return replace(match, is_clear=True) if isinstance(match, Alike) else match

    def _by_surname(self, key: str, holders: Sequence[tuple[Strength, int]]) -> Match:
        """Who bears it, and who bears one that sounds the same, as a surname or a first name."""
        positions = {position for _, position in holders}
        likeliest = self._row(plain_bearer(holders))
        written = positions - {each for each in positions if (key, each) in self._keys.heard}
        given = given_alike(self._keys, key) - positions
        if len(written) == 1 and not given:
            likeliest = self.roster[min(written)]
        alike = said_alike(self._keys, key, _NAMES) | given | twins(self._keys, {key})
        return self._match(positions | alike, likeliest=likeliest)

    def _by_first_name(self, folded: str, holders: Sequence[tuple[Strength, int]]) -> Match:
        """Who bears it, who bears one that sounds the same, and who may be called so for short."""
        key = squeeze(folded)
        kinds = {strength for strength, _ in holders}
        said = self._keys.by_sound[sound(key)]
        alike = [one for near in said for one in self._keys.held(near)[:HOLDERS]]
        positions = {position for strength, position in alike if strength in kinds}
        initial = initial_of(folded.split())
        if initial and self._keys.bearers(initial[1]):
            near = fits(self._keys, folded)
            positions |= {each for each, fit in near.items() if fit.rivals(BEGINNING)}
        if all((key, position) in self._keys.heard for _, position in holders):
            near = fits(self._keys, folded)
            positions |= {each for each, fit in near.items() if fit.rivals(BEGINNING)}
        longer = longer_given(self._keys, key) if Strength.GIVEN in kinds else set()
        match = self._match(positions | longer)
        if kinds == {Strength.INITIALS} and len(holders) == 1:
            position = holders[0][1]
            says_given = initial is not None and bool(self._keys.bearers(initial[1]))
            if not says_given or is_only_bearer(self._keys, position, initial, positions):
                return self._match(positions, likeliest=self.roster[position])
        bearers = {
            position
            for strength, position in holders
            if strength is Strength.GIVEN and (key, position) not in self._keys.heard
        }
        if isinstance(match, Alike) and len(bearers) == 1 and not longer:
            return replace(match, likeliest=self.roster[min(bearers)])
        return match

    def _near(self, folded: str, *, nearest: bool) -> Match:
        words, key = folded.split(), squeeze(folded)
        halves = crossed(self._keys, words)
        if halves:
            return self._match(halves)
        found = fits(self._keys, folded)
        if len(words) > 1 and not any(fit.is_likely for fit in found.values()):
            found |= self._as_dictated(words, key)
        if any(fit.is_likely for fit in found.values()):
            return self._meant(words, key, found)
        meant = both_cut(self._keys, words) or (dictated(self._keys, words) if nearest else set())
        if meant:
            return self._match(meant)
        if not nearest:
            return Nobody()
        close = [each for each, fit in found.items() if 2 * fit.cost <= len(key)]
        near = sorted(close, key=lambda each: found[each].cost) or self._keys.spelled_like(key)
        return Nobody(nearest=tuple(self.roster[each] for each in near[:NEAREST]))

    def _meant(self, words: Sequence[str], key: str, found: Mapping[int, Fit]) -> Match:
        """Who comes near and everybody who must be asked about, or named, beside them."""
        heard: set[int] = set()
        best = min(fit.cost for fit in found.values() if fit.is_likely)
        meant = {each for each, fit in found.items() if fit.rivals(best + MARGIN)}
        meant |= namesakes(self._keys, words) | twins(self._keys, self._keys_within(key, best))
        if len(words) > 1:
            heard = {each for each in found if has_consonants(self.roster[each], key)}
            meant |= {each for each in heard if found[each].cost <= best + DICTATED}
        match = self._likely(meant, key, best)
        if isinstance(match, Found):
            reach = best + (FARTHER_IN_FULL if len(words) > 1 else FARTHER)
            farther = {each for each, fit in found.items() if fit.cost <= reach}
            beside = self._match(meant | farther | heard, likeliest=match.player)
            is_clear = heard <= meant | farther
            return replace(beside, is_clear=is_clear) if isinstance(beside, Alike) else beside
        if isinstance(match, Alike) and match.likeliest is None:
            clearest = clearest_by_ear(self._keys, meant, words)
            if clearest is not None:
                return replace(match, likeliest=self.roster[clearest])
            nearest = nearest_spelled(match.players, key) or only_begun(match.players, key)
            return replace(match, likeliest=nearest)
        return match

    def _as_dictated(self, words: Sequence[str], key: str) -> dict[int, Fit]:
        """Whom the words fit once each is spelled as it sounds: `sur sha` is `sersha`."""
        plain = plainly(words)
        if squeeze(plain) == key or len(squeeze(plain)) < SHORTEST_DICTATED:
            return {}
        found = fits(self._keys, plain)
        return {each: fit for each, fit in found.items() if fit.is_likely}

    def _likely(self, meant: set[int], key: str, best: float) -> Match:
        match = self._match(meant)
        keys = self._keys_within(key, best)
        holders = [one for near in keys for one in self._keys.held(near) if one[1] in meant]
        if not isinstance(match, Alike) or {position for _, position in holders} != meant:
            return match
        return replace(match, likeliest=self._row(plain_bearer(holders)))

    def _keys_within(self, key: str, best: float) -> set[str]:
        return {near for near in self._keys.sounding_like(key) if cost_of(key, near) <= best}

    def _row(self, position: int | None) -> PlayerRow | None:
        return None if position is None else self.roster[position]

    def _match(self, positions: set[int], *, likeliest: PlayerRow | None = None) -> Match:
        asked = sorted(positions)
        if likeliest is not None:
            asked.sort(key=lambda each: self.roster[each] is not likeliest)
        rows = tuple(self.roster[each] for each in asked[:ASKED_AT_MOST])
        return Found(player=rows[0]) if len(rows) == 1 else Alike(players=rows, likeliest=likeliest)


def lookup(typed: str, roster: Sequence[PlayerRow]) -> Match:
    """Who of the roster is meant by `typed`; keep a NameIndex where you look up more often."""
    return _index_of(tuple(roster)).lookup(typed)


@lru_cache(maxsize=64)
def _index_of(roster: tuple[PlayerRow, ...]) -> NameIndex:
    return NameIndex(roster)
