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
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from bot_api import Server
from bot_api_server import State, put
from bot_api_updates import message_update
from bot_api_weather import CALM, Climate, StormyWeather
from bot_nursery import Nursery
from bot_process import environment
from fault_databases import Troubled
from fault_ledger import Injected, Ledger
from fault_records import COURTESIES, read_ledger, unsettled
from worker_process import free_port

LOOK_EVERY_S = 0.01
SECRET = "campaign-of-faults-0123456789"

MOST_BEFORE_TROUBLE_S = 1.0

SETTLED_WITHIN_S = 150.0
"""Longer than a lease, after which what a lost commit left as being sent is due again."""

MOST_UNANSWERED = 4
"""A chat's messages on their way; more would only pile up behind the kills."""

QUESTIONS = 0.2
"""Share of messages that are no note."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """How much of what. `workers` 0 is the one process that polls. A process lives up to
    `longest_life_s`, or until up to `most_replies` have arrived; every `trouble_every` kills the
    database gets into trouble; chats write up to `per_second` messages in all."""

    kills: int
    chats: int
    seed: int
    workers: int = 0
    climate: Climate = field(default_factory=Climate)
    longest_life_s: float = 2.5
    most_replies: int | None = None
    per_second: float = 60.0
    trouble_every: int = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What happened: the ledger to check, and how often each fault was injected."""

    ledger: Ledger
    injected_faults: Counter[str]
    seconds: float


@dataclass(slots=True)
class Place:
    """Where a process runs, one after another: a worker's by its port, or the one that polls."""

    port: int | None
    name: str = ""
    process: int | None = None

    @property
    def arguments(self) -> list[str]:
        """Of the command."""
        if self.port is None:
            return ["telegram"]
        return ["serve", "--port", str(self.port), "--no-register"]


class Load:
    """Chats that write: a roster entry first, then notes and some questions, each text once."""

    def __init__(self, api: Server, plan: Plan) -> None:
        self._api = api
        self._plan = plan
        self._dice = random.Random(plan.seed)
        self._began = time.monotonic()
        self._seen = 0
        self._replies: set[tuple[int, str, str]] = set()
        self.injected: list[Injected] = []

    def top_up(self) -> None:
        """Write what is due by now, unless plenty is still unanswered."""
        due = int((time.monotonic() - self._began) * self._plan.per_second)
        most = self._answered() + MOST_UNANSWERED * self._plan.chats
        for _ in range(min(due, most) - len(self.injected)):
            self._write()

    def _answered(self) -> int:
        """Messages with a reply, those repeated counted once."""
        known = self._seen
        news = self._api.ask(lambda state: state.sent[known:])
        self._seen += len(news)
        self._replies.update(
            (one.chat_id, one.text, str(one.buttons)) for one in news if one.text not in COURTESIES
        )
        return len(self._replies)

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
    """The process that polls, or the workers, each replaced as soon as it is killed."""

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
        self._places = [Place(free_port()) for _ in range(plan.workers)] or [Place(None)]

    def run(self) -> Outcome:
        """The whole of it. AssertionError where it does not come to rest."""
        began = time.monotonic()
        weather = StormyWeather(self._plan.climate, seed=self._plan.seed)
        self._api.ask(lambda state: setattr(state, "weather", weather))
        self._api.ask(lambda state: setattr(state, "keep_calls", False))
        if self._plan.workers:
            self._deliver_to_all(weather)
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
        self._start(self._places[0])
        self._api.wait_until(self._has_answered, within_s=60)
        self._kill(self._places[0])

    def _has_answered(self, api: Server) -> bool:
        self._load.top_up()
        return bool(api.sent())

    def _deliver_to_all(self, weather: StormyWeather) -> None:
        """To the workers by turns; a dead one takes nothing, and the update goes to the next."""
        first, *others = (f"http://127.0.0.1:{each.port}/telegram" for each in self._places)

        def work(state: State) -> None:
            state.webhook.set(first, SECRET)
            state.webhook.also[:] = others
            state.webhook.twice_every = 4
            state.webhook.weather = weather

        self._api.ask(work)

    def _live_and_die(self) -> None:
        for place in self._places:
            if place.process is None:
                self._start(place)
        is_over = self._end_of_life()
        while not is_over():
            self._load.top_up()
            time.sleep(LOOK_EVERY_S)
        self._kill(self._dice.choice(self._places))

    def _end_of_life(self) -> Callable[[], bool]:
        """A random instant, by the clock or by what was sent."""
        longest_s, most = self._plan.longest_life_s, self._plan.most_replies
        if most is not None:
            enough = len(self._api.sent()) + self._dice.randrange(most)
            last = time.monotonic() + longest_s
            return lambda: len(self._api.sent()) >= enough or time.monotonic() > last
        # A third of them early, while it still opens, locks and takes up what was left.
        end = time.monotonic() + self._dice.uniform(0, longest_s * self._dice.choice((0.2, 1, 1)))
        return lambda: time.monotonic() > end

    def _start(self, place: Place) -> None:
        self._started += 1
        place.name = str(self._started)
        root = f"{self._api.root}/by/{place.name}"
        more = {
            "SEAMWISE_PACE": "off",
            "SEAMWISE_DATABASE": self._database.url,
            "SEAMWISE_WEBHOOK_SECRET": SECRET,
        }
        surroundings = environment(root, Path("unused"), more)
        place.process = self._loaded.start(place.arguments, surroundings, self._log)

    def _kill(self, place: Place) -> None:
        assert place.process is not None, "started before"
        code = self._loaded.end(place.process, signal.SIGKILL)
        place.process = None
        if code == -signal.SIGKILL:
            self._killed.add(place.name)
            self._counts["kill -9"] += 1
        else:
            self._counts[f"ended by itself with {code}"] += 1

    @contextmanager
    def _trouble(self) -> Iterator[None]:
        """The database's trouble begins some time after the process and may outlast it."""
        dice = random.Random(self._dice.random())

        def work() -> None:
            time.sleep(dice.uniform(0, MOST_BEFORE_TROUBLE_S))
            self._counts[self._database.trouble(dice)] += 1

        thread = threading.Thread(target=work, name="trouble")
        thread.start()
        try:
            yield
        finally:
            thread.join()

    def _come_to_rest(self) -> None:
        for place in self._places:
            if place.process is not None:
                self._kill(place)
            self._start(place)
        injected = len(self._load.injected)
        self._api.wait_until(
            lambda _: unsettled(self._database.url, injected) == 0, within_s=SETTLED_WITHIN_S
        )
        for place in self._places:
            assert place.process is not None, "just started"
            code = self._loaded.end(place.process, signal.SIGTERM)
            # The other workers may be done before one of them has begun to listen to signals.
            allowed = (0, -signal.SIGTERM) if self._plan.workers else (0,)
            assert code in allowed, f"a graceful stop ended with {code}"

    def _ledger(self) -> Ledger:
        ended = sum(count for name, count in self._counts.items() if name.startswith("database"))
        return self._api.ask(
            lambda state: read_ledger(
                self._database.url,
                state,
                injected=self._load.injected,
                killed=self._killed,
                cut_off=ended if self._plan.workers else 0,
            )
        )


@contextmanager
def _quiet() -> Iterator[None]:
    yield
