"""The dink line of a plan, from the dink's own topic."""

from __future__ import annotations

from knowledge.planning.line import Line
from knowledge.situation import Situation


def dink_line(situation: Situation) -> Line | None:
    return None
