"""A what-if after which the last answer stands: its call, what it said of such a ball, and why."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.reply import Reply
from bot.chat.words import words
from knowledge.regex import regex

SUPPOSES = regex(r"\b(?:if|when|whenever|once|in case|suppose)\b")
MOST_LINES = 2
"""Lines of the last answer that are told again."""

_TOLD_OF = frozenset(
    ["deep", "short", "backhand", "forehand", "stretched", "jammed", "body", "wide", "middle",
     "lob", "lobs", "drive", "drives", "high", "low", "slow", "fast", "late", "tired", "wind",
     "lefty"]
)  # fmt: skip
"""What a line may be about, as a message supposes it: "what if the return is deep"."""

_OPENS = 5
"""Words of a line among which it says of which ball it is: "One of you pulled wide?"."""


def supposes(text: str) -> bool:
    """Whether the message puts a case, and does not merely ask again."""
    return SUPPOSES.search(" ".join(word.folded for word in words(text))) is not None


def stands_as_it_was(reply: Reply, text: str, why: str) -> Reply:
    """The reply's call with the lines that speak of what the text supposes, and `why` it stands."""
    call, *lines = reply.text.splitlines()
    supposed = _TOLD_OF.intersection(word.folded for word in words(text))
    told = [line for line in lines if supposed.intersection(_opening(line))]
    return replace(reply, text="\n".join([call, *told[:MOST_LINES], why]), picture=None)


def _opening(line: str) -> list[str]:
    """The words before the colon or the question mark that part a case from what is then done."""
    case, mark, _ = line.partition("?" if "?" in line else ":")
    said = [word.folded for word in words(case)]
    return said if mark and len(said) <= _OPENS else []
