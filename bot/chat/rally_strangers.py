"""A rally told of somebody who is not in this match: kept as a note, and said."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.message import Message, read_message, weighed_note
from bot.chat.rally_clauses import told_rally
from bot.chat.rally_details import read_rally
from bot.chat.said import Certainty, Mention, NoteSaid, RallySaid
from bot.chat.view import ChatView


def stranger_of(message: Message, chat: ChatView) -> Mention | None:
    """Who is named and not on court, if the message were a rally with one of them in that place."""
    if not (chat.match_on and chat.theirs) or message.asks or "?" in message.text:
        return None
    playing = {*chat.ours, *chat.theirs}
    named = [one for one in message.mentions if not one.pronoun]
    strangers = [one for one in named if not {*one.players} & playing]
    strangers = strangers or [*read_rally(message, chat).strangers]
    if len(strangers) != 1:
        return None
    meant = replace(strangers[0], certainty=Certainty.SURE, players=chat.theirs[:1])
    others = tuple(one for one in message.mentions if one.span != meant.span)
    rally = told_rally(read_message(message.text, chat, mentions=(*others, meant)), chat)
    is_told = isinstance(rally, RallySaid) and rally.details.ending is not None
    return strangers[0] if is_told else None


def rally_of_stranger(message: Message, chat: ChatView) -> NoteSaid | None:
    """The message as a note about them; of a name that nobody bears it says so."""
    stranger = stranger_of(message, chat)
    if stranger is None:
        return None
    note = weighed_note(message, chat)
    if any(one.span == stranger.span for one in note.mentions):
        return note
    return replace(note, mentions=(*note.mentions, stranger))
