"""Names that waited for a tap and are in the book by now: what waited for them is taken up."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.taken_up import ReadAgain, called, take_up
from bot.chat.answers.waited_put_right import with_waited_put_right
from bot.chat.answers.writer_asked import PAIR, ask_writer
from bot.chat.one_reply import undoing_what
from bot.chat.pending import Pending
from bot.chat.reply import Reply
from knowledge.vocabulary import PlayerId


def everybody(desk: Desk) -> frozenset[PlayerId]:
    return frozenset(row.player for row in desk.view.roster)


def with_newly_known(
    desk: Desk, reply: Reply, read_again: ReadAgain, *, before: Collection[PlayerId]
) -> Reply:
    """The reply, and every note and announcement whose names were added since `before`.

    The match comes last: its taps are the ones wanted then.
    """
    new = everybody(desk) - set(before)
    waited = [] if not new else [one for one in desk.context.pendings if _is_kept(one)]
    taken: list[Pending] = []
    for pending in sorted(waited, key=lambda one: one.announces):
        players = [called(desk, name) for name in (pending.typed, *pending.also)]
        known = [one for one in players if one is not None]
        if len(known) < len(players) or not set(known) & new:
            continue
        taken.append(pending)
        player, *also = known
        then = take_up(desk, pending, player, read_again, also=also)
        then = then if pending.announces else undoing_what(then, pending.text)
        buttons = then.buttons if pending.announces else (*reply.buttons, *then.buttons)
        reply = replace(then, text=f"{reply.text}\n\n{then.text}", buttons=buttons)
    reply = with_waited_put_right(desk, reply, taken)
    return _with_writer_known(desk, reply, read_again)


def _with_writer_known(desk: Desk, reply: Reply, read_again: ReadAgain) -> Reply:
    """The reply, and what was told of whoever writes, once our pair is known; else who it is."""
    waited = [one for one in desk.context.pendings if one.by_writer]
    if len(desk.ours) < PAIR or not waited:
        return reply
    writer = desk.asker
    for pending in waited:
        if writer in desk.ours:
            then = take_up(desk, pending, writer, read_again)
        elif pending.note is not None and {*pending.candidates} != {*desk.ours}:
            desk.context = desk.context.without_pending(pending.number)
            then = ask_writer(desk, pending.text, pending.note, is_new=False)
        else:
            continue
        buttons = (*reply.buttons, *then.buttons)
        reply = replace(reply, text=f"{reply.text}\n\n{then.text}", buttons=buttons)
    return reply


def _is_kept(pending: Pending) -> bool:
    """A question asked meanwhile is not: its answer is no longer waited for."""
    return bool(pending.typed) and (pending.announces or pending.note is not None)
