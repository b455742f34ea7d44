"""Short words behind a wind that was told: "does it change the 3rd", "we changed ends"."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_LEAD = r"(?:(?:so|ok|okay|and|but|well) )*"
_SHOTS = (
    (r"(?:3rds?|thirds?)(?: shots?)?|(?:third|3rd)(?: shot)? (?:drops?|drives?)", Topic.THIRD_SHOT),
    (r"serves?|serving", Topic.AIM_SERVE),
    (r"returns?|returning", Topic.AIM_RETURN),
    (r"lobs?|lobbing", Topic.LOB),
    (r"dinks?|dinking", Topic.AIM_DINK),
    (r"speed ?ups?|spd ups?", Topic.AIM_ATTACK),
)
_CHANGES = (
    rf"{_LEAD}(?:does|do|will|would|how (?:does|do|much does)) (?:it|that|this|the wind)"
    r" (?:change|affect|matter (?:for|to|on)|alter|hurt|help|touch|do anything to|do to)"
    r" (?:(?:the|my|our|anything|on|for|about) )*"
)
_ASKED = tuple(
    (regex(rf"{_CHANGES}(?:{shot})(?: (?:too|then|now|as well|at all|much))*"), topic)
    for shot, topic in _SHOTS
)
_IN_WIND = frozenset([Topic.WEATHER_OR_BODY, *(topic for _, topic in _SHOTS)])
"""What may have been asked last, in the wind: "it" is still the wind behind the thirds."""

_ENDS = regex(
    rf"{_LEAD}(?:(?:we|just|have|ve|now) )*(?:changed|switched|swapped) (?:ends|sides of the court)"
    r"(?: (?:now|just now|at \d+|over|again))*|(?:on|at) the other end now"
)
"""Told: "do we change ends" asks for the rule."""


def wind_goes_on(message: Message, chat: ChatView) -> Question | None:
    """What such words ask while a wind is known; None for all else."""
    if not chat.windy:
        return None
    line = " ".join(word.folded for word in message.said)
    topic = None
    if chat.last_topic in _IN_WIND and not chat.hurt:
        topic = next((topic for form, topic in _ASKED if form.fullmatch(line)), None)
    if topic is None and tells_ends_changed(line) and "?" not in message.text:
        topic = Topic.WEATHER_OR_BODY
    if topic is None:
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)


def tells_ends_changed(line: str) -> bool:
    """Whether folded words tell that ends were changed, and nothing else."""
    return _ENDS.fullmatch(line) is not None
