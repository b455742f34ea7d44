"""A plan as a message of its own: to forward to a partner, or to a student without our notes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from bot.chat.wording import wording
from knowledge.given_plan import GivenLine
from knowledge.phone_screen import MOST_LIST_LINES, wrapped
from knowledge.planning.teaching import WHY_IN_GENERAL


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


def for_student(lines: Sequence[GivenLine], *, names: str) -> str:
    """What to do and why it works against anybody: nothing that was noted of anybody."""
    title = wording("plan.student").format(names=names)
    for reasons in range(len(lines), -1, -1):
        text = [title, *_taught(lines, reasons)]
        if wrapped(text) <= MOST_LIST_LINES:
            break
    return "\n".join(text)


def _taught(lines: Sequence[GivenLine], reasons: int) -> Iterator[str]:
    for n, line in enumerate(lines, start=1):
        why = WHY_IN_GENERAL.get(line.phase)
        yield f"{n} {line.do}: {why}" if why and n <= reasons else f"{n} {line.do}"
