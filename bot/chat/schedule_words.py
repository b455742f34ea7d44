"""The words of a day's schedule as they are meant: "remnd", "pusehd" and "20mins" spelled out."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from rapidfuzz.distance import DamerauLevenshtein

from bot.chat.common_words import is_common
from bot.chat.words import Word, words_in
from knowledge.regex import regex

_WORDS = words_in(
    "remind reminds reminding reminder reminders cancel cancelled before minutes minute hour match"
    " moved pushed delayed postponed rescheduled shifted bumped forward earlier later timezone"
    " always every alarm notification court instead starts"
)
_LETTERS_PER_SLIP = 5
"""Slips of the finger allowed: one in a word of five letters, two from ten on."""

_RUN_TOGETHER = regex(r"(\d{1,3})(m|min|mins|minutes|h|hr|hrs|hour|hours)")
_SHORT = {
    "b4": "before", "bfore": "before", "rmd": "remind", "mtch": "match", "mns": "min", "mn": "min",
    "r": "are", "u": "you", "til": "until", "pls": "please", "plz": "please", "tmrw": "tomorrow",
    "w": "with", "tz": "timezone", "min": "min", "minuets": "minutes",
}  # fmt: skip


def schedule_line(said: Sequence[Word]) -> str:
    """The words in one row, each as it is meant."""
    return " ".join(_meant(word.folded) for word in said)


@lru_cache(maxsize=1 << 12)
def _meant(folded: str) -> str:
    together = _RUN_TOGETHER.fullmatch(folded)
    if together:
        return f"{together[1]} {together[2]}"
    if folded in _SHORT:
        return _SHORT[folded]
    if folded in _WORDS or is_common(folded) or len(folded) < _LETTERS_PER_SLIP:
        return folded
    slips = 2 if len(folded) >= 2 * _LETTERS_PER_SLIP - 2 else 1
    near = [
        (DamerauLevenshtein.distance(folded, word, score_cutoff=slips), word)
        for word in sorted(_WORDS)
    ]
    least, word = min(near)
    return word if least <= slips and word[0] == folded[0] else folded
