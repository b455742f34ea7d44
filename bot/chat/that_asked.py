"""How to answer what was just noted: "how do i answer on that", right behind a note."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_OF_THAT = regex(
    r"(?:(?:so|ok|and|but|then|well|hm) )*(?:how|what) (?:do|should|can|must|shall|could)"
    r" (?:i|we) (?:best )?(?:answer|react|respond|reply|counter|play|deal|do|cope|handle|stop|beat"
    r"|defend)(?: (?:on|to|with|against|about|then))* (?:that|it|this|such (?:a )?balls?)"
    r"(?: (?:then|now|best))*"
)


def asks_of_that(line: str) -> bool:
    """Whether nothing but the answer to "that" is asked."""
    return _OF_THAT.fullmatch(line) is not None


def that_asked(message: Message, chat: ChatView) -> Question | None:
    """The question of how to answer it; None where the last message left no note."""
    if not chat.noted or not asks_of_that(" ".join(word.folded for word in message.said)):
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    topic = Topic.ANSWER_PATTERN
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
