"""How high we meet a ball: "knee high", "at my feet", "just above the net", "2 ft", "60 cm"."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from bot.chat.ball_forms import form, group, names_in, part
from bot.chat.ball_line import BallLine
from bot.chat.measures_said import length, metres
from knowledge.ball_places import NET_M, HeightName, height_m
from knowledge.dataclass import dataclass

HIGHEST_M: Final = 3.0
"""Nobody reaches higher: common practice, no source."""

BODY_OFFSET_M: Final = 0.15
"""How far "above my waist" and "below my knees" are taken to be off it: common practice."""

TOO_HIGH: Final = "Nobody reaches over 3 m (10 ft): height left out."
TOO_LOW: Final = "A ball is never below the ground: height left out."


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundHeight:
    height_m: float | None = None
    faults: tuple[str, ...] = ()


def find_height(line: BallLine) -> FoundHeight:
    """The height said first as a number, else as a part of the body or by the net."""
    measured = _measured(line)
    if measured is None:
        return FoundHeight(height_m=_named(line))
    if measured > HIGHEST_M:
        return FoundHeight(faults=(TOO_HIGH,))
    return FoundHeight(faults=(TOO_LOW,)) if measured < 0 else FoundHeight(height_m=measured)


def _measured(line: BallLine) -> float | None:
    """A length that is said to be a height: by what follows it, or by what leads to it."""
    for form_, offset in (
        (_with("above_net"), 1),
        (_with("below_net"), -1),
        (_with("ground"), None),
        (_led_to(), None),
        (_bare(), None),
    ):
        is_bare = form_ is _bare()
        found = next(
            (
                one
                for one in form_.finditer(line.text)
                if not _is_aim(line, one) and not (is_bare and one["num2"])
            ),
            None,
        )
        if found is not None:
            line.cover(found)
            size = metres(found)
            return size if offset is None else NET_M + offset * size
    return None


@cache
def _with(name: str) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w){length()} (?:{form('measured', name).pattern})")


@cache
def _led_to() -> re.Pattern[str]:
    cue, after = (form("measured", one).pattern for one in ("cue", "no_height_after"))
    return re.compile(rf"{cue} {length()}(?! {after})")


@cache
def _bare() -> re.Pattern[str]:
    """A length that is a whole clause, or opens or ends one: "60 cm, they're back"."""
    after = form("measured", "no_height_after").pattern
    return re.compile(
        rf"(?:(?<=^)|(?<=, )){length()}(?= ,|$| (?:can|do|should|what|where) )(?! {after})"
    )


def _is_aim(line: BallLine, found: re.Match[str], *, hits: bool = False) -> bool:
    """Whether it is said of where to hit: with `hits` also by "hit it at the feet"."""
    vetoes = ("aims", "hits") if hits else ("aims",)
    before = line.before(found)
    return any(re.search(form("veto", one).pattern + "$", before) for one in vetoes)


def _named(line: BallLine) -> float | None:
    for name in ("above_net", "below_net", "net"):
        found = _first(line, name)
        if found is not None:
            return height_m(HeightName(name))
    for name, offset in (
        ("above", BODY_OFFSET_M),
        ("below", -BODY_OFFSET_M),
        ("named", 0.0),
        ("led", 0.0),
    ):
        found = _first(line, name)
        if found is not None:
            return max(0.0, height_m(_body(found)) + offset)
    return height_m(HeightName.OVERHEAD) if _first(line, "overhead") else None


def _first(line: BallLine, name: str) -> re.Match[str] | None:
    for found in form("height", name).finditer(line.text):
        is_aim = name != "overhead" and _is_aim(line, found, hits=name == "led")
        if not is_aim and not _hurts(line, found):
            line.cover(found)
            return found
    return None


def _hurts(line: BallLine, found: re.Match[str]) -> bool:
    """Whether it tells of a body that hurts: "pain at my hip", "my knee hurts"."""
    around = f"{line.before(found)} {line.text[found.end() :].split(',')[0]}"
    return re.search(rf"\b{part('hurts')}\b", around) is not None


def _body(found: re.Match[str]) -> HeightName:
    said = group(found, "body")
    return next(HeightName(one) for one in names_in("body") if form("body", one).fullmatch(said))
