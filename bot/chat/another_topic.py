"""A short message that names another topic than the last: "and stacking", "does that change who
takes the middle". What stands in it alone counts for more than what was talked of before.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.changes_said import says_only_slots
from bot.chat.message import Message
from bot.chat.said import Question
from bot.chat.several_questions import part_of
from bot.chat.slots import find_slots
from bot.chat.topic_model import STANDS_ALONE_FROM, SURE_FROM
from bot.chat.topic_question import CERTAIN, likely_question, read_question
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_FIRST = r"(?:(?:ok|okay|so|and|but|hm+|then|oh|well|right|also|wait|or) )*"
_CHANGES = regex(
    rf"{_FIRST}(?:does|do|did|will|would|doesnt|wont) (?:that|it|this|these|those)(?: then| also)?"
    r" (?:change|affect|alter|influence|touch|matter (?:for|to)|do anything (?:for|to)"
    r"|change anything (?:for|about|with|on)|mean anything for) "
)
"""What asks whether the last answer moves another: what follows is what is asked."""

_AND = regex(
    rf"{_FIRST}(?:what about|how about|does (?:that|it) mean) |(?:(?:ok|so) )*(?:and|or|also) "
)
_SUPPOSES = regex(r"\b(?:if|when|unless|once)\b")
_OF_WORDS = frozenset({Topic.RULES_QUESTION, Topic.WEATHER_OR_BODY, Topic.SMALLTALK_OR_UNKNOWN})
"""Topics whose talk goes on in words that alone would mean something else."""

_ANYTHING = frozenset(["anything", "something", "it", "that", "things", "the", "call", "answer"])

_IT = "it"
"""The ball or the matter spoken of: "and how low do i take it" goes on about it."""

WORDS_OF_A_WHOLE_QUESTION = 8
"""Fewer may lean on what was asked before without a word that says so. Common practice."""

_OPENS = regex(r"(?:(?:ok|okay|so|hm+|oh|well|right|wait) )*")
_GOES_ON = regex(
    rf"{_FIRST}(?:and|or|if|when|what (?:if|about|when)|how about|but|even|same|then|also)\b"
)
_POINTS = regex(r"\b(?:it|its|that|thats|this|those|these|one|ones|there|then|instead|still)\b")
"""Words that may point at the last answer."""

_SHOT = regex(
    r"(?:(?:the|our|my|their|a|your|whole) )*"
    r"(?:(?P<aim_serve>serves?|serving)|(?P<aim_return>returns?|returning)"
    r"|(?P<third_shot>thirds?(?: shots?| balls?)?)|(?P<aim_dink>dinks?|dinking)"
    r"|(?P<lob>lobs?|lobbing)|(?P<stack_or_not>stacking|stack)|(?P<whom_to_target>targets?)"
    r"|(?P<game_plan>(?:game ?)?plan)|(?P<cover_middle>middle|seam))"
    r"(?: (?:then|now|too|also|as well|at all))*"
)
"""A shot or a matter named alone, by the topic that it then asks about."""


def shot_named(line: str) -> Topic | None:
    """The topic that a shot named alone asks about; None for any other words."""
    named = _SHOT.fullmatch(line)
    return None if named is None or named.lastgroup is None else Topic(named.lastgroup)


def another_topic(message: Message, chat: ChatView) -> Question | None:
    """The question of another topic; None where the message goes on with the last."""
    line = " ".join(word.folded for word in message.said)
    if chat.last_topic is None or chat.last_topic in _OF_WORDS:
        return None
    if _says_all(message, line):
        opening = _OPENS.match(line)
        return _whole(message, len(opening[0].split()) if opening else 0, chat)
    if _SUPPOSES.search(line):
        return None
    whether = _CHANGES.match(line)
    lead = whether or _AND.match(line)
    if lead is None:
        return None
    at = len(lead[0].split())
    rest = [word.folded for word in message.said[at:]]
    if _ANYTHING.issuperset(rest) or (whether is None and _IT in rest):
        return None
    topic = shot_named(" ".join(rest))
    asked: Question | None
    if topic is not None:
        if topic is Topic.COVER_MIDDLE and whether is None:
            return None  # "and the middle?" is where the ball asked about goes
        slots = find_slots(message.said, message.mentions, message.told)
        asked = Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
    else:
        asked = _alone(message, at, replace(chat, last_topic=None), is_sure=whether is None)
    is_other = asked is not None and asked.topic not in {*_OF_WORDS, chat.last_topic}
    return asked if is_other else None


def _says_all(message: Message, line: str) -> bool:
    """Whether it is a whole question that points at nothing said before: "they keep driving at my
    chest what do i do". What opens with "and if" or speaks of "it" goes on with the last."""
    is_whole = message.asks and len(message.said) >= WORDS_OF_A_WHOLE_QUESTION
    return is_whole and not (_GOES_ON.match(line) or _POINTS.search(line))


def _whole(message: Message, at: int, chat: ChatView) -> Question | None:
    """The question from place `at` on, behind "ok so", read by itself; None where it is of the last
    topic still, or of none."""
    alone = replace(chat, last_topic=None)
    asked = read_question(part_of(message, at, len(message.said), alone), alone)
    if not isinstance(asked, Question) or asked.confidence < STANDS_ALONE_FROM:
        return None
    is_other = asked.topic not in {*_OF_WORDS, chat.last_topic}
    return replace(asked, text=message.text) if is_other else None


def _alone(message: Message, at: int, chat: ChatView, *, is_sure: bool) -> Question | None:
    """What the words from place `at` on ask; None for a wing or a player of the same ball."""
    part = part_of(message, at, len(message.said), chat)
    if says_only_slots(part):
        return None
    asked = likely_question(part, chat)
    if asked is None or (is_sure and asked.confidence < SURE_FROM):
        return None
    return replace(asked, text=message.text)
