"""How a text turn and its statements grow with notes, rallies and books, and what memory they take.

Run from the checkout: `python tests/benchmarks/growth.py`. Takes about a minute. CPU time of the
turn, inbox to outbox, the quickest of several; `after a note` is the first question after one was
written down. Memory is what the whole process holds, a process for each row.
"""

from __future__ import annotations

import argparse
import os

os.environ["OMP_NUM_THREADS"] = os.environ["OPENBLAS_NUM_THREADS"] = "1"

import json
import subprocess
import sys
from dataclasses import asdict, dataclass
from itertools import cycle
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))
sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "support"))

from measured import Table

ROOT = Path(__file__).resolve().parents[2]
QUESTION = "where do i dink okafor"
PAIR = ("Okafor", "Lindqvist")
CLAIMS_A_NOTE = 4
TURNS = 10
CHANGES = ("okafor pops up backhand dinks", "undo")

SIZES: tuple[tuple[int, int, int], ...] = (
    (0, 0, 0),
    (100, 0, 0),
    (1_000, 0, 0),
    (10_000, 0, 0),
    (0, 500, 0),
    (0, 5_000, 0),
    (0, 0, 100),
    (0, 0, 1_000),
)
"""Notes of the pair asked about, rallies against them, and other books in the same store."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Grown:
    """Milliseconds of CPU and statements of a turn; megabytes resident."""

    same_ms: float
    same_statements: int
    changed_ms: float
    changed_statements: int
    memory_mb: float


def measure(notes: int, rallies: int, books: int) -> Grown:
    """In this process, which holds nothing else."""
    from scouted_pair import scout
    from talk import demo_talk
    from turn_stages import Bench

    from scouting_db.directory import Directory
    from scouting_db.values import Micros

    talk = demo_talk()
    if notes or rallies:
        scout(talk, PAIR, observations=max(CLAIMS_A_NOTE, notes * CLAIMS_A_NOTE), rallies=rallies)
    with talk.store.writing() as connection:
        directory = Directory(connection)
        account = directory.account("console", "console")
        for n in range(books):
            person = directory.person(account, f"other {n}", f"Other {n}")
            chat = directory.chat(account, f"chat {n}")
            directory.use_book(chat.chat, directory.create_book(f"Book {n}", owner=person))
    talk.now = Micros(talk.now + 1)
    talk.say("next: okafor and lindqvist")
    for _ in range(2):
        talk.say(QUESTION)
    bench = Bench(talk)
    same = bench.cost(QUESTION, turns=TURNS)
    said, after = cycle(CHANGES), []
    for _ in range(TURNS):
        talk.say(next(said))
        after.append(bench.first(QUESTION, repeats=1))
    status = Path("/proc/self/status").read_text().splitlines()
    resident = next(line for line in status if line.startswith("VmRSS"))
    return Grown(
        same_ms=same.turn_ms,
        same_statements=same.statements,
        changed_ms=min(one.turn_ms for one in after),
        changed_statements=max(one.statements for one in after),
        memory_mb=int(resident.split()[1]) / 1024,
    )


def in_own_process(size: tuple[int, int, int]) -> Grown:
    command = [sys.executable, str(Path(__file__).resolve()), "--size", *map(str, size)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, check=True, text=True)
    return Grown(**json.loads(done.stdout))


def tables() -> list[Table]:
    """A row a size."""
    rows = []
    for size in SIZES:
        one = in_own_process(size)
        rows.append(
            (
                *(f"{count:,}" for count in size),
                f"{one.same_ms:.2f}",
                str(one.same_statements),
                f"{one.changed_ms:.2f}",
                str(one.changed_statements),
                f"{one.memory_mb:.0f}",
            )
        )
    return [
        Table(
            title="(g) Growth: a text turn with more notes, more rallies, beside more books"
            " (bars: 8 statements; 150 MB with 10,000 notes)",
            head=(
                "notes", "rallies", "books", "same again ms", "statements", "after a note ms",
                "statements", "memory MB",
            ),
            rows=rows,
        )
    ]  # fmt: skip


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--size", nargs=3, type=int, help="one row's counts, as JSON")
    given = parser.parse_args().size
    if given:
        sys.stdout.write(json.dumps(asdict(measure(*given))))
    else:
        for table in tables():
            sys.stdout.write(table.markdown())
