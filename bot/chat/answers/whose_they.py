"""A coach's "they lost 7-11": whose it was is asked before anything is booked."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.answers.desk import Desk
from bot.chat.coached import own_pairs
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import ResultSaid
from bot.chat.they_told import hangs_on_they, is_other
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId

PAIR = 2


def whose_they(desk: Desk, said: ResultSaid) -> Reply | None:
    """The question which pair is meant; None where no coach writes, or the words tell it.

    A game booked the wrong way round is worse than one more tap. After it the message is read with
    the name in that place.
    """
    them, others = desk.context.theirs, own_pairs(desk.coach, desk.view)
    is_open = desk.coach is not None and said.won is not None and bool(desk.ours and them)
    typed = hangs_on_they(said.text, desk.chat_view()) if is_open else None
    if typed is None or (is_other(typed) and len(others) < PAIR):
        return None
    number = desk.context.pending_count + 1
    left = [pair for pair in others if set(pair) != set(desk.ours)]
    meant: list[Sequence[PlayerId]] = [*(left if is_other(typed) else [desk.ours]), them]
    players = tuple(player for pair in meant for player in pair)
    pending = Pending(number=number, typed=typed, text=said.text, candidates=players)
    desk.context = desk.context.with_pending(pending)
    buttons = [_button(desk, number, pair) for pair in meant]
    return Reply(
        text=wording("coach.who_are_they").format(typed=typed.lower()), buttons=rows(buttons)
    )


def _button(desk: Desk, number: int, pair: Sequence[PlayerId]) -> Button:
    return Button(label="/".join(desk.names(pair)), payload=tap(Verb.WHO, number, pair[0]))
