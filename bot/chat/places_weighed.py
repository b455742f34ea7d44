"""A few words that lean on the shot or the sides just asked about: "short or deep", "so swap?".

Read alone they may be of anything; what was just spoken of is meant.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.words import folded_line, words_in
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_OF_A_SHOT = frozenset(
    {Topic.AIM_SERVE, Topic.AIM_RETURN, Topic.AIM_DINK, Topic.AIM_ATTACK, Topic.AIM_OVERHEAD}
)
_PLACES = words_in(
    "short deep body bh fh backhand forehand line middle wide t cross crosscourt high low soft hard"
    " fast slow left right corner hip hips chest feet shoulder jam angle inside outside flat slice"
    " topspin spin lob"
)
_AROUND = words_in(
    "and so ok then or the a to at in on into down his her their him them go it more better maybe"
    " just like rather ball one side is should i we do hit up n"
)
_FEWEST = 2

_WHO_CALLS = regex(
    r"(?:(?:so|ok|and|but) )*whos? (?:calls?|says?|shouts?|decides?|calling)(?: (?:it|that"
    r"|them|mine|lobs?|yours|then|out loud))*"
)
"""After lobs, whose ball it is; a line call has its own words."""

_OF_SIDES = frozenset({Topic.COVER_MIDDLE, Topic.STACK_OR_NOT})
_SWAP = regex(
    r"(?:(?:so|ok|then|and|should|do|shall|can|we|us|just) )*(?:swap|switch|change)"
    r"(?: (?:sides|it|then|now|us|over|places|or not))*"
)


def places_weighed(message: Message, chat: ChatView) -> Question | None:
    """The last question again, or whether to swap; None unless the message says nothing else."""
    if chat.last_topic in _OF_SIDES and _SWAP.fullmatch(folded_line(message.said)):
        slots = find_slots(message.said, message.mentions, message.told)
        topic = Topic.STACK_OR_NOT
        return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
    if chat.last_topic is Topic.LOB and _WHO_CALLS.fullmatch(folded_line(message.said)):
        return Question(text=message.text, topic=Topic.LOB, confidence=CERTAIN, changes=True)
    if chat.last_topic not in _OF_A_SHOT or chat.forwarded or message.mentions:
        return None
    line = [word.folded for word in message.said]
    places = [word for word in line if word in _PLACES]
    if "or" not in line or len(places) < _FEWEST or not {*line} <= _PLACES | _AROUND:
        return None
    assert chat.last_topic is not None, "it is of a shot"
    return Question(text=message.text, topic=chat.last_topic, confidence=CERTAIN, changes=True)
