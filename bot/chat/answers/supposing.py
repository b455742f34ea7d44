"""A name that is nobody's but likely one player's: the first tap is taken for pressed, and said.

Only questions and notes go ahead so. They can be asked again and undone; a pair announced or a
player added could not, and there nobody is supposed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.names import OFFERED_INSTEAD, by_pair, rather_one_of, unsettled
from bot.chat.answers.taken_up import ReadAgain, who_is_meant
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import with_buttons
from bot.chat.reply import Button, Reply
from bot.chat.said import Certainty, Mention, NoteSaid, Question, Understood
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId


def supposing(
    desk: Desk, understood: Sequence[Understood], replies: list[Reply], read_again: ReadAgain
) -> list[Reply]:
    """The replies; where they ask for a player who is likely known, what a tap on them gives."""
    mention = _likely(desk, understood)
    asks = desk.context.asks_who
    pending = None if asks is None else desk.context.pending(asks)
    if mention is None or pending is None or pending.typed != mention.typed:
        return replies
    player = mention.supposed[0]
    reply = who_is_meant(desk, pending.number, player, read_again)
    typed, name = mention.typed, desk.view.name_of(player)
    told = wording("name.supposed").format(typed=typed, name=name)
    others = [one for one in mention.players if one != player]
    buttons = _instead(desk, pending, others[:OFFERED_INSTEAD])
    return [with_buttons(replace(reply, text=f"{told}\n{reply.text}"), buttons)]


def _likely(desk: Desk, understood: Sequence[Understood]) -> Mention | None:
    """The name that the one message waits for, if one player is likely meant by it."""
    if len(understood) != 1:
        return None
    match understood[0]:
        case Question(slots=slots):
            mention = unsettled(by_pair(desk, slots.mentions))
        case NoteSaid(mentions=mentions):
            mention = unsettled(mentions)
        case _:
            return None
    if mention is None or mention.certainty is not Certainty.NOBODY:
        return None
    return mention if len(mention.supposed) == 1 else None


def _instead(desk: Desk, asked: Pending, others: Sequence[PlayerId]) -> list[Button]:
    """Taps for somebody else who is near, and for a new player. They ask nothing."""
    if desk.context.asks_who == asked.number:
        desk.context = replace(desk.context, asks_who=None)
    number = desk.context.pending_count + 1
    near = rather_one_of(desk, replace(asked, number=number, candidates=tuple(others)))
    add = wording("name.add").format(typed=asked.typed)
    return [*near, Button(label=add, payload=tap(Verb.ADD, number))]
