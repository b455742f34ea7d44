"""A review asked for: "review", "quick recap pls", "how did we do today", "what worked"."""

from __future__ import annotations

import re

from bot.chat.message import Message
from bot.chat.near_words import mended
from bot.chat.question import BookSaid, BookVerb
from bot.chat.words import words_in
from knowledge.regex import regex

_SPELT = words_in("review recap debrief worked learn write match game")
_SHORT_SPELT = {"hwo": "how", "waht": "what", "wat": "what", "whta": "what", "howd": "how did"}
_POLITE = words_in(
    "ok hey hi please pls now so lets let us can could i want to do a the our we and then time for "
    "give me quick short"
)
_REST = words_in("please pls now then guys today tonight overall again out there time")
_REVIEW = (
    r"(?:(?:match|game|after|post|last|short|quick|the) )*(?:review|recap|debrief)"
    r"(?: (?:of|the|that|this|our|last|match|game|it|us))*"
)
_HOW = (
    r"how did (?:we|it|that|this|the)(?: last)?(?: (?:match|game))?(?: (?:do|go|went|play))"
    r"(?: (?:against|vs|with) N)?(?: (?:in|that|this|the|our|last|match|game))*"
)
_WAS = r"how (?:was|went) (?:the|that|this|our)(?: last)? (?:match|game)"
_WHAT = (
    r"what (?:worked|went (?:well|right)|did we (?:learn|do well))"
    r"(?: (?:well|best|for us|in|that|this|the|our|last|match|game))*"
)
_WRITE = r"what (?:should|do) (?:we|i) write down(?: (?:after|about|of|the|this|that|match|game))*"

_ASKS = regex(rf"{_REVIEW}|post match|{_HOW}|{_WAS}|{_WHAT}|{_WRITE}")
"""The whole of the message but courtesies."""


def review_said(message: Message) -> BookSaid | None:
    """The request; None unless it is all that is said."""
    line = _line(message)
    if not _ASKS.fullmatch(line):
        return None
    return BookSaid(text=message.text, verb=BookVerb.REVIEW)


def _line(message: Message) -> str:
    """The words, mended, N for a name, without the courtesies at either end."""
    line = []
    for word in message.said:
        if any(one.span[0] <= word.span[0] < one.span[1] for one in message.mentions):
            line.append("N")
        else:
            folded = _SHORT_SPELT.get(word.folded, word.folded)
            line += [mended(each, _SPELT) for each in folded.split()]
    while line and line[0] in _POLITE and not _ASKS.fullmatch(" ".join(line)):
        line = line[1:]
    while line and line[-1] in _REST and not _ASKS.fullmatch(" ".join(line)):
        line = line[:-1]
    return re.sub(r"N(?: N)+", "N", " ".join(line))
