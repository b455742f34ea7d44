"""Several questions at once: the first two in short, one message; the rest wait behind buttons."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.as_asked import as_asked
from bot.chat.answers.desk import Desk
from bot.chat.answers.names import by_pair, settled
from bot.chat.answers.questions import answer, answer_asked
from bot.chat.payload import Tap, Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import Question
from bot.chat.wording import wording

ANSWERED_AT_ONCE = 2
"""Short answers that a phone shows without scrolling."""

MOST_LATER = 4
"""Buttons for what is left, so that they do not push the answers off the screen."""

LONGEST_LABEL = 30
_OF_AN_ANSWER = frozenset({Verb.SETTLE, Verb.WHY, Verb.ASK})
"""What only the last answer's buttons may do: they speak of the question that stands."""


def answer_several(desk: Desk, questions: Sequence[Question]) -> Reply:
    """The answers in order as one reply. "Why?" and "more" are then about the last answered."""
    if len(questions) == 1:
        return answer(desk, questions[0])
    now, rest = questions[:ANSWERED_AT_ONCE], questions[ANSWERED_AT_ONCE:]
    replies, more = [], []
    trace: dict[str, object] = {}
    for question in now:
        more += _more_of(desk, question) if rest or question is not now[-1] else []
        replies.append(answer(desk, replace(question, offers=()), short=True))
        trace = trace or dict(desk.trace)
    desk.trace |= trace  # the contract reports the first question, as it does its slots
    later = [_later(desk, question) for question in rest[:MOST_LATER]]
    # Where questions wait, their buttons stand instead of the last answer's: a phone is small.
    whole = [] if rest else replies[-1:]
    kept = [one for reply in replies[: len(now) - len(whole)] for one in _of_its_own(reply)]
    return Reply(
        text="\n\n".join(dict.fromkeys(reply.text for reply in replies)),
        buttons=(
            *rows([*kept, *later]),
            *(row for reply in whole for row in reply.buttons),
            *rows(more),
        ),
        about=next((reply.about for reply in replies if reply.about), None),
    )


def take_later(desk: Desk, pending: Pending) -> Reply | None:
    """The answer to a question that waited; None where its names must be settled first."""
    return None if pending.asked is None else answer_asked(desk, pending.asked)


def _of_its_own(reply: Reply) -> list[Button]:
    """The buttons that do not lean on the last question: which name, undo."""
    buttons = [button for row in reply.buttons for button in row]
    return [one for one in buttons if Tap.parse(one.payload).verb not in _OF_AN_ANSWER]


def _more_of(desk: Desk, question: Question) -> list[Button]:
    """The button that answers a question in full which was answered in short."""
    if settled(by_pair(desk, question.slots.mentions)) is None:
        return []
    label = wording("more_of").format(topic=wording(f"topic.{question.topic}"))
    return [replace(_later(desk, question), label=label)]


def _later(desk: Desk, question: Question) -> Button:
    """A button that carries the question with all that its words settle."""
    about = settled(by_pair(desk, question.slots.mentions))
    number = desk.context.pending_count + 1
    desk.context = desk.context.with_pending(
        Pending(
            number=number,
            typed="",
            text=question.text,
            candidates=(),
            asked=None if about is None else as_asked(desk, question, about),
        )
    )
    return Button(label=_label(question), payload=tap(Verb.LATER, number), topic=question.topic)


def _label(question: Question) -> str:
    """The question's own words; its topic's name where they are many."""
    words = " ".join(question.text.split()).strip(" ,;.")
    return words if len(words) <= LONGEST_LABEL else wording(f"topic.{question.topic}")
