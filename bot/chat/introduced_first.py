"""Who writes, told in front of what they came to say: "hi this is marja i am watching ...".

The name in front is the writer's own: nobody to watch, and none of those we play.
"""

from __future__ import annotations

import re

from bot.chat.message import read_message
from bot.chat.said import BookSaid
from bot.chat.scout_said import scout_said
from bot.chat.view import ChatView
from knowledge.regex import regex

_GREETS = r"\W*(?:(?:hi|hey|hello|yo|hiya|ok|so|good (?:morning|afternoon))\W+)*"
_I_AM = (
    r"(?:this is|it'?s|i'?m|i am|my name is) (?!watching|playing|in|at|on|not)[^\W\d]+(?: here)?"
)
_ME_AND = r"me (?:n|and|&|\+|plus) (?P<partner>[^\W\d]+) "

_WATCHES = regex(
    rf"{_GREETS}{_I_AM}(?:\W+|\W+and )(?:(?:i am|i'?m|we are|we're) )?(?=(?:now )?watching\b)",
    re.IGNORECASE,
)
_ARE = regex(
    r"\b(?:two|the|some|a pair of) (?:sisters|brothers|twins|women|men|ladies|girls|boys|guys"
    r"|players|people)\b",
    re.IGNORECASE,
)
_WHO_PLAY = regex(
    r"[ ,;.]+(?:(?:they|who|they're|theyre)(?: (?:are|is))? )?(?:playing|play|up) "
    r"(?:against|vs|versus)\b.*$",
    re.IGNORECASE,
)

_PLAYS = regex(
    rf"{_GREETS}(?:{_I_AM}\W+)?(?:{_ME_AND})?(?:we |i )?(?=(?:got|have|play|are|r) )",
    re.IGNORECASE,
)


def watched(text: str, chat: ChatView) -> BookSaid | None:
    """Whom such a message watches, its writer left out, and whoever those play."""
    found = _WATCHES.match(text)
    if found is None or chat.forwarded or "?" in text:
        return None
    rest = _WHO_PLAY.sub("", _ARE.sub("", text[found.end() :]))
    return scout_said(read_message(" ".join(rest.split()), chat), chat)


def after_introduction(text: str) -> tuple[str, str | None]:
    """What is said behind such an opening, and the partner that it names: "me n marco got ..."."""
    found = _PLAYS.match(text)
    if found is None or not found["partner"]:
        return text, None
    return text[found.end() :], found["partner"]
