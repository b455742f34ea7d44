"""A coach's "they lost 7-11": whose it was is asked before anything is booked."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.answers.desk import Desk
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import ResultSaid
from bot.chat.they_told import hangs_on_they
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId


def whose_they(desk: Desk, said: ResultSaid) -> Reply | None:
    """The question which pair is meant; None where no coach writes, or the words tell it.

    A game booked the wrong way round is worse than one more tap. After it the message is read with
    the name in that place.
    """
    them = desk.context.theirs
    is_open = desk.coach is not None and said.won is not None and bool(desk.ours and them)
    typed = hangs_on_they(said.text, desk.chat_view()) if is_open else None
    if typed is None:
        return None
    number = desk.context.pending_count + 1
    pending = Pending(number=number, typed=typed, text=said.text, candidates=(*desk.ours, *them))
    desk.context = desk.context.with_pending(pending)
    buttons = [_button(desk, number, pair) for pair in (desk.ours, them)]
    return Reply(text=wording("coach.who_are_they"), buttons=rows(buttons))


def _button(desk: Desk, number: int, pair: Sequence[PlayerId]) -> Button:
    return Button(label="/".join(desk.names(pair)), payload=tap(Verb.WHO, number, pair[0]))
