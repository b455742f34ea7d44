"""Bot processes by the hundred: loaded once, then forked, so that a kill costs no loading.

What is forked runs the `seamwise` command from its beginning, with an environment, a log and a
process id of its own. As a process of its own this module reads orders, a JSON object a line:
{"start": [arguments], "environment": {...}, "log": file} answers with the process id, {"wait": id,
"within_s": seconds} with the exit code (minus the signal's number, as subprocess has it), or with
null where it runs on.
"""

from __future__ import annotations

import atexit
import importlib
import json
import os
import signal
import subprocess
import sys
import time
import traceback
from collections.abc import Iterator, Mapping, Sequence
from contextlib import ExitStack, contextmanager
from functools import cache
from pathlib import Path
from typing import IO, Any

CRASHED = 70
"""The exit code where the command raised (sysexits.h: EX_SOFTWARE)."""

ENDS_WITHIN_S = 20.0
"""A process that was told to end and runs on for so long will not."""

LOOKS_EVERY_S = 0.01

CHECKOUT = Path(__file__).parents[2]


class Nursery:
    """The loaded process, asked from outside."""

    def __init__(self, process: subprocess.Popen[str]) -> None:
        self._process = process
        self._alive: set[int] = set()

    def start(self, arguments: Sequence[str], environment: Mapping[str, str], log: Path) -> int:
        """A new process of the command; its id."""
        order = {"start": list(arguments), "environment": dict(environment), "log": str(log)}
        number = self._ask(order)
        assert number is not None
        self._alive.add(number)
        return number

    def end(self, number: int, with_signal: int) -> int:
        """Send the signal to the process and return its exit code."""
        os.kill(number, with_signal)
        code = self.wait(number, within_s=ENDS_WITHIN_S)
        if code is None:
            raise TimeoutError(f"process {number} does not end at signal {with_signal}")
        return code

    def wait(self, number: int, *, within_s: float) -> int | None:
        """The exit code of the process, None where it has not ended within that time."""
        code = self._ask({"wait": number, "within_s": within_s})
        if code is not None:
            self._alive.discard(number)
        return code

    def end_all(self) -> None:
        """Kill whatever was started and still runs."""
        for number in tuple(self._alive):
            self.end(number, signal.SIGKILL)

    def _ask(self, order: Mapping[str, Any]) -> int | None:
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._process.stdin.write(json.dumps(order) + "\n")
        self._process.stdin.flush()
        answer: int | None = json.loads(self._process.stdout.readline())
        return answer


class Forked:
    """A process of the command out of a nursery, asked as `subprocess.Popen` is."""

    def __init__(
        self, nursery: Nursery, arguments: Sequence[str], environment: Mapping[str, str], log: Path
    ) -> None:
        self._nursery = nursery
        self._code: int | None = None
        log.touch()
        self.pid = nursery.start(arguments, environment, log)

    def poll(self) -> int | None:
        """The exit code, None while it runs."""
        if self._code is None:
            self._code = self._nursery.wait(self.pid, within_s=0)
        return self._code

    def send_signal(self, number: int) -> None:
        if self.poll() is None:
            os.kill(self.pid, number)

    def kill(self) -> None:
        self.send_signal(signal.SIGKILL)

    def wait(self, timeout: float = ENDS_WITHIN_S) -> int:
        """The exit code; raises `TimeoutError` where it runs on."""
        if self._code is None:
            self._code = self._nursery.wait(self.pid, within_s=timeout)
        if self._code is None:
            raise TimeoutError(f"process {self.pid} still runs after {timeout} s")
        return self._code


@cache
def the_nursery() -> Nursery:
    """One for all tests of this process, which ends it."""
    stack = ExitStack()
    atexit.register(stack.close)
    return stack.enter_context(nursery())


@contextmanager
def nursery() -> Iterator[Nursery]:
    """A nursery, loaded; what it started is killed at the end."""
    # One thread: what is forked beside a running thread may find its locks taken.
    environment = {**os.environ, "OPENBLAS_NUM_THREADS": "1", "PYTHONPATH": str(CHECKOUT)}
    with subprocess.Popen(
        [sys.executable, str(Path(__file__))],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        env=environment,
    ) as process:
        loaded = Nursery(process)
        try:
            yield loaded
        finally:
            loaded.end_all()
            assert process.stdin is not None
            process.stdin.close()


def _obey(orders: IO[str], answers: IO[str]) -> None:
    """Until nobody orders any more: then nothing of it is left alive either."""
    alive: set[int] = set()
    for line in iter(orders.readline, ""):
        order = json.loads(line)
        if "start" in order:
            started = _fork(order)
            alive.add(started)
            answer: int | None = started
        else:
            answer = _exit_code(order["wait"], order["within_s"])
            if answer is not None:
                alive.discard(order["wait"])
        answers.write(f"{json.dumps(answer)}\n")
        answers.flush()
    for number in alive:
        os.kill(number, signal.SIGKILL)


def _exit_code(number: int, within_s: float) -> int | None:
    end = time.monotonic() + within_s
    while True:
        ended, status = os.waitpid(number, os.WNOHANG)
        if ended:
            return os.waitstatus_to_exitcode(status)
        if time.monotonic() >= end:
            return None
        time.sleep(LOOKS_EVERY_S)


def _fork(order: Mapping[str, Any]) -> int:
    number = os.fork()
    if number:
        return number
    code = CRASHED
    try:
        code = _be_the_command(order)
    except BaseException:
        traceback.print_exc()
    finally:
        sys.stderr.flush()
        os._exit(code)


def _be_the_command(order: Mapping[str, Any]) -> int:
    """In the forked process, which must not touch the orders of the one that it came from."""
    from bot.__main__ import main

    nothing = os.open(os.devnull, os.O_RDWR)
    log = os.open(order["log"], os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o644)
    os.dup2(nothing, 0)
    os.dup2(nothing, 1)
    os.dup2(log, 2)
    sys.stdin, sys.stdout = os.fdopen(0, "r"), os.fdopen(1, "w")
    os.environ.clear()
    os.environ.update(order["environment"])
    return main(order["start"])


def _load() -> None:
    """What a process needs for its tables and its first turn, found out by asking once."""
    for driver in ("alembic.command", "psycopg", "sqlalchemy.dialects.postgresql.psycopg"):
        importlib.import_module(driver)
    import bot.channels.telegram_bot.worker  # noqa: F401  the HTTP server loads it by its name
    from bot.channels.console import open_console
    from bot.channels.telegram_bot import run
    from bot.channels.telegram_bot.serve import serve
    from scouting_db.session import open_store

    assert callable(run)
    assert callable(serve)
    store = open_store("sqlite://")
    console = open_console(store, user_name="Nobody")
    for line in ("/add Okafor", "note okafor: pops up dink", "how do I return serve"):
        console.say(line)
    store.close()


if __name__ == "__main__":
    _load()
    _obey(sys.stdin, sys.stdout)
