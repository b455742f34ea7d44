"""Whether a game must be won by two, or on serve: "is it win by 2 to 15", "freeze at 20?"."""

from __future__ import annotations

from bot.chat.message import Message
from knowledge.regex import regex

_WIN_BY = regex(
    r"(?:(?:so|ok|wait|hey|um|and|is|its|it|this|that|do|does|are|we|you|they|i|have|has|to|need"
    r"|must|got|game|games|match|still|even|a|the|playing|just|\d+|or|no|cap) )*"
    r"win(?:ning)? by (?:2|two|1|one)(?: (?:to|or|at|in|points?|too|here|1|one|2|two|11|15|21|a"
    r"|game|games|rally|scoring|though|tho|right|still|cap|no))*"
)


_FREEZE = regex(
    r"(?:(?:so|ok|wait|hey|um|and|is|its|it|this|that|do|does|are|we|you|they|there|the|score|a|an"
    r"|any|no|get|gets|here|still|how) )*"
    r"(?:freeze|freezes|freezing|frozen)"
    r"(?: (?:work|works|format|rules|at|on|the|a|game|match|point|points|score|serve|rule|here"
    r"|rally|scoring|or|not|no|in|this|it|is|there|1[0-9]|20|we|event))*"
)
"""In rally scoring the score may freeze at game point, until that is won on serve."""


def asks_win_by(message: Message) -> bool:
    """Whether it asks for the rule of how a game ends, and for nobody's chance to end it."""
    line = " ".join(word.folded for word in message.said)
    found = _WIN_BY.fullmatch(line) or _FREEZE.fullmatch(line)
    return message.asks and found is not None
