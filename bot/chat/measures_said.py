"""Numbers with a unit beside a ball: "two feet", "a foot and a half", "60 cm", "50 mph"."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache

from bot.chat.ball_forms import part, units

_ONES = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
]
_TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
_COUPLE, _FEW = 2.0, 3.0
"""What "a couple" and "a few" are taken for; common practice."""


def amount(said: str) -> float:
    """The number that the part `num` of the forms stands for; of a range the middle."""
    if " to " in said:
        low, high = (float(one) for one in said.split(" to "))
        return (low + high) / 2
    more = 0.5 if said.endswith(" and a half") else 0.0
    words = said.removesuffix(" and a half").split()
    if "half" in words:
        return 0.5
    if "couple" in words:
        return _COUPLE
    if "few" in words:
        return _FEW
    return more + sum(_number(word) for word in words)


def _number(word: str) -> float:
    if word in _ONES:
        return float(_ONES.index(word))
    if word in _TENS:
        return 10.0 * (_TENS.index(word) + 2)
    return 1.0 if word in ("a", "an") else float(word)


@cache
def length(name: str = "", *, steps: bool = False) -> str:
    """The form of a length, its groups ending in `name`; a second unit may follow ("2 ft 6 in").

    `in` is a unit only between a figure and what is measured: "5 of 12 in" measures nothing.
    """
    inches = r"(?<=\d )in(?= (?:high|hi|off|up|above|below|over|behind|back|from|tall)\b)"
    known = [one for one in units("length") if one != "in"]
    kinds = "|".join([*_longest_first([*known, *(units("step") if steps else ())]), inches])
    return (
        rf"(?P<minus{name}>(?:minus|negative) )?(?P<num{name}>{part('num')}) "
        rf"(?P<unit{name}>{kinds})\b(?P<half{name}> and a half)?"
        rf"(?: (?P<num2{name}>\d+|{part('number_word')})"
        rf" (?P<unit2{name}>in|inch|inches|cm)\b(?! the))?"
    )


@cache
def speed() -> str:
    """The form of a speed."""
    kinds = "|".join(_longest_first(units("speed")))
    return rf"(?P<minus>(?:minus|negative) )?(?P<num>{part('num')}) (?P<unit>{kinds})\b"


def metres(found: re.Match[str]) -> float:
    """The length that a finding of `length` says."""
    known = {**units("length"), **units("step")}
    total: float = amount(found["num"]) * known[found["unit"]]
    if found["half"]:
        total += 0.5 * known[found["unit"]]
    if found["num2"]:
        total += amount(found["num2"]) * known[found["unit2"]]
    return -total if found["minus"] else total


def metres_per_second(found: re.Match[str]) -> float:
    """The speed that a finding of `speed` says."""
    value: float = amount(found["num"]) * units("speed")[found["unit"]]
    return -value if found["minus"] else value


def _longest_first(names: Iterable[str]) -> list[str]:
    return sorted(names, key=len, reverse=True)
