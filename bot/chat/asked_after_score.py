"""What is asked behind a score: the clause after it, read as if it stood alone.

The words and numbers of a score blur what the others ask: "4-3-2 them serving, who do i aim at".
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.asked_beside import asked_beside
from bot.chat.asks_model import ASKS_FROM
from bot.chat.message import Message
from bot.chat.said import MatchSaid, Question, ScoreSaid, Unclear, Understood
from bot.chat.score_words import SCORE_WORDS
from bot.chat.settled_topics import settled_topic
from bot.chat.several_questions import part_of
from bot.chat.slots import find_slots
from bot.chat.told_before import ASKED_BARE, score_ends
from bot.chat.topic_model import SURE_FROM
from bot.chat.topic_question import asking, likely_question
from bot.chat.view import ChatView
from knowledge.vocabulary import Topic

_OF_THE_SCORE = frozenset({Topic.RISK_AT_SCORE, Topic.WIN_CHANCE, Topic.WHERE_TO_STAND})
"""Topics that a score alone brings up, so that what stands behind it may ask of another."""

_ASKING_LAST = frozenset(["who", "whom", "where", "what"])
_TELLS = SCORE_WORDS | {"match"}
"""Words that say how it stands and ask nothing."""


def put_clearly(said: Understood, message: Message, chat: ChatView) -> Understood:
    """What was read of a message with a score; the question behind the score where that is clearer.

    A question that is read of more than the score stays as it was read.
    """
    is_of_score = isinstance(said, Question) and said.topic in _OF_THE_SCORE and not said.changes
    if not isinstance(said, Unclear) and not is_of_score:
        return said
    found = _behind_the_score(message, chat)
    if found is None or (isinstance(said, Question) and found[1].topic is said.topic):
        return said
    return found[1]


def question_beside(fixed: Understood, message: Message, chat: ChatView) -> tuple[Question, ...]:
    """What is asked beside what was told, by the clause behind a score where that is clearer."""
    asked = asked_beside(fixed, message, chat)
    if isinstance(fixed, MatchSaid) and fixed.we_serve is not None and not message.asks:
        # "Next up x and y, we receive first" tells the start and asks for no choice of it.
        return tuple(one for one in asked if one.topic is not Topic.CHOOSE_END_OR_SERVE)
    if not isinstance(fixed, ScoreSaid):
        return asked
    clearer = [put_clearly(one, message, chat) for one in asked]
    found = tuple(one for one in clearer if isinstance(one, Question))
    apart = None if found else asked_after_score(message, chat)
    return found if apart is None else (apart,)


def asked_after_score(message: Message, chat: ChatView) -> Question | None:
    """The question behind the score that a message opens with; None where it surely asks none."""
    found = _behind_the_score(message, chat)
    if found is None:
        return None
    part, question = found
    if part.asks:
        return question
    if _TELLS.issuperset(word.folded for word in part.said):
        return None  # "10-9 to us, match point, receiving" tells all of it
    if _asks_briefly(part):
        return question
    is_sure = not part.note.claims and question.confidence >= SURE_FROM
    return (
        question if is_sure and asking(part, replace(chat, last_topic=None)) >= ASKS_FROM else None
    )


def _asks_briefly(part: Message) -> bool:
    """ "9-8-2 us tgt", "9-9-1 us dink who": no question by its form, and nothing is told by it."""
    said = [word.folded for word in part.said]
    return ASKED_BARE.issuperset(said) or said[-1] in _ASKING_LAST


def _behind_the_score(message: Message, chat: ChatView) -> tuple[Message, Question] | None:
    """The clause behind the score, and what it would ask alone."""
    at = None if chat.forwarded else score_ends(message, chat)
    if at is None:
        return None
    alone = replace(chat, last_topic=None)
    part = part_of(message, at, len(message.said), alone)
    question = settled_topic(part) or likely_question(part, alone)
    if question is None:
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    return part, replace(question, text=message.text, slots=slots)
