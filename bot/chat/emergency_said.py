"""An emergency, answered at once; of the rest only a rally or a score told apart from it counts.

The score stays right when they play on, and nothing of the message becomes a note.
"""

from __future__ import annotations

from bot.chat.message import read_message
from bot.chat.rallies_said import brief_rally
from bot.chat.said import Question, RallySaid, ScoreSaid, Understood
from bot.chat.scores import score_message
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


_CALLED = regex(r"^\W*\d{1,2}\D{1,3}\d{1,2}\b(?!\s*(?:min|degrees|years|percent|%))")


def emergency_said(text: str, chat: ChatView) -> tuple[Understood, ...]:
    """The call for help, with the rally or the score that it may be told with; empty without an
    emergency."""
    if not is_emergency(text):
        return ()
    asked = Question(text=text, topic=Topic.WEATHER_OR_BODY, confidence=CERTAIN)
    rally = _rally(text, chat)
    if rally is not None:
        return (rally, asked)
    score = _score(text, chat)
    return (asked,) if score is None else (asked, score)


def _rally(text: str, chat: ChatView) -> RallySaid | None:
    """The one rally told so; None where none is, or two are."""
    if not chat.match_on or chat.forwarded:
        return None
    parts = [part.strip() for part in _MARKS.split(text)]
    short = [part for part in parts if part and len(part.split()) <= LONGEST]
    told = [brief_rally(read_message(part, chat), chat) for part in short if _tells(part)]
    rallies = [one for one in told if isinstance(one, RallySaid) and not one.corrects]
    return rallies[0] if len(rallies) == 1 else None


def _score(text: str, chat: ChatView) -> ScoreSaid | None:
    """The score that a part calls, and nothing else in it; None where none does, or two do."""
    if not chat.match_on or chat.forwarded or "?" in text:
        return None
    parts = [part for part in _MARKS.split(text) if part and _CALLED.search(part)]
    read = [read_message(part, chat) for part in parts if not is_emergency(part)]
    told = [score_message(one.text, one.said) for one in read if not one.mentions]
    scores = [one for one in told if isinstance(one, ScoreSaid) and one.score is not None]
    return scores[0] if len(scores) == 1 else None


def _tells(part: str) -> bool:
    return _WHOSE.search(part.lower()) is not None and not is_emergency(part)
