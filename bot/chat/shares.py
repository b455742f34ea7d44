"""Shares of something as people say them: 42%, 0.42, 4 in 10, half, forty two percent."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.numbers import number
from bot.chat.words import Word, words_in
from knowledge.dataclass import dataclass

_TENS = {
    "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60,
    "seventy": 70, "eighty": 80, "ninety": 90,
}  # fmt: skip
_PERCENT = frozenset(["percent", "pct", "prcent", "percents", "perc"])
_COUNTED = frozenset(["rallies", "rally", "points", "pts", "times", "balls", "serves", "returns"])
_UNITS = words_in(
    "mph mhp miles mile km kmh kph knots knot mps degrees degree feet foot ft inches inch cm meters"
    " metres m yards secs sec seconds second s minutes minute mins min hours hour hrs hr days weeks"
    " months years yrs"
)
"""What a number before them measures: a speed, a length or a time is no share."""
_THINGS = words_in("balls shots dinks drops drives resets lobs bounces steps times tries attempts")
"""What a bare number before them counts, without saying of how many."""
_OUT_OF = (("out", "of", "every"), ("out", "of"), ("in", "every"), ("of", "every"), ("in",),
           ("of",), ("outta",))  # fmt: skip
_PARTS = {("two", "thirds"): 2 / 3, ("2", "thirds"): 2 / 3, ("three", "quarters"): 0.75}
_HALF_OTHER = [("past",), ("court",), ("time",), ("volley",), ("way",), ("an",)]
_ROUND = frozenset([10, 20, 100])
_OWN, _LAST_ONES = [("our",), ("my",), ("the",)], [("last",), ("past",), ("first",)]
_LONGEST = 6  # digits; a longer number is no share

_APART = frozenset(",;:!?\n")

FEWEST = 22
"""Below it a plain number is rather a score (games go to 21)."""

_TELLING = frozenset(["half", "thirds", "quarters", "percent", "pct", "cent", "hundred", *_TENS])
_JOINING = frozenset(["of", "in", "outta"])
_WINNING = frozenset(["win", "wins", "winning"])

_HOURS, _MINUTES = 24, 60

WIDEST_RANGE = 15  # in 100: "40-45%" is one share, "42-63%" are two


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """Words `start` up to `stop` say this share of 1; `fault` tells why they can't.

    `is_plain`: a bare number that only its neighbours make a share ("42 on serve").
    `count` is (won, played) where both were said: "3 of 10", but not "4 in 10".
    """

    value: float
    start: int
    stop: int
    typed: str
    is_plain: bool = False
    fault: str | None = None
    count: tuple[int, int] | None = None


def shares(text: str, said: Sequence[Word]) -> tuple[Share, ...]:
    """Every share of the message, in order."""
    found: list[Share] = []
    place = 0
    while place < len(said):
        one = _share_at(text, said, place)
        if one is not None:
            found.append(one)
        place = one.stop if one else place + 1
    return tuple(_checked(one) for one in _without_ranges(text, said, found))


def may_hold_shares(said: Sequence[Word]) -> bool:
    """Whether a closer look is worth its time: most messages hold scores or no numbers at all."""
    spoken = {word.folded for word in said}
    if spoken & _TELLING:
        return True
    numbers = [word for word in said if word.folded.isdigit()]
    joined = (bool(spoken & _JOINING) or any(word.gap == "/" for word in said)) and sum(
        number(word) is not None for word in said
    ) > 1
    large = any(len(word.folded) > 2 or int(word.folded) >= FEWEST for word in numbers)
    pointed = any(word.gap.endswith(".") for word in numbers)
    return joined or (bool(numbers) and (large or pointed or bool(spoken & _WINNING)))


def _share_at(text: str, said: Sequence[Word], place: int) -> Share | None:
    found = _part(text, said, place) or _ratio(text, said, place) or _amount(text, said, place)
    return None if found is None or _measures(said, found) else found


def _measures(said: Sequence[Word], one: Share) -> bool:
    """ "25 secs before serving", "20 of 30 seconds", "25 balls"."""
    after = said[one.stop].folded if one.stop < len(said) else ""
    return after in _UNITS or (one.is_plain and one.count is None and after in _THINGS)


def _part(text: str, said: Sequence[Word], place: int) -> Share | None:
    """`half`, `two thirds`."""
    two = tuple(word.folded for word in said[place : place + 2])
    if two in _PARTS:
        return _share(text, said, place, place + 2, _PARTS[two])
    ahead = number(said[place + 1]) if place + 1 < len(said) else None
    if two[0] == "half" and ahead is None and two[1:] not in _HALF_OTHER:
        return replace(_share(text, said, place, place + 1, 0.5), is_plain=True)
    return None


def _ratio(text: str, said: Sequence[Word], place: int) -> Share | None:
    """`4 in 10`, `45 rallies out of 100`, `6 of our last 15`, `4/10`; `best 2 of 3` is none."""
    first, after = _whole(said, place)
    if first is None or (place and said[place - 1].folded == "best"):
        return None
    if after < len(said) and said[after].folded in _COUNTED:
        after += 1
    for joins in _OUT_OF:
        if tuple(word.folded for word in said[after : after + len(joins)]) == joins:
            at = _after_last(said, after + len(joins))
            if at < len(said) and _APART & set(said[at].gap):
                return None  # "lost 11-9 in the first, 3-5 down": a game, and a score
            second, stop = _whole(said, at)
            if second is not None:
                found = _of(text, said, place, stop, first, second)
                is_count = joins[-1] == "of" and found is not None
                return replace(found, count=(first, second)) if is_count and found else found
    second, stop = _whole(said, after)
    slashed = after < len(said) and said[after].gap == "/"
    if slashed and second in _ROUND and not _has_percent(text, said, stop)[0]:
        share = _of(text, said, place, stop, first, second)
        return None if share is None else replace(share, is_plain=True)
    return None


def _after_last(said: Sequence[Word], place: int) -> int:
    """The place after "our last", "the past"."""
    words = tuple(word.folded for word in said[place : place + 2])
    if words[:1] in _LAST_ONES:
        return place + 1
    return place + 2 if words[:1] in _OWN and words[1:] in _LAST_ONES else place


def _of(
    text: str, said: Sequence[Word], start: int, stop: int, first: int, second: int
) -> Share | None:
    if second < 2:
        return None
    return _share(text, said, start, stop, first / second)


def _amount(text: str, said: Sequence[Word], place: int) -> Share | None:
    """`42%`, `0.42`, `.42`, `forty two percent`, and a bare `42`."""
    whole, stop = _whole(said, place)
    if whole is None:
        return None
    if _is_clock(text, said, place) or (place and _is_clock(text, said, place - 1)):
        return None
    digits = said[place].folded.isdigit()
    decimals = said[stop] if digits and stop < len(said) and said[stop].gap == "." else None
    if decimals is not None and decimals.folded.isdigit():
        value, stop, is_exact = float(f"{whole}.{decimals.folded}"), stop + 1, True
    elif digits and _follows_a_point(said, place):
        value, is_exact = float(f"0.{said[place].folded}"), True
    else:
        value, is_exact = float(whole), False
    percent, stop = _has_percent(text, said, stop)
    if percent or (is_exact and value >= 2):
        value /= 100
    elif not is_exact:
        value, percent = value / 100, False
    value = -value if _is_negative(said, place) else value
    found = _share(text, said, place, stop, value)
    return replace(found, is_plain=not percent and not is_exact)


def _is_clock(text: str, said: Sequence[Word], place: int) -> bool:
    """`10.25`, `8.20 am`: an hour and its minutes; so exact a share is won, or in percent."""
    if place + 1 >= len(said) or said[place + 1].gap != ".":
        return False
    if _has_percent(text, said, place + 2)[0] or any(word.folded in _WINNING for word in said):
        return False
    hour, minutes = said[place].folded, said[place + 1].folded
    if not (hour.isdecimal() and minutes.isdecimal() and len(hour) <= len(minutes) == 2):
        return False
    return 0 < int(hour) < _HOURS and int(minutes) < _MINUTES


def _whole(said: Sequence[Word], place: int) -> tuple[int | None, int]:
    """The whole number that begins here, and the place after it."""
    if place >= len(said):
        return None, place
    word = said[place].folded
    after = number(said[place + 1]) if place + 1 < len(said) else None
    if word in _TENS:
        joins = after is not None and 0 < after < 10 and not said[place + 1].folded.isdigit()
        return (_TENS[word] + (after or 0), place + 2) if joins else (_TENS[word], place + 1)
    if word == "hundred":
        return 100, place + 1
    if word in {"a", "one"} and place + 1 < len(said) and said[place + 1].folded == "hundred":
        return 100, place + 2
    if word.isascii() and word.isdigit():
        return (int(word), place + 1) if len(word) <= _LONGEST else (None, place + 1)
    return number(said[place]), place + 1


def _has_percent(text: str, said: Sequence[Word], stop: int) -> tuple[bool, int]:
    """Whether a percent sign or word follows the word before `stop`, and where it ends."""
    if text[said[stop - 1].span[1] :].lstrip().startswith("%"):
        return True, stop
    if stop < len(said) and said[stop].folded in _PERCENT:
        return True, stop + 1
    if [word.folded for word in said[stop : stop + 2]] == ["per", "cent"]:
        return True, stop + 2
    return False, stop


def _follows_a_point(said: Sequence[Word], place: int) -> bool:
    gap = said[place].gap
    return gap.endswith(".") and (place == 0 or not gap[-2:-1].isalnum())


def _is_negative(said: Sequence[Word], place: int) -> bool:
    gap = said[place].gap
    opens = gap[:-1].endswith((" ", "(")) or (place == 0 and len(gap) == 1)
    return gap.endswith(("-", "−")) and opens


def _share(text: str, said: Sequence[Word], start: int, stop: int, value: float) -> Share:
    return Share(value=value, start=start, stop=stop, typed=_typed(text, said, start, stop))


def _typed(text: str, said: Sequence[Word], start: int, stop: int) -> str:
    end = said[stop - 1].span[1]
    rest = text[end:]
    sign = len(rest) - len(rest.lstrip()) + 1 if rest.lstrip().startswith("%") else 0
    minus = 1 if _is_negative(said, start) else 0
    return text[said[start].span[0] - minus : end + sign]


def _without_ranges(text: str, said: Sequence[Word], found: Sequence[Share]) -> list[Share]:
    """`40-45%` and `40 to 45%` as the share half-way."""
    kept: list[Share] = []
    for one in found:
        last = kept[-1] if kept else None
        if last is not None and _is_range(said, last, one):
            middle = round((last.value + one.value) / 2, 12)
            kept[-1] = replace(_share(text, said, last.start, one.stop, middle), is_plain=False)
        else:
            kept.append(one)
    return kept


def _is_range(said: Sequence[Word], low: Share, high: Share) -> bool:
    between = [word.folded for word in said[low.stop : high.start]]
    tight = not between and said[high.start].gap.strip() in {"-", "–"}
    near = 0 < high.value - low.value <= WIDEST_RANGE / 100
    return low.is_plain and not high.is_plain and near and (tight or between == ["to"])


def _checked(one: Share) -> Share:
    if one.value < 0:
        return replace(one, fault=f"{one.typed} is below 0: a chance is 0 to 100 in 100.")
    if one.value > 1:
        return replace(one, fault=f"{one.typed} is over 100%: a chance is 0 to 100 in 100.")
    return one
