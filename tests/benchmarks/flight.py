"""The window of one shot beside scipy's solve_ivp on each of its launches, bounce included.

Run from the checkout: `python tests/benchmarks/flight.py [--quick]`. Takes about a minute.
Both contenders go to the second bounce of every launch, with spin and wind, and are held to the
same landing error: 1 cm against a solution at 1e-10, at both bounces of every launch checked.
solve_ivp gets the loosest tolerance of a ladder that stays within it, and a right-hand side of
plain floats, which is quicker there than arrays of three. The quickest of several rounds of ours
counts; solve_ivp is timed once over all launches. Also printed: a turn's look-ups.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import Any

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from flight_oracle import solved
from one_thread import on_one_thread

from knowledge.flight import OUTDOOR, Launch, Vector, bounced, fly, landing, moving
from knowledge.flight.attackable import attackable
from knowledge.flight.integrate import STEP_S
from knowledge.flight.leave import leave
from knowledge.flight.shots import Shot
from knowledge.flight.usual_aim import usual_aim

WIND: Vector = (1.0, -3.0, 0.0)
SPEEDS = np.linspace(9.0, 17.0, 50)
ELEVATIONS = np.linspace(8.0, 35.0, 42)
WORST_M = 0.01
AT_LEAST = 50.0
LADDER = ((1e-2, 1e-2), (1e-3, 1e-3), (1e-4, 1e-4), (1e-5, 1e-5), (1e-6, 1e-6))
COARSER_S = (0.1, 0.2)
TRUTH = 1e-10


def launches() -> list[Launch]:
    """A third shot's window: fifty paces by forty-two angles."""
    return [
        Launch(
            x_m=2.0,
            y_m=-6.5,
            z_m=0.6,
            speed_mps=float(speed),
            elevation_deg=float(elevation),
            azimuth_deg=-12.0,
            topspin_rpm=600.0,
        )
        for speed in SPEEDS
        for elevation in ELEVATIONS
    ]


def ours(step_s: float) -> tuple[Any, Any]:
    """Both bounces of the whole window, (3, n) each."""
    balls = moving(
        x_m=2.0,
        y_m=-6.5,
        z_m=0.6,
        speed_mps=SPEEDS[:, np.newaxis],
        elevation_deg=ELEVATIONS[np.newaxis],
        azimuth_deg=-12.0,
        topspin_rpm=600.0,
    )
    track = fly(balls, wind_mps=WIND, step_s=step_s)
    first = landing(track)
    again = fly(bounced(first, track.spins, OUTDOOR), wind_mps=WIND, step_s=step_s)
    return first.places, landing(again).places


def theirs(chosen: Sequence[Launch], rtol: float, atol: float) -> tuple[Any, Any]:
    """The same, one launch after the other."""
    found = [solved(launch, OUTDOOR, WIND, rtol=rtol, atol=atol) for launch in chosen]
    return np.array([one.first for one in found]).T, np.array([one.second for one in found]).T


def worst_m(found: tuple[Any, Any], truth: tuple[Any, Any]) -> float:
    """The largest distance along the ground between two landings."""
    return max(
        float(np.max(np.hypot(*(one - other)[:2]))) for one, other in zip(found, truth, strict=True)
    )


def seconds(contender: Callable[[], Any], rounds: int) -> float:
    """The quickest of several rounds."""
    best = float("inf")
    for _ in range(rounds):
        began = time.perf_counter()
        contender()
        best = min(best, time.perf_counter() - began)
    return best


def compare(every: int, rounds: int) -> float:
    """Print both within WORST_M; how many times quicker ours is at the step it ships with."""
    whole = launches()
    checked = whole[::every]
    truth = theirs(checked, TRUTH, TRUTH)

    def of_ours(step_s: float) -> float:
        first, second = ours(step_s)
        return worst_m((first[:, ::every], second[:, ::every]), truth)

    for rtol, atol in LADDER:
        off = worst_m(theirs(checked, rtol, atol), truth)
        if off <= WORST_M:
            break
    else:
        raise SystemExit(f"solve_ivp misses {WORST_M} m at every tolerance")
    their_s = seconds(lambda: theirs(whole, rtol, atol), 1)
    sys.stdout.write(
        f"{len(whole)} launches, {len(checked)} of them checked, to the second bounce\n"
    )
    sys.stdout.write(f"solve_ivp, rtol {rtol:g}: worst {1000 * off:.3f} mm, {their_s:.2f} s\n")
    ratios = []
    for step_s in (STEP_S, *COARSER_S):
        off = of_ours(step_s)
        if off > WORST_M:
            raise SystemExit(f"ours misses {WORST_M} m at a step of {step_s} s: {off:.4f} m")
        our_s = seconds(partial(ours, step_s), rounds)
        ratios.append(their_s / our_s)
        told = f"worst {1000 * off:.3f} mm, {1000 * our_s:.1f} ms: {ratios[-1]:.0f} times"
        sys.stdout.write(f"ours, step {step_s:g} s: {told}\n")
    return ratios[0]


def look_ups() -> None:
    """What a turn asks of the tables, warm."""
    asked: dict[str, Callable[[], Any]] = {
        "aim": lambda: usual_aim(Shot.DROP, height_m=0.55, from_net_m=6.3, wind_mps=1.0),
        "attackable": lambda: attackable(0.8, 2.4, topspin_rpm=900.0, wind_mps=1.0),
        "leave, three lifts": lambda: leave(0.8, 2.4, speed_mps=17.0, topspin_rpm=900.0),
    }
    for name, question in asked.items():
        question()
        sys.stdout.write(f"look-up, {name}: {1e6 * seconds(question, 200):.0f} us\n")


def main() -> None:
    """Compare and fail below AT_LEAST."""
    on_one_thread()
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="check every hundredth launch only")
    quick = parser.parse_args().quick
    ratio = compare(every=101 if quick else 7, rounds=5 if quick else 15)
    look_ups()
    if ratio < AT_LEAST:
        raise SystemExit(f"only {ratio:.0f} times, not {AT_LEAST:.0f}")


if __name__ == "__main__":
    main()
