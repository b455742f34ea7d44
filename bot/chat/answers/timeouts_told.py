"""Our time-outs left as told: they stay so for the rest of that game, whatever the log has."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.asked import Asked
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_SUPPOSED = regex(r"\b(?:if|when|whenever|suppos\w+|say)\b")


def with_timeouts_told(desk: Desk, asked: Asked) -> Asked:
    """The question with the time-outs told before it; its own are kept for the next."""
    game = _game(desk)
    if game is None or (asked.timeouts_left is None and desk.context.timeouts is None):
        return asked
    if asked.timeouts_left is not None:
        if not _SUPPOSED.search(asked.text.lower()):
            desk.context = replace(desk.context, timeouts=(*game, asked.timeouts_left))
        return asked
    left = told_left(desk)
    if left is None or asked.topic is not Topic.TIMEOUT_NOW:
        return asked
    return replace(asked, timeouts_left=left)


def told_left(desk: Desk) -> int | None:
    """How many are left by what was told of this game, and by the log since; None if not told."""
    told = desk.context.timeouts
    if told is None or told[:2] != _game(desk):
        return None
    return min(told[2], desk.log().match.timeouts_left[0])


def _game(desk: Desk) -> tuple[int, int] | None:
    """Which game of which match it is: the next one has its own."""
    match = desk.context.match
    return None if match is None else (match, desk.log().next_game_no)
