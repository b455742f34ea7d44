"""A match told by its round: "last match final its the banger pair lou tanner and kit ferris four
thirty centre court we serve".

Before the names stand words of a schedule, the round among them, and perhaps what kind of pair it
is; when or where stands behind them. So no question, no result and no note is ever read so.
"""

from __future__ import annotations

import re

from bot.chat.announced_names import PAIR
from bot.chat.announcements import clock, court_of
from bot.chat.match_announced import match_announced
from bot.chat.message import Message, read_message
from bot.chat.said import MatchSaid
from bot.chat.view import ChatView
from knowledge.regex import regex

_BEFORE = (
    r"(?:(?:ok|okay|so|and|um|uh|right|alright|now|then|last|our|the|my|match|game|its|it is|it's"
    r"|we have|we've got|weve got|we got|big|mixed|mens|womens)[ ,:]+)*"
)
_ROUND = (
    r"(?:semi ?-?finals?|quarter ?-?finals?|finals?|semis?|quarters?|qf|sf|bronze|gold"
    r"|medal)(?: (?:match|medal|game|round))*"
)
_BEHIND = (
    r"(?:[ ,:]+(?:is|its|it is|it's|thats|that is|against|v|vs|versus|now|up|with"
    r"|(?:the|that|a|this) (?:[a-z]+ )?(?:pair|team|duo|couple|lot)|the two|called))+[ ,:]+"
)
_OPENING = regex(rf"{_BEFORE}{_ROUND}{_BEHIND}", re.IGNORECASE)
_NAMED_COURT = regex(r"\b(centre|center|stadium|show|main|grandstand) court\b", re.IGNORECASE)


def match_of_a_round(message: Message, chat: ChatView) -> MatchSaid | None:
    """The match of the two names behind such an opening; None where neither when nor where is
    told, or another number of names stands there."""
    opening = _OPENING.match(message.text.strip())
    if opening is None or chat.forwarded or message.asks or "?" in message.text:
        return None
    rest = message.text.strip()[opening.end() :].strip(" .!")
    rest = _NAMED_COURT.sub(r"court \1", rest)
    if clock(rest) is None and court_of(rest) is None:
        return None
    announced = read_message(f"next: {rest}", chat)
    found = None if announced.note.claims else match_announced(announced, chat)
    return found if found is not None and len(found.mentions) == PAIR else None
