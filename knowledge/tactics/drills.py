"""A drill for each leak, as data: what to do, how long, the cue, the reason, and what may hurt."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from knowledge.advice import Reason
from knowledge.dataclass import dataclass
from knowledge.general_rule import (
    LINE_LIMIT,
    RuleDataError,
    fitting,
    load_entries,
    optional_line,
    read_reason,
)
from knowledge.tactics.changes import changes

LABEL_LIMIT = 26
"""Characters of a leak's name in a list, so that its count and first time stand in one line."""

LONGEST_MINUTES = 20
"""A drill that takes longer is not done between matches, nor twice in a lesson. Our own choice."""

_MOST_HOW = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Drill:
    """`id` is the leak's (changes.toml). `why` carries its source; `caution` where it may hurt."""

    id: str
    leak: str
    drill: str
    minutes: int
    how: tuple[str, ...]
    cue: str
    why: Reason
    caution: str | None = None


@cache
def drills() -> Mapping[str, Drill]:
    """By leak; RuleDataError where a leak has none, or a line is too long for a phone."""
    read = [_drill(row) for row in load_entries("knowledge.tactics", "drills.toml")]
    found = {one.id: one for one in read}
    leaks = {one.id for one in changes()}
    if set(found) != leaks or len(found) != len(read):
        raise RuleDataError(f"one drill for each leak, not {sorted(set(found) ^ leaks)}")
    return found


def _drill(row: Mapping[str, object]) -> Drill:
    how, minutes = row.get("how"), row.get("minutes")
    if not isinstance(how, list) or not 0 < len(how) <= _MOST_HOW:
        raise RuleDataError(f"a drill is told in one or two lines, not {how!r}")
    if not isinstance(minutes, int) or not 0 < minutes <= LONGEST_MINUTES:
        raise RuleDataError(f"minutes up to {LONGEST_MINUTES}, not {minutes!r}")
    return Drill(
        id=fitting(row.get("id"), LINE_LIMIT),
        leak=fitting(row.get("leak"), LABEL_LIMIT),
        drill=fitting(row.get("drill"), LINE_LIMIT),
        minutes=minutes,
        how=tuple(fitting(line, LINE_LIMIT) for line in how),
        cue=fitting(row.get("cue"), LINE_LIMIT),
        why=read_reason(row.get("why")),
        caution=optional_line(row, "caution"),
    )
