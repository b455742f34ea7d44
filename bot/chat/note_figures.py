"""Counts in a note as judgements: "serve 9 of 10" praises it, "drops 2/11" does not."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from bot.chat.forms import word_set
from bot.chat.phrase import Found
from bot.chat.trait_lexicon import Role, Sense
from knowledge.dataclass import dataclass

_SPELLED = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
    "eleven", "twelve",
)  # fmt: skip
_NUMBERS = {word: number for number, word in enumerate(_SPELLED)}
_OF = (("out", "of"), ("of",), ("for",), ("in",), ())
_FEWEST = 3
"""Of fewer balls a count says nothing. Common practice, no source."""

_FEWEST_PERCENT, _ALL_PERCENT = 25, 100
"""A number alone is a share in percent from here on: no score and no count is as high."""

_GOOD_FROM = 0.66
_BAD_TO = 0.5
_MISSES = word_set("missing")
_MISSES_COUNTED = frozenset(["miss", "misses", "missed", "missing", "nets", "faults", "dumps"])
_BEFORE_A_SCORE = word_set("before_a_score")
_WORDS_BEFORE, _WORDS_AFTER = 3, 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Counted:
    """So many of so many `balls`, said by the words `start` up to `stop`."""

    start: int
    stop: int
    share: float
    balls: int


def counted(line: Sequence[str]) -> Iterator[Counted]:
    """Every count with its whole: "1 in 20", "4 of 9"."""
    start = 0
    while start < len(line):
        stop, share = _count(line, start)
        balls = _whole(line, start)
        if share is not None and balls is not None:
            yield Counted(start=start, stop=stop, share=share, balls=balls)
        start = stop


def figures(line: Sequence[str]) -> list[Found[Sense]]:
    """Every count of balls, good or bad; not the counts of misses, which the misses judge."""
    found: list[Found[Sense]] = []
    start = 0
    while start < len(line):
        stop, share = _count(line, start)
        if share is not None:
            role = Role.GOOD if share >= _GOOD_FROM else Role.BAD if share <= _BAD_TO else None
            near = {*line[max(0, start - _WORDS_BEFORE) : start], *line[stop : stop + _WORDS_AFTER]}
            before = set(line[max(0, start - 1) : start])
            if role is not None and not near & _MISSES and not before & _BEFORE_A_SCORE:
                found.append(Found(start=start, stop=stop, meaning=Sense(role=role, is_verb=True)))
        start = stop
    return found


def _count(line: Sequence[str], start: int) -> tuple[int, float | None]:
    """Where the words at `start` end, and what share they say, if they count anything.

    Two numbers side by side are a count ("2/7"); three are the score called ("0-5-1").
    """
    part = _number(line[start])
    for of in _OF if part is not None else ():
        stop = start + 1 + len(of)
        whole = _number(line[stop]) if stop < len(line) else None
        if tuple(line[start + 1 : stop]) == of and whole is not None and part is not None:
            is_call = not of and any(map(is_number, line[stop + 1 : stop + 2]))
            counts = part <= whole and whole >= _FEWEST and not is_call
            return stop + 1, part / whole if counts else None
    of_some = tuple(line[start + 1 : start + 2]) == ("of",)
    if part is not None and _FEWEST_PERCENT <= part <= _ALL_PERCENT and not of_some:
        return start + 1, part / _ALL_PERCENT
    return start + 1, None


def balls_counted(line: Sequence[str]) -> int | None:
    """Of how many balls these words tell ("9 of 10"); None where nothing was counted."""
    wholes = [_whole(line, start) for start in range(len(line))]
    return max((whole for whole in wholes if whole is not None), default=None)


def _whole(line: Sequence[str], start: int) -> int | None:
    stop, share = _count(line, start)
    return _number(line[stop - 1]) if share is not None and stop > start + 1 else None


def is_number(word: str) -> bool:
    return _number(word) is not None


def _number(word: str) -> int | None:
    if word in _NUMBERS:
        return _NUMBERS[word]
    return int(word) if word.isdecimal() and word.isascii() and len(word) <= len("100") else None
