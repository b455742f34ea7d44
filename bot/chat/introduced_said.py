"""Who writes, told before we know anybody: "I am Ingrid", "I am Ingrid, coach of Mira and Tom"."""

from __future__ import annotations

from bot.chat.coach_said import coach_said
from bot.chat.common_words import is_common
from bot.chat.said import BookSaid, BookVerb, CoachSaid
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.regex import regex
from scouting_db.names import NameIndex

_GREETS = (
    r"(?i:(?:hello|hi|hey|hei|good (?:morning|afternoon|evening|day)|morning|so|ok|there|all)"
    r"[ ,.!]+)*"
)
_I_AM = rf"{_GREETS}(?i:i am|i['’]?m|im|my name is|my name['’]?s|this is|it['’]?s) "
_NAME = r"(?P<name>[^\W\d_a-z][\w'’-]+(?: [^\W\d_a-z][\w'’-]+)?)"
_ALONE = regex(rf"\s*{_I_AM}{_NAME}[ .!]*")
_BY_NAME = regex(rf"\s*{_GREETS}(?i:my name(?: is|['’]?s)) (?P<name>[^\W\d_][\w'’-]+)[ .!]*")
_A_COACH = regex(rf"\s*{_GREETS}(?i:i am|i['’]?m|im) (?i:(?:the|a|their) coach)[ .!]*")
_COACHES = regex(
    rf"\s*{_I_AM}{_NAME}[ ,.!]+(?P<rest>(?i:(?:and )?(?:i (?:am |['’]m )?|im |i['’]?m )?"
    r"(?:(?:the |a |their )?coach)) ?.+)"
)
_LONGEST_TEXT = 160


def introduced(text: str, chat: ChatView) -> CoachSaid | BookSaid | None:
    """The pair whose coach writes, or that we want to know who plays.

    Only before anybody of ours is known; a name is a word with a capital that means nothing else,
    so that "I am Tired" stays a complaint and "I am Mira" of the book stays who writes.
    """
    if chat.ours or chat.forwarded or len(text) > _LONGEST_TEXT or "?" in text:
        return None
    coaches = _COACHES.fullmatch(text)
    if coaches is not None and _is_a_name(coaches["name"], chat):
        said = coach_said(coaches["rest"].removeprefix("and ").strip(), chat)
        return said if said is not None and not said.asks else None
    alone = _ALONE.fullmatch(text) or _BY_NAME.fullmatch(text)
    is_told = alone is not None and _is_a_name(alone["name"], chat)
    if not is_told and _A_COACH.fullmatch(text) is None:
        return None
    return BookSaid(text=text, verb=BookVerb.OUR_PAIR)


def _is_a_name(name: str, chat: ChatView) -> bool:
    """Of nobody in the book, and no everyday word."""
    said = [word.folded for word in words(name)]
    return not any(map(is_common, said)) and not NameIndex(chat.roster).has(" ".join(said))
