"""The solver beside the same chain as one dense linear system, and a warm reply in a profile.

Run from the checkout: `python tests/benchmarks/chances.py [--quick]`. Takes about ten seconds.
One contender after the other in one run, each call at rates of its own so that nothing is kept
from the last; the quickest call counts. The linear algebra runs on one thread, as ours does. Read
the ratios, not the numbers: on a busy machine ours suffers more than a library's inner loops.
"""

from __future__ import annotations

import argparse
import cProfile
import pstats
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from chance_oracles import expected_payoff_dense, walk
from one_thread import on_one_thread

from knowledge.chances import (
    Beta,
    RateBelief,
    game_table,
    outlook,
    prior_rates,
)
from knowledge.game import GameFormat, GameState, MatchState, start

TARGET = 11
GRID = 100
QUESTION = "what are our chances at 6-4-1"
WARM_REPLIES = 50
CALLS_A_TURN = 5
SOLVER = "knowledge/chances/"
FORMAT = GameFormat(target=TARGET)
MIDDLE = GameState(format=FORMAT, ours=6, theirs=4, we_serve=True, server=1, we_started=True)

Floats = NDArray[np.float64]
Scores = dict[tuple[int, int], int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A contender's quickest round; `bar` names the one that its ratio is taken to."""

    name: str
    seconds: float
    bar: str | None = None


def scores() -> Scores:
    """The scores of a game to 11 with the game on, the tie counted once: first index of each."""
    below = [(ours, theirs) for ours in range(TARGET) for theirs in range(TARGET)]
    ahead = [(TARGET, TARGET - 1), (TARGET - 1, TARGET)]
    return {score: 4 * n for n, score in enumerate(below + ahead)}


def _target_of(index: Scores, ours: int, theirs: int) -> int | None:
    """The first index of a score, the tie folded; None where the game is over."""
    if ours == theirs == TARGET:
        ours = theirs = TARGET - 1
    return index.get((ours, theirs))


def assembled(index: Scores, serving: float, receiving: float) -> tuple[Floats, Floats]:
    """I − Q and the chance to win at once, written down by one loop over scores.

    Rows of a score: we serve as 1 and 2, they serve as 1 and 2. A loop without calls for every
    state, so that the bar is not a slow assembly.
    """
    size = 4 * len(index)
    matrix, right = np.eye(size), np.zeros(size)
    lost, conceded = 1 - serving, 1 - receiving
    for (ours, theirs), row in index.items():
        matrix[row, row + 1] = -lost
        matrix[row + 1, row + 2] = -lost
        matrix[row + 2, row + 3] = -receiving
        matrix[row + 3, row] = -receiving
        scored = _target_of(index, ours + 1, theirs)
        if scored is None:
            right[row] = right[row + 1] = serving
        else:
            matrix[row, scored] -= serving
            matrix[row + 1, scored + 1] -= serving
        against = _target_of(index, ours, theirs + 1)
        if against is not None:
            matrix[row + 2, against + 2] -= conceded
            matrix[row + 3, against + 3] -= conceded
    return matrix, right


def agree(index: Scores) -> float:
    """The worst difference between the two contenders' win chances, over all scores."""
    values = np.linalg.solve(*assembled(index, 0.42, 0.63))
    table = game_table(FORMAT, 0.42, 0.63)
    gaps: list[float] = []
    for (ours, theirs), row in index.items():
        for n, (we_serve, server) in enumerate(((True, 1), (True, 2), (False, 1), (False, 2))):
            state = GameState(
                format=FORMAT, ours=ours, theirs=theirs, we_serve=we_serve, server=server
            )
            gaps.append(abs(float(table.win_chance(state)) - values[row + n]))
    return max(gaps)


def quickest(contenders: dict[str, Callable[[float, float], Any]], rounds: int) -> dict[str, float]:
    """Seconds of each contender's quickest call; they take turns, rates differ by call."""
    best = dict.fromkeys(contenders, float("inf"))
    for turn in range(rounds):
        for name, contender in contenders.items():
            for n in range(CALLS_A_TURN):
                part = (turn + n / CALLS_A_TURN) / rounds
                serving, receiving = 0.40 + 0.08 * part, 0.60 - 0.08 * part
                began = time.perf_counter()
                contender(serving, receiving)
                best[name] = min(best[name], time.perf_counter() - began)
    return best


def lines(rounds: int) -> Iterator[Line]:
    """The table's lines: one game, then many games at once, then the call a reply makes."""
    index = scores()
    systems: dict[tuple[float, float], tuple[Floats, Floats]] = {}

    def solve_alone(serving: float, receiving: float) -> None:
        np.linalg.solve(*systems.pop((serving, receiving)))

    def assemble(serving: float, receiving: float) -> None:
        systems[serving, receiving] = assembled(index, serving, receiving)

    def one_game(serving: float, receiving: float) -> None:
        game_table(FORMAT, serving, receiving)

    def walked(serving: float, receiving: float) -> None:
        openings = [start(FORMAT, we_serve=True), start(FORMAT, we_serve=False)]
        expected_payoff_dense(walk(openings), serving, receiving)

    found = quickest({"ours": one_game}, 10 * rounds)
    found |= quickest({"assemble": assemble, "solve": solve_alone}, rounds)
    found |= quickest({"walked": walked}, max(2, rounds // 10))
    whole = found["assemble"] + found["solve"]
    yield Line(name="one game, ours", seconds=found["ours"])
    yield Line(name="one dense system: assembly", seconds=found["assemble"], bar="one game, ours")
    yield Line(name="one dense system: solving", seconds=found["solve"], bar="one game, ours")
    yield Line(name="one dense system: both", seconds=whole, bar="one game, ours")
    name = "the same, states walked by the rules"
    yield Line(name=name, seconds=found["walked"], bar="one game, ours")
    yield from _many(rounds, found["solve"])


def _many(rounds: int, dense: float) -> Iterator[Line]:
    side = np.linspace(0.3, 0.7, GRID)

    def grid(serving: float, receiving: float) -> None:
        game_table(FORMAT, *np.meshgrid(side + serving - 0.4, side + receiving - 0.6))

    def learned(serving: float, receiving: float) -> None:
        match = MatchState(game=start(FORMAT, we_serve=True))
        outlook(match, _belief(serving, receiving))

    def warm(_: float, __: float) -> None:
        outlook(MatchState(game=MIDDLE), prior_rates())

    found = quickest({"grid": grid, "learned": learned, "warm": warm}, max(3, rounds // 10))
    name = f"{GRID} x {GRID} games, ours"
    yield Line(name=name, seconds=found["grid"])
    yield Line(name="as many dense systems, solving", seconds=dense * GRID**2, bar=name)
    yield Line(name="outlook, rates it has not seen", seconds=found["learned"])
    yield Line(name="outlook, warm", seconds=found["warm"])


def _belief(serving: float, receiving: float) -> RateBelief:
    """Beliefs of forty rallies each."""
    return RateBelief(
        serving=Beta(wins=40 * serving, losses=40 - 40 * serving),
        receiving=Beta(wins=40 * receiving, losses=40 - 40 * receiving),
    )


def table(rows: Sequence[Line]) -> Iterator[str]:
    """Lines to print; a ratio says how many times longer than the bar."""
    seconds = {row.name: row.seconds for row in rows}
    yield f"{'':38}{'ms':>12}{'times ours':>12}"
    for row in rows:
        ratio = "" if row.bar is None else f"{row.seconds / seconds[row.bar]:.1f}"
        yield f"{row.name:38}{1000 * row.seconds:>12.3f}{ratio:>12}"


def profile_of_a_warm_reply() -> Iterator[str]:
    """Where a warm win-chance reply spends its time: whole turns through inbox and outbox."""
    from talk import demo_talk

    talk = demo_talk()
    reply = talk.say(QUESTION)
    talk.say(QUESTION)
    profile = cProfile.Profile()
    profile.enable()
    for _ in range(WARM_REPLIES):
        talk.say(QUESTION)
    profile.disable()
    stats: dict[Any, Any] = pstats.Stats(profile).stats  # type: ignore[attr-defined]
    own = {place: timing[2] for place, timing in stats.items()}
    whole = sum(own.values())
    solver = {place: spent for place, spent in own.items() if SOLVER in place[0]}
    calls = {place: timing[1] / WARM_REPLIES for place, timing in stats.items()}
    yield f'"{QUESTION}" is answered: {reply.splitlines()[0]}'
    yield f"a turn takes {1000 * whole / WARM_REPLIES:.2f} ms under the profiler"
    yield f"of it inside {SOLVER}: {100 * sum(solver.values()) / whole:.2f}%"
    for place, spent in sorted(solver.items(), key=lambda item: -item[1])[:8]:
        where = f"{place[0].rpartition('/')[2]}:{place[2]}"
        yield f"  {100 * spent / whole:6.2f}%  {where:36}{calls[place]:>8.1f} calls a turn"


def main() -> None:
    """Compare, then profile."""
    on_one_thread()
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="a fifth of the rounds")
    rounds = 10 if parser.parse_args().quick else 50
    print_out = sys.stdout.write
    print_out(f"worst difference in a win chance: {agree(scores()):.1e}\n")
    print_out("\n".join(table(list(lines(rounds)))) + "\n\n")
    print_out("\n".join(profile_of_a_warm_reply()) + "\n")


if __name__ == "__main__":
    main()
