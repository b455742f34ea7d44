"""Latency under a steady load and replies a second at once: ours beside a bare echo handler.

Run from the checkout: `python tests/benchmarks/steady.py [--quick]`. Takes some two minutes. Over
the same stand-in of the Bot API, which stands in this process, in one run: the echo handler with
the library's defaults, then `seamwise telegram` asked five things in chats that have a book with
notes and a match each. Steady: messages come one by one at a fixed pace, and each is timed from
its arrival to the last of its replies. At once: all are queued, and replies a second are counted.
Memory is resident, at the end. The bars are design section 7.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import tempfile
import time
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from bot_api import Server, message_update, running
from bot_api_server import SentMessage, State, put
from measured import Table

from scouting_db.session import open_store

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]

CHATS = 10
PACE_PER_S = 40
STEADY_S = 8
AT_ONCE = 400
PATIENCE_S = 120.0

BEFORE = (
    "okafor pops up backhand dinks",
    "lindqvist poaches a lot",
    "mira is a righty, tom is a lefty",
    "next: okafor and lindqvist",
    "we serve",
)
"""What every chat's book is told first."""

ECHO = "echo, library defaults"
ASKED: Mapping[str, str] = {
    "cover_middle": "who covers the middle",
    "aim_dink": "where do i dink okafor",
    "risk_at_score": "were up 9-8-2, how big is this rally",
    "a note": "okafor is slow coming forward",
    "a cue": "cue",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """Milliseconds from a message to its last reply, replies a second, CPU a message, memory."""

    median_ms: float
    p99_ms: float
    replies_per_s: float
    cpu_ms: float
    memory_mb: float


class Bot:
    """A running bot, and the stand-in that it speaks with."""

    def __init__(self, api: Server, pid: int) -> None:
        self._api = api
        self._pid = pid

    @property
    def pid(self) -> int:
        return self._pid

    def say_all(self, texts: Sequence[str], *, pace_per_s: float | None) -> list[list[float]]:
        """When each message came, one list a chat; `pace_per_s` None queues them at once."""
        came: list[list[float]] = [[] for _ in range(CHATS)]

        def come(state: State, chat: int, text: str) -> None:
            came[chat].append(time.monotonic())
            put(state, message_update(chat_id=chat + 1, text=text))

        def come_all(state: State) -> None:
            for n, text in enumerate(texts):
                come(state, n % CHATS, text)

        if pace_per_s is None:
            self._api.ask(come_all)
            return came
        began = time.monotonic()
        for n, text in enumerate(texts):
            time.sleep(max(0.0, began + n / pace_per_s - time.monotonic()))
            self._api.ask(lambda state, n=n, text=text: come(state, n % CHATS, text))  # type: ignore[misc]
        return came

    def replies(self, count: int) -> dict[int, list[SentMessage]]:
        """What was sent to each chat, once it is so many in all; then forgotten."""
        self._api.wait_until(
            lambda api: api.ask(lambda state: len(state.sent)) >= count, within_s=PATIENCE_S
        )
        time.sleep(0.05)
        found: dict[int, list[SentMessage]] = defaultdict(list)
        for one in self._api.sent():
            found[one.chat_id - 1].append(one)
        self._api.ask(lambda state: state.sent.clear())
        return found

    def replies_of_one(self, text: str) -> int:
        """How many messages answer the text, in a chat that has heard it before."""
        counts = []
        for _ in range(2):
            self.say_all([text] * CHATS, pace_per_s=None)
            time.sleep(0.5)
            counts.append(sum(map(len, self.replies(CHATS).values())))
        assert counts[-1] % CHATS == 0, counts
        return counts[-1] // CHATS

    def cost(self, text: str, *, part: int) -> Cost:
        """Steady first, then at once."""
        each = self.replies_of_one(text)
        steady = PACE_PER_S * STEADY_S // part
        came = self.say_all([text] * steady, pace_per_s=PACE_PER_S)
        sent = self.replies(steady * each)
        waited = sorted(
            1000 * (sent[chat][(place + 1) * each - 1].at - at)
            for chat, times in enumerate(came)
            for place, at in enumerate(times)
        )
        cpu, count = self._cpu_s(), AT_ONCE // part
        began = time.monotonic()
        self.say_all([text] * count, pace_per_s=None)
        last = max(one.at for row in self.replies(count * each).values() for one in row)
        return Cost(
            median_ms=waited[len(waited) // 2],
            p99_ms=waited[int(0.99 * (len(waited) - 1))],
            replies_per_s=count / (last - began),
            cpu_ms=1000 * (self._cpu_s() - cpu) / count,
            memory_mb=self._memory_mb(),
        )

    def _cpu_s(self) -> float:
        fields = Path(f"/proc/{self._pid}/stat").read_text().rpartition(")")[2].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

    def _memory_mb(self) -> float:
        lines = Path(f"/proc/{self._pid}/status").read_text().splitlines()
        resident = next(line for line in lines if line.startswith("VmRSS"))
        return int(resident.split()[1]) / 1024


@contextmanager
def bot(command: Sequence[str], *, database: str | None = None) -> Iterator[Bot]:
    """The bot of that command over a stand-in of its own, polling; without a database given, over
    an empty one that is there already, as at any start but the first.
    """
    with running() as api, tempfile.TemporaryDirectory() as folder:
        # A database may know a predecessor's updates: numbers of later ones are above them.
        api.ask(lambda state: setattr(state, "next_update", time.time_ns() // 1000))
        if database is None:
            database = f"sqlite:///{folder}/bench.sqlite"
            open_store(database).close()
        token = api.ask(lambda state: state.token)
        api.ask(lambda state: setattr(state, "keep_calls", False))
        environment = os.environ | {
            "PYTHONPATH": str(ROOT),
            "SEAMWISE_TOKEN": token,
            "SEAMWISE_API_BASE": api.root,
            "SEAMWISE_DATABASE": database,
            "SEAMWISE_PACE": "off",
            "SEAMWISE_LOG": "error",
        }
        given = [part.format(root=api.root, token=token) for part in command]
        process = subprocess.Popen(given, env=environment, stderr=subprocess.DEVNULL)
        try:
            api.wait_until(lambda api: api.ask(lambda state: state.polls) > 0, within_s=PATIENCE_S)
            yield Bot(api, process.pid)
        finally:
            process.kill()
            process.wait()


def measure(*, part: int = 1) -> dict[str, Cost]:
    """The echo handler's costs, and ours by what is asked."""
    found: dict[str, Cost] = {}
    with bot((sys.executable, str(HERE / "echo_handler.py"), "{root}", "{token}")) as echo:
        found[ECHO] = echo.cost(ASKED["cover_middle"], part=part)
    with bot((sys.executable, "-m", "bot", "telegram")) as ours:
        for text in BEFORE:
            ours.say_all([text] * CHATS, pace_per_s=None)
            ours.replies(CHATS)
        for name, text in ASKED.items():
            found[name] = ours.cost(text, part=part)
    return found


def tables(*, quick: bool = False) -> list[Table]:
    """A row for each, ratios to the echo handler beside."""
    found = measure(part=4 if quick else 1)
    bar = found[ECHO]
    rows = [
        (
            name,
            f"{one.median_ms:.1f}",
            f"{one.p99_ms:.1f}",
            f"{one.p99_ms / bar.p99_ms:.2f}",
            f"{one.replies_per_s:.0f}",
            f"{one.replies_per_s / bar.replies_per_s:.2f}",
            f"{one.cpu_ms:.2f}",
            f"{one.memory_mb:.0f}",
        )
        for name, one in found.items()
    ]
    return [
        Table(
            title=f"(a) Over a stand-in of the Bot API: latency at {PACE_PER_S} messages a second,"
            " answered a second when queued at once (bars: p99 at most 1.5 times the echo's, more"
            " a second than the echo)",
            head=(
                "bot, asked", "median ms", "p99 ms", "p99, times echo", "a second", "times echo",
                "CPU ms", "memory MB",
            ),
            rows=rows,
        )
    ]  # fmt: skip


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="a quarter of the messages")
    for table in tables(quick=parser.parse_args().quick):
        sys.stdout.write(table.markdown())
