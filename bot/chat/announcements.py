"""Matches to come: who, when, which court, to how many."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import time

from bot.chat.cast import cast as cast_as_sides
from bot.chat.common_words import is_common
from bot.chat.event_heading import without_heading
from bot.chat.format_said import format_parts
from bot.chat.forms import any_of
from bot.chat.numbers import number_of
from bot.chat.other_matches import is_elsewhere
from bot.chat.put_right import put_right
from bot.chat.said import Certainty, MatchSaid, Mention
from bot.chat.schedule_said import announces
from bot.chat.short_forms import in_full
from bot.chat.words import Word, folded_line
from knowledge.regex import regex

FIRST_HOUR = 7
"""Nobody plays before seven in the morning: `2:30` is the afternoon. Common practice, no source."""

_COMING = regex(
    r"\b(?:next|nxt|upcoming|weve got|we have|we got|we play|playing|playin|play|facing|vs|versus"
    r"|v|against|agenst|semi\w*|quarter\w*|finals?|sf|qf|bronze|gold|pool|on deck|bumped|noon"
    r"|opps|opponents|round|r\d+|moved|match|still|(?:after (?:that|this)|then) (?:its|it is))\b"
)
_SURE_NEXT = regex(
    r"^(?:ok |okay |so |um |uh |hey )*(?:next (?:match|up|game|opponents?|one|is|we|round"
    r"|its)\b|next$|"
    r"up next|nxt|on deck|we play|were playing|we are playing|we face|our next|next"
    r"|(?:after (?:that|this)(?: one| match)?|then)"
    r" (?:its|it is|we (?:have|got|play|face)|weve got)"
    r"|pool (?:\d+|[a-h]) opp\w*|(?:semi\w*|final|quarter\w*|bronze|gold) (?:\w+ )?coming up)\b"
)
_BOOKING = regex(r"\b(?:book|reserve|rent)\b")
_TIME = regex(
    r"(?<![\d:-])(\d{1,2})[:.h](\d{2})\s*(am|pm|a\.m\.|p\.m\.)?(?![\d-]|:\d)|\b(\d{1,2})\s*(am"
    r"|pm)\b",
    re.IGNORECASE,
)
_PACKED_TIME = regex(r"(?<![\d:#-])\b(0?[7-9]|0[0-6]|1\d|2[0-3])([0-5][05])\b(?![\d:-])")
"""`1040`, `0850`: four digits (or `915`) that end in 0 or 5, as starting times do."""
_SPOKEN_TIME = regex(
    r"\b(?:at )?(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)"
    r" (thirty[ -]?five|forty[ -]five|twenty[ -]?five|fifty[ -]?five|thirty|fifteen|forty ?five"
    r"|forty|twenty|ten|fifty|oclock)\b|\bat (\w+)\b(?! (?:all"
    r"|serving|up)|-\d)"
)
_DIGITS_APART = regex(r"\bat (\d{1,2}) (1[5-9]|[2-5]\d)\b(?! \d)")
"""`at 10 40`: no score goes there so far apart, nor so far up."""

_NOON = regex(r"\b(?:noon|midday)\b", re.IGNORECASE)
_PAST = regex(
    r"(?<!\bof )\b(half|quarter|five|ten|twenty|5|10|20|twenty five)"
    r" (past|after|to|before|til) (\w+)\b"
)
_FRACTIONS = {"half": 30, "quarter": 15, "five": 5, "ten": 10, "twenty": 20, "twenty five": 25}
_MINUTES = {
    "thirty": 30, "fifteen": 15, "fortyfive": 45, "forty five": 45,
    "thirty five": 35, "twenty five": 25, "fifty five": 55, "forty": 40, "twenty": 20,
    "ten": 10, "fifty": 50, "oclock": 0,
}  # fmt: skip
_COURT = regex(
    r"\b(?:court|ct|crt|cort|c(?=\s?\d))(?:['’]s| is)?\s*#?\s*(\d{1,2}\b|[a-z]\b|[a-z]+\b)",
    re.IGNORECASE,
)
_COURT_WORDS = frozenset(["center", "centre", "stadium", "show", "main", "grandstand"])


def _mended(said: Sequence[Word], mentions: Sequence[Mention]) -> Sequence[Word]:
    return in_full(said, names=[one.span for one in mentions])


def _beside(said: Sequence[Word], mentions: Sequence[Mention]) -> list[str]:
    """The words that are of no name."""
    return [word.folded for word in _without(said, mentions)]


def _without(said: Sequence[Word], mentions: Sequence[Mention]) -> Sequence[Word]:
    spans = [one.span for one in mentions]
    kept = [word for word in said if not any(start <= word.span[0] < stop for start, stop in spans)]
    return in_full(kept)


def _with_opponents(said: Sequence[Word], mentions: Sequence[Mention]) -> Sequence[Word]:
    return cast_as_sides(said, (), [one for one in mentions if not one.pronoun])


def begins_as_match(said: Sequence[Word]) -> bool:
    """Whether the message begins as announcements do: "next: ...", "womens first. next ..."."""
    return _SURE_NEXT.search(folded_line(without_heading(said))) is not None


def match_said(
    text: str, said: Sequence[Word], mentions: Sequence[Mention], *, announced: bool = False
) -> MatchSaid | None:
    """The announcement of a match, if the message is one; `announced` where that is known."""
    line = folded_line(_mended(said, mentions))
    sides = " ".join(word.folded for word in in_full(_with_opponents(said, mentions)))
    if is_elsewhere(sides) or is_elsewhere(line) or any_of("other_matches.no_booking").search(line):
        return None
    opponents = tuple(one for one in mentions if not one.pronoun)
    mended = _mended(said, mentions)
    meant = "".join(word.gap + word.folded for word in mended)
    # "Red cap, 9:20" caps nothing; "cap 15" alone may have been taken for somebody.
    parts = format_parts(_without(said, [one for one in mentions if " " in one.typed]))
    at = put_right(text, clock) or put_right(meant, clock)
    court = put_right(text, court_of) or put_right(meant, court_of)
    facts = sum(1 for fact in (at, court, parts) if fact is not None)
    begins = _SURE_NEXT.search(line) is not None
    announced = announced or begins
    if begins or _are_met(said, opponents):
        opponents = _with_unknown(said, opponents)
    listed = bool(facts) and bool(opponents) and (len(opponents) > 1 or _COMING.search(line))
    moved = at is not None and court is not None and not _BOOKING.search(line)
    told = announces(line, _beside(said, mentions), opponents, at=at, court=court)
    if not ((announced and (opponents or facts > 1)) or listed or moved or told):
        return None
    return MatchSaid(
        text=text,
        mentions=opponents,
        at=at,
        court=court,
        format=None if parts is None else parts.playable,
        format_fault=None if parts is None else parts.fault,
    )


def clock(text: str) -> time | None:
    """A time of day: `10:40`, `2.30pm`, `at nine thirty`."""
    found = _TIME.search(text)
    if found:
        hour = int(found[1] or found[4])
        half = (found[3] or found[5] or "").lower()[:1]
        return _time(hour, int(found[2] or 0), half)
    packed = _PACKED_TIME.search(text)
    if packed:
        return _time(int(packed[1]), int(packed[2]), "")
    apart = _DIGITS_APART.search(text)
    if apart:
        return _time(int(apart[1]), int(apart[2]), "")
    if _NOON.search(text):
        return time(12, 0)
    spoken = text.lower().replace("o'clock", "oclock")
    return _past(spoken) or _spoken(spoken)


def _spoken(text: str) -> time | None:
    """`at nine fifteen`, `one twenty`, `at two`."""
    found = _SPOKEN_TIME.search(text)
    if found is None:
        return None
    hour = number_of(found[1] or found[3])
    minutes = _MINUTES[found[2].replace("-", " ")] if found[2] else 0
    return None if hour is None or not 1 <= hour <= 12 else _time(hour, minutes, "")


def _past(text: str) -> time | None:
    """`half past two`, `half two`, `quarter to four`."""
    found = _PAST.search(re.sub(r"\bhalf (?!past\b)", "half past ", text))
    hour = number_of(found[3]) if found else None
    if found is None or hour is None or not 1 <= hour <= 12:
        return None
    minutes = _FRACTIONS.get(found[1]) or int(found[1])
    if found[2] in {"past", "after"}:
        return _time(hour, minutes, "")
    return _time(hour - 1 or 12, 60 - minutes, "")


def court_of(text: str) -> str | None:
    named = (_court_name(found[1].lower()) for found in _COURT.finditer(text))
    return next((one for one in named if one is not None), None)


def _court_name(named: str) -> str | None:
    spelled = number_of(named)
    if spelled is not None:
        return str(spelled)
    return named.upper() if len(named) == 1 else named if named in _COURT_WORDS else None


def _time(hour: int, minute: int, half: str) -> time | None:
    if half == "p" and hour < 12:
        hour += 12
    if half == "a" and hour == 12:
        hour = 0
    if not half and hour < FIRST_HOUR:
        hour += 12
    return time(hour, minute) if hour < 24 and minute < 60 else None


def _are_met(said: Sequence[Word], opponents: Sequence[Mention]) -> bool:
    """Whether one stands where a pair is met, "semi vs bram and lotte": the other is named too."""
    before = {
        said[at - 1].folded
        for at, word in enumerate(said)
        if at and any(one.span[0] == word.span[0] for one in opponents)
    }
    return len(opponents) == 1 and bool(before & _MET)


def _with_unknown(said: Sequence[Word], known: tuple[Mention, ...]) -> tuple[Mention, ...]:
    """The names known and, with fewer than two, those beside them that nobody knows yet."""
    if len(known) > 1:
        return known
    spans = {one.span for one in known}
    unknown = [one for one in _unknown_opponents(said) if one.span not in spans]
    beside = [one for one in unknown if not known or _stands_beside(one, known[0], said)]
    return tuple(sorted([*known, *beside], key=lambda one: one.span))


def _stands_beside(one: Mention, other: Mention, said: Sequence[Word]) -> bool:
    """`Okafor and brandt`, `brandt/Okafor`: nothing but a joining word or mark in between."""
    first, last = sorted((one, other), key=lambda each: each.span)
    between = [word.folded for word in said if first.span[1] <= word.span[0] < last.span[0]]
    after = next(word.gap for word in said if word.span[0] == last.span[0])
    return between in ([], ["and"], ["n"], ["with"], ["plus"]) and (
        bool(between) or bool(set(after) & set("/&+,"))
    )


def _unknown_opponents(said: Sequence[Word]) -> tuple[Mention, ...]:
    """Names after `next` that nobody knows yet; each a NOBODY without any near name."""
    return tuple(
        Mention(typed=word.typed, span=word.span, certainty=Certainty.NOBODY)
        for word in said
        if word.folded.isalpha()
        and len(word.folded) > 2
        and word.folded not in _FORMAT_WORDS
        and not is_common(word.folded)
    )


_MET = frozenset(["vs", "v", "versus", "against", "facing"])
_FORMAT_WORDS = frozenset(["singles"])
