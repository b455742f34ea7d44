"""Replies a second and CPU a turn, ours beside a bare echo handler over the same stand-in server.

Run from the checkout: `python tests/benchmarks/echo.py [--quick]`. Takes about a minute. All
messages are queued at once, from as many chats; read the ratios, not the numbers.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from stand_in_process import cpu_s, load, stand_in, wait_for

HERE = Path(__file__).parent
DELAYS_MS = (0, 40)


@dataclass(frozen=True, slots=True, kw_only=True)
class Contender:
    """A bot under test: its command, and how many messages it gets at each delay."""

    name: str
    command: tuple[str, ...]
    counts: tuple[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    replies_per_s: float
    cpu_ms: float


def contenders() -> tuple[Contender, ...]:
    """The yardstick first."""
    python = sys.executable
    return (
        Contender(
            name="bare echo, library defaults",
            command=(python, str(HERE / "echo_handler.py"), "{root}", "{token}"),
            counts=(1000, 150),
        ),
        Contender(
            name="our channel, echoing turn",
            command=(python, str(HERE / "our_channel.py")),
            counts=(2000, 2000),
        ),
        Contender(
            name="seamwise telegram, whole turn",
            command=(python, "-m", "bot", "telegram"),
            counts=(2000, 2000),
        ),
    )


def measure(contender: Contender, *, delay_ms: int, count: int) -> Result:
    """One bot answering `count` queued messages; its start is not counted."""
    with stand_in(delay_ms) as (root, token), tempfile.TemporaryDirectory() as folder:
        command = [part.format(root=root, token=token) for part in contender.command]
        environment = os.environ | {
            "PYTHONPATH": str(HERE.parent.parent),
            "SEAMWISE_TOKEN": token,
            "SEAMWISE_API_BASE": root,
            "SEAMWISE_DATABASE": f"sqlite:///{folder}/bench.sqlite",
            "SEAMWISE_PACE": "off",
            "SEAMWISE_LOG": "error",
        }
        process = subprocess.Popen(command, env=environment, stderr=subprocess.DEVNULL)
        try:
            wait_for(root, lambda report: report["polls"] > 0)
            # One message first, so that what is loaded late is loaded.
            load(root, 1)
            wait_for(root, lambda report: report["sent"] == 1)
            time.sleep(0.3)
            before = cpu_s(process.pid)
            load(root, count)
            report = wait_for(root, lambda report: report["sent"] >= count)
            used = cpu_s(process.pid) - before
        finally:
            process.kill()
            process.wait()
    return Result(
        replies_per_s=count / (report["last"] - report["loaded"]), cpu_ms=1000 * used / count
    )


def table(results: Sequence[tuple[Contender, int, Result]]) -> Iterator[str]:
    """Lines to print, each bot's ratios to the yardstick of the same delay."""
    yardsticks: dict[int, Result] = {}
    yield f"{'bot':32}{'delay':>7}{'replies/s':>11}{'ratio':>8}{'CPU ms':>8}{'ratio':>8}"
    for contender, delay_ms, result in results:
        bar = yardsticks.setdefault(delay_ms, result)
        yield (
            f"{contender.name:32}{delay_ms:>4} ms{result.replies_per_s:>11.0f}"
            f"{result.replies_per_s / bar.replies_per_s:>8.2f}{result.cpu_ms:>8.2f}"
            f"{result.cpu_ms / bar.cpu_ms:>8.2f}"
        )


def main() -> None:
    """Measure every bot at every delay and print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="a fifth of the messages")
    options = parser.parse_args()
    part = 5 if options.quick else 1
    results = []
    for n, delay_ms in enumerate(DELAYS_MS):
        for contender in contenders():
            result = measure(contender, delay_ms=delay_ms, count=contender.counts[n] // part)
            results.append((contender, delay_ms, result))
    sys.stdout.write("\n".join(table(results)) + "\n")


if __name__ == "__main__":
    main()
