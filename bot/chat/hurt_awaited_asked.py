"""Whether we wait or have won, asked of an opponent who is hurt: a rule, and no body of ours."""

from __future__ import annotations

from bot.chat.message import Message, is_ours, opponents
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.rulebook.hurt_awaited import waits_for_hurt
from knowledge.tactics.hurt_opponent import goes_at_injury
from knowledge.vocabulary import Topic


def hurt_awaited_asked(message: Message, chat: ChatView) -> Question | None:
    """The question of the rule; None where one of ours hurts, or the hurt one is to be gone at."""
    theirs = opponents(message.mentions, chat)
    if not theirs or any(is_ours(one, chat.ours) for one in message.mentions):
        return None
    if not waits_for_hurt(message.text) or goes_at_injury(message.text, ours=()):
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    topic = Topic.RULES_QUESTION
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
