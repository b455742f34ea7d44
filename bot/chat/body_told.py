"""A body of ours that pinches or aches in some stroke, told as a statement: no question of that
stroke.

"Petra says her shoulder pinches on the overhead" asks for no shot, whatever it names and whatever
was asked before. Opponents are left out, and so is whatever asks, or goes on to tell of play.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat.asking import surely_asks
from bot.chat.message import Message, opponents
from bot.chat.partner_trouble import line_of_us
from bot.chat.said import Question
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.complaints import complains
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_PART = (
    r"(?:elbows?|shoulders?|knees?|wrists?|ankles?|(?:lower |upper )?back|hips?|neck|hands?|foot"
    r"|feet|heels?|cal(?:f|ves)|hamstrings?|groin|thumb|fingers?|(?:fore)?arm|legs?|thighs?|shins?"
    r"|quads?|achilles|ribs?|rotator cuff|tendon|biceps?|triceps?|hammy)"
)
_ACHES = (
    r"(?:hurts?|hurting|pinch(?:es|ing|ed)|sting(?:s|ing)|ach(?:es|ing|ed)|ache|twing(?:es|ing|ed|e)"
    r"|throb(?:s|bing)|burn(?:s|ing)|click(?:s|ing)|cramp(?:s|ing)|bark(?:s|ing)|sore|painful"
    r"|tingl(?:es|ing)|grab(?:s|bing)|catch(?:es|ing)|jab(?:s|bing)|nag(?:s|ging)|(?:in )?pain)"
)
_WHOSE = r"(?:(?:my |our |the )?(?:ourname|partner|\w+s)|my|our|his|her|their|the)"
_SAYS = (
    r"(?:says?|said|saying|tells? (?:me|us)|told (?:me|us)|complain(?:s|ed|ing)(?: that)?|thinks)"
)
_HOW = (
    r"(?:is|s|was|keeps?|starts?|started|has|been|a|bit|little|really|still|now|always|sometimes"
    r"|kind|kinda|of|just|so|badly|again|got|gets|getting|all)"
)
_SMALL = r"(?:ok|okay|so|and|but|also|now|hey|um|btw|that|oh|well|no)"
_WHEN = r"(?:on|in|at|when|whenever|with|during|every|each|any|after|as|if|from|for|hitting|doing)"

_TOLD: Final = regex(
    rf"(?:{_SMALL} )*(?:(?:\w+ ){{0,2}}{_SAYS} (?:that )?)?(?:{_WHOSE} )?"
    rf"(?:(?:left|right|bad|good|playing|paddle|hitting) )*{_PART} (?:{_HOW} )*{_ACHES}"
    rf"(?: (?:a bit|a little|bad|badly|again|now|today|me|her|him|them|still|really|like hell))*"
    rf"(?: {_WHEN}(?: \w+){{0,7}})?"
)
"""The whole message: somebody may say so, whose part it is, what it does, and in what stroke."""

_ASKS: Final = regex(
    r"\b(?:what|who|whom|whos|how|where|which|why|should|shall|can|could|do we|do i|instead|advice"
    r"|ideas?|tips?|attack|target|legal|allowed|or)\b"
)

_OF_STAFF = frozenset({Topic.WEATHER_OR_BODY, Topic.RULES_QUESTION})
"""Topics that answer a body already, or the rulebook's time for it."""


def body_told(question: Question, message: Message, chat: ChatView) -> Question:
    """The question as one of a body, where the message only tells that one of ours hurts."""
    if question.topic in _OF_STAFF or not only_tells_of_a_body(message, chat):
        return question
    topic = Topic.WEATHER_OR_BODY
    return replace(question, topic=topic, confidence=CERTAIN, offers=(), changes=False)


def only_tells_of_a_body(message: Message, chat: ChatView) -> bool:
    """Whether it is all told of a body, nobody of theirs is named and nothing is asked."""
    if surely_asks(message.text, message.said):
        return False
    if any(not one.pronoun for one in opponents(message.mentions, chat)):
        return False
    line = line_of_us(message, chat)
    if _ASKS.search(line) is not None or _TOLD.fullmatch(line) is None:
        return False
    return complains(message.text)
