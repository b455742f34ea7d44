"""Compute the flight's tables anew and write them where they are shipped.

Run from the checkout: `python tests/support/flight_tables.py`. Takes some five minutes on a core.
"""

from __future__ import annotations

import multiprocessing
import sys
from multiprocessing.pool import Pool
from pathlib import Path
from typing import Any

import numpy as np

from knowledge.flight import tables
from knowledge.flight.build import axes_of, fingerprint, names, row_of, runs_of

PLACE = Path(tables.__file__).parent / tables.FILE


def arrays(pool: Pool) -> dict[str, Any]:
    """Everything the file holds; half precision is a thousandth of a value."""
    found: dict[str, Any] = {tables.FINGERPRINT: np.array(fingerprint())}
    for name in names():
        axes = axes_of(name)
        places = list(runs_of(name))
        rows = pool.starmap(row_of, [(name, place) for place in places], chunksize=8)
        values = np.empty((*map(len, axes), rows[0].shape[-1]), dtype=np.float16)
        for place, row in zip(places, rows, strict=True):
            values[place] = row
        found[name] = values
        found |= {f"{name}/{at}": np.array(axis) for at, axis in enumerate(axes)}
        sys.stdout.write(f"{name}: {len(rows)} runs\n")
        sys.stdout.flush()
    return found


def main() -> None:
    """Write the file."""
    PLACE.parent.mkdir(exist_ok=True)
    with multiprocessing.Pool() as pool:
        np.savez_compressed(PLACE, **arrays(pool))
    sys.stdout.write(f"{PLACE.name}: {PLACE.stat().st_size} bytes\n")


if __name__ == "__main__":
    main()
