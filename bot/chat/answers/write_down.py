"""A statement that was answered as a question may have been meant as a note: one tap keeps it."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.reply import Button
from bot.chat.said import Question
from bot.chat.wording import wording

_CALLED_NOTE = "note "


def write_down(desk: Desk, question: Question) -> list[Button]:
    """The button that keeps the question's words as a note, where they may be one."""
    if not question.may_note:
        return []
    number = desk.context.pending_count + 1
    desk.context = desk.context.with_pending(
        Pending(number=number, typed="", text=_CALLED_NOTE + question.text, candidates=())
    )
    return [Button(label=wording("note.write_down"), payload=tap(Verb.LATER, number))]


def writes_down(pending: Pending) -> bool:
    """Whether the tap that took this up wrote a note, which one tap does only once."""
    return pending.asked is None and pending.text.startswith(_CALLED_NOTE)
