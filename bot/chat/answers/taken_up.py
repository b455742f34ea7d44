"""A message taken up again once a tap says who is meant, or that it is its turn."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from bot.chat.answers.announced_first import hold, match_naming, waiting
from bot.chat.answers.desk import Desk
from bot.chat.answers.newcomers import add_player
from bot.chat.answers.several import take_later
from bot.chat.answers.write_down import writes_down
from bot.chat.answers.writer_asked import as_written_by
from bot.chat.names import index_of
from bot.chat.pending import Pending
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId
from scouting_db.names import likeliest_of

ReadAgain = Callable[[Desk, str, int | None], Reply]
"""Takes a message up again with a name settled; the note it already is, if it is one."""


def who_is_meant(desk: Desk, number: int, player: PlayerId, read_again: ReadAgain) -> Reply:
    """One of the alike names is meant: take the message up again with the name in full."""
    pending = desk.context.pending(number)
    if pending is None or not pending.waits_for_name:
        return Reply(text=wording("unclear.too_old"))
    if pending.candidates and player not in pending.candidates:
        return Reply(text=wording("unclear.too_old"))
    return take_up(desk, pending, player, read_again)


def answer_later(desk: Desk, number: int, read_again: ReadAgain) -> Reply:
    """The next of several questions that came in one message."""
    pending = desk.context.pending(number)
    if pending is None or pending.waits_for_name:
        return Reply(text=wording("unclear.too_old"))
    if writes_down(pending):
        desk.context = desk.context.without_pending(number)
    return take_later(desk, pending) or read_again(desk, pending.text, None)


def add_named(desk: Desk, number: int, read_again: ReadAgain) -> Reply:
    """The unknown name is a new player: add them, and take the message up again.

    One of the two whom a match waits for comes with the other, and under the name in full.
    """
    pending = desk.context.pending(number)
    if pending is None or not pending.typed:
        return Reply(text=wording("unclear.too_old"))
    match = match_naming(desk, pending.typed)
    reply = _added(desk, match or pending, read_again)
    asked = match is not None and match != pending and pending.note is None
    player = called(desk, pending.typed) if asked else None
    if player is None:
        return reply
    told = reply.text.removesuffix(wording("match.who_serves")).rstrip()
    answer = take_up(desk, pending, player, read_again)
    return replace(answer, text=f"{told}\n\n{answer.text}")


def _added(desk: Desk, pending: Pending, read_again: ReadAgain) -> Reply:
    names = (pending.typed, *pending.also)
    player, *others = [
        _known_by_now(desk, pending, name) or add_player(desk, name) for name in names
    ]
    return take_up(desk, pending, player, read_again, also=others)


def _known_by_now(desk: Desk, pending: Pending, name: str) -> PlayerId | None:
    """Who was added under that name since nobody bore it; beside somebody alike it is another."""
    return None if pending.candidates else called(desk, name)


def called(desk: Desk, name: str) -> PlayerId | None:
    """Whom the book now knows by the name, nobody who only is near it."""
    found = likeliest_of(index_of(desk.chat_view()).lookup(name, nearest=False))
    return None if found is None else found.player


def take_up(
    desk: Desk,
    pending: Pending,
    player: PlayerId,
    read_again: ReadAgain,
    *,
    also: Sequence[PlayerId] = (),
) -> Reply:
    """The message again with its names in full, and what was told since of the match it announces.

    `also` are the players of the pending's other names, as far as they are known.
    """
    desk.context = desk.context.without_pending(pending.number)
    text = pending.text
    for typed, beside in zip(pending.also, also, strict=False):
        text = text.replace(typed, desk.view.name_of(beside), 1)
    name = desk.view.name_of(player)
    if pending.by_writer:
        text = as_written_by(desk, player, text)
    else:
        text = text.replace(pending.typed, name, 1) if pending.typed else f"{name}: {text}"
    reply = read_again(desk, text, pending.note)
    if not pending.then:
        return reply
    if (still := waiting(desk)) is not None:
        hold(desk, still, *pending.then)
        return reply
    *_, last = [read_again(desk, told, None) for told in pending.then]
    announced = reply.text.removesuffix(wording("match.who_serves")).rstrip()
    return replace(last, text=f"{announced}\n\n{last.text}")
