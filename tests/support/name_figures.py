"""How well names are found on people left out: by the rules alone, and with whom is supposed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from unittest.mock import patch

from name_examples import NAME_WRITERS, Lookup, lookups
from name_training import everybody, trained
from rosters import roster_of

from knowledge.dataclass import dataclass
from scouting_db import name_chances
from scouting_db.name_chances import NameWeights
from scouting_db.name_matches import Alike, Match, Nobody, likeliest_of, players_of
from scouting_db.names import NameIndex

GROUPS = 7
"""Groups of writers left out in turn."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """Of so many look-ups those told right; with whom is supposed, those too; and those wrong."""

    lookups: int = 0
    by_rules: int = 0
    right: int = 0
    supposed: int = 0
    supposed_wrong: int = 0

    def __add__(self, other: Told) -> Told:
        return Told(
            lookups=self.lookups + other.lookups,
            by_rules=self.by_rules + other.by_rules,
            right=self.right + other.right,
            supposed=self.supposed + other.supposed,
            supposed_wrong=self.supposed_wrong + other.supposed_wrong,
        )

    def row(self) -> str:
        return (
            f"{self.lookups} look-ups: {self.by_rules / self.lookups:.1%} right by the rules,"
            f" {self.right / self.lookups:.1%} with whom is supposed;"
            f" {self.supposed} supposed, {self.supposed_wrong} wrongly"
        )


def told_of(cases: Iterable[Lookup]) -> Told:
    """The figures of look-ups by the weights that are loaded; any of the right answers counts."""
    return sum((_told(one) for one in cases), Told())


def _told(one: Lookup) -> Told:
    match = NameIndex(roster_of(*one.roster)).lookup(one.typed)
    by_rules = _fits(match, one)
    if not isinstance(match, Nobody) or not match.supposed:
        return Told(lookups=1, by_rules=by_rules, right=by_rules)
    named = frozenset(row.name for row in match.supposed)
    is_one = len(named) == 1
    right = named in one.answers if is_one else any(len(a) > 1 and a <= named for a in one.answers)
    return Told(
        lookups=1,
        by_rules=by_rules,
        right=right,
        supposed=is_one,
        supposed_wrong=is_one and not right,
    )


def _fits(match: Match, one: Lookup) -> bool:
    meant = likeliest_of(match)
    if meant is not None:
        return frozenset([meant.name]) in one.answers
    asked = {row.name for row in players_of(match)}
    if isinstance(match, Alike):
        return any(len(answer) > 1 and answer <= asked for answer in one.answers)
    return frozenset[str]() in one.answers


@contextmanager
def weights(model: NameWeights) -> Iterator[None]:
    """Look-ups by these weights instead of those that ship."""
    with patch.object(name_chances, "name_weights", lambda: model):
        yield


def left_out(among: Sequence[str] | None = None, groups: int = GROUPS) -> dict[str, Told]:
    """Each writer of names alone by a model that learned from none of their group, of `among`."""
    found: dict[str, Told] = {}
    own = own_writers()
    for group in (own[at::groups] for at in range(groups)):
        with weights(trained([one for one in among or everybody() if one not in group])):
            found |= {one: told_of(lookups(one)) for one in group}
    return found


def own_writers() -> tuple[str, ...]:
    """Who wrote names alone, as sources are called."""
    return tuple(f"writer {one}" for one in NAME_WRITERS)


def total(found: Sequence[Told]) -> Told:
    return sum(found, Told())
