"""Replies a second with one and two webhook workers, and what a turn costs as the data grows.

Run from the checkout, on a machine with PostgreSQL: `source .ci/postgres; start_postgres; python
tests/benchmarks/workers.py [--quick]; stop_postgres`. Takes some three minutes.

Throughput: all messages are there at once, from as many chats; the stand-in server delivers them
to the webhook, forty requests at a time, and takes the replies. It needs a core of its own, and so
does PostgreSQL (here without fsync): read the ratio with the number of cores in mind.

Turn: what one message costs on the whole path of the console (accept, turn, hand out: three
transactions), median of the wall clock and of our own CPU; PostgreSQL's is not in the latter.
`first` is the first question to a book of which nothing is kept in memory.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from itertools import cycle
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from databases import POSTGRES, new_postgresql, shown
from scouted_pair import scout
from sqlalchemy import insert
from stand_in_process import CHATS, cpu_s, load, stand_in, wait_for
from talk import SATURDAY, Talk
from turn_stages import forget_texts
from worker_process import free_port

from bot.demo_book import fill
from scouting_db import tables
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.session import Store, open_store

CHECKOUT = Path(__file__).parents[2]

COUNT = 2000
PAIR = ("Okafor", "Lindqvist")
ASKED = "where do i dink okafor"
NOTES = cycle(("okafor pops up backhand dinks", "undo"))
BOOKS, NOTES_OF_ONE, NOTES_OF_OTHERS = 1000, 10_000, 5
CLAIMS_A_NOTE = 4
TURNS = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """Milliseconds of one turn."""

    wall_ms: float
    cpu_ms: float


def say(line: str) -> None:
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


def throughput(workers: int, *, delay_ms: int, count: int) -> tuple[float, float]:
    """Replies a second, and our CPU a turn in milliseconds, of so many workers."""
    with (
        new_postgresql() as url,
        stand_in(delay_ms) as (root, token),
        tempfile.TemporaryFile() as log,
    ):
        port = free_port()
        environment = os.environ | {
            "PYTHONPATH": str(CHECKOUT),
            "SEAMWISE_TOKEN": token,
            "SEAMWISE_API_BASE": root,
            "SEAMWISE_DATABASE": shown(url),
            "SEAMWISE_WEBHOOK_URL": f"http://127.0.0.1:{port}/telegram",
            "SEAMWISE_PACE": "off",
            "SEAMWISE_LOG": "error",
        }
        command = [sys.executable, "-m", "bot", "serve", "--port", str(port)]
        command += ["--workers", str(workers)]
        process = subprocess.Popen(command, env=environment, stderr=log)
        try:
            _until_ready(port)
            # Some messages first, so that what is loaded late is loaded in every worker.
            load(root, CHATS)
            wait_for(root, lambda report: report["sent"] == CHATS)
            time.sleep(1.5)
            before = _cpu_s(process.pid)
            load(root, count)
            report = wait_for(root, lambda report: report["sent"] >= count)
            used = _cpu_s(process.pid) - before
        finally:
            process.terminate()
            process.wait()
    return count / (report["last"] - report["loaded"]), 1000 * used / count


def _until_ready(port: int) -> None:
    end = time.monotonic() + 60
    while time.monotonic() < end:
        try:
            with urllib.request.urlopen(f"http://127.0.0.1:{port}/ready"):
                # The webhook is told right after; updates that come before it are kept for it.
                time.sleep(1)
                return
        except OSError:
            time.sleep(0.1)
    raise TimeoutError("no worker became ready")


def _cpu_s(pid: int) -> float:
    """Of the process and its children (Linux)."""
    children = Path(f"/proc/{pid}/task/{pid}/children").read_text().split()
    return sum(map(cpu_s, (pid, *map(int, children))))


@contextmanager
def stores(kind: str) -> Iterator[Store]:
    """An open store of its own, in a file or on the server."""
    if kind == "sqlite":
        with (
            tempfile.TemporaryDirectory() as folder,
            closing(open_store(f"sqlite:///{folder}/book.sqlite")) as store,
        ):
            yield store
        return
    with new_postgresql() as url, closing(open_store(shown(url))) as store:
        yield store


def add_books(store: Store, count: int) -> None:
    """So many more books, each with a chat, a person, two players and some notes."""
    with store.writing() as connection:
        directory = Directory(connection)
        account = directory.account("console", "console")
        for n in range(count):
            person = directory.person(account, f"user {n}", f"User {n}")
            chat = directory.chat(account, f"chat {n}")
            book_id = directory.settle_book(chat, person, name=f"Book {n}")
            book = Book(connection, book_id, person=person, now=SATURDAY)
            for name in ("Chidi Okafor", "Sven Lindqvist"):
                book.add_player(name)
            rows = [
                {"book_id": book_id, "note_id": 10_000 + note, "at": SATURDAY, "unread": False,
                 "text": "okafor pops up dinks"}
                for note in range(NOTES_OF_OTHERS)
            ]  # fmt: skip
            connection.execute(insert(tables.note), rows)


def cost(talk: Talk, texts: Iterator[str], turns: int = TURNS) -> Cost:
    """Of saying these, one after another."""
    walls, cpus = [], []
    for _ in range(turns):
        wall, cpu = time.perf_counter(), time.process_time()
        talk.say(next(texts))
        walls.append(time.perf_counter() - wall)
        cpus.append(time.process_time() - cpu)
    return Cost(wall_ms=1000 * median(walls), cpu_ms=1000 * median(cpus))


def turn_costs(kind: str, name: str, *, books: int, notes: int, turns: int) -> None:
    """A line of the table."""
    with stores(kind) as store:
        fill(store, now=SATURDAY)
        add_books(store, books - 1)
        talk = Talk(store=store)
        if notes:
            scout(talk, PAIR, observations=notes * CLAIMS_A_NOTE, rallies=0)
        talk.say("next: okafor and lindqvist")
        first = cost(talk, cycle((ASKED,)), 1)
        same = cost(talk, cycle((ASKED,)), turns)
        note = cost(talk, NOTES, turns)
        after = []
        for _ in range(turns // 4):
            talk.say(next(NOTES))
            forget_texts()
            after.append(cost(talk, cycle((ASKED,)), 1))
    asked_after = Cost(
        wall_ms=median(one.wall_ms for one in after), cpu_ms=median(one.cpu_ms for one in after)
    )
    columns = (first, same, note, asked_after)
    cells = "".join(f"{one.wall_ms:8.1f}{one.cpu_ms:7.1f}" for one in columns)
    say(f"{kind:12}{name:34}{cells}")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="a quarter of the messages and turns")
    options = parser.parse_args()
    part = 4 if options.quick else 1
    if not os.environ.get(POSTGRES):
        parser.error(f"{POSTGRES} is not set: source .ci/postgres; start_postgres")
    say(f"{os.cpu_count()} cores; {COUNT // part} messages from {CHATS} chats, on PostgreSQL")
    say(f"{'workers':10}{'answer takes':>14}{'replies/s':>11}{'CPU ms':>8}")
    for delay_ms in (0, 40):
        for workers in (1, 2):
            rate, cpu_ms = throughput(workers, delay_ms=delay_ms, count=COUNT // part)
            say(f"{workers:<10}{delay_ms:>11} ms{rate:>11.0f}{cpu_ms:>8.2f}")
    say("\na turn in milliseconds: wall clock and our CPU, for the first question to a book, the")
    say("same again, a note (or its undo), and a question right after a note")
    say(f"{'':46}" + "".join(f"{head:>15}" for head in ("first", "same", "note", "after")))
    for kind in ("sqlite", "postgresql"):
        with stores(kind) as store:
            # What is loaded late is loaded by one who is not measured.
            fill(store, now=SATURDAY)
            for text in ("next: okafor and lindqvist", ASKED, next(NOTES), next(NOTES)):
                Talk(store=store).say(text)
        turn_costs(kind, "1 book", books=1, notes=0, turns=TURNS // part)
        turn_costs(kind, f"{BOOKS} books", books=BOOKS, notes=0, turns=TURNS // part)
        turn_costs(
            kind, f"1 book of {NOTES_OF_ONE} notes", books=1, notes=NOTES_OF_ONE,
            turns=TURNS // part,
        )  # fmt: skip


if __name__ == "__main__":
    main()
