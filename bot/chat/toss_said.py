"""What a message says of the toss: who chooses first, and what they took."""

from __future__ import annotations

from functools import cache
from re import Pattern

from bot.chat.forms import any_of, branches
from knowledge.situation import TossChoice


def find_toss(line: str) -> tuple[bool | None, TossChoice | None]:
    """Whether the first choice is ours, and what they chose; they chose first if they chose.

    `line` has names as "we" and "they".
    """
    chosen = [TossChoice(name) for name, form in _readings("they_chose") if form.search(line)]
    said = [name for name, form in _readings("toss_won") if form.search(line)]
    they_chose = chosen[0] if chosen else None
    if not said:
        return (None if they_chose is None else False), they_chose
    return "false" not in said, they_chose


@cache
def _readings(key: str) -> tuple[tuple[str, Pattern[str]], ...]:
    return tuple((name, any_of(f"{key}.{name}")) for name in branches(key))
