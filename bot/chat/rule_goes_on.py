"""More of the incident that a rule was asked about: "it was after the bounce though"."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.message import Message
from bot.chat.said import Question
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_TELLS_MORE = regex(
    r"(?:(?:but|no|well|ok|and|yeah|yes|actually|though) )*"
    r"(?:it|that|(?:the )?ball|my (?:foot|feet|toe)|i|he|she|they|we)"
    r" (?:(?:clearly|already|only|just) )*"
    r"(?:was|were|had|did|didnt|wasnt|bounced|landed|touched|hit|stepped)\b"
)
_OF_A_BALL = frozenset({Topic.TAKE_OR_LET_BOUNCE, Topic.LET_IT_GO, Topic.TRANSITION})
"""Advice on a ball to come, which words of one that was played are near to."""


def rule_goes_on(question: Question, message: Message, chat: ChatView) -> Question:
    """The question, of the rule still where it only tells more of what happened."""
    if chat.last_topic is not Topic.RULES_QUESTION or question.topic not in _OF_A_BALL:
        return question
    line = " ".join(word.folded for word in message.said)
    if "?" in message.text or _TELLS_MORE.match(line) is None:
        return question
    return replace(question, topic=Topic.RULES_QUESTION, confidence=CERTAIN)
