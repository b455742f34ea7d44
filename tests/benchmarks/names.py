"""What looking up one name costs in rosters of 100 to 100,000 invented people.

Run from the checkout: `python tests/benchmarks/names.py`. Takes about half a minute. CPU time; the
quickest round counts, over a hundred names each time, none of them asked before. Building the
index, which a roster needs once, stands beside. The bar is design section 7: in 100,000 names at
most ten times what it costs in 1,000.
"""

from __future__ import annotations

import random
import sys
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from measured import Table

from knowledge.vocabulary import PlayerId
from scouting_db.names import NameIndex
from scouting_db.values import PlayerRow

SIZES = (100, 1_000, 10_000, 100_000)
NAMES, ROUNDS = 100, 5
SMALL, LARGE = 1_000, 100_000

_STARTS = ("b", "br", "ch", "d", "f", "g", "h", "j", "k", "l", "m", "n", "p", "r", "s", "st", "v")
_MIDDLES = ("a", "e", "i", "o", "u", "ai", "ee", "ou")
_ENDS = ("l", "m", "n", "r", "s", "t", "nd", "rk", "lt", "", "sen", "son", "ski", "ez")  # fmt: skip


def invented(rng: random.Random, syllables: int) -> str:
    """A name that nobody bears, of so many syllables."""
    name = "".join(rng.choice(_STARTS) + rng.choice(_MIDDLES) for _ in range(syllables))
    return (name + rng.choice(_ENDS)).capitalize()


def roster(size: int) -> tuple[PlayerRow, ...]:
    """So many people, each with a first name and a surname."""
    rng = random.Random(7)
    return tuple(
        PlayerRow(player=PlayerId(at), name=f"{invented(rng, 2)} {invented(rng, 3)}", ours=False)
        for at in range(size)
    )


def surname_of(row: PlayerRow, _rng: random.Random) -> str:
    return row.name.split()[1].lower()


def misspelt(row: PlayerRow, rng: random.Random) -> str:
    """The surname with two letters swapped."""
    word = surname_of(row, rng)
    at = rng.randrange(1, len(word) - 1)
    return word[:at] + word[at + 1] + word[at] + word[at + 2 :]


def of_nobody(_row: PlayerRow, rng: random.Random) -> str:
    return invented(rng, 4).lower()


KINDS: dict[str, Callable[[PlayerRow, random.Random], str]] = {
    "a surname": surname_of,
    "misspelt": misspelt,
    "nobody's": of_nobody,
}


def look_up_us(index: NameIndex, kind: str) -> float:
    """Microseconds of CPU of one look-up of that kind, in the quickest round."""
    rng, best = random.Random(11), float("inf")
    for _ in range(ROUNDS):
        typed = [KINDS[kind](rng.choice(index.roster), rng) for _ in range(NAMES)]
        began = time.process_time()
        for one in typed:
            index.lookup(one)
        best = min(best, (time.process_time() - began) / NAMES)
    return 1e6 * best


def tables() -> list[Table]:
    """A row a size."""
    rows, found = [], {}
    for size in SIZES:
        people = roster(size)
        began = time.process_time()
        index = NameIndex(people)
        built_s = time.process_time() - began
        costs = found[size] = [look_up_us(index, kind) for kind in KINDS]
        cells = [f"{cost:.0f}" for cost in costs]
        rows.append((f"{size:,}", *cells, f"{1e6 * built_s / size:.0f}"))
    ratios = [large / small for small, large in zip(found[SMALL], found[LARGE], strict=True)]
    rows.append((f"{LARGE:,} / {SMALL:,}", *(f"{one:.1f} times" for one in ratios), ""))
    return [
        Table(
            title="(c) Looking up one name, microseconds of CPU (bar: at most 10 times)",
            head=("names", *KINDS, "index, per name"),
            rows=rows,
        )
    ]


if __name__ == "__main__":
    for table in tables():
        sys.stdout.write(table.markdown())
