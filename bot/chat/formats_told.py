"""A format that is told alone, or beside a score that is of another game than the running one."""

from __future__ import annotations

from bot.chat.announcements import begins_as_match
from bot.chat.asking import asks
from bot.chat.asks_model import ASKS_FROM
from bot.chat.forms import word_set
from bot.chat.message import Message, names_somebody
from bot.chat.numbers import number
from bot.chat.said import FormatTold, Question, ScoreSaid
from bot.chat.scores import score_message
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN, asking, likely_question
from bot.chat.view import ChatView
from knowledge.game import FormatError
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_RESULT = regex(
    r"\b(?:won|lost|loss|closed|took|gone|bagel(?:ed|led)?|beat|beaten"
    r"|win(?! by\b)|lose|result|final)\b"
)
_OF_FORMATS = word_set("format")


def format_told(message: Message) -> FormatTold | None:
    """The message, if it tells how the match is played and nothing else."""
    format = message.told.format
    if format is None or _asks(message) or "?" in message.text or _names_a_pair(message):
        return None
    if _is_of_a_pool(message):
        return FormatTold(text=message.text, format=format, of_pool=True)
    if score_message(message.text, message.told.of_score) is not None:
        return None
    if any(one.folded not in _OF_FORMATS and number(one) is None for one in message.told.words):
        return None
    return FormatTold(text=message.text, format=format)


def _asks(message: Message) -> bool:
    """Whether it asks; "best of 3" does not, nor does "were in a pool", as phones type "we're"."""
    opens = [word.folded for word in message.said[:2]]
    if opens in (["were", "in"], ["were", "playing"]):
        return asks(message.text, message.said[1:])
    return message.asks and opens[0] != "best"


_CALL = regex(r"\d ?[-–:] ?\d")
_POOL = regex(r"\b(?:pools?|round robin|group (?:stage|play|of (?:\d|three|four|five|six)))\b")
LONGEST_OF_A_POOL = 24


def _is_of_a_pool(message: Message) -> bool:
    """ "We're in a pool of four, one game to 11, then a playoff": how the day's matches are played.

    Nobody is named and nothing claimed or won in it, so that no note, pool or result is lost.
    """
    if len(message.said) > LONGEST_OF_A_POOL or names_somebody(message) or message.note.claims:
        return False
    line = message.told.line.text
    is_told = _POOL.search(line) is not None and not _RESULT.search(line)
    return is_told and _CALL.search(message.text) is None


def _names_a_pair(message: Message) -> bool:
    """Two names beside a format announce a match."""
    return sum(not one.pronoun for one in message.mentions) > 1


def asked_of_another_format(message: Message, chat: ChatView) -> Question | None:
    """A score in a format that is not the match's: a case to look at, never this match's score."""
    format = message.told.format
    if format is None or begins_as_match(message.said) or names_somebody(message):
        return None
    if _RESULT.search(message.told.line.text):
        return None
    score = score_message(message.text, message.told.of_score)
    if not isinstance(score, ScoreSaid) or (score.score is None and score.all_at is None):
        return None
    try:
        if format.over(chat.format) == chat.format:
            return None
    except FormatError:
        pass  # the question tells what is wrong with it
    question = likely_question(message, chat) if asking(message, chat) >= ASKS_FROM else None
    if question is not None and question.topic is Topic.RISK_AT_SCORE:
        return question  # "rally scoring, 19-19, every ball counts"
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(text=message.text, topic=Topic.WIN_CHANCE, confidence=CERTAIN, slots=slots)
