"""How whoever writes plays, told as it always is: "my third is a drive", "i miss 1 in 20 serves".

A stroke that fails just now ("my drops are floating", "my backhand is gone") is asked about, and
nothing that happened is a habit ("i missed 3 of 4").
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.message import Message, is_ours
from bot.chat.named_line import NAME, named_line
from bot.chat.note_figures import counted
from bot.chat.notes import read_note
from bot.chat.said import Certainty, Mention, NoteSaid
from bot.chat.view import ChatView
from bot.chat.words import folded_line
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId

_OPENS = r"(?:(?:and|but|so|well|ok|btw|fyi|honestly|also|note|usually|normally) )*"
_MY = regex(
    rf"{_OPENS}my (?:(?!and\b|or\b)\w+ ){{1,4}}(?:is|are|isnt|arent|was never|were never)"
    r" (?!\w+ing\b)\w+.*"
)
_I_COUNT = regex(
    rf"{_OPENS}i (?:(?:only|usually|always|mostly|normally|about|maybe) )*"
    r"(?:miss|make|land|net|hit|put|get|lose|win|drop|drive|lob|poach)\b .*"
)
_OURS = regex(
    rf"{_OPENS}{NAME} (?:(?:usually|always|mostly|normally) )*"
    r"(?:has|hits|drives|drops|plays|likes|prefers|uses|takes) (?:a|an|the|his|her|most|all|every)"
    r"\b.*"
)
_OF_NOW = regex(
    r"\b(?:too|today|now|rn|tonight"
    r"|again|gone|off|broken|suddenly|this (?:match|game|morning)|keeps?"
    r"|fault|what|how|who|where|when|should|shall|can|help|why|if|hurts?|sore|pain|cramp\w*|ball|turn"
    r"|serve next|call|time|score|nerves?|nervous|scared|afraid|angry)\b"
)
LONGEST = 12
"""Words of such a statement; more of them tell a story. Common practice, no source."""


def own_play_told(message: Message, chat: ChatView) -> NoteSaid | None:
    """The note of one of us; None for all else, and where nobody knows who writes."""
    line = folded_line(message.said)
    if message.asks or "?" in message.text or len(message.said) > LONGEST or chat.forwarded:
        return None
    if _OF_NOW.search(line) or message.note.about_body:
        return None
    if _OURS.fullmatch(named_line(message.said, message.mentions)):
        return _of_partner(message, chat)
    if chat.asker is None or any(not one.pronoun for one in message.mentions):
        return None
    if _MY.fullmatch(line):
        return _of_me(message, chat, place=_place_of(message, "my"))
    is_counted = any(True for _ in counted([word.folded for word in message.said]))
    if is_counted and _I_COUNT.fullmatch(line):
        return _of_me(message, chat, place=_place_of(message, "i"))
    return None


def _place_of(message: Message, word: str) -> int:
    return next(at for at, one in enumerate(message.said) if one.folded == word)


def _of_me(message: Message, chat: ChatView, *, place: int) -> NoteSaid | None:
    """Read as if a name stood there: only where it claims something of whoever writes."""
    assert chat.asker is not None
    word = message.said[place]
    me = _mention(word.typed, word.span, chat.asker)
    others = (one for one in message.mentions if one.span != word.span)
    note = read_note(message.text, message.said, (me, *others), chat, weighed=True)
    mine = tuple(one for one in note.claims if one.player == chat.asker)
    return replace(note, claims=mine, offered=(), mentions=(me,)) if mine else None


def _of_partner(message: Message, chat: ChatView) -> NoteSaid | None:
    """What is told of the partner, if only in words: no question names them so."""
    named = [one for one in message.mentions if not one.pronoun]
    if len(named) != 1 or not is_ours(named[0], chat.ours):
        return None
    return read_note(message.text, message.said, message.mentions, chat, weighed=True)


def _mention(typed: str, span: tuple[int, int], player: PlayerId) -> Mention:
    return Mention(typed=typed, span=span, certainty=Certainty.SURE, players=(player,))
