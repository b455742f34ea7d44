"""What follows from what was just told: "they switched, hale is left. what does that do for us"."""

from __future__ import annotations

from bot.chat.message import Message, weighed_note
from bot.chat.note_or_question import begins_as_note
from bot.chat.numbers import groups
from bot.chat.said import Question, Understood
from bot.chat.several_questions import part_of
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_MARKS = frozenset(",;.!:\n–—")

LONGEST = 10
"""Words of such a question."""

_IT = r"(?:that|this|it)"
_US = r"(?: (?:for|to) (?:us|we|me|our (?:plan|game|side)|the plan))?(?: (?:now|then|today))*"
_ASKED = regex(
    r"(?:(?:so|and|ok|but|then|now) )*(?:"
    rf"(?:what|how) (?:does|do|did|will|would|should) {_IT} (?:do|mean|change|matter|bring|give)"
    rf"(?: anything)?(?: us)?|what (?:changes|follows|is different|difference does {_IT} make)"
    rf"){_US}"
)


def consequence_asked(message: Message, chat: ChatView) -> tuple[Understood, ...]:
    """The note, then the plan with it; nothing unless the last clause asks just that.

    Whatever was asked before is not gone on with: it is asked of what is new. The question alone,
    without something of an opponent told before it, is left to whatever was spoken of.
    """
    if chat.forwarded or begins_as_note(message.said):
        return ()
    last = len(message.said)
    for at in range(max(1, last - LONGEST), last):
        if not set(message.said[at].gap) & _MARKS:
            continue
        if _ASKED.fullmatch(" ".join(word.folded for word in message.said[at:])):
            return _with_plan(message, part_of(message, 0, at, chat), chat)
    return ()


def _with_plan(message: Message, told: Message, chat: ChatView) -> tuple[Understood, ...]:
    of_them = any(claim.player not in chat.ours for claim in told.note.claims)
    if told.asks or told.note.about_body or not of_them or groups(told.said):
        return ()
    slots = find_slots(message.said, message.mentions, message.told)
    question = Question(text=message.text, topic=Topic.GAME_PLAN, confidence=CERTAIN, slots=slots)
    return (weighed_note(told, chat), question)
