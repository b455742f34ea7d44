"""What the other of us does when one poaches: "what is my position when he poaches"."""

from __future__ import annotations

from bot.chat.message import Message, is_ours
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.tactics.our_crossing import is_of_a_partner, who_crosses
from knowledge.vocabulary import Topic


def partner_crosses_asked(message: Message, chat: ChatView) -> Question | None:
    """The question; None where an opponent is the one who poaches, or nothing is asked of us."""
    if who_crosses(message.text) is None:
        return None
    theirs = [one for one in message.mentions if one.players and not is_ours(one, chat.ours)]
    if any(not one.pronoun for one in theirs) or (theirs and not is_of_a_partner(message.text)):
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    topic = Topic.BEING_TARGETED
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
