"""Matches announced by little: only the names, only the court, or only the time."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import time

from bot.chat.forms import any_of, word_set
from bot.chat.numbers import number_of
from bot.chat.said import Mention
from knowledge.regex import regex

_CLOCK = regex(
    r"\b\d{1,2} \d{2}\b|\b\d{3,4}\b|\b(?:am|pm|noon|oclock|past|quarter|half|thirty|fifteen"
    r"|forty)\b"
)
"""A time told to the minute: "at 5" alone may be anything."""

_RUNNING = regex(
    r"\b(?:serve|serving|serves|up(?! at)|down|all)\b.*\d|\d.*\b(?:serve|serving|serves)\b"
)
"""A score of the match that is on already."""

_OPENS = regex(r"(?:new match|start(?:s|ing|in)?|we (?:get|got|play|face)|vs|versus)\b")
"""A message that opens so announces, whatever else it says."""

_NUMBERS = regex(r"\b(?!0 0)\d{1,2} \d{1,2}\b")

_ASKS = regex(r"\b(?:who|whos|whose|which)\b(?! (?:serv|starts?|begins?))")
"""`brandt vs okoye who's tougher`: who weighs two asks; of a match only its first serve is."""

STRAY_WORDS_ALLOWED = 2
A_PAIR = 2


def announces(
    line: str,
    beside: Sequence[str],
    opponents: Sequence[Mention],
    *,
    at: time | None,
    court: str | None,
) -> bool:
    """Whether the message says hardly more than whom we play, where, or when.

    `beside` are its words without the names.
    """
    stray = sum(
        word not in word_set("of_a_schedule") and number_of(word) is None and not word.isdigit()
        for word in beside
    )
    if stray > STRAY_WORDS_ALLOWED or (_RUNNING.search(line) and "0 0" not in line):
        return False
    if len(opponents) >= A_PAIR:
        rest = " ".join(beside)
        if (stray and not _OPENS.match(rest)) or _NUMBERS.search(line) or _ASKS.search(rest):
            return False
        return any_of("announced.names").search(rest) is not None
    if opponents or stray:
        return False
    where = court is not None and any_of("announced.place").search(line)
    when = at is not None and _CLOCK.search(line) and any_of("announced.time").search(line)
    return bool(where or when)
