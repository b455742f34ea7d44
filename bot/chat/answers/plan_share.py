"""A plan as a message of its own: to forward to a partner, or to a student without our notes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from bot.chat.wording import wording
from knowledge.given_plan import GivenLine
from knowledge.phone_screen import MOST_LIST_LINES, wrapped
from knowledge.planning.teaching import FIND_OUT, FOR_A_STUDENT


def shared_plan(
    lines: Sequence[GivenLine], *, names: str, day: str, to: str | None, sign: str | None
) -> str:
    """The plan in full words; reasons give way, the last one first, until it fits a screen."""
    title = wording("plan.shared_to" if to else "plan.shared").format(to=to, names=names, day=day)
    closing = [sign] if sign else []
    for reasons in range(len(lines), -1, -1):
        text = [title, *_told(lines, reasons), *closing]
        if wrapped(text) <= MOST_LIST_LINES:
            return "\n".join(text)
    return "\n".join([title, *_told(lines, 0)])


def _told(lines: Sequence[GivenLine], reasons: int) -> Iterator[str]:
    for n, line in enumerate(lines, start=1):
        yield f"{n} {line.text if n <= reasons else line.do}"


def for_student(*, names: str) -> str:
    """What to do, how to find out at whom, and why: the same whatever was noted of anybody."""
    lines = [f"{n} {line}" for n, line in enumerate(FOR_A_STUDENT, start=1)]
    return "\n".join([wording("plan.student").format(names=names), *lines, FIND_OUT])
