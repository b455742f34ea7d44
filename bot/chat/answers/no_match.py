"""What is said where a match is needed and none is on: how to announce one."""

from __future__ import annotations

from itertools import chain, islice, repeat

from bot.chat.answers.announced_first import announced_first
from bot.chat.answers.desk import Desk
from bot.chat.reply import Reply
from bot.chat.wording import wording

_PAIR = 2


def no_match(desk: Desk) -> Reply:
    """How to announce the next match: its example names opponents of this book, if it has any."""
    waiting = announced_first(desk)
    if waiting is not None:
        return waiting
    view = desk.view
    known = (view.short_name(row.player) for row in view.roster if not row.ours)
    first, second = islice(chain(known, repeat(wording("match.some_name"))), _PAIR)
    return Reply(text=wording("match.none").format(first=first, second=second))
