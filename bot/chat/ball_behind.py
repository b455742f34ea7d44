"""A ball that has gone over one of us: no overhead any more but their lob, which is run for.

Who asks how to hit it is told to turn and run, never to backpedal (common practice; most falls
are backward, Myers and Hanks 2024).
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_OVERHEADS = frozenset({Topic.AIM_OVERHEAD, Topic.LOB})
"""What was asked last, for "what if its behind me" to be of a ball and not of the wind."""

_HIGH = regex(r"\b(?:lob|lobs|lobbed|overhead|overheads|smash|smashes|put ?away)\b")
_IS_BEHIND = (
    r"(?: (?:is|was|goes|gets|got|comes|flies|sails|lands|drops|went|already|too|way|far|really"
    r"|going|coming|just|thats|over|my|our|heads?|a|bit))*"
    r" (?:behind|past|over) (?:me|us|my head|our heads)\b"
)
_BALL = r"(?:it|its|thats|ball|lob|overhead|smash|one)"
_BEHIND = regex(rf"\b{_BALL}{_IS_BEHIND}")
_LEANS = regex(r"(?:(?:ok|okay|so|well|hm+|yes|no) )*(?:and|but|what|or|if|when|how|even)\b")
_ELSEWHERE = regex(
    r"\b(?:let|leave|out|bounce|bounced|fault|legal|rules?|allowed|counts?|wind|windy|breeze|sun"
    r"|who|whose|who s|whos|should i lob|do i lob|my lob|our lob|can i lob|we lob|i lob)\b"
)
"""What else is asked of such a ball: it has its own answer."""


def ball_behind(message: Message, chat: ChatView) -> Question | None:
    """ "What if its behind me" of an overhead: the question of their lob that it is."""
    line = " ".join(word.folded for word in message.said)
    if _BEHIND.search(line) is None or _ELSEWHERE.search(line) is not None:
        return None
    is_high = _HIGH.search(line) is not None or chat.last_topic in _OVERHEADS
    if not is_high or not (message.asks or _LEANS.match(line)):
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(text=message.text, topic=Topic.LOB, confidence=CERTAIN, slots=slots)
