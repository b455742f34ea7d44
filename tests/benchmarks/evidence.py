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

sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from databases import watched
from scouted_pair import scout
from talk import Talk, demo_talk

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


def statements(talk: Talk, text: str) -> int:
    with watched(talk.store) as seen:
        talk.say(text)
    return len(seen)


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
    print_out = sys.stdout.write
    for text in QUESTIONS:
        for name, talk in (("demo book", small), ("large book", large)):
            talk.say(text)
            warm = quickest(WARM_TURNS, lambda talk=talk, text=text: talk.say(text))  # type: ignore[misc]
            print_out(
                f"{text[:38]:40}{name:11} warm {1000 * warm:6.2f} ms, "
                f"{statements(talk, text)} statements; cold {1000 * cold(talk, text):7.2f} ms\n"
            )
    if options.profile:
        profile = cProfile.Profile()
        profile.enable()
        cold(large, QUESTIONS[0])
        profile.disable()
        pstats.Stats(profile).sort_stats("tottime").print_stats(25)


if __name__ == "__main__":
    main()
