"""What a turn costs, stage by stage, beside the same SQL statements run bare in the same process.

The clock is the process's CPU time. A turn is timed in a transaction that is rolled back, so that
the same turn can be taken again, and so can its statements alone.
"""

from __future__ import annotations

import time
from collections import defaultdict
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, field
from statistics import median
from typing import Any
from unittest.mock import patch

from sqlalchemy import Connection
from sqlalchemy.sql.elements import (
    ReleaseSavepointClause,
    RollbackToSavepointClause,
    SavepointClause,
)
from talk import UPDATES, Talk

from bot.chat import turn, views_kept
from bot.chat.answers import advised, questions
from bot.chat.asks_model import asking_score
from bot.chat.question_network import read_question
from bot.post import Arrival, Incoming, IncomingKind, accept, run_batch
from scouting_db import prepared
from scouting_db.directory import Directory
from scouting_db.session import savepoint

STAGES: tuple[tuple[str, Any, str], ...] = (
    ("understand", turn, "read"),
    ("gather", advised, "situation_for"),
    ("advise", advised, "advised"),
    ("render", questions, "told"),
)
"""A stage's name, and the function of which module it is."""

STORE = "store"
"""The stage of every statement: building, running and reading it."""

_OF_SAVEPOINTS = (SavepointClause, ReleaseSavepointClause, RollbackToSavepointClause)
"""Not counted: they are said to the connection, and a replay says them itself."""

_SAVEPOINT = "SAVEPOINT turn"
"""How the driver's statements of a savepoint end, which the replay makes itself."""

_STORES = ((STORE, Connection, "execute"), (STORE, prepared, "_run"))

Statement = Callable[[Connection], None]
"""As SQLAlchemy is given it: what to run, and with which parameters."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """Milliseconds of CPU: the whole turn, its statements bare, and each stage by itself."""

    turn_ms: float
    bare_ms: float
    statements: int
    stages_ms: dict[str, float] = field(default_factory=dict)

    @property
    def ours_ms(self) -> float:
        """What the turn costs beyond its statements."""
        return self.turn_ms - self.bare_ms


@dataclass(slots=True)
class _Clock:
    """Stages entered and left: a stage inside another is not counted as the outer one's."""

    spent_s: dict[str, float] = field(default_factory=lambda: defaultdict(float))
    inside: list[str] = field(default_factory=list)
    since: float = 0.0

    def enter(self, stage: str) -> None:
        self._count()
        self.inside.append(stage)

    def leave(self) -> None:
        self._count()
        self.inside.pop()

    def _count(self) -> None:
        now = time.process_time()
        if self.inside:
            self.spent_s[self.inside[-1]] += now - self.since
        self.since = now


