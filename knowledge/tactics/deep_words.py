"""What the words tell of a deep pair, and how a ball against them is said."""

from __future__ import annotations

from functools import cache
from typing import Final, TypeGuard

from knowledge.general_rule import load_table
from knowledge.planning.names import first_that_fits
from knowledge.said_phrases import Phrases
from knowledge.situation import OnCourt

FENCE, BASELINE, MIDCOURT = "fence", "baseline", "midcourt"
MOVING_BACK, WRONG_FOOTED = "moving_back", "wrong_footed"
SLOW, QUICK = "slow", "quick"

NUMBERS: Final = (
    *("two", "three", "four", "five", "six", "eight", "ten", "fifteen", "twenty"),
    *(str(number) for number in range(2, 21)),
)
NEAR: Final = ("two", "three", "four", "five", "six", "eight", "ten", *map(str, range(2, 11)))
FAR: Final = tuple(number for number in NUMBERS if number not in NEAR)
"""So many feet back are behind the kitchen line: to mid court, or to the baseline and beyond."""


@cache
def _phrases() -> Phrases:
    table = load_table("knowledge.tactics", "deep_words.toml")
    entries = {id: [str(one) for one in said] for id, said in table.items() if _is_list(said)}
    return Phrases(entries, sets={"number": NUMBERS, "near": NEAR, "far": FAR})


def _is_list(said: object) -> TypeGuard[list[object]]:
    return isinstance(said, list)


def told(words: str) -> frozenset[str]:
    """Which of the above a question tells of."""
    return frozenset(hit.id for hit in _phrases().find(words))


KEEP_BACK: Final = "Keep them back: deep at the slower one's feet."
PUT_AWAY: Final = "Put it away: short angle, hard."
DROP: Final = "Drop it soft, short in front of them."
DROP_SLOW: Final = "Drop it soft in front of the slow one."
AT_THE_LINE: Final = "Dink it: they are at the line already."
COMING_IN: Final = "Hit at their feet while they come in."


def deep_call(target: OnCourt | None) -> str:
    """Deep at the feet; named where notes or the question single somebody out."""
    if target is None or not target.name:
        return KEEP_BACK
    return first_that_fits(
        (f"Keep them back: deep at {target.name}'s feet.", "Keep them back: deep at the feet.")
    )


def drop_call(target: OnCourt | None, *, slow: bool) -> str:
    """The drop; in front of "the slow one" where the question speaks of one."""
    if target is None or not target.name:
        return DROP_SLOW if slow else DROP
    return first_that_fits((f"Drop it soft in front of {target.name}.", DROP))
