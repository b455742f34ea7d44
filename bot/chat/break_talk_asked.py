"""What to say to each other in a break: one ball and a calm word, not what new partners agree."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.moods import is_mood
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.timeouts_said import things_wanted
from bot.chat.topic_question import CERTAIN
from bot.chat.words import words_in
from knowledge.complaints import complains
from knowledge.tactics.break_talk import asks_what_to_say
from knowledge.vocabulary import Topic


def break_talk_asked(message: Message) -> Question | None:
    """ "They called time out, what should we talk about": the question that it is."""
    few = things_wanted(message)
    if few is not None:
        slots = find_slots(message.said, (), message.told)
        return Question(text=message.text, topic=few, confidence=CERTAIN, slots=slots)
    if not asks_what_to_say(message.text) or complains(message.text) or _tells_fear(message):
        return None
    slots = find_slots(message.said, (), message.told)
    return Question(text=message.text, topic=Topic.CUE, confidence=CERTAIN, slots=slots)


_FEAR = words_in(
    "fear fears afraid scared scary nerves nervy panic panics panicking confidence believe belief"
    " doubt doubts tears crying"
)


def _tells_fear(message: Message) -> bool:
    """ "I think it's fear, what would you tell her": a head to clear before any ball."""
    return any(word.folded in _FEAR or is_mood(word.folded) for word in message.said)
