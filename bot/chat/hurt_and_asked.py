"""Who covers what, asked in one breath with one of ours being hurt: the body comes first.

"Tom hurt his ankle who takes mid" is no question of two sound players, and never a note on Tom.
Opponents are left out: what they cannot do is scouting.
"""

from __future__ import annotations

from bot.chat.message import Message, opponents
from bot.chat.partner_trouble import line_of_us
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.complaints import complains
from knowledge.regex import regex
from knowledge.tactics.beside_complaint import cannot_move
from knowledge.vocabulary import Topic

_ONE_OF_US = r"(?:i|ourname|(?:my |our )?(?:partner|pard|pardner))"
_CANNOT = regex(
    rf"\b{_ONE_OF_US} (?:just |really |now |suddenly )*(?:can|cant|cannot|barely|hardly)\b"
)
_OF_US = regex(r"\b(?:i|im|ive|me|my|we|our|us|partner|partners|pard|ourname)\b")
_WHO_COVERS = regex(
    r"\b(?:who|whos|how do we) (?:is |should |shall |now |then )*"
    r"(?:takes?|taking|covers?|covering|gets?)"
    r"(?: (?:the|all|my|his|her|our))* (?:middle|mid|seam|lobs?|court|everything|overheads?)\b"
)


def hurt_and_asked(message: Message, chat: ChatView) -> Question | None:
    """The question as one of a body; None where nobody of ours hurts, or nothing is asked so."""
    if any(not one.pronoun for one in opponents(message.mentions, chat)):
        return None
    line = line_of_us(message, chat)
    if _WHO_COVERS.search(line) is None:
        return None
    of_us = _OF_US.search(line) is not None and complains(message.text)
    if not of_us and not (_CANNOT.search(line) and cannot_move(message.text)):
        return None
    slots = find_slots(message.said, (), message.told)
    topic = Topic.WEATHER_OR_BODY
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
