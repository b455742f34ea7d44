"""A substitute told of without a name: "her sub is taller but slower". It is asked who that is.

Whose place they take is no subject of what is told, so nothing of it goes into that one's notes.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.notes import read_note
from bot.chat.said import Certainty, Mention, NoteSaid
from bot.chat.unknown_names import has_predicate
from bot.chat.view import ChatView
from bot.chat.words import words_in
from knowledge.vocabulary import PlayerId

_LEAD = words_in("ok okay so and but oh well btw now also wait hey")
_OWNERS = words_in("her his their the")
_NEW = words_in("new other todays")
_SUBSTITUTES = words_in("sub substitute subs replacement standin fillin")
_SOMEBODY = PlayerId(-3)
"""Stands for the substitute while it is asked whether anything is told of them."""


def substitute_told_of(message: Message, chat: ChatView) -> NoteSaid | None:
    """The note, of nobody yet; None unless such words open it and a trait is told of them.

    So no question whether a substitute may play is one, nor who it is that came in.
    """
    at = _place(message)
    if at is None or chat.forwarded or not has_predicate(message.said, at + 1):
        return None
    end = message.said[at].span[1]
    if any(one.span[1] > end and not one.pronoun for one in message.mentions):
        return None
    span = message.said[at].span
    somebody = Mention(
        typed=message.said[at].typed, span=span, certainty=Certainty.SURE, players=(_SOMEBODY,)
    )
    note = read_note(message.text, message.said, (somebody,), chat)
    if not any(one.player == _SOMEBODY for one in note.claims):
        return None
    return NoteSaid(text=message.text, mentions=())


def _place(message: Message) -> int | None:
    """Where "sub" stands behind whoever owns it; None unless both open the message."""
    said = message.said
    at = next((at for at, word in enumerate(said) if word.folded not in _LEAD), 0)
    named = next((one for one in message.mentions if one.span[0] == said[at].span[0]), None)
    if named is not None and not named.pronoun:
        at += sum(named.span[0] <= word.span[0] < named.span[1] for word in said)
    elif said[at].folded in _OWNERS:
        at += 1
    else:
        return None
    while at < len(said) and said[at].folded in _NEW:
        at += 1
    return at if at < len(said) and said[at].folded in _SUBSTITUTES else None
