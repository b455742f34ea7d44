"""What memory a serving bot takes with a book of 10,000 notes, and where it comes from.

Run from the checkout: `python tests/benchmarks/memory.py`. Takes a minute or so. `seamwise
telegram` over the stand-in of the Bot API, on a database that is there already; each row is read
after what it names. `resident` is what counts for the bar (design section 7); of it `own` is ours
alone, the rest are pages of files, which the system shares and takes back when it needs them.
Half a second after each message the bot has rested and given back what it read of its models; the
last row is without a rest. `peak` is the most it ever held. Pictures are drawn in a process of its
own, in the last column, which ends when it was not needed for a while.
"""

from __future__ import annotations

import os
import random
import sys
import tempfile
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from measured import Table
from scouted_pair import CLAIMS_A_NOTE, write_notes
from steady import BEFORE, CHATS, Bot, bot

from scouting_db import tables as stored
from scouting_db.session import open_store
from scouting_db.values import Micros

NOTES = 10_000
PAIR = ("okafor", "lindqvist")
ADDED = tuple(f"/add {name.title()}" for name in PAIR)
BAR_MB = 150
SERVE = (sys.executable, "-m", "bot", "telegram")
SETTLED_S = 0.5

ASKED = (
    "okafor is slow coming forward",
    "who covers the middle",
    "where do i dink okafor",
    "what do we know about okafor and lindqvist",
    "give me a game plan against okafor and lindqvist",
    "were up 9-8-2, how big is this rally",
    "can i step into the kitchen after a volley",
    "they bang everything at us",
    "who should we target",
    "should we stack",
)
"""A note, then questions of many kinds; the first two with a picture."""

WITHOUT_A_REST = "all of these in other words, one upon the other"


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """Megabytes of a process: resident, its own of them, and the most it ever held."""

    resident: float
    own: float
    peak: float


def held(pid: int) -> Held:
    """Of a running process, from the system."""
    status = Path(f"/proc/{pid}/status").read_text().splitlines()
    kilobytes = {
        line.partition(":")[0]: int(line.split()[1]) for line in status if line.endswith("kB")
    }
    return Held(
        resident=kilobytes["VmRSS"] / 1024,
        own=kilobytes["RssAnon"] / 1024,
        peak=kilobytes["VmHWM"] / 1024,
    )


def drawing(pid: int) -> float:
    """Megabytes of the process that draws for that one; 0 without one."""
    children = Path(f"/proc/{pid}/task/{pid}/children")
    others = [
        int(child)
        for task in children.parents[1].iterdir()
        for child in (task / "children").read_text().split()
    ]
    return sum(held(child).resident for child in others)


def fill(database: str) -> None:
    """The notes, about the two that the first chat's book has."""
    store = open_store(database)
    try:
        with store.writing() as connection:
            rows = connection.execute(stored.player.select()).all()
            book = min(row.book_id for row in rows)
            players = [
                row.player_id for row in rows if row.book_id == book and row.name.lower() in PAIR
            ]
            assert len(players) == len(PAIR), rows
            now = Micros(time.time_ns() // 1000)
            claims = NOTES * CLAIMS_A_NOTE
            write_notes(connection, book, players, claims, now, random.Random(5))
    finally:
        store.close()


def tell(running: Bot, text: str) -> None:
    """The same to every chat, once all have answered."""
    tell_at_once(running, text)
    time.sleep(SETTLED_S)


def tell_at_once(running: Bot, text: str) -> None:
    """The same, and no rest afterwards."""
    running.say_all([text] * CHATS, pace_per_s=None)
    running.replies(CHATS)


def measure() -> Iterator[tuple[str, Held, float]]:
    """After what, the bot's memory, and that of the process that draws."""
    with tempfile.TemporaryDirectory() as folder:
        database = f"sqlite:///{folder}/notes.sqlite"
        open_store(database).close()
        with bot(SERVE, database=database) as first:
            for text in (*ADDED, *BEFORE[:-1]):  # no match yet, since in one no pictures are sent
                tell(first, text)
        fill(database)
        with bot(SERVE, database=database) as running:
            time.sleep(SETTLED_S)
            yield "started", held(running.pid), drawing(running.pid)
            for text in ASKED:
                tell(running, text)
                yield text, held(running.pid), drawing(running.pid)
            for text in ASKED:
                tell_at_once(running, f"{text} today")
            yield WITHOUT_A_REST, held(running.pid), drawing(running.pid)


def tables() -> list[Table]:
    """A row after each message."""
    rows = [
        (after, f"{one.resident:.0f}", f"{one.own:.0f}", f"{one.peak:.0f}", f"{apart:.0f}")
        for after, one, apart in measure()
    ]
    return [
        Table(
            title=f"(h) Memory of a serving bot with a book of {NOTES:,} notes, {CHATS} chats"
            f" asking, MB (bar: {BAR_MB} resident)",
            head=("after", "resident", "own", "peak", "drawing apart"),
            rows=rows,
        )
    ]


if __name__ == "__main__":
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    for table in tables():
        sys.stdout.write(table.markdown())