class Bench:
    """A conversation whose next turn can be taken again and again."""

    def __init__(self, talk: Talk) -> None:
        self.talk = talk
        with talk.store.writing() as connection:
            self._account = Directory(connection).account("console", talk.bot)

    def cost(self, text: str, *, turns: int) -> Cost:
        """Of the turn on this text, which leaves nothing behind; the quickest of each counts."""
        return self.costs(text, turns=turns)[0]

    def costs(
        self, text: str, *, turns: int, before: Callable[[], object] = lambda: None
    ) -> tuple[Cost, Cost]:
        """The quickest and the median; `before` goes before every turn and is not counted."""
        with self._open(text):
            statements = self._recorded(before)
            whole, bare = [], []
            for _ in range(turns):
                before()
                whole.append(self._timed(self._take))
                bare.append(self._timed(lambda c: _replay(c, statements)))
            stages = self._stages(turns, before)
        count = len(statements)
        return (
            Cost(turn_ms=min(whole), bare_ms=min(bare), statements=count, stages_ms=stages),
            Cost(turn_ms=median(whole), bare_ms=median(bare), statements=count),
        )

    def first(self, text: str, *, repeats: int) -> Cost:
        """Of the turn taken once, whatever it leaves in memory; its statements' quickest."""
        with self._open(text):
            recorded: list[Statement] = []
            with _recording(recorded):
                whole = self._timed(self._take)
            bare = min(self._timed(lambda c: _replay(c, recorded)) for _ in range(repeats))
        return Cost(turn_ms=whole, bare_ms=bare, statements=len(recorded))

    @contextmanager
    def _open(self, text: str) -> Iterator[None]:
        """The text in the inbox; at the end the turn is taken for good."""
        incoming = Incoming(
            kind=IncomingKind.TEXT,
            chat=self.talk.chat,
            user_id=self.talk.user,
            user_name=self.talk.name,
            at=self.talk.now,
            text=text,
        )
        arrival = Arrival(update_id=next(UPDATES), incoming=incoming)
        with self.talk.store.writing() as connection:
            accept(connection, self._account, [arrival], now=self.talk.now)
        yield
        with self.talk.store.writing() as connection:
            self._take(connection)

    def _take(self, connection: Connection) -> None:
        done = run_batch(connection, self._account, self.talk._turn, now=self.talk.now)
        assert not done.failed

    def _timed(self, work: Callable[[Connection], object]) -> float:
        start = time.process_time()
        self._rolled_back(work)
        return 1000 * (time.process_time() - start)

    def _rolled_back(self, work: Callable[[Connection], object]) -> None:
        with self.talk.store._writer.connect() as connection, connection.begin() as transaction:
            work(connection)
            views = views_kept._VIEWS.get(connection.engine)
            transaction.rollback()
            if views is not None:
                # Taken back only to be taken again: what the turn left in memory is what is warm.
                views_kept._VIEWS[connection.engine] = views

    def _recorded(self, before: Callable[[], object]) -> list[Statement]:
        """The statements of the turn as SQLAlchemy, or the driver itself, is given them."""
        found: list[Statement] = []
        before()
        with _recording(found):
            self._rolled_back(self._take)
        return found

    def _stages(self, turns: int, before: Callable[[], object]) -> dict[str, float]:
        """The quickest of each stage, in milliseconds; what a clock of its own costs is in it."""
        best: dict[str, float] = {}
        for _ in range(turns):
            before()
            clock = _Clock()
            with _clocked(clock):
                self._rolled_back(self._take)
            for stage in (*(name for name, _, _ in STAGES), STORE):
                best[stage] = min(best.get(stage, 1e9), 1000 * clock.spent_s[stage])
        return best


@contextmanager
def _recording(found: list[Statement]) -> Iterator[None]:
    real, driver = Connection.execute, prepared._run

    def recording(self: Connection, statement: Any, given: Any = None, **more: Any) -> Any:
        if not isinstance(statement, _OF_SAVEPOINTS):
            found.append(lambda c: _read_all(c, statement, given))
        return real(self, statement, given, **more)

    def recording_driver(
        connection: Connection, text: str, values: Any, *, many: bool = False
    ) -> Any:
        if not text.endswith(_SAVEPOINT):
            found.append(lambda c: _read_all_of(driver(c, text, values, many=many)))
        return driver(connection, text, values, many=many)

    with (
        patch.object(Connection, "execute", recording),
        patch.object(prepared, "_run", recording_driver),
    ):
        yield


@contextmanager
def _clocked(clock: _Clock) -> Iterator[None]:
    with ExitStack() as stack:
        for stage, owner, name in (*STAGES, *_STORES):
            stack.enter_context(patch.object(owner, name, _in_stage(clock, stage, owner, name)))
        yield


def _in_stage(clock: _Clock, stage: str, owner: Any, name: str) -> Callable[..., Any]:
    real = getattr(owner, name)

    def timed(*args: Any, **options: Any) -> Any:
        clock.enter(stage)
        try:
            return real(*args, **options)
        finally:
            clock.leave()

    return timed


def _replay(connection: Connection, statements: list[Statement]) -> None:
    """The statements alone, in a savepoint as a turn's are, and every row read."""
    (first, *rest) = statements
    first(connection)
    with savepoint(connection):
        for run in rest:
            run(connection)


def _read_all(connection: Connection, statement: Any, given: Any) -> None:
    result = connection.execute(statement, given)
    if result.returns_rows:
        result.all()


def _read_all_of(cursor: Any) -> None:
    if cursor.description is not None:
        cursor.fetchall()


def forget_texts() -> None:
    """As if no text had been read or answered yet: only what is known of words stays."""
    for views in views_kept._VIEWS.values():
        for kept in ("readings", "advice", "replies"):
            getattr(views, kept).forget()
    read_question.cache_clear()
    asking_score.cache_clear()
