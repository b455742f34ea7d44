"""Whether the chat's last question is of a body, and of one that hurts.

A medical time-out asked for belongs to the complaint before it: "its fine now" still does.
"""

from __future__ import annotations

from bot.chat.asked import Asked
from knowledge.cautions import is_emergency
from knowledge.complaints import complains
from knowledge.rulebook.told_apart import asks_of_medical
from knowledge.vocabulary import Topic


def is_of_bodies(topic: Topic, text: str) -> bool:
    """Whether a question of the topic is of weather or bodies, or of the time-out for an injury."""
    is_medical = topic is Topic.RULES_QUESTION and asks_of_medical(text)
    return topic is Topic.WEATHER_OR_BODY or is_medical


def tells_of_hurt(asked: Asked) -> bool:
    """Whether such a question, or one that it goes on from, told of a body that hurts."""
    if not is_of_bodies(asked.topic, asked.text):
        return False
    told = (*(asked.before or "").splitlines(), asked.text)
    return any(complains(line) or is_emergency(line) for line in told)
