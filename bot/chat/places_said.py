"""How far from the net we meet a ball: "two feet behind the kitchen line", "from the baseline"."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from typing import Final

from bot.chat.ball_forms import form, names_in
from bot.chat.ball_line import BallLine
from bot.chat.measures_said import length, metres
from knowledge.ball_places import FROM_NET_M, PlaceName
from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M
from knowledge.dataclass import dataclass
from knowledge.regex import regex

RUN_OFF_M: Final = 6.0
"""No ball is played farther behind the baseline: the run-off of a large court, our guess."""

FAULT: Final = "That spot is off our side of the court: left out."
THEIR_FAULT: Final = "Nobody stands that far off the court: left out."
TOO_WIDE: Final = "Nobody meets a ball that wide: left out."

_I_AM = regex(r"\b(?:im|i am)(?: (?:now|still|just|up|back|caught|stuck|right))*$")
"""Where I say that I am, whatever was hit before: "drop was short now im caught halfway"."""


_COMES_AT_US = regex(
    r"\b(?:drives?|driving|bangs?|banging|rips?|ripped|rockets?|bullets?|hits?|hitting|speed ups?"
    r"|ball)"
    r"(?: \w+){0,3} (?:at|into|to) (?:my|me|us|our)\b"
)
"""What comes at us comes from where they are: "drive at my waist from the baseline"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundPlace:
    from_net_m: float | None = None
    faults: tuple[str, ...] = ()


def find_place(line: BallLine) -> FoundPlace:
    """Where we are or the ball is; where they are, or where it is aimed at, is no such place."""
    measured = _measured(line)
    if measured is None:
        named = _named(line)
        return FoundPlace(from_net_m=None if named is None else FROM_NET_M[named])
    if not _is_on_court(measured):
        return FoundPlace(faults=(FAULT,))
    return FoundPlace(from_net_m=measured)


def too_wide(line: BallLine) -> tuple[str, ...]:
    """The fault of a ball that is met farther out than anybody runs; takes its words."""
    found = _wide().search(line.text)
    if found is None or metres(found) <= RUN_OFF_M:
        return ()
    line.cover(found)
    return (TOO_WIDE,)


@cache
def _wide() -> re.Pattern[str]:
    side = (
        r"(?:past|beyond|outside|wide of|off|wide)(?: (?:the |my |our )?(?:side ?line|court|post))?"
    )
    return re.compile(rf"(?<!\w){length(steps=True)} {side}(?!\w)")


def _is_on_court(from_net_m: float) -> bool:
    return 0 <= from_net_m <= HALF_LENGTH_M + RUN_OFF_M


def off_court(line: BallLine) -> tuple[str, ...]:
    """The fault of a place where nobody stands, theirs or ours; that they are back still holds."""
    for place, from_net_m in _measured_places():
        for found in place.finditer(line.text):
            if _is_on_court(from_net_m(found)):
                continue
            if line.is_theirs(found):
                return (THEIR_FAULT,)
            if not _is_elsewhere(line, found):
                return (FAULT,)
    return ()


def _measured(line: BallLine) -> float | None:
    for place, from_net_m in _measured_places():
        found = _may_be_aim(line, place)
        if found is not None:
            line.cover(found)
            return from_net_m(found)
    return None


def _measured_places() -> tuple[tuple[re.Pattern[str], Callable[[re.Match[str]], float]], ...]:
    """How a place is measured in words, and the distance from the net that each gives."""
    return (_by_mark(), _by_mark_m), (_back(), _back_m)


def _back_m(found: re.Match[str]) -> float:
    return KITCHEN_DEPTH_M + metres(found)


def _by_mark_m(found: re.Match[str]) -> float:
    size = metres(found)
    outward = -size if found["inside"] else size
    if found["net"]:
        return size
    if found["baseline"]:
        is_from = found["behind"] is not None and found["behind"].endswith("from")
        return HALF_LENGTH_M + (-size if is_from else outward)
    return KITCHEN_DEPTH_M + outward


def _may_be_aim(line: BallLine, form_: re.Pattern[str]) -> re.Match[str] | None:
    for found in form_.finditer(line.text):
        if not _is_elsewhere(line, found):
            return found
    return None


@cache
def _by_mark() -> re.Pattern[str]:
    sides = "|".join(f"(?P<{one}>{_plain('place_side', one)})" for one in ("behind", "inside"))
    marks = "|".join(
        f"(?P<{one}>{_plain('place_mark', one)})" for one in ("baseline", "line", "net")
    )
    return re.compile(rf"(?<!\w){length(steps=True)} (?:{sides}) (?:{marks})(?!\w)")


@cache
def _back() -> re.Pattern[str]:
    return re.compile(rf"(?<!\w){length(steps=True)} (?:back|deep)(?! (?:to|into|in)\b)(?!\w)")


def _plain(table: str, name: str) -> str:
    return form(table, name).pattern


def _named(line: BallLine) -> PlaceName | None:
    for name in names_in("place"):
        for found in form("place", name).finditer(line.text):
            if not _is_elsewhere(line, found):
                line.cover(found)
                return PlaceName(name)
    return None


def _is_elsewhere(line: BallLine, found: re.Match[str]) -> bool:
    """Whether it is where a ball is aimed at, where they stand, or where we ask to stand.

    What a ball is played from is no aim: "do I lob okafor from the line".
    """
    before = line.before(found)
    asks = re.search(form("veto", "where_to_be").pattern + "$", before) is not None
    aims = any(re.search(form("veto", one).pattern + "$", before) for one in ("aims", "places"))
    measures = re.search(form("veto", "asks").pattern + "$", before) is not None
    tells_ours = found[0].startswith(("im ", "i am ")) or _I_AM.search(before) is not None
    is_from = found[0].startswith("from ") or tells_ours
    comes = found[0].startswith("from ") and _COMES_AT_US.search(before) is not None
    return comes or line.is_theirs(found) or measures or (not is_from and (aims or asks))
