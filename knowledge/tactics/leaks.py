"""Which leak a lost rally is: by how it ended, so that the lost rallies are split without a rest.

The leaks are those that `adjust` weighs (changes.toml). Where one ending speaks for several of them
the rally counts for the one with the largest prior; what no leak explains stays a part of its own.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import cache
from typing import Generic, TypeVar

from knowledge.dataclass import dataclass
from knowledge.rally_ends import end_tag
from knowledge.regex import regex
from knowledge.tactics.changes import changes, troubles
from knowledge.vocabulary import Ending, Stroke

Lost = TypeVar("Lost")

OTHER = "other"
"""Lost rallies that no leak explains, or of which nobody told how they ended."""

_POPS_UP = regex(
    r"\bpop(?:ped|s|ping|d)?(?: (?:it|that|one|the ball|my \w+|a \w+))?[ -]?up\b|\bpop-?ups?\b"
    r"|\bfloat(?:ed|er|s|ing)?\b|\bs[ai]t(?:s|ting)? up\b|\btoo high\b",
    re.IGNORECASE,
)
_MISSED = regex(r"\b(?:miss\w*|net(?:ted)?|out|long|wide|tape|dumped|shanked)\b", re.IGNORECASE)
_POPS_OF: dict[Stroke, str] = {
    Stroke.DINK: "pops_dinks",
    Stroke.THIRD: "pops_thirds",
    Stroke.DROP: "pops_thirds",
    Stroke.RESET: "pops_resets",
    Stroke.COUNTER: "pops_resets",
    Stroke.VOLLEY: "pops_resets",
}
_POPS_BY_WORDS = (
    (regex(r"\bdink", re.IGNORECASE), "pops_dinks"),
    (regex(r"\b(?:third|3rd|drop)", re.IGNORECASE), "pops_thirds"),
    (regex(r"\b(?:block|reset|drove|drive|hard|pace)", re.IGNORECASE), "pops_resets"),
)
_POPS_USUALLY = "pops_dinks"
"""The most common of them: its prior in changes.toml is the largest of its trouble."""


def leak_of(*, ending: Ending | None, stroke: Stroke | None, words: str = "") -> str:
    """The id of the leak that lost a rally; OTHER where none explains it."""
    if _POPS_UP.search(words) and not _MISSED.search(words):
        return _pop_up(stroke, words)
    if ending is None:
        return OTHER
    return _leak_by_tag().get(end_tag(won_by_us=False, ending=ending, stroke=stroke), OTHER)


def _pop_up(stroke: Stroke | None, words: str) -> str:
    if stroke in _POPS_OF:
        return _POPS_OF[stroke]
    return next((id for form, id in _POPS_BY_WORDS if form.search(words)), _POPS_USUALLY)


@cache
def _leak_by_tag() -> dict[str, str]:
    """Each tag's likeliest leak."""
    of_trouble = {one.id: one.prior for one in troubles()}
    weighed = sorted(changes(), key=lambda one: one.prior * of_trouble[one.trouble])
    return {tag: one.id for one in weighed for tag in one.ends}


@dataclass(frozen=True, slots=True, kw_only=True)
class LeakGroup(Generic[Lost]):
    """The lost rallies of one leak."""

    leak: str
    rallies: tuple[Lost, ...]


def by_leak(lost: Sequence[Lost], leak: Callable[[Lost], str]) -> tuple[LeakGroup[Lost], ...]:
    """The lost rallies split by leak, the largest first and what is not explained last."""
    groups: dict[str, list[Lost]] = {}
    for one in lost:
        groups.setdefault(leak(one), []).append(one)
    found = [LeakGroup(leak=name, rallies=tuple(group)) for name, group in groups.items()]
    return tuple(sorted(found, key=lambda one: (one.leak == OTHER, -len(one.rallies), one.leak)))
