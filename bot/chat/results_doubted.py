"""What makes a line no result: somebody still serves in it, or no format ends a game there."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.format_said import TARGETS
from bot.chat.results_brief import is_over
from bot.chat.words import Word, folded_line
from knowledge.regex import regex

_STILL_SERVED = regex(
    r"\b(?:serving|receiving|returning|recv|still serve|to serve)\b"
    r"|\b(?:we|us|they|them) (?:still |now |just |will |to |are |re )*"
    r"(?:serve|serves|receive|return)\b"
    r"|\b(?:our|their|my|we|they) (?:serve|ball)\b(?! (?:was|went|is) (?:out|long|wide|off|bad))"
    r"|\b(?:lost|lose|got|have|has|won) the (?:serve|ball)\b|\bpoints? (?:missing|to go|away)\b"
)
_SERVED_THEN = regex(
    r"\b(?:last|next|final|first|when|while|on|off|with|because) (?:\w+ ){0,3}"
    r"(?:serv\w+|receiv\w+|return\w*|ball)\b"
    r"|\b(?:won|lost|took|take|dropped|got|beat|second|first|third) (?:the )?"
    r"(?:first|second|third|1st|2nd|3rd|game|set|g[1-5])\b"
)
"""Who served in a game that is over, or serves in the one after it."""

SHORTEST_TARGET = min(TARGETS)
LARGEST_LEAD_BEYOND = 2
"""Points ahead at the end of a game that went past its target."""

LONGEST_GAME = 35
"""Points that hardly a game reaches. Common practice, no source."""


_TOLD_OVER = regex(
    r"\b(?:won|lost|beat|took|dropped)(?: (?:we|us|they|them|it|that|the|by)){0,2} "
    r"(?P<first>\d{1,2}) (?P<second>\d{1,2})\b"
)


def is_going_on(line: str) -> bool:
    """Whether a line with one score tells of who serves now: "10-8 but receiving"."""
    told = _TOLD_OVER.search(line)
    if told is not None and is_over(*sorted((int(told["first"]), int(told["second"])))):
        return False
    if is_lead(line):
        return True
    return _STILL_SERVED.search(line) is not None and _SERVED_THEN.search(line) is None


_LEADS = regex(r"\b(?:lead|leads|leading|trail|trails|trailing)(?: (?:by|now|just|only|at))? \d")


def is_lead(line: str) -> bool:
    """Whether a line tells a score as a lead: "they lead 13-11" has not ended a game."""
    return _LEADS.search(line) is not None


def is_now(before: Sequence[Word]) -> bool:
    """Whether the words before a score tell it as the one that stands: "so its 5-7"."""
    return _IT_STANDS.search(folded_line(before)) is not None


_IT_STANDS = regex(
    r"\b(?:its|it is|it|is|thats|that makes it|makes it|now|so|were|we are|we|theyre|they are)"
    r"(?: (?:now|at|still))*$"
)


def may_end(first: int, second: int) -> bool:
    """Whether some usual format ends a game there: at a target, or by two beyond one."""
    low, high = sorted((first, second))
    if low == high or high < SHORTEST_TARGET or high > LONGEST_GAME:
        return False
    return high in TARGETS or high - low <= LARGEST_LEAD_BEYOND
