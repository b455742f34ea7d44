"""Who somebody is and nothing of how they play: "she is brandt" is no note of anybody."""

from __future__ import annotations

from bot.chat.message import Message, opponents
from bot.chat.named_line import NAME, named_line
from bot.chat.said import Certainty, Question
from bot.chat.slots import find_slots
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_SAYS_WHO = regex(
    r"(?:(?:ok|so|and|oh|ah|btw|yes|yeah) )*(?:(?:she|he|they) (?:is|are|was)|shes|hes|theyre)"
    rf" (?:called |named )?{NAME}(?: (?:and|n) {NAME})?"
)
SURE = 1.0


def who_it_is(message: Message, chat: ChatView) -> Question | None:
    """What is known of whoever is named; None for all that says more than who it is."""
    named = opponents(message.mentions, chat)
    if message.asks or "?" in message.text or chat.forwarded or not named:
        return None
    if any(one.certainty is not Certainty.SURE for one in named):
        return None
    if _SAYS_WHO.fullmatch(named_line(message.said, named)) is None:
        return None
    slots = find_slots(message.said, tuple(named), message.told)
    return Question(text=message.text, topic=Topic.OPPONENT_REPORT, confidence=SURE, slots=slots)
