"""All estimates of a pair with 2,000 observations and 5,000 logged rallies, in one reply.

Run from the checkout: `python tests/benchmarks/evidence.py [--profile]`. Takes a minute or so.
The budget is design section 7: a warm text turn at most 1 ms of our CPU and 8 SQL statements.
What a question costs after a change stands beside what it costs when nothing changed, in one run.
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
from itertools import cycle
from pathlib import Path
from typing import Any
from unittest.mock import patch

sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from databases import watched
from scouted_pair import scout
from talk import Talk, demo_talk

from bot.chat import views_kept
from scouting_db.values import Micros

OBSERVATIONS = 2_000
RALLIES = 5_000
PAIR = ("Okafor", "Lindqvist")
WARM_TURNS = 60
CHANGED_TURNS = 30
COLD_TURNS = 8
QUESTIONS = (
    "where do i dink okafor",
    "what do we know about okafor and lindqvist",
    "give me a game plan against okafor and lindqvist",
    "what are our chances",
)
CHANGES = {
    "a rally": cycle(("our rally", "undo")),
    "a told rally": cycle(("our point, okafor missed the return", "undo")),
    "a note": cycle(("okafor pops up backhand dinks", "undo")),
}
"""What is said before the question: told, and taken back before the next."""


def talk_about_them(*, scouted: bool = True) -> Talk:
    """The demo book and a match against the pair; `scouted` with all their notes and rallies."""
    talk = demo_talk()
    if scouted:
        scout(talk, PAIR, observations=OBSERVATIONS, rallies=RALLIES)
    talk.say("next: okafor and lindqvist")
    talk.say("we serve")
    return talk


def quickest(turns: int, once: Callable[[], object], before: Callable[[], object]) -> float:
    """Milliseconds of CPU of the quickest of so many calls; what goes `before` is not counted."""
    best = float("inf")
    for _ in range(turns):
        before()
        start = time.process_time()
        once()
        best = min(best, time.process_time() - start)
    return 1000 * best


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


def warm(talk: Talk, text: str) -> float:
    talk.say(text)
    return quickest(WARM_TURNS, lambda: talk.say(text), lambda: None)


def changed(talk: Talk, text: str, change: str) -> float:
    """The question after each change of that kind."""
    said = CHANGES[change]
    return quickest(CHANGED_TURNS, lambda: talk.say(text), lambda: talk.say(next(said)))


def cold(talk: Talk, text: str) -> float:
    """A turn of a process that knows nothing yet: everything is read and estimated."""
    return quickest(COLD_TURNS, lambda: talk.say(text), views_kept._VIEWS.clear)


def report(books: dict[str, Talk], text: str) -> str:
    """A line per book: warm CPU and statements, and how many times that after a change."""
    lines = []
    for name, talk in books.items():
        usual = warm(talk, text)
        own, all_of = statements(talk, text)
        after = []
        for change in CHANGES:
            times = changed(talk, text, change) / usual
            talk.say(next(CHANGES[change]))
            read, _ = statements(talk, text)
            talk.say(next(CHANGES[change]))
            after.append(f"{change} {times:.2f}x ({read} own)")
        lines.append(
            f"{text[:38]:40}{name:11} warm {usual:6.2f} ms, {own} statements of its own of {all_of}"
            f"; cold {cold(talk, text):6.1f} ms\n{'':51} after {', '.join(after)}\n"
        )
    return "".join(lines)


def main() -> None:
    """Print the lines of every question; with --profile where the time after a rally goes."""
    os.environ["OMP_NUM_THREADS"] = "1"
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--profile", action="store_true")
    options = parser.parse_args()
    books = {"demo book": talk_about_them(scouted=False), "large book": talk_about_them()}
    for text in QUESTIONS:
        sys.stdout.write(report(books, text))
    if options.profile:
        profile = cProfile.Profile()
        for _ in range(CHANGED_TURNS):
            books["large book"].say(next(CHANGES["a told rally"]))
            profile.enable()
            books["large book"].say(QUESTIONS[0])
            profile.disable()
        pstats.Stats(profile).sort_stats("tottime").print_stats(25)


if __name__ == "__main__":
    main()
