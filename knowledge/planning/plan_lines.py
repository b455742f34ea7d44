"""The lines of a plan: every part of the rally answered by its own topic, ranked by worth."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.planning.dinking import dink_line
from knowledge.planning.hands import hands_line
from knowledge.planning.line import Line
from knowledge.planning.lobbing import lob_line
from knowledge.planning.ours import our_line
from knowledge.planning.respect import respect_line
from knowledge.planning.returning import return_line
from knowledge.planning.thirds import third_line
from knowledge.situation import OnCourt, Situation

MAX_LINES = 5

PHASES_BEFORE_RESPECT = MAX_LINES - 1


def plan_lines(situation: Situation) -> tuple[Line, ...]:
    """The lines of the plan, most useful first, with what to respect at the end.

    A line about these people goes before a general one, which is worth nothing over itself.
    """
    return lines_of(situation, phase_lines(situation))


def lines_of(situation: Situation, found: Sequence[Line]) -> tuple[Line, ...]:
    """The plan made of the lines of each part, most useful first."""
    aims = found[:PHASES_BEFORE_RESPECT]
    said = frozenset(one for line in aims for one in line.evidence)
    respect = respect_line(situation, said=said)
    return tuple(found[:MAX_LINES]) if respect is None else (*aims, respect)


def phase_lines(situation: Situation) -> tuple[Line, ...]:
    """The line of every part of the rally that has one, most useful first."""
    phases = (return_line, third_line, dink_line, hands_line, lob_line, our_line)
    found = [line for phase in phases if (line := phase(situation)) is not None]
    return tuple(sorted(found, key=lambda line: (-line.is_specific, -line.per_100)))


def most_targeted(situation: Situation, lines: Sequence[Line]) -> OnCourt | None:
    """At whom of theirs most of the plan's worth goes; None where it is at nobody."""

    def worth(one: OnCourt) -> float:
        return sum(line.per_100 for line in lines if one.name in line.do)

    targets = [one for one in situation.theirs if worth(one) > 0]
    return max(targets, key=worth, default=None)
