"""Tables computed ahead, so that a turn integrates nothing: read between cells, linearly.

Shipped as `data/flight.npz`; `build` computes them and `tests/support/flight_tables.py` writes
them. Beyond a table's edge its edge counts.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from io import BytesIO
from typing import Final

import numpy as np

from knowledge.flight.launch import Floats

FILE: Final = "data/flight.npz"
FINGERPRINT: Final = "fingerprint"


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Values over their axes; the last dimension is what is looked up."""

    axes: tuple[tuple[float, ...], ...]
    values: Floats

    def at(self, *coordinates: float) -> Floats:
        """The values there, linear between the cells around it.

        Axes without a coordinate stay.
        """
        found = self.values
        for axis, value in zip(self.axes, coordinates, strict=False):
            low, part = _cell(axis, value)
            found = (
                found[low + round(part)]
                if part in (0.0, 1.0)
                else (1 - part) * found[low] + part * found[low + 1]
            )
        return found


def _cell(axis: tuple[float, ...], value: float) -> tuple[int, float]:
    """The cell's lower index, and how far into it the value lies."""
    if value <= axis[0] or len(axis) == 1:
        return 0, 0.0
    for low, (start, end) in enumerate(itertools.pairwise(axis)):
        if value <= end:
            return low, (value - start) / (end - start)
    return len(axis) - 2, 1.0


@cache
def tables() -> dict[str, Table]:
    """All tables by name, as shipped."""
    return read_tables(files("knowledge.flight").joinpath(FILE).read_bytes())


def read_tables(content: bytes) -> dict[str, Table]:
    """The tables of a file: arrays `name` and `name/0`, `name/1`, ... for its axes."""
    with np.load(BytesIO(content)) as stored:
        names = [name for name in stored.files if "/" not in name and name != FINGERPRINT]
        return {
            name: Table(
                axes=tuple(
                    tuple(float(one) for one in stored[f"{name}/{place}"])
                    for place in range(stored[name].ndim - 1)
                ),
                values=stored[name].astype(np.float64),
            )
            for name in names
        }


def read_fingerprint(content: bytes) -> str:
    """What the file was computed from."""
    with np.load(BytesIO(content)) as stored:
        return str(stored[FINGERPRINT])
