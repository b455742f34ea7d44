"""Win chances, flight windows, mixes and evidence beside general-purpose libraries, in one run.

Run from the checkout: `python tests/benchmarks/references.py`. Takes about a minute. Both sides
answer the same question to the same exactness, which is checked while they are timed: a chain of
rallies as a linear system (numpy), a shot's window by an ODE solver (scipy), a mix as a linear
programme (scipy) and by support enumeration (nashpy), the quantiles of a rate (scipy). CPU time,
the quickest round. chances.py and flight.py print more of theirs.
"""

from __future__ import annotations

import os

os.environ["OMP_NUM_THREADS"] = os.environ["OPENBLAS_NUM_THREADS"] = "1"

import random
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))
sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

import chances
import flight
import nashpy
import numpy as np
from measured import Table, quickest_s
from scipy.optimize import linprog
from scipy.stats import beta

from knowledge.chances import game_table
from knowledge.effects import OptionId
from knowledge.evidence import beta_quantile
from knowledge.flight.integrate import STEP_S
from knowledge.mixing import Guessable, mix_of, payoffs

Row = tuple[str, str, str, str, str]

AGREE = 1e-9
LAUNCHES_TIMED = 60
"""Of 2,100 in a window; the solver's time is linear in them."""


def row(name: str, ours_s: float, reference: str, theirs_s: float) -> Row:
    """Both in microseconds, and how many times longer the reference takes."""
    ratio = theirs_s / ours_s
    return name, f"{1e6 * ours_s:,.0f}", reference, f"{1e6 * theirs_s:,.0f}", f"{ratio:,.0f}"


def a_game() -> Row:
    """Every score of a game to 11: ours score by score, theirs one dense system."""
    index = chances.scores()
    assert chances.agree(index) < AGREE
    rates = iter(np.linspace(0.40, 0.48, 100_000))

    def ours() -> None:
        serving = float(next(rates))
        game_table(chances.FORMAT, serving, 1.05 - serving)

    def theirs() -> None:
        serving = float(next(rates))
        np.linalg.solve(*chances.assembled(index, serving, 1.05 - serving))

    return row(
        "win chances of a game",
        quickest_s(ours, rounds=15, calls=10),
        "numpy, dense system",
        quickest_s(theirs, rounds=8),
    )


def a_window() -> Row:
    """Both bounces of 2,100 launches, held to 1 cm."""
    whole = flight.launches()
    some = whole[:: len(whole) // LAUNCHES_TIMED]
    truth = flight.theirs(some, flight.TRUTH, flight.TRUTH)
    for rtol, atol in flight.LADDER:
        if flight.worst_m(flight.theirs(some, rtol, atol), truth) <= flight.WORST_M:
            break
    first, second = flight.ours(STEP_S)
    step = len(whole) // LAUNCHES_TIMED
    assert flight.worst_m((first[:, ::step], second[:, ::step]), truth) <= flight.WORST_M
    theirs_s = quickest_s(lambda: flight.theirs(some, rtol, atol), rounds=2)
    return row(
        f"window of {len(whole):,} launches",
        quickest_s(lambda: flight.ours(STEP_S), rounds=5),
        "scipy, solve_ivp",
        theirs_s * len(whole) / len(some),
    )


def games(count: int, options: int) -> list[tuple[Guessable, ...]]:
    rng = random.Random(3)
    return [
        tuple(
            Guessable(
                option=OptionId(f"o{at}"),
                chance=rng.uniform(0.4, 0.6),  # type: ignore[arg-type]
                cost=rng.uniform(0.02, 0.12),
                recent=rng.randrange(5),
            )
            for at in range(options)
        )
        for _ in range(count)
    ]


def by_programme(matrix: Any) -> float:
    """The value of the game: max v with shares that add up to 1 and earn v in every column."""
    n = len(matrix)
    found = linprog(
        c=[*[0] * n, -1],
        A_ub=np.hstack([-matrix.T, np.ones((n, 1))]),
        b_ub=np.zeros(n),
        A_eq=[[*[1] * n, 0]],
        b_eq=[1],
        bounds=[*[(0, None)] * n, (None, None)],
    )
    return -float(found.fun)


def a_mix() -> list[Row]:
    """Games of three options, and who solves them."""
    some = games(20, 3)
    matrices = [np.array(payoffs(one)) for one in some]
    for one, matrix in zip(some, matrices, strict=True):
        assert abs(mix_of(one).value - by_programme(matrix)) < AGREE
    ours_s = _each(lambda one: mix_of(one), some)
    enumerated_s = _each(lambda one: list(nashpy.Game(one).support_enumeration()), matrices)
    return [
        row("a mix of three", ours_s, "scipy, linprog", _each(by_programme, matrices)),
        row("a mix of three", ours_s, "nashpy, support enumeration", enumerated_s),
    ]


def _each(solve: Callable[[Any], object], some: list[Any]) -> float:
    return quickest_s(lambda: [solve(one) for one in some], rounds=8) / len(some)


def a_rate() -> Row:
    """The ends of an 80% interval of a rate after some forty rallies."""
    counts = [(2.0 + made, 3.0 + 40 - made) for made in range(40)]
    for a, b in counts:
        assert abs(beta_quantile(0.1, a, b) - beta.ppf(0.1, a, b)) < AGREE
    ours = _each(lambda of: (beta_quantile(0.1, *of), beta_quantile(0.9, *of)), counts)
    theirs = _each(lambda of: (beta.ppf(0.1, *of), beta.ppf(0.9, *of)), counts)
    return row("a rate's interval", ours, "scipy, beta", theirs)


def tables() -> list[Table]:
    return [
        Table(
            title="(d) The arithmetic beside general-purpose libraries, microseconds of CPU",
            head=("what", "ours", "reference", "theirs", "times ours"),
            rows=[a_game(), a_window(), *a_mix(), a_rate()],
        )
    ]


if __name__ == "__main__":
    for table in tables():
        sys.stdout.write(table.markdown())
