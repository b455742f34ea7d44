"""Whether to go behind somebody who leaves their place: "should i go behind him", "behind lotte?".

The shot just asked about is meant; with none it is the third, which a poacher leaves a place for.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_BEHIND = regex(
    r"(?:(?:so|ok|and|then|or|but|maybe) )*"
    r"(?P<asks>(?:should|shall|do|can|could|would) (?:i|we) )?(?:(?:i|we|lets|just|always) )*"
    r"(?:(?:hit|go|play|drop|drive|aim|dink|put|return) )?(?:(?:it|the ball|my third|thirds) )?"
    rf"behind (?:{NAME}|him|her|them)(?: (?:then|instead|once|early|though|right|more|again))*"
)
"""And nothing else: "the ball went behind him" tells, "he stands behind her" is no shot."""

_OF_A_SHOT = frozenset({Topic.AIM_DINK, Topic.AIM_RETURN, Topic.AIM_ATTACK, Topic.THIRD_SHOT})


def behind_asked(message: Message, chat: ChatView) -> Question | None:
    """The question, of one of theirs; None unless the message says nothing else."""
    found = _BEHIND.fullmatch(named_line(message.said, message.mentions))
    if found is None or not (found["asks"] or "?" in message.text) or chat.forwarded:
        return None
    whom = {one for mention in message.mentions for one in mention.players}
    if not whom or whom & set(chat.ours):
        return None
    last = chat.last_topic
    topic = last if last in _OF_A_SHOT and last is not None else Topic.THIRD_SHOT
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
