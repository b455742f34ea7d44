"""A line call that the two sides differ about: what is told of it counts no rally by itself."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import any_of
from bot.chat.message import Message, read_message
from bot.chat.note_or_question import begins_as_note
from bot.chat.said import Question
from bot.chat.several_questions import asked_behind
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.words import Word, folded_line
from knowledge.vocabulary import Topic


def is_disputed(said: Sequence[Word]) -> bool:
    """ "They called it out and it was in": whose rally it became is not told by it."""
    line = folded_line(said)
    return is_called_in(said) or any_of("disputed_call").search(line) is not None


_WHOSE = frozenset(["point", "pt", "rally", "ours", "theirs", "won", "lost"])


def is_called_in(said: Sequence[Word]) -> bool:
    """ "Our ball was out but they called it in": a miss that was none, whosever ball it was."""
    if any(word.folded in _WHOSE for word in said):
        return False
    return any_of("called_in").search(folded_line(said)) is not None


def call_and_question(message: Message, chat: ChatView) -> tuple[Question, ...]:
    """Such a call with another question behind it, each with its own words; else nothing."""
    behind = asked_behind(message, chat) if disputed_call(message, chat) is not None else ()
    at = message.text.rfind(behind[0].text) if behind else 0
    if at <= 0:
        return ()
    told = disputed_call(read_message(message.text[:at], chat), chat)
    return () if told is None else (told, *behind)


def disputed_call(message: Message, chat: ChatView) -> Question | None:
    """Such a call of the running match wants the rule, and is no note of anybody's talk."""
    if not chat.match_on or chat.forwarded or begins_as_note(message.said):
        return None
    if not is_disputed(message.said):
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    topic = Topic.RULES_QUESTION
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
