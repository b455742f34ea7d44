"""Who writes, told before we know anybody: "I am Ingrid", "I am Ingrid, coach of Mira and Tom"."""

from __future__ import annotations

import re

from bot.chat.coach_said import coach_said
from bot.chat.common_words import is_common
from bot.chat.said import BookSaid, BookVerb, Certainty, CoachSaid, Mention
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.regex import regex
from scouting_db.names import NameIndex, fold
from scouting_db.values import PlayerRow

PAIR = 2

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


_ONE_OF_US = regex(
    rf"\s*{_I_AM}(?P<name>[^\W\d_][\w'’-]*(?: [^\W\d_][\w'’-]*)?)[ .!]*", re.IGNORECASE
)


def one_of_us_told(text: str, chat: ChatView) -> BookSaid | None:
    """Which of the two of us writes, "im renske", and nothing else: who we are is told back.

    Only the name of one of our pair, so that how somebody feels stays that.
    """
    found = _ONE_OF_US.fullmatch(text) if len(chat.ours) == PAIR and not chat.forwarded else None
    if found is None:
        return None
    name = fold(found["name"])
    ours = [row for row in chat.roster if row.player in chat.ours]
    me = [row for row in ours if name in (fold(row.name), fold(row.name.split()[0]))]
    if len(me) != 1 or len(ours) != PAIR:
        return None
    both = sorted(ours, key=lambda row: row is not me[0])
    return BookSaid(
        text=text,
        verb=BookVerb.OUR_PAIR,
        words=" and ".join(row.name for row in both),
        mentions=tuple(sure(row) for row in both),
        tells_writer=True,
    )


def sure(row: PlayerRow) -> Mention:
    """Somebody of the book whom a message means without naming them."""
    return Mention(typed=row.name, span=(0, 0), certainty=Certainty.SURE, players=(row.player,))


def _is_a_name(name: str, chat: ChatView) -> bool:
    """Of nobody in the book, and no everyday word."""
    said = [word.folded for word in words(name)]
    return not any(map(is_common, said)) and not NameIndex(chat.roster).has(" ".join(said))
