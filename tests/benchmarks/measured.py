"""Tables of measurements as markdown, and how CPU time is taken."""

from __future__ import annotations

import resource
import subprocess
import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A title, a line of heads, and rows of as many cells."""

    title: str
    head: Sequence[str]
    rows: Sequence[Sequence[str]]

    def markdown(self) -> str:
        """The first column to the left, figures to the right."""
        marks = ["---", *("--:" for _ in self.head[1:])]
        lines = [_row(self.head), "|" + "|".join(marks) + "|", *map(_row, self.rows)]
        return f"{self.title}\n\n" + "\n".join(lines) + "\n\n"


def _row(cells: Sequence[str]) -> str:
    return f"| {' | '.join(cells)} |"


def child_cpu_s(command: Sequence[str], environment: Mapping[str, str], folder: Path) -> float:
    """User and system time of one process, from start to end."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(
        command, env=dict(environment), cwd=folder, stdout=subprocess.DEVNULL, check=True
    )
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def quickest_s(call: Callable[[], object], *, rounds: int, calls: int = 1) -> float:
    """CPU seconds of one call of this process, in the best of the rounds."""
    best = float("inf")
    for _ in range(rounds):
        began = time.process_time()
        for _ in range(calls):
            call()
        best = min(best, (time.process_time() - began) / calls)
    return best
