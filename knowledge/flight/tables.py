"""Tables computed ahead, so that a turn integrates nothing: read between cells, linearly.

Shipped as `data/flight.npz`; `build` computes them and `tests/support/flight_tables.py` writes
them. Beyond a table's edge its edge counts.
"""

from __future__ import annotations

from bisect import bisect_left
from functools import cache
from importlib.resources import files
from io import BytesIO
from typing import Any, Final

import numpy as np
import numpy.typing as npt

from knowledge.dataclass import dataclass
from knowledge.flight.launch import Floats

FILE: Final = "data/flight.npz"
FINGERPRINT: Final = "fingerprint"


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Values over their axes, as they are stored; the last dimension is what is looked up."""

    axes: tuple[tuple[float, ...], ...]
    values: npt.NDArray[np.floating[Any]]

    def at(self, *coordinates: float) -> Floats:
        """The values there, linear between the cells around it.

        Axes without a coordinate stay. Between two cells both are cut out first: what is then
        weighed is small.
        """
        cells = [_cell(axis, at) for axis, at in zip(self.axes, coordinates, strict=False)]
        found: Floats = self.values[
            tuple(one if part is None else slice(one, one + 2) for one, part in cells)
        ].astype(np.float64)
        for _, part in cells:
            if part is not None:
                found = (1 - part) * found[0] + part * found[1]
        return found


def _cell(axis: tuple[float, ...], value: float) -> tuple[int, float | None]:
    """The cell's lower index and how far into it the value lies; None for one on the index."""
    if value <= axis[0]:
        return 0, None
    upper = bisect_left(axis, value)
    if upper == len(axis):
        return upper - 1, None
    if value == axis[upper]:
        return upper, None
    return upper - 1, (value - axis[upper - 1]) / (axis[upper] - axis[upper - 1])


@cache
def tables() -> dict[str, Table]:
    """All tables by name, as shipped."""
    return read_tables(files("knowledge.flight").joinpath(FILE).read_bytes())


def read_tables(content: bytes) -> dict[str, Table]:
    """The tables of a file: arrays `name` and `name/0`, `name/1`, ... for its axes."""
    with np.load(BytesIO(content)) as stored:
        names = [name for name in stored.files if "/" not in name and name != FINGERPRINT]
        values = {name: stored[name] for name in names}
        return {
            name: Table(
                axes=tuple(
                    tuple(float(one) for one in stored[f"{name}/{place}"])
                    for place in range(held.ndim - 1)
                ),
                values=held,
            )
            for name, held in values.items()
        }


def read_fingerprint(content: bytes) -> str:
    """What the file was computed from."""
    with np.load(BytesIO(content)) as stored:
        return str(stored[FINGERPRINT])
