"""Numbers in a message: digits and number words, and the score-like groups they form."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import Word
from knowledge.dataclass import dataclass

_NUMBER_WORDS = {
    spelled: number
    for number, spelled in enumerate(
        (
            "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
            "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen",
            "eighteen", "nineteen", "twenty",
        )
    )
} | {"nought": 0, "naught": 0, "nil": 0, "love": 0, "twentyone": 21}  # fmt: skip

_DICTATED = {"oh": 0, "o": 0, "won": 1, "to": 2, "too": 2, "tree": 3, "for": 4, "fore": 4, "ate": 8}
"""What dictation writes for a number; read so only between other numbers. From memory."""

_NOTHING = frozenset(["nothing", "zip", "none", "zilch"])
"""`five to nothing`, `2 zip`: only there it is a number."""

_OPENING = frozenset([*_NUMBER_WORDS, *_DICTATED, *_NOTHING])

_BEFORE_ONE = frozenset(
    [
        "that",
        "this",
        "the",
        "another",
        "first",
        "second",
        "third",
        "last",
        "which",
        "each",
        "next",
        "every",
        "no",
        "took",
        "gave",
    ]
)
"""`won that one`: no number of a score then, nor is any after "by"."""

_NO_NUMBER = frozenset(
    [
        ("my", 2), ("us", 2), ("those", 2), ("of", 3), ("game", 1), ("game", 2), ("server", 1),
        ("server", 2), ("in", 2), ("in", 3), ("next", 2), ("last", 2), ("other", 2),
    ]
)  # fmt: skip

_JOINS = frozenset("-–—/:")
_BETWEEN = frozenset(["to", "dash", "and", "n"])
_LARGEST = 999
PAIR = 2
"""Numbers of a score without its server."""
_COUNTED = frozenset(["more", "games", "sets", "left"])
"""After a number that counts what is still to play."""

FEWEST_OF_GAMES = 4
"""Numbers in one breath that are two games: what follows them is no server."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Numbers said in one breath: `6-4-2`, `nine eight two`; words `start` up to `stop`."""

    numbers: tuple[int, ...]
    start: int
    stop: int
    tight: bool
    span: tuple[int, int]


def number(word: Word) -> int | None:
    """The number a word stands for, up to 999."""
    if word.folded.isascii() and word.folded.isdigit():
        return int(word.folded) if len(word.folded) <= len(str(_LARGEST)) else None
    return _NUMBER_WORDS.get(word.folded)


def number_of(typed: str) -> int | None:
    """The same for a bare word."""
    return number(Word(folded=typed, typed=typed, span=(0, len(typed)), gap=""))


def points(said: Sequence[Word], place: int) -> int | None:
    """The number of a score that stands there; none in `took one away` and `server 2`."""
    value = number(said[place])
    before = said[place - 1].folded if place else ""
    is_spelled = not (before == "us" and said[place].folded.isdigit())
    if (
        ((before, value) in _NO_NUMBER and is_spelled)
        or (value == 1 and before in _BEFORE_ONE)
        or (before == "by" and not _opens_tight(said, place))
    ):
        return None
    return value


def _opens_tight(said: Sequence[Word], place: int) -> bool:
    """`by 15-12`: a game, and no lead."""
    return place + 1 < len(said) and said[place + 1].gap in _JOINS


def groups(said: Sequence[Word]) -> tuple[Group, ...]:
    """Runs of two numbers and more; runs written tight, `11-8 9-11`, are groups of their own."""
    found: list[Group] = []
    position = 0
    while position < len(said):
        if not _may_open(said[position]):
            position += 1
            continue
        stop, numbers = _run(said, position)
        if len(numbers) > 1:
            found += _split_tight(said, numbers)
        position = max(stop, position + 1)
    return tuple(found)


def is_dictated(word: Word) -> bool:
    return word.folded in _DICTATED


def _may_open(word: Word) -> bool:
    """Whether a run may begin with it: not with most words, which are passed over at once."""
    folded = word.folded
    return folded in _OPENING or folded.isdigit()


def _run(said: Sequence[Word], start: int) -> tuple[int, list[tuple[int, int]]]:
    """Where the run of numbers ends, and its numbers with their places."""
    numbers: list[tuple[int, int]] = []
    position = start
    while position < len(said):
        value = _number_here(said, position, begun=len(numbers))
        if value is None:
            joins = numbers and said[position].folded in _BETWEEN and _continues(said, position)
            if not joins:
                break
        else:
            if numbers and not _is_same_breath(said[position].gap):
                break
            if (
                len(numbers) <= PAIR
                and numbers
                and "," in said[position].gap
                and _opens_pair(said, position)
            ):
                break
            if _makes_twenty_one(said, position, numbers):
                numbers[-1] = (numbers[-1][0], numbers[-1][1] + value)
            else:
                numbers.append((position, value))
        position += 1
    return position, numbers


