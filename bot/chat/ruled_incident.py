"""One incident told to have it ruled on: "dario stepped in the kitchen after his smash. fault?".

What happened once is nobody's habit, and a ruling is all that is asked for. Words that tell how
often it happens ("every time", "keeps") make a note of it still.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import Question, Unclear
from bot.chat.words import words_in
from knowledge.vocabulary import TRAITS, Topic, Trait, TraitKind

_FAULTS = Trait.FOOTWORK_KITCHEN_FAULTS
"""The habit that a single fault reads like; the ball it happened at may read like another."""

_OFTEN = words_in(
    "always often constantly every keep keeps kept lot lots tends usually mostly again all each"
    " never rarely regularly sometimes times twice whenever"
)


def is_ruled_on(question: Question | Unclear, message: Message) -> bool:
    """Whether a rule is asked for, and a note would claim nothing but habits of one fault told."""
    if not isinstance(question, Question) or question.topic is not Topic.RULES_QUESTION:
        return False
    if not _OFTEN.isdisjoint(word.folded for word in message.said):
        return False
    claims = message.note.claims
    is_fault = any(one.trait is _FAULTS for one in claims)
    return is_fault and all(TRAITS[one.trait].kind is TraitKind.HABIT for one in claims)
