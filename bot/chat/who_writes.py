"""Who of our pair writes, by what they say of themselves beside the other of us.

Nobody speaks of themselves by name: "bronagh lefty im righty" is written by the other of the two.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.names import find_mentions
from bot.chat.said import Certainty, Mention
from bot.chat.view import ChatView
from bot.chat.words import Word, words, words_in
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId
from scouting_db.sounds import fold
from scouting_db.values import PlayerRow

PAIR = 2
_MYSELF = words_in("i im ive ill id me my mine myself")
_ASKS_OF_NOTES = regex(
    r"\b(?:what|how many|which|any|show|read)\b.*\b(?:did|do|have|had) i (?:\w+ )?"
    r"(?:note|noted|know|say|said|write|wrote|tell|told|have|got)\b"
)
"""`what did i note about mira`: so anybody asks their book, Mira too."""
_I_AM = (("im",), ("i", "am"), ("this", "is"), ("its", "me"))


def knowing_writer(text: str, chat: ChatView) -> ChatView:
    """The chat, with whoever writes this known where the words tell it."""
    said = words(text)
    if len(chat.ours) != PAIR or not any(word.folded in _MYSELF for word in said):
        return chat
    if _ASKS_OF_NOTES.search(" ".join(word.folded for word in said)):
        return chat
    if chat.asker in chat.ours:
        return chat
    writer = _writer(said, find_mentions(said, chat), chat)
    return chat if writer is None else replace(chat, asker=writer)


def bearer_of(name: str, ours: Sequence[PlayerRow]) -> PlayerId | None:
    """Who of ours bears the first name of whoever writes, if one of them does."""
    first = fold(name.split()[0]) if name.split() else ""
    found = [row.player for row in ours if first and fold(row.name.split()[0]) == first]
    return found[0] if len(found) == 1 else None


def _writer(said: Sequence[Word], mentions: Sequence[Mention], chat: ChatView) -> PlayerId | None:
    named = {
        one.players[0]: one
        for one in mentions
        if one.certainty is Certainty.SURE and not one.pronoun and one.players[0] in chat.ours
    }
    myself = [player for player, one in named.items() if _names_myself(said, one)]
    if myself:
        return myself[0]
    if len(named) != 1:
        return None
    return next(player for player in chat.ours if player not in named)


def _names_myself(said: Sequence[Word], mention: Mention) -> bool:
    """ "Im petronella", "its me petronella", told first: "im on petronella" names another."""
    before = tuple(word.folded for word in said if word.span[0] < mention.span[0])
    return before[-2:] in _I_AM or before[-1:] in _I_AM