def _opens_pair(said: Sequence[Word], position: int) -> bool:
    """`not nine to five, eight to five`: a score of its own after the comma."""
    ahead = said[position + 1 : position + 3]
    return len(ahead) == PAIR and ahead[0].folded == "to" and number(ahead[1]) is not None


def _makes_twenty_one(
    said: Sequence[Word], position: int, numbers: Sequence[tuple[int, int]]
) -> bool:
    value = number(said[position])
    spelled = position > 0 and said[position - 1].folded == "twenty"
    return bool(numbers) and spelled and value is not None and 0 < value < 10


def _number_here(said: Sequence[Word], position: int, *, begun: int) -> int | None:
    """The number at a place of a run in which so many stand before it."""
    folded = said[position].folded
    if folded in _NOTHING and (
        (begun and _follows_a_number(said, position)) or _is_nothing_each(said, position)
    ):
        return 0
    value = points(said, position)
    if value is not None or number(said[position]) is not None or folded not in _DICTATED:
        return value
    if folded == "too" and begun == 1:
        return None  # "they have 9 too"
    if folded == "won" and begun >= FEWEST_OF_GAMES:
        return None  # "11 6 11 7 won"
    ahead = number(said[position + 1]) if position + 1 < len(said) else None
    last = position + 1 == len(said)
    sure = begun and (last or ahead is not None) and folded != "to"
    sure = (
        sure
        or (begun and last)
        or (not begun and ahead is not None and position == 0 and said[0].folded != "won")
    )
    return _DICTATED[folded] if sure else None


def _follows_a_number(said: Sequence[Word], position: int) -> bool:
    """`five to nothing`, `2 zip`."""
    before = said[position - 1]
    return before.folded == "to" or number(before) is not None


def _is_nothing_each(said: Sequence[Word], position: int) -> bool:
    """`nothing nothing`, `zip zip`, as a match starts; `nothing to three`, if it opens."""
    near = (position - 1, position + 1)
    same = said[position].folded
    is_to = not position and len(said) > 2 and said[1].folded == "to"
    is_twice = any(0 <= at < len(said) and said[at].folded == same for at in near)
    return is_twice or (is_to and number(said[2]) is not None)


def _continues(said: Sequence[Word], position: int) -> bool:
    if position + 1 >= len(said):
        return False
    ahead = said[position + 1]
    is_nothing = said[position].folded == "to" and ahead.folded in _NOTHING
    return is_nothing or number(ahead) is not None


def _is_same_breath(gap: str) -> bool:
    mark = gap.strip()
    return mark in {"", ","} or (mark in _JOINS and (mark != ":" or gap == mark))


def _split_tight(said: Sequence[Word], numbers: Sequence[tuple[int, int]]) -> list[Group]:
    """`11-8 9-11` are two groups; `9-8 2` and `9 8 2` are one."""
    runs = [[numbers[0]]]
    is_tight = any(_is_tight(said[place]) for place, _ in numbers[1:])
    for place, value in numbers[1:]:
        if is_tight and not _is_tight(said[place]):
            runs.append([])
        runs[-1].append((place, value))
    is_call = [len(run) for run in runs] == [2, 1] and _may_be_server(said, runs[1][0][0])
    if is_call:
        runs = [runs[0] + runs[1]]
    return [_group(said, run, tight=is_tight) for run in runs if len(run) > 1]


def _may_be_server(said: Sequence[Word], place: int) -> bool:
    """Not in `5-3 to 15`, what a game is played to, nor in `8-11, two more`, games to come."""
    is_told_to = place > 0 and said[place - 1].folded in {"to", "too"}
    return not is_told_to and (place + 1 == len(said) or said[place + 1].folded not in _COUNTED)


def _group(said: Sequence[Word], run: Sequence[tuple[int, int]], *, tight: bool) -> Group:
    start, last = run[0][0], run[-1][0]
    return Group(
        numbers=tuple(value for _, value in run),
        start=start,
        stop=last + 1,
        tight=tight,
        span=(said[start].span[0], said[last].span[1]),
    )


def _is_tight(word: Word) -> bool:
    """Written without a break, `11-8`; a colon joins only where no space follows it."""
    marks = set(word.gap) & _JOINS
    return bool(marks) and (":" not in marks or word.gap == ":")
