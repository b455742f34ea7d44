"""A name of a note that was asked about and is not answered yet: said once more, with its taps."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId

_ENDS = re.compile(r"[,;.!?\n]")


def asked_of_note(desk: Desk) -> Pending | None:
    """The question just asked whom a name in a note means; None where none was."""
    number = desk.context.asks_who
    pending = None if number is None else desk.context.pending(number)
    is_named = pending is not None and bool(pending.typed) and pending.note is not None
    return pending if is_named else None


def with_name_open(
    desk: Desk, reply: Reply, pending: Pending | None, *, but: Collection[PlayerId] = ()
) -> Reply:
    """The reply, and that what the note says of that name is nobody's yet."""
    if pending is None or desk.context.pending(pending.number) is None:
        return reply
    told = pending.text[max(pending.text.find(pending.typed), 0) :]
    words = _ENDS.split(told, maxsplit=1)[0].strip()
    add = Button(
        label=wording("name.add").format(typed=" and ".join((pending.typed, *pending.also))),
        payload=tap(Verb.ADD, pending.number),
    )
    likely = [
        Button(label=desk.view.name_of(player), payload=tap(Verb.WHO, pending.number, player))
        for player in pending.candidates
        if player not in but
    ]
    text = "\n".join([reply.text, wording("name.still_open").format(words=words)])
    return replace(reply, text=text, buttons=(*reply.buttons, *rows([*likely, add])))
