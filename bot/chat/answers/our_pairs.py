"""Which pair "we" are, and with whom of ours else each of us plays."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId

PAIR = 2


def our_pairs(desk: Desk) -> Reply:
    """The pair that counts now, and our others by the book; asks who we are where none is known."""
    if len(desk.ours) != PAIR:
        return Reply(text=wording("book.ask_pair"))
    names = desk.names(desk.ours)
    lines = [wording("book.our_pair").format(names=" and ".join(names))]
    for one, other in _others(desk):
        text = wording("book.other_pair")
        lines.append(text.format(one=desk.view.short_name(one), other=desk.view.short_name(other)))
    return Reply(text="\n".join(lines))


def _others(desk: Desk) -> list[tuple[PlayerId, PlayerId]]:
    """Pairs of ours that are not this one: who is of both, and with whom."""
    ours = {row.player for row in desk.view.roster if row.ours}
    pairs = [both for _, both in desk.view.pairs if set(both) <= ours]
    of_one = [both for both in pairs if len(set(both) & set(desk.ours)) == 1]
    return [(one, other) if one in desk.ours else (other, one) for one, other in of_one]
