"""How often chance alone gives a bad stretch: so many rallies lost of so many, somewhere."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence


def stretch_chance(lose: Sequence[float], *, lost: int, of: int) -> float:
    """The chance that some `of` rallies in a row hold at least `lost` lost ones.

    `lose` is each rally's own chance to be lost; rallies count as independent, each at the serve
    it was played on. Exact, by a sweep over what the last `of` rallies were (a scan statistic):

    1. A state is the outcomes of the last `of` - 1 rallies, lost or not, as bits, without lost ones
       that no stretch can hold any more: of a run no more than how long it is so far.
    2. Each rally moves every state's chance to its two successors.
    3. A window with `lost` lost ones is a stretch: it leaves the sweep and is summed.

    ValueError for a stretch that cannot be, or a chance outside 0 to 1.
    """
    if not 0 < lost <= of:
        raise ValueError(f"{lost} of {of} rallies is no stretch")
    if any(not 0 <= chance <= 1 for chance in lose):
        raise ValueError(f"chances lie between 0 and 1: {lose}")
    kept = (1 << (of - 1)) - 1
    states: dict[int, float] = {0: 1.0}
    found = 0.0
    for chance in lose:
        moved: dict[int, float] = defaultdict(float)
        for last, share in states.items():
            for bit, part in ((1, chance), (0, 1 - chance)):
                window = last << 1 | bit
                if window.bit_count() >= lost:
                    found += share * part
                else:
                    moved[_telling(window, of - lost) & kept] += share * part
        states = moved
    return found


def _telling(window: int, won_at_most: int) -> int:
    """The window without what lies before more won rallies than a stretch may hold."""
    won = 0
    for at in range(window.bit_length()):
        won += not window >> at & 1
        if won > won_at_most:
            return window & ((1 << at) - 1)
    return window
