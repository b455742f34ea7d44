"""Who of us writes, where a message tells of whoever wrote it and nobody told that yet."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId

PAIR = 2


def ask_writer(desk: Desk, text: str, note: int, *, is_new: bool = True) -> Reply:
    """The words are kept; which of us writes comes by a tap, or first who the two of us are."""
    number = desk.context.pending_count + 1
    ours = desk.ours if len(desk.ours) == PAIR else ()
    desk.context = desk.context.with_pending(
        Pending(number=number, typed="", text=text, candidates=ours, note=note, by_writer=True)
    )
    taps = [
        Button(label=desk.view.name_of(player), payload=tap(Verb.WHO, number, player))
        for player in ours
    ]
    lines = [wording("name.kept_unread")] if is_new else []
    return Reply(text=" ".join([*lines, _asks(desk)]), buttons=rows(taps))


def _asks(desk: Desk) -> str:
    if len(desk.ours) == PAIR:
        return wording("name.which_of_you")
    if len(desk.ours) == 1:
        return wording("book.ask_you").format(partner=desk.view.name_of(desk.ours[0]))
    return wording("book.ask_pair")


def as_written_by(desk: Desk, player: PlayerId, text: str) -> str:
    """The message to be read again, now that it is known who of us wrote it."""
    desk.knows_writer(player)
    # In a group several write, so that its words must tell who did.
    return f"im {desk.view.name_of(player)}, {text}" if desk.chat.is_group else text
