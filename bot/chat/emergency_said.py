"""An emergency, answered at once; of the rest only a rally that a part of its own tells counts.

The score stays right when they play on, and nothing of the message becomes a note.
"""

from __future__ import annotations

from bot.chat.message import read_message
from bot.chat.rallies_said import brief_rally
from bot.chat.said import Question, RallySaid, Understood
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.cautions import is_emergency
from knowledge.regex import regex
from knowledge.vocabulary import Topic

LONGEST = 5
"""Words of such a rally: "lost that one", "they won it". Our own bound."""

_MARKS = regex(r"[,;.!?:()\n–—]+|\s(?:but|and|tho|though)\s")
_WHOSE = regex(r"\b(?:won|lost|their|our|theirs|ours)\b")
"""Who got it is said outright: "out", or "hit it long", may tell of the ball that hurt somebody."""


def emergency_said(text: str, chat: ChatView) -> tuple[Understood, ...]:
    """The call for help, after the rally that it may be told with; empty without an emergency."""
    if not is_emergency(text):
        return ()
    asked = Question(text=text, topic=Topic.WEATHER_OR_BODY, confidence=CERTAIN)
    rally = _rally(text, chat)
    return (asked,) if rally is None else (rally, asked)


def _rally(text: str, chat: ChatView) -> RallySaid | None:
    """The one rally told so; None where none is, or two are."""
    if not chat.match_on or chat.forwarded:
        return None
    parts = [part.strip() for part in _MARKS.split(text)]
    short = [part for part in parts if part and len(part.split()) <= LONGEST]
    told = [brief_rally(read_message(part, chat), chat) for part in short if _tells(part)]
    rallies = [one for one in told if isinstance(one, RallySaid) and not one.corrects]
    return rallies[0] if len(rallies) == 1 else None


def _tells(part: str) -> bool:
    return _WHOSE.search(part.lower()) is not None and not is_emergency(part)
