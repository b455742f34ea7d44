"""What a message says of the toss: who chooses first, and what they took."""

from __future__ import annotations

from bot.chat.forms import readings, yes_or_no
from knowledge.situation import TossChoice


def find_toss(line: str) -> tuple[bool | None, TossChoice | None]:
    """Whether the first choice is ours, and what they chose; they chose first if they chose.

    `line` has names as "we" and "they".
    """
    chosen = [TossChoice(name) for name, form in readings("they_chose") if form.search(line)]
    they_chose = chosen[0] if chosen else None
    is_ours = yes_or_no("toss_won", line)
    return (False if is_ours is None and they_chose is not None else is_ours), they_chose
