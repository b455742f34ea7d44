"""What reach costs: a seam map, a seam, and a text answer about the middle, warm and cold.

Run from the checkout: `python tests/benchmarks/reach.py`. Takes about ten seconds. CPU time of this
process, the quickest of several rounds: on a busy machine even that is stretched, since cores share
their caches. The answer's cost is also given as a multiple of ranking the same decision without
reach, which is taken in the same run.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from middle_table import paths_of, places
from scouted import player

from knowledge.reach import Placed, cover, mover_of, seam, slack_s
from knowledge.reach.covering import _kept_seam
from knowledge.situation import Asked, Situation
from knowledge.tactics.cover_middle import advise
from knowledge.tactics.middle_answer import answer_middle
from knowledge.tactics.middle_balls import shot_of
from knowledge.tactics.middle_times import in_time, stand
from knowledge.vocabulary import BallKind, Hand, Side, Topic, Trait, Value

ROUNDS = 15
CALLS = 20
MIRA = player(1, "Mira", hand=Hand.RIGHT, side=Side.LEFT, noted=[(Trait.REACH, Value.STRENGTH, 2)])
TOM = player(2, "Tom", hand=Hand.RIGHT, side=Side.RIGHT)


def quickest_ms(call: Callable[[], object]) -> float:
    """CPU milliseconds of one call, in the best of the rounds."""
    rounds = []
    for _ in range(ROUNDS):
        start = time.process_time()
        for _ in range(CALLS):
            call()
        rounds.append(1000 * (time.process_time() - start) / CALLS)
    return min(rounds)


def pair() -> tuple[Placed, Placed]:
    left, right = (
        Placed(mover=mover_of(one.profile), at=stand(side))
        for one, side in ((MIRA, Side.LEFT), (TOM, Side.RIGHT))
    )
    return left, right


def asking(**asked: object) -> Situation:
    return Situation(
        topic=Topic.COVER_MIDDLE,
        ours=(MIRA, TOM),
        asked=Asked(**asked),  # type: ignore[arg-type]
    )


def forget_seams_and(call: Callable[[], object]) -> Callable[[], object]:
    def cold() -> object:
        _kept_seam.cache_clear()
        return call()

    return cold


def main() -> None:
    left, right = pair()
    shot = shot_of(BallKind.DRIVE, None)
    path = paths_of(BallKind.DRIVE, Side.LEFT)[0][0]
    wide = asking(pulled_wide=TOM.player)
    usual = asking()
    shape = cover(left, right, shot).slack_s.shape
    lines = [
        (f"map of {np.prod(shape)} times to spare", quickest_ms(lambda: cover(left, right, shot))),
        ("a player and a ball's path", quickest_ms(lambda: slack_s(path, left))),
        ("a seam, new", quickest_ms(forget_seams_and(lambda: seam(left, right, shot)))),
        ("a seam, kept", quickest_ms(lambda: seam(left, right, shot))),
        ("the table, all places", quickest_ms(lambda: [in_time(each) for each in places()])),
        ("the middle: ranking alone", quickest_ms(lambda: answer_middle(usual))),
        ("the middle: text answer, warm", quickest_ms(lambda: advise(usual))),
        ("the same, one pulled wide", quickest_ms(lambda: advise(wide))),
        ("text answer for a new pair", quickest_ms(forget_seams_and(lambda: advise(usual)))),
    ]
    for name, cost_ms in lines:
        sys.stdout.write(f"{name:34} {cost_ms:8.3f} ms\n")


if __name__ == "__main__":
    main()
