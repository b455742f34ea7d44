"""What to say to each other in a break: one ball and a calm word, not what new partners agree."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from knowledge.complaints import complains
from knowledge.tactics.break_talk import asks_what_to_say
from knowledge.vocabulary import Topic


def break_talk_asked(message: Message) -> Question | None:
    """ "They called time out, what should we talk about": the question that it is."""
    if not asks_what_to_say(message.text) or complains(message.text):
        return None
    slots = find_slots(message.said, (), message.told)
    return Question(text=message.text, topic=Topic.CUE, confidence=CERTAIN, slots=slots)
