"""All estimates of a pair with 2,000 observations and 5,000 logged rallies, in one reply.

Run from the checkout: `python tests/benchmarks/evidence.py [--profile]`. Takes some ten seconds.
The budget is design section 7: a warm text turn at most 1 ms of our CPU and 8 SQL statements.
The quickest turn counts: on a busy machine every other is slowed by somebody else.
"""

from __future__ import annotations

import argparse
import cProfile
import os
import pstats
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any
from unittest.mock import patch

sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from databases import watched
from scouted_pair import scout
from talk import Talk, demo_talk

from scouting_db.values import Micros

OBSERVATIONS = 2_000
RALLIES = 5_000
PAIR = ("Okafor", "Lindqvist")
WARM_TURNS = 60
COLD_TURNS = 8
QUESTIONS = (
    "where do i dink okafor",
    "what do we know about okafor and lindqvist",
    "give me a game plan against okafor and lindqvist",
    "what are our chances",
)


def talk_about_them() -> Talk:
    """The demo book with the pair's notes and rallies, and a match against them announced."""
    talk = demo_talk()
    scout(talk, PAIR, observations=OBSERVATIONS, rallies=RALLIES)
    talk.say("next: okafor and lindqvist")
    return talk


def quickest(turns: int, once: Callable[[], object]) -> float:
    """CPU seconds of the quickest of so many calls."""
    best = float("inf")
    for _ in range(turns):
        start = time.process_time()
        once()
        best = min(best, time.process_time() - start)
    return best


def statements(talk: Talk, text: str) -> tuple[int, int]:
    """Those of the turn itself, and of all from the inbox to the outbox with the harness's own."""
    own: list[int] = []
    real = Talk._turn

    def counting(self: Talk, connection: Any, row: Any, *, now: Micros) -> Any:
        before = len(seen)
        heard = real(self, connection, row, now=now)
        own.append(len(seen) - before)
        return heard

    with watched(talk.store) as seen, patch.object(Talk, "_turn", counting):
        talk.say(text)
    return own[0], len(seen)


def warm_of(talk: Talk, text: str) -> float:
    """Milliseconds of CPU of a warm turn."""
    talk.say(text)
    return 1000 * quickest(WARM_TURNS, lambda: talk.say(text))


def cold(talk: Talk, text: str) -> float:
    """A turn after the book has changed, so that everything is read and estimated anew."""

    def once() -> float:
        with talk.book() as book:
            book.set_about(name=book.about().name, zone=book.about().zone)
        return quickest(1, lambda: talk.say(text))

    return min(once() for _ in range(COLD_TURNS))


def main() -> None:
    """Print a line per question: warm and cold CPU, warm statements; the small book beside it."""
    os.environ["OMP_NUM_THREADS"] = "1"
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--profile", action="store_true", help="where a cold turn's time goes")
    options = parser.parse_args()
    small, large = demo_talk(), talk_about_them()
    small.say("next: okafor and lindqvist")
    books = {"demo book": small, "large book": large}
    print_out = sys.stdout.write
    for text in QUESTIONS:
        warm = {name: warm_of(talk, text) for name, talk in books.items()}
        for name, talk in books.items():
            own, all_of = statements(talk, text)
            print_out(
                f"{text[:38]:40}{name:11} warm {warm[name]:6.2f} ms, {own} statements of its own "
                f"of {all_of}; cold {1000 * cold(talk, text):7.2f} ms\n"
            )
        print_out(f"{'':40}large to demo, warm: {warm['large book'] / warm['demo book']:.2f}\n")
    if options.profile:
        profile = cProfile.Profile()
        profile.enable()
        cold(large, QUESTIONS[0])
        profile.disable()
        pstats.Stats(profile).sort_stats("tottime").print_stats(25)


if __name__ == "__main__":
    main()
