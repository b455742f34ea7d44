"""The time a match moves to, where a message names the old one as well: "our 10:15 is at 11"."""

from __future__ import annotations

import re
from datetime import time

from bot.chat.announcements import clock
from knowledge.dataclass import dataclass
from knowledge.regex import regex

_HOUR = r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)"
_MINUTE = (
    r"(?:(?:twenty|thirty|forty|fifty)[ -]?five|ten|fifteen|twenty|thirty|forty|fifty|o'?clock)"
)
_TO_THE_MINUTE = regex(
    r"\d{1,2}[:.h]\d{2}(?: ?[ap]\.?m\b\.?)?|\d{1,2} ?[ap]m\b|\b(?:0?[7-9]|1\d|2[0-3])[0-5][05]\b"
    rf"|\b(?:a )?(?:half|quarter|five|ten|twenty) (?:past|after|to|before|til)"
    rf" (?:{_HOUR}|\d{{1,2}})\b"
    rf"|\bhalf {_HOUR}\b|\b{_HOUR} {_MINUTE}\b|\b\d{{1,2}} (?:1[5-9]|[2-5]\d)\b(?! \d)"
    r"|\b\d{1,2} ?o'?clock\b|\bnoon\b|\bmidday\b"
)
_BARE = regex(
    r"\b(?:to|at|till|til|until|now|its|it's|is|be|became|becomes|but|for) "
    rf"(?P<hour>{_HOUR}|[7-9]|1[0-2])\b(?![:.h]\d| ?(?:min|m\b|hour|hr|court|ct"
    r"|steps?|more|of us|-|all\b)"
    rf"| (?:{_HOUR}|zero|\d))"
)
"""An hour alone is a time only behind such a word; below seven a figure is rather a court."""

_OLD_BEFORE = regex(
    r"\b(?:from|not|instead of|rather than|was|wasn'?t|isn'?t|no longer|no more|our|my|the|that)"
    r" (?:at )?(?:old )?$"
)
_SWAPS = regex(r"\b(?:became|becomes|but|instead of|rather than)\b|\bnot\b")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    at: time
    start: int
    stop: int
    is_exact: bool


def time_moved_to(text: str, *, moves: bool) -> time | None:
    """The new time: the last one told that is not told as the old one; None without one.

    Unless the words say that something `moves`, or a time is told to the minute beside it, an hour
    alone is only a time behind "at": "its eleven now" is a score.
    """
    line = text.lower().replace("’", "'")
    times = _times(line)
    may_be_bare = moves or any(one.is_exact for one in times)
    new = [
        one
        for one in times
        if not _is_old(one, line)
        and (one.is_exact or may_be_bare or line[: one.start].endswith("at "))
    ]
    return new[-1].at if new else None


def swaps_times(text: str) -> bool:
    """Whether it tells one time in place of another and needs no word of moving for it."""
    line = text.lower()
    told = _times(line)
    is_exact = any(one.is_exact for one in told)
    return len(told) > 1 and is_exact and _SWAPS.search(line) is not None


def _times(line: str) -> list[_Told]:
    exact = [_told(found[0], found.span()) for found in _TO_THE_MINUTE.finditer(line)]
    taken = [one for one in exact if one is not None]
    bare = [
        _told(found["hour"], found.span("hour"), is_exact=False)
        for found in _BARE.finditer(line)
        if not any(one.start <= found.start("hour") < one.stop for one in taken)
    ]
    found_all = [*taken, *(one for one in bare if one is not None)]
    return sorted(found_all, key=lambda one: one.start)


def _told(words: str, span: tuple[int, int], *, is_exact: bool = True) -> _Told | None:
    at = clock(words) or clock(f"at {words}")
    return None if at is None else _Told(at=at, start=span[0], stop=span[1], is_exact=is_exact)


def _is_old(one: _Told, line: str) -> bool:
    """ "From 10:15", "not ten fifteen", and the subject of what moves: "our ten fifteen is now"."""
    before, after = line[: one.start], line[one.stop :]
    if not before.strip() and re.match(r" (?:became|becomes|moved|is|got|has)\b", after):
        return True
    return _OLD_BEFORE.search(before) is not None
