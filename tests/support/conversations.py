"""Conversations as text: what is typed after "> ", what is answered up to the next "> ".

A conversation is replayed against a fresh demo book with a clock that stands still. Typing a
number presses that button of the last reply, as in the console.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

from bot.channels.console import Console, open_console, shown
from bot.demo_book import demo_store
from scouting_db.values import Micros

SATURDAY_MORNING = Micros(1_750_500_000_000_000)
"""21 June 2025, 10:00 UTC: a moment of no importance that never changes."""

TYPED = "> "
COMMENT = "# "


@dataclass(frozen=True, slots=True, kw_only=True)
class Exchange:
    """One line typed and the lines answered."""

    typed: str
    answered: str


def demo_console() -> Console:
    """A console on a fresh demo book whose clock stands still."""
    store = demo_store(now=SATURDAY_MORNING)
    return open_console(store, user_name="You", clock=lambda: SATURDAY_MORNING)


def read(text: str) -> list[Exchange]:
    """The exchanges of a conversation; ValueError for an answer before anything was typed."""
    exchanges: list[Exchange] = []
    for block in text.strip().split("\n\n"):
        lines = [line for line in block.splitlines() if not line.startswith(COMMENT)]
        if not lines:
            continue
        if exchanges and not lines[0].startswith(TYPED):
            last = exchanges.pop()  # an answer with a blank line in it goes on
            answered = "\n\n".join([last.answered, *lines[:1]])
            exchanges.append(replace(last, answered="\n".join([answered, *lines[1:]])))
            continue
        if not lines[0].startswith(TYPED):
            raise ValueError(f"a block begins with what was typed, not {lines[0]!r}")
        exchanges.append(
            Exchange(typed=lines[0].removeprefix(TYPED), answered="\n".join(lines[1:]))
        )
    return exchanges


def replay(exchanges: list[Exchange]) -> list[Exchange]:
    """The same lines typed again, with what is answered now."""
    console = demo_console()
    try:
        return [
            Exchange(typed=one.typed, answered=shown(console, console.say(one.typed)))
            for one in exchanges
        ]
    finally:
        console.store.close()


def written(exchanges: list[Exchange]) -> str:
    """The conversation of exchanges."""
    return "\n\n".join(f"{TYPED}{one.typed}\n{one.answered}" for one in exchanges) + "\n"


def fenced(markdown: Path, mark: str) -> str:
    """The fenced block that follows `<!-- mark -->` in a page; LookupError without one."""
    _, found, rest = markdown.read_text(encoding="utf-8").partition(f"<!-- {mark} -->")
    if not found:
        raise LookupError(f"{markdown.name} has no block marked {mark}")
    block = rest.split("```", 2)[1]
    return block.split("\n", 1)[1]


if __name__ == "__main__":
    import sys

    for name in sys.argv[1:]:
        path = Path(name)
        path.write_text(written(replay(read(path.read_text(encoding="utf-8")))), encoding="utf-8")
