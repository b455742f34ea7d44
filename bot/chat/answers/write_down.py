"""A statement that was answered as a question, or counted as a rally, may be a note: one tap."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.reply import Button, Reply
from bot.chat.said import NoteSaid, Question, RallySaid, Unclear
from bot.chat.understand import understand_note
from bot.chat.wording import wording

_CALLED_NOTE = "note "


def write_down(desk: Desk, said: Question | Unclear | RallySaid) -> list[Button]:
    """The button that keeps the words as a note, where they may be one."""
    if not said.may_note:
        return []
    number = desk.context.pending_count + 1
    desk.context = desk.context.with_pending(
        Pending(number=number, typed="", text=_CALLED_NOTE + said.text, candidates=())
    )
    return [Button(label=wording("note.write_down"), payload=tap(Verb.LATER, number))]


def writes_down(pending: Pending) -> bool:
    """Whether the tap that took this up wrote a note, which one tap does only once."""
    return pending.asked is None and pending.text.startswith(_CALLED_NOTE)


def taken_down(desk: Desk) -> NoteSaid | None:
    """The note that waits for that tap, taken up by words instead; None where none does."""
    waiting = [one for one in desk.context.pendings if writes_down(one)]
    if not waiting:
        return None
    desk.context = desk.context.without_pending(waiting[-1].number)
    words = waiting[-1].text.removeprefix(_CALLED_NOTE)
    return understand_note(words, chat=desk.chat_view())


def nothing_waits() -> Reply:
    """What is told who asks for it with nothing to write down."""
    return Reply(text=wording("note.nothing_waits"))
