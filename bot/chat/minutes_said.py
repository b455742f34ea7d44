"""A length of time as said: "20 min", "half an hour", "an hour and a half"."""

from __future__ import annotations

from bot.chat.numbers import number_of
from knowledge.regex import regex

_MINUTES_PER_HOUR = 60
_FIXED = (
    (regex(r"\b(?:an |one |1 )?hour and (?:a half|30)\b|\b1 5 ?h(?:ou)?rs?\b"), 90),
    (regex(r"\b(?:three|3) quarters of an hour\b"), 45),
    (regex(r"\bhalf (?:an |a )?(?:hour|hr)\b"), 30),
    (regex(r"\b(?:a )?quarter (?:of an )?(?:hour|hr)\b"), 15),
    (regex(r"\ba couple of minutes\b"), 2),
)
_NUMBER = (
    r"(\d{1,4}|an|a|one|two|three|four|five|six|seven|eight|nine|ten|fifteen|twenty|thirty|forty"
    r"|forty five|fifty|sixty)"
)
_HOURS = regex(
    rf"\b{_NUMBER} ?(?:h|hr|hrs|hour|hours)\b(?: (?:and )?(\d{{1,2}}) ?(?:m|min|mins|minutes))?"
)
_MINUTES = regex(rf"\b{_NUMBER} ?(?:m|min|mins|minute|minutes)\b")
_BARE = regex(rf"\b{_NUMBER} (?:before|ahead|prior|earlier|later)\b|\b(\d{{1,3}})$")
_TENS = {"fifteen": 15, "thirty": 30, "forty": 40, "forty five": 45, "fifty": 50, "sixty": 60}


def minutes_said(line: str, *, bare: bool = False) -> int | None:
    """The minutes that a line of folded words tells; `bare`: a number alone is minutes too."""
    for form, minutes in _FIXED:
        if form.search(line):
            return minutes
    hours = _HOURS.search(line)
    if hours:
        return _number(hours[1]) * _MINUTES_PER_HOUR + int(hours[2] or 0)
    found = _MINUTES.search(line) or (_BARE.search(line) if bare else None)
    if found is None:
        return None
    return _number(found[1] or found[2])


def _number(word: str) -> int:
    if word in ("a", "an"):
        return 1
    if word in _TENS:
        return _TENS[word]
    return int(word) if word.isdigit() else number_of(word) or 0
