"""Which numbers of a message may be its score, and which are shares, courts or hours."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.numbers import Group, groups, number
from bot.chat.score_words import ALL_WORDS, LEVEL_WORDS
from bot.chat.words import Word
from knowledge.regex import regex

COMPARED_NEAR = 4
"""Words before a score among which "than" makes it the other one of two."""

_COMPARED = frozenset(["than", "vs", "versus", "compared"])

_BEFORE_COUNTS = word_set("before_counts")
"""Before numbers that are no score: shares, courts, and the hours of a day."""

_UNITS = word_set("units")
_MADE = frozenset(["in", "made", "thirds", "3rds", "serves", "returns", "drops", "dinks", "drives"])
"""After a share such as `5/6`: what was made of so many."""

_LEVEL = regex(r"[0-2]?\ds")
"""`5s`: five each."""

HIGHEST_PAIR = 30
"""Two numbers both above it are no score of any format: `50/50`."""


def score_group(said: Sequence[Word]) -> Group | None:
    """The likeliest score of the message: two numbers or three, the last group of them."""
    fitting = [one for one in groups(said) if _could_be_score(one, said)]
    asserted = [one for one in fitting if not _is_denied(one, said)] or fitting
    return asserted[-1] if asserted else None


def _is_denied(group: Group, said: Sequence[Word]) -> bool:
    """Not the score now: `not 9-8`, `was 10-4`, `or bank it for 9-10`, `more than one at 3-3`."""
    before = [word.folded for word in said[max(0, group.start - COMPARED_NEAR) : group.start]]
    return before[-1:] in (["not"], ["for"], ["was"]) or bool(_COMPARED & set(before))


def _could_be_score(group: Group, said: Sequence[Word]) -> bool:
    if len(group.numbers) not in (2, 3):
        return False
    if len(group.numbers) == 2 and min(group.numbers) > HIGHEST_PAIR:
        return False
    before = said[group.start - 1].folded if group.start else ""
    after = said[group.stop].folded if group.stop < len(said) else ""
    is_share = said[group.start + 1].gap.strip() == "/" and after in _MADE
    is_counted = before in _BEFORE_COUNTS or after in _UNITS or is_share
    is_time = _is_clock(group, said) or _is_hour(group, said)
    return not is_counted and not is_time and not _is_scale(group, said)


def _is_clock(group: Group, said: Sequence[Word]) -> bool:
    """`10:40` is a time, and no score of this game goes there."""
    second = said[group.start + 1]
    return len(group.numbers) == 2 and ":" in second.gap and len(second.typed) == 2


_SCALES = frozenset([(0, 5), (0, 10), (1, 5), (1, 10), (1, 100)])


def _is_scale(group: Group, said: Sequence[Word]) -> bool:
    """`rate our chances from 1 to 10`; "back from 1-10" tells a score."""
    spoken = [word.folded for word in said[max(0, group.start - 1) : group.stop]]
    return group.numbers in _SCALES and spoken[0] == "from" and "to" in spoken


_BEFORE_HOURS = frozenset(
    ["back", "start", "starts", "starting", "begin", "begins", "warm", "warmup", "lunch", "meet",
     "meeting", "again", "on", "called"]
)  # fmt: skip
FIRST_QUARTER = 15
LAST_HOUR = 12


def _is_hour(group: Group, said: Sequence[Word]) -> bool:
    """`back at 2 15`, `warm up starts at ten fifteen`: an hour and its quarter."""
    before = [word.folded for word in said[max(0, group.start - COMPARED_NEAR) : group.start]]
    if len(group.numbers) != 2 or before[-1:] != ["at"] or not _BEFORE_HOURS & set(before):
        return False
    hour, minutes = group.numbers
    return 0 < hour <= LAST_HOUR and minutes >= FIRST_QUARTER and not minutes % 5


def level_at(said: Sequence[Word]) -> tuple[int, int] | None:
    """The level score and its place: `8 all`, `tied at 11`."""
    for place, word in enumerate(said):
        if _LEVEL.fullmatch(word.folded) and not (place and said[place - 1].folded == "at"):
            return int(word.folded[:-1]), place
    if len(said) == 2 and said[0].folded == "all" and number(said[1]) is not None:
        return number(said[1]) or 0, 0
    for place, word in enumerate(said[:-1]):
        value = 0 if word.folded == "nothing" else number(word)
        if value is None or value > HIGHEST_PAIR:
            value = None
        if value is not None and said[place + 1].folded in ALL_WORDS:
            return value, place
        ahead = [number(one) for one in said[place + 1 : place + 4]]
        is_both = word.folded == "both" and said[place + 1].folded in ("on", "at")
        if is_both or word.folded in LEVEL_WORDS:
            return next(((one, place) for one in ahead if one is not None), None)
    return None
