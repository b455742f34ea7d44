"""The stand-in server as a process of its own, for benchmarks: what they ask of it."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

STAND_IN = Path(__file__).parent / "bot_api.py"
CHATS = 100
PATIENCE_S = 60.0
QUESTION = "who covers the middle"


def cpu_s(pid: int) -> float:
    """User and system time of a running process, from /proc (Linux)."""
    fields = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


@contextmanager
def stand_in(delay_ms: int) -> Iterator[tuple[str, str]]:
    """A stand-in server in a process of its own: its root and its token."""
    command = [sys.executable, str(STAND_IN), "--delay-ms", str(delay_ms)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        try:
            told = json.loads(process.stdout.readline())
            yield told["root"], told["token"]
        finally:
            process.kill()


def load(root: str, count: int) -> None:
    """So many messages at once, from as many chats in turn as there are."""
    order = json.dumps({"count": count, "chats": CHATS, "text": QUESTION}).encode()
    headers = {"Content-Type": "application/json"}
    request = urllib.request.Request(f"{root}/control/load", order, headers)
    urllib.request.urlopen(request).close()


def wait_for(root: str, holds: Callable[[dict[str, float]], bool]) -> dict[str, float]:
    """The server's report, as soon as that holds."""
    end = time.monotonic() + PATIENCE_S
    while time.monotonic() < end:
        with urllib.request.urlopen(f"{root}/control/report") as answer:
            report: dict[str, float] = json.load(answer)
        if holds(report):
            return report
        time.sleep(0.05)
    raise TimeoutError(f"not within {PATIENCE_S:.0f} s; the server reports {report}")
