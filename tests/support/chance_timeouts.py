"""Time-outs as a decision problem, solved by iterating over rallies on the walked chain.

A time-out lifts the rally chances of the next few rallies; another may be taken once they are
played. Plain value iteration (Bellman), until nothing moves: slow, and nothing to get wrong.
"""

from __future__ import annotations

import numpy as np
from chance_oracles import Chain, Floats, expected_payoff, with_ends

ROUNDS = 4000


def lifted(chain: Chain, chance: Floats, after_it: Floats, rallies: int) -> Floats:
    """Values with `rallies` rallies played at `chance`, then `after_it`; ends included."""
    values = after_it
    for _ in range(rallies):
        values = _one_rally(chain, chance, values)
    return values


def _one_rally(chain: Chain, chance: Floats, values: Floats) -> Floats:
    ends = values[len(chain.playing) :]
    moved = chance * values[chain.on_win] + (1 - chance) * values[chain.on_loss]
    return np.append(moved, ends)


def decided(
    chain: Chain, serving: float, receiving: float, *, lift: float, rallies: int, left: int
) -> tuple[Floats, Floats, Floats]:
    """Values of using one of `left` now, of keeping it for this rally, and of having none."""
    chance = chain.win_rally(serving, receiving)
    raised = np.clip(chance + lift, 0, 1)
    none = with_ends(chain, expected_payoff(chain, serving, receiving))
    best, now, kept = none, none, none
    for _ in range(left):
        now = lifted(chain, raised, best, rallies)
        best = now
        for _ in range(ROUNDS):
            kept = _one_rally(chain, chance, best)
            better = np.maximum(now, kept)
            if np.abs(better - best).max() < 1e-15:
                break
            best = better
        else:
            raise AssertionError(f"not settled after {ROUNDS} rounds")
    return now, kept, none


def best_of(
    chain: Chain, serving: float, receiving: float, *, lift: float, rallies: int, left: int
) -> Floats:
    """Values of having `left` and using each at its best moment."""
    now, kept, _ = decided(chain, serving, receiving, lift=lift, rallies=rallies, left=left)
    return np.maximum(now, kept)
