"""Who serves, and as which server, by the words beside a score."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.numbers import number
from bot.chat.score_words import FIRST, SECOND, SERVER_WORDS, THEY_CALL, THEY_SERVE, WE_SERVE
from bot.chat.serve_told import side_serving
from bot.chat.words import Word
from knowledge.regex import regex

_WENT_OVER = regex(r"\b(?:(?P<they>they|their|theirs)|we|our|ours) (?:serve|ball),? side ?out\b")
"""Whose serve it was that is over: "their serve, side out"."""


_IN_THEIR_CALL = regex(
    r"(?:(?:ok|okay|so|and|now|still|just|but) )*(?:(?P<we>we are|we re|were|we r|we)"
    r"|they are|they re|theyre|they r|they) (?:(?:now|still|just) )*# #(?: #)?(?: (?:now|still))?"
)
"""`we're 0-0-1`: a side that is a call of three numbers serves at it."""


def serves_level_call(line: str) -> bool | None:
    """Whose call a level one is by who is said to be at it; None where that is not said.

    "We are tied 4-4-2" is said of both, and of two numbers nobody's call is told.
    """
    found = _IN_THEIR_CALL.fullmatch(line)
    return None if found is None else found["we"] is not None


def serving_side(line: str) -> bool | None:
    """Whether we serve by what a line of the score says; None where it does not say."""
    gone = _WENT_OVER.search(line)
    if gone is not None:
        return gone["they"] is not None
    if WE_SERVE.search(line) and not THEY_CALL.search(line):
        return True
    return False if THEY_SERVE.search(line) else side_serving(line)


_FIRST = (
    r"(?:serv(?:e|es|ed|ing)|receiv(?:e|es|ed|ing)|start(?:s|ed)?|begins?|began|up) (?:it )?"
    r"(?:first|1st)"
)
_SERVES_FIRST = regex(rf"\b{_FIRST}\b(?! serv)")
_NUMBERED = regex(r"\bserver\b|\b(?:number|serve) (?:1|one)\b")
_SERVED_FIRST = regex(
    r"\b(?P<side>we|they) (?:have |had |ve |will |ll )?(?:served|started|began|serve|start)"
    r" (?:it )?(?:first|1st)\b"
)


def serves_first(line: str) -> bool:
    """ "They serve first, 0-0": who begins, and not which of their two servers serves."""
    return _SERVES_FIRST.search(line) is not None and _NUMBERED.search(line) is None


def served_first(line: str) -> bool | None:
    """Whether we serve at 0-0 by "we served first, score 0-0-2"; None where it does not say."""
    found = _SERVED_FIRST.search(line)
    return None if found is None else found["side"] == "we"


def server_told(said: Sequence[Word], line: str) -> int | None:
    """Which server serves: "second server", "server 2", "Hale serving 1"."""
    numbered = [
        number(said[place + 1])
        for place, word in enumerate(said[:-1])
        if word.folded in SERVER_WORDS
    ]
    if 1 in numbered or 2 in numbered:
        return 2 if 2 in numbered else 1
    if SECOND.search(line):
        return 2
    return 1 if FIRST.search(line) else None
