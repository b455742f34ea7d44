"""Under the note of a rally of somebody not in this match: who of the four it may have been."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.rally_details import name_of_stranger
from bot.chat.message import read_message
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.rally_strangers import stranger_of
from bot.chat.render import with_buttons
from bot.chat.reply import Button, Reply
from bot.chat.said import Mention, NoteSaid
from bot.chat.view import ChatView
from bot.chat.wording import wording


def with_strangers(desk: Desk, said: NoteSaid, reply: Reply) -> Reply:
    """The note's reply, and who of the match it may have been."""
    if desk.context.match is None:
        return reply
    stranger = desk.read_once(_stranger_in, said.text, desk.chat_view())
    if stranger is None:
        return reply
    line = wording("rally.not_counted").format(name=name_of_stranger(desk, stranger))
    return with_buttons(
        replace(reply, text=f"{reply.text}\n{line}"), _who_it_was(desk, said, stranger)
    )


def _stranger_in(text: str, view: ChatView) -> Mention | None:
    return stranger_of(read_message(text, view), view)


def _who_it_was(desk: Desk, said: NoteSaid, mention: Mention) -> list[Button]:
    """Taps that take the message up again with one of them in the stranger's place."""
    number = desk.context.pending_count + 1
    desk.context = desk.context.with_pending(
        Pending(number=number, typed=mention.typed, text=said.text, candidates=desk.context.theirs)
    )
    return [
        Button(
            label=wording("rally.it_was").format(name=desk.view.short_name(player)),
            payload=tap(Verb.WHO, number, player),
        )
        for player in desk.context.theirs
    ]
