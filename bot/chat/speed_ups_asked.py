"""Speed-ups asked of without a verb: who of them gets ours, and where one of them aims theirs."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from knowledge.regex import regex

_AND = r"(?:(?:so|ok|and|but|then) )*"
_UPS = r"(?:the |our |my |all |these |any )*(?:speed ?ups?|spd ?ups?|speedups?)"
_NOW = (
    r"(?: (?:now|today|then|here|again|right|pls|please|tho|in this game|at this score|vs|against"
    rf"|them|these two|{NAME}))*"
)
_OURS = regex(
    rf"{_AND}(?:whom? (?:gets?|takes?|should get|do we give|do i give|is getting) {_UPS}{_NOW}"
    r"|(?:whats|what is|what) (?:your |ur |the |our )?(?:call|take|advice|view|thinking|word)"
    rf" (?:on|for|with|about) {_UPS}{_NOW})"
)
_THEIRS = regex(
    rf"{_AND}where(?: (?:will|does|do|would|is|are|s))? (?:{NAME}|they|he|she)"
    r" (?:(?:going to|gonna|usually|mostly|always|likely to|most likely to|like to|likes to) )*"
    rf"(?:speed|spd)(?:s|ing)?(?: it| them| balls?)? up{_NOW}"
)


def asks_whom_to_speed_up_at(message: Message) -> bool:
    """ "Who gets the speed-ups", "your call on speed-ups": whoever takes theirs is asked of by
    "who takes their speed-ups", and what to do with them by another verb."""
    return _OURS.fullmatch(named_line(message.said, message.mentions)) is not None


def asks_where_they_speed_up(message: Message) -> bool:
    """ "Where will okafor speed up": what the book knows of them, and no target of ours."""
    return _THEIRS.fullmatch(named_line(message.said, message.mentions)) is not None
