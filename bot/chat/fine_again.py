"""Somebody said to be fine right after a complaint, in a message that tells the score as well.

"Ok hes fine, water break. our ball 4-5-1": that he is fine is answered as a question of the body,
as when nothing else is said; the score or rally counts beside it. What asks keeps its own answer.
"""

from __future__ import annotations

from bot.chat.message import Message, opponents
from bot.chat.rally_clauses import with_details
from bot.chat.said import Question, RallySaid, ResultSaid, ScoreSaid, Understood
from bot.chat.settled_forms import rally_told, settled
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.tactics.explained_away import explains_away
from knowledge.tactics.plays_on import clauses_of, says_fine
from knowledge.vocabulary import Topic

_Told = RallySaid | ResultSaid | ScoreSaid


def fine_again(message: Message, chat: ChatView) -> tuple[Understood, ...]:
    """The question of the body, and what is told of the match beside it; empty for all else."""
    if not _says_so(message, chat):
        return ()
    slots = find_slots(message.said, message.mentions, message.told)
    topic = Topic.WEATHER_OR_BODY
    asked = Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
    told = _told(message, chat)
    return (asked,) if told is None else (asked, told)


def _says_so(message: Message, chat: ChatView) -> bool:
    if not chat.hurt or opponents(message.mentions, chat):
        return False
    if explains_away(message.text):
        return True  # "is it just nerves": asked or told, it is no answer to what was complained of
    if message.asks:
        return False
    named = [one for one in message.mentions if not one.pronoun]
    names = frozenset(word.folded for one in named for word in words(one.typed))
    return says_fine(message.text, names=names)


def _told(message: Message, chat: ChatView) -> _Told | None:
    told = settled(message.text, message, chat)
    if isinstance(told, RallySaid) and not told.understood:
        return with_details(told, message, chat)
    if isinstance(told, RallySaid | ResultSaid | ScoreSaid):
        return told
    found = (rally_told(clause, chat) for clause in clauses_of(message.text))
    return next((one for one in found if one is not None), None)
