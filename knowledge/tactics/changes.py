"""What costs rallies and the one change that answers it, as data: troubles, leaks and changes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from math import isclose

from knowledge.advice import CALL_LIMIT, MAX_REASONS, Reason
from knowledge.dataclass import dataclass
from knowledge.general_rule import (
    LINE_LIMIT,
    RuleDataError,
    fitting,
    load_entries,
    load_table,
    read_reason,
)
from knowledge.said_phrases import Phrases
from knowledge.tactics.symptoms import read_phrases, symptoms
from knowledge.vocabulary import Trait

BUTTON_LIMIT = 16
"""Characters of a trouble's button: four of them stand in two rows on a phone."""

WORKS_IF = "Works if "

_FILE = "changes.toml"


@dataclass(frozen=True, slots=True, kw_only=True)
class Trouble:
    """What hurts, as a player says it. `prior` is its share among those who name nothing.

    `patterns` are the symptoms (tactics.symptoms) that come to the same.
    """

    id: str
    label: str
    prior: float
    patterns: frozenset[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """A leak and the change that answers it; cheap, and taken back at once if it does not help.

    `prior` is the leak's share among those of its trouble. `points` with its doubt `sd` is what
    the change is worth in the rallies where it applies if this is the leak, `share` how many of
    100 those are. `needs` are the shots it takes, `weak` the traits of ours that make the leak
    likelier, `ends` how a rally is tagged (knowledge.rally_ends) that it lost.
    """

    id: str
    trouble: str
    prior: float
    call: str
    why: tuple[Reason, ...]
    sign: str
    points: float
    sd: float
    share: float
    needs: tuple[Trait, ...]
    weak: tuple[Trait, ...]
    ends: frozenset[str]

    @property
    def per_100(self) -> float:
        """Rallies in 100 that it is worth, if this is the leak."""
        return self.points * self.share / 100


@cache
def troubles() -> tuple[Trouble, ...]:
    """All of them, as the buttons stand; RuleDataError where the data does not hold together."""
    known = {one.id for one in symptoms()}
    read = tuple(_trouble(row) for row in _trouble_rows())
    unknown = {id for one in read for id in one.patterns} - known
    if unknown:
        raise RuleDataError(f"no symptoms: {sorted(unknown)}")
    _all_add_up("troubles", [one.prior for one in read])
    return read


@cache
def changes() -> tuple[Change, ...]:
    """All of them; RuleDataError for a line too long, or priors of a trouble that don't add up."""
    read = tuple(_change(row) for row in load_entries("knowledge.tactics", _FILE))
    for one in troubles():
        _all_add_up(one.id, [each.prior for each in read if each.trouble == one.id])
    if {one.trouble for one in read} != {one.id for one in troubles()}:
        raise RuleDataError("a change names a trouble that is none")
    return read


@cache
def trouble_phrases() -> Phrases:
    """How each trouble is said."""
    return _phrases({str(row["id"]): row["says"] for row in _trouble_rows()})


@cache
def leak_phrases() -> Phrases:
    """How each leak is said: which of the changes is asked for."""
    rows = load_entries("knowledge.tactics", _FILE)
    return _phrases({str(row["id"]): row["says"] for row in rows})


def _phrases(says: Mapping[str, object]) -> Phrases:
    """With the shorthand and the guard of the symptoms: the same people say both."""
    return read_phrases(load_table("knowledge.tactics", "patterns.toml"), says)


@cache
def _trouble_rows() -> tuple[Mapping[str, object], ...]:
    rows = load_table("knowledge.tactics", _FILE).get("trouble")
    if not isinstance(rows, list) or not rows:
        raise RuleDataError(f"{_FILE} has no [[trouble]]")
    return tuple(rows)


def _trouble(row: Mapping[str, object]) -> Trouble:
    return Trouble(
        id=fitting(row.get("id"), LINE_LIMIT),
        label=fitting(row.get("label"), BUTTON_LIMIT),
        prior=_number(row, "prior") / 100,
        patterns=frozenset(_texts(row, "patterns")),
    )


def _change(row: Mapping[str, object]) -> Change:
    why = row.get("why")
    if not isinstance(why, list) or not 0 < len(why) < MAX_REASONS:
        raise RuleDataError(f"one or two reasons, not {why!r}")
    return Change(
        id=fitting(row.get("id"), LINE_LIMIT),
        trouble=fitting(row.get("trouble"), LINE_LIMIT),
        prior=_number(row, "prior") / 100,
        call=fitting(row.get("call"), CALL_LIMIT),
        why=tuple(read_reason(one) for one in why),
        sign=fitting(row.get("sign"), LINE_LIMIT),
        points=_number(row, "points"),
        sd=_number(row, "sd"),
        share=_number(row, "share"),
        needs=tuple(Trait(each) for each in _texts(row, "needs")),
        weak=tuple(Trait(each) for each in _texts(row, "weak")),
        ends=frozenset(_texts(row, "ends")),
    )


def _all_add_up(name: str, priors: Sequence[float]) -> None:
    if not isclose(sum(priors), 1):
        raise RuleDataError(f"priors of {name} add up to {sum(priors):g}, not 1")


def _number(row: Mapping[str, object], key: str) -> float:
    said = row.get(key)
    if not isinstance(said, int | float):
        raise RuleDataError(f"{key} is a number, not {said!r}: {row.get('id')}")
    return float(said)


def _texts(row: Mapping[str, object], key: str) -> tuple[str, ...]:
    said = row.get(key, [])
    if not isinstance(said, list):
        raise RuleDataError(f"{key} is a list, not {said!r}")
    return tuple(str(each) for each in said)
