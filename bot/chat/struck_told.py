"""One of us was struck by somebody's body or paddle: "okoye elbowed me at the net".

Told so it is no sore elbow, no note on how anybody plays, and an Erne that ends in us no winner.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.partner_trouble import line_of_us
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.words import words_in
from knowledge.tactics.contact import tells_of_contact
from knowledge.vocabulary import Topic

_OTHERS = words_in("him her")
"""Who may be one of them, struck by their own partner."""


def struck_told(message: Message, chat: ChatView) -> Question | None:
    """The question of a body that it is; None where nobody of ours was struck."""
    line = line_of_us(message, chat)
    if not _OTHERS.isdisjoint(line.split()) or not tells_of_contact(line):
        return None
    slots = find_slots(message.said, (), message.told)
    topic = Topic.WEATHER_OR_BODY
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
