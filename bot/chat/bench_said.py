"""What is asked about one of ours by name, as from the bench: "should noor squeeze the middle"."""

from __future__ import annotations

from typing import Final

from bot.chat.message import Message, is_ours
from bot.chat.said import Mention, Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_NAME = "(?:ourname)"
_LEAD = r"(?:(?:so|ok|okay|and|then|now|coach|hey|wait|but) )*"
_ASKS_IF = r"(?:should|shall|can|could|does|is it time for|do i (?:tell|have|want|get)|do we want|have|let)"
_SQUEEZES = (
    r"(?:to )?(?:just |also )?(?:(?:squeeze|pinch|cheat)(?: (?:over|in|more|the|to|middle|mid|center"
    r"|centre|a bit|a step|now|then|there))*|(?:slide|shift) (?:over|in|to the middle)"
    rf"|help(?: (?:out|more|now|then|there|her|him|{_NAME}))*|step in(?: (?:more|now|then))*)"
)
_SETTLED: Final = (
    (
        regex(rf"{_LEAD}(?:{_ASKS_IF} {_NAME}|{_NAME} should) {_SQUEEZES}"),
        Topic.BEING_TARGETED,
    ),
)


def bench_said(message: Message, chat: ChatView) -> Question | None:
    """The question of a bench about one or both of ours; None for anything else."""
    named = [one for one in message.mentions if is_ours(one, chat.ours) and not one.pronoun]
    if not named:
        return None
    line = _with_ours(message, named)
    topic = next((topic for form, topic in _SETTLED if form.fullmatch(line)), None)
    if topic is None:
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)


def _with_ours(message: Message, named: list[Mention]) -> str:
    """The folded words with each of ours as one word, however long the name is."""
    words: list[str] = []
    for word in message.said:
        of = next((one for one in named if one.span[0] <= word.span[0] < one.span[1]), None)
        if of is None:
            words.append(word.folded)
        elif word.span[0] == of.span[0]:
            words.append("ourname")
    return " ".join(words)
