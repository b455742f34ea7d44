"""Real `seamwise serve` processes on a PostgreSQL, for tests against the stand-in server."""

from __future__ import annotations

import json
import os
import signal
import socket
import subprocess
import sys
import urllib.error
import urllib.request
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from bot_api import TOKEN, Server
from bot_nursery import CHECKOUT, ENDS_WITHIN_S, Forked, the_nursery


@dataclass(slots=True, kw_only=True)
class WorkerProcess:
    """A running `seamwise serve`: its port, and its log file."""

    process: Forked | subprocess.Popen[bytes]
    port: int
    log: Path

    @property
    def url(self) -> str:
        return f"http://127.0.0.1:{self.port}/telegram"

    def page(self, name: str) -> tuple[int, dict[str, Any]]:
        """The status and the JSON of /health or /ready; (0, {}) where nobody answers."""
        try:
            with urllib.request.urlopen(
                f"http://127.0.0.1:{self.port}/{name}", timeout=10
            ) as answer:
                return answer.status, json.load(answer)
        except urllib.error.HTTPError as error:
            with error:
                return error.code, json.load(error)
        except OSError:
            return 0, {}

    def is_ready(self) -> bool:
        return self.page("ready")[0] == 200

    def stop(self, number: int = signal.SIGTERM) -> int:
        """Send the signal and return the exit code."""
        self.process.send_signal(number)
        return self.process.wait(timeout=ENDS_WITHIN_S)

    def logged(self) -> list[dict[str, Any]]:
        """The lines of the log."""
        return [json.loads(line) for line in self.log.read_text(encoding="utf-8").splitlines()]


def free_port() -> int:
    with socket.socket() as found:
        found.bind(("127.0.0.1", 0))
        return int(found.getsockname()[1])


def worker_environment(
    api: Server, database_url: str, port: int, more: Mapping[str, str]
) -> dict[str, str]:
    """Ours for the process: the tests' own settings and nothing of the caller's."""
    kept = {key: value for key, value in os.environ.items() if not key.startswith("SEAMWISE_")}
    return kept | {
        "SEAMWISE_TOKEN": TOKEN,
        "SEAMWISE_API_BASE": api.root,
        "SEAMWISE_DATABASE": database_url,
        "SEAMWISE_WEBHOOK_URL": f"http://127.0.0.1:{port}/telegram",
        "SEAMWISE_PACE": "off",
        **more,
    }


@contextmanager
def worker_process(
    api: Server,
    database_url: str,
    folder: Path,
    *,
    arguments: tuple[str, ...] = (),
    port: int | None = None,
    **more: str,
) -> Iterator[WorkerProcess]:
    """Started, not yet ready; killed at the end if it still runs.

    With arguments of its own it is loaded anew, as it may start others by its own name.
    """
    port = port or free_port()
    log = folder / f"worker-{port}.log"
    surroundings = worker_environment(api, database_url, port, more)
    command = ["serve", "--port", str(port), *arguments]
    process: Forked | subprocess.Popen[bytes]
    if arguments:
        with log.open("ab") as errors:
            process = subprocess.Popen(
                [sys.executable, "-m", "bot", *command],
                cwd=CHECKOUT,
                env=surroundings,
                stderr=errors,
            )
    else:
        process = Forked(the_nursery(), command, surroundings, log)
    try:
        yield WorkerProcess(process=process, port=port, log=log)
    finally:
        process.kill()
        process.wait()
