"""What a picture costs, by kind: the first of a process, the next ones, and one kept.

Run from the checkout: `python tests/benchmarks/pictures.py [--to FOLDER]`. Takes about a minute.
Every kind is what the bot sends for a question on the demo book. CPU time of the drawing process,
since the machine may be busy: "cold" loads matplotlib and its font (a process of its own for each
kind), "warm" draws it with both loaded, the quickest of several rounds, with their median beside
it (neighbours that share a core's caches stretch even CPU time), and "kept" takes it from the
cache. The bar is for warm.
"""

from __future__ import annotations

import argparse
import pickle
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from statistics import median

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT)]

from measured import Table  # noqa: E402

from bot.channels.console import open_console, system_clock  # noqa: E402
from bot.chat.pictures import draw, warm  # noqa: E402
from bot.demo_book import demo_store  # noqa: E402
from knowledge.advice import Picture  # noqa: E402

BAR_MS = 100
ROUNDS = 60

RALLIES = ("we serve first", *("us", "them", "them", "us", "them") * 8, "graph of our win chance")

KINDS: dict[str, tuple[str, ...]] = {
    "middle": ("who covers the middle vs okafor lindqvist",),
    "attack": ("where do i attack, chest high at the line",),
    "overhead": ("where do i hit the overhead",),
    "dink": ("where do i dink okafor",),
    "serve": ("from our right, where do i serve to okafor",),
    "return": ("we receive", "where do i return, with a picture"),
    "third shot": ("third shot",),
    "corner jump": ("should i ernie",),
    "round the post": ("around the post",),
    "leave it": ("let it go, chest high",),
    "at this score": ("4-3-1 we serve, who stands where",),
    "slide": ("where do i stand when he dinks wide",),
    "plan": ("game plan",),
    "curve": RALLIES,
    "report": ("what do we know about okafor and lindqvist",),
}

COLD = """
import pickle, sys, time
picture = pickle.load(sys.stdin.buffer)
from bot.chat.pictures import draw
began = time.process_time()
draw(picture)
print(1000 * (time.process_time() - began))
"""


def asked(messages: tuple[str, ...]) -> Picture | None:
    """The last picture that these messages bring, on a demo book of their own."""
    store = demo_store(now=system_clock())
    try:
        console = open_console(store, user_name="You")
        replies = [reply for message in messages for reply in console.say(message)]
    finally:
        store.close()
    return next((one.picture for one in reversed(replies) if one.picture is not None), None)


def pictures() -> Iterator[tuple[str, Picture]]:
    """One picture of every kind."""
    for kind, messages in KINDS.items():
        picture = asked(messages)
        if picture is None:
            raise SystemExit(f"{kind}: no picture for {messages[-1]!r}")
        yield kind, picture


def cold_ms(picture: Picture) -> float:
    """CPU milliseconds of the first picture of a process."""
    done = subprocess.run(
        [sys.executable, "-c", COLD],
        input=pickle.dumps(picture),
        capture_output=True,
        check=True,
        cwd=ROOT,
    )
    return float(done.stdout)


def warm_ms(picture: Picture, rounds: int = ROUNDS) -> list[float]:
    """CPU milliseconds of drawing it anew, in each of the rounds."""
    found = []
    for _ in range(rounds):
        draw.cache_clear()
        found.append(once_ms(picture))
    return found


def once_ms(picture: Picture) -> float:
    began = time.process_time()
    draw(picture)
    return 1000 * (time.process_time() - began)


BRIEF_ROUNDS = 12


def tables() -> list[Table]:
    """A row a kind, in fewer rounds."""
    warm()
    rows = []
    for kind, picture in pictures():
        rounds = warm_ms(picture, BRIEF_ROUNDS)
        png = draw(picture)
        costs = (cold_ms(picture), min(rounds), once_ms(picture), len(png) / 1000)
        rows.append((kind, *(f"{cost:.1f}" for cost in costs)))
    return [
        Table(
            title=f"(f) Pictures, milliseconds of CPU (bar: {BAR_MS} ms warm); cold loads the"
            " drawing library too",
            head=("kind", "cold", "warm", "kept", "kB"),
            rows=rows,
        )
    ]


def main() -> None:
    """Print the costs; with a folder, write the pictures too."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--to", type=Path, help="a folder to write the pictures to")
    folder = parser.parse_args().to
    warm()
    sys.stdout.write(f"{'CPU ms':16}{'cold':>8}{'warm':>8}{'median':>8}{'kept':>8}{'kB':>8}\n")
    slowest = 0.0
    for kind, picture in pictures():
        rounds, png = warm_ms(picture), draw(picture)
        slowest = max(slowest, min(rounds))
        costs = (cold_ms(picture), min(rounds), median(rounds), once_ms(picture), len(png) / 1000)
        sys.stdout.write(f"{kind:16}" + "".join(f"{cost:8.1f}" for cost in costs) + "\n")
        if folder is not None:
            folder.mkdir(parents=True, exist_ok=True)
            (folder / f"{kind.replace(' ', '_')}.png").write_bytes(png)
    verdict = "under" if slowest < BAR_MS else "NOT under"
    sys.stdout.write(f"warm, the slowest kind: {slowest:.1f} ms, {verdict} {BAR_MS} ms\n")


if __name__ == "__main__":
    main()
