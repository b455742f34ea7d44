"""A campaign: bot processes killed at random instants, under load, in bad weather.

One run: 1. chats write all the time, 2. the process is killed and started again at random
instants, while the server fails and the database gets into trouble, 3. all that ends, and the
last process works off what is left, 4. the ledger is read and every broken promise listed.
"""

from __future__ import annotations

import random
import signal
import threading
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from bot_api import Server
from bot_api_server import put
from bot_api_updates import message_update
from bot_api_weather import CALM, Climate, StormyWeather
from bot_nursery import Nursery
from bot_process import environment
from fault_databases import Troubled
from fault_ledger import Injected, Ledger
from fault_records import read_ledger, unsettled

LOOK_EVERY_S = 0.01
SETTLED_WITHIN_S = 150.0
"""Longer than a lease, after which what a lost commit left as being sent is due again."""

QUESTIONS = 0.2
"""Share of messages that are no note."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """How much of what. A process lives up to `longest_life_s`; every `trouble_every` kills the
    database gets into trouble; chats write up to `per_second` messages in all."""

    kills: int
    chats: int
    seed: int
    climate: Climate = field(default_factory=Climate)
    longest_life_s: float = 2.5
    per_second: float = 60.0
    trouble_every: int = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What happened: the ledger to check, and how often each fault was injected."""

    ledger: Ledger
    injected_faults: Counter[str]
    seconds: float


class Load:
    """Chats that write: a roster entry first, then notes and some questions, each text once."""

    def __init__(self, api: Server, plan: Plan) -> None:
        self._api = api
        self._plan = plan
        self._dice = random.Random(plan.seed)
        self._began = time.monotonic()
        self.injected: list[Injected] = []

    def top_up(self) -> None:
        """Write what is due by now, unless the server still holds plenty."""
        due = int((time.monotonic() - self._began) * self._plan.per_second)
        held = self._api.ask(lambda state: len(state.updates))
        for _ in range(min(due - len(self.injected), 3 * self._plan.chats - held)):
            self._write()

    def _write(self) -> None:
        number = len(self.injected)
        chat = 1 + (number if number < self._plan.chats else self._dice.randrange(1 << 30)) % (
            self._plan.chats
        )
        text = self._text(number)
        update = message_update(chat_id=chat, text=text)
        update_id = self._api.ask(lambda state: put(state, update))
        self.injected.append(
            Injected(update_id=update_id, chat=chat, text=text, is_note=text.startswith("note"))
        )

    def _text(self, number: int) -> str:
        if number < self._plan.chats:
            return "/add Okafor"
        if self._dice.random() < QUESTIONS:
            ours, theirs = number % 11, number // 11 % 11
            return f"win chance {ours}-{theirs}-{1 + number % 2}"
        return f"note okafor: pops up dink number {number}"


class Campaign:
    """One polling process after another."""

    def __init__(
        self, plan: Plan, *, api: Server, loaded: Nursery, database: Troubled, log: Path
    ) -> None:
        self._plan = plan
        self._api = api
        self._loaded = loaded
        self._database = database
        self._log = log
        self._dice = random.Random(plan.seed)
        self._load = Load(api, plan)
        self._counts: Counter[str] = Counter()
        self._killed: set[str] = set()
        self._started = 0

    def run(self) -> Outcome:
        """The whole of it. AssertionError where it does not come to rest."""
        began = time.monotonic()
        weather = StormyWeather(self._plan.climate, seed=self._plan.seed)
        self._api.ask(lambda state: setattr(state, "weather", weather))
        self._api.ask(lambda state: setattr(state, "keep_calls", False))
        self._begin()
        for kill in range(1, self._plan.kills + 1):
            with self._trouble() if kill % self._plan.trouble_every == 0 else _quiet():
                self._live_and_die()
        weather.climate = CALM
        self._come_to_rest()
        return Outcome(
            ledger=self._ledger(),
            injected_faults=self._counts + weather.counts,
            seconds=time.monotonic() - began,
        )

    def _begin(self) -> None:
        """Let the first process make its tables, which takes longer than most live later."""
        number = self._start()
        self._load.top_up()
        self._api.wait_until(lambda api: bool(api.sent()), within_s=60)
        self._kill(number)

    def _live_and_die(self) -> None:
        number = self._start()
        # A third of them early, while it still opens, locks and takes up what was left.
        span_s = self._plan.longest_life_s * self._dice.choice((0.2, 1.0, 1.0))
        until = time.monotonic() + self._dice.uniform(0, span_s)
        while time.monotonic() < until:
            self._load.top_up()
            time.sleep(LOOK_EVERY_S)
        self._kill(number)

    def _start(self) -> int:
        self._started += 1
        root = f"{self._api.root}/by/{self._started}"
        more = {"SEAMWISE_PACE": "off", "SEAMWISE_DATABASE": self._database.url}
        surroundings = environment(root, Path("unused"), more)
        return self._loaded.start(["telegram"], surroundings, self._log)

    def _kill(self, number: int) -> None:
        code = self._loaded.end(number, signal.SIGKILL)
        if code == -signal.SIGKILL:
            self._killed.add(str(self._started))
            self._counts["kill -9"] += 1
        else:
            self._counts[f"ended by itself with {code}"] += 1

    @contextmanager
    def _trouble(self) -> Iterator[None]:
        """The database's trouble begins some time after the process and may outlast it."""
        dice = random.Random(self._dice.random())

        def work() -> None:
            time.sleep(dice.uniform(0, self._plan.longest_life_s / 2))
            self._counts[self._database.trouble(dice)] += 1

        thread = threading.Thread(target=work, name="trouble")
        thread.start()
        try:
            yield
        finally:
            thread.join()

    def _come_to_rest(self) -> None:
        number = self._start()
        injected = len(self._load.injected)
        self._api.wait_until(
            lambda _: unsettled(self._database.url, injected) == 0, within_s=SETTLED_WITHIN_S
        )
        code = self._loaded.end(number, signal.SIGTERM)
        assert code == 0, f"a graceful stop ended with {code}"

    def _ledger(self) -> Ledger:
        url, injected, killed = self._database.url, self._load.injected, self._killed
        return self._api.ask(
            lambda state: read_ledger(url, state, injected=injected, killed=killed)
        )


@contextmanager
def _quiet() -> Iterator[None]:
    yield
