"""Which of us two serves first, asked with what either misses, or right behind the toss.

"Who serves first" alone asks which pair does, or who is up; with two of ours weighed, or "of us",
it is for the two to agree.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from knowledge.regex import regex

_US = rf"(?:me|i|us|him|her|she|he|my partner|partner|{NAME})"
_MISSES = r"(?: (?:\d+|miss\w*|percent|pct|of|in|out|serves?|from|to|a|the|per|who|with))*"
_SERVES = r"(?:serves?|starts?|begins?|serving|goes|go)(?: (?:serving|to serve|the serve|first))*"
_FIRST_OF_US = regex(
    rf"(?:.* )?(?:who|which(?: one)?) of us(?: two| 2| then| now|(?: (?:is|should|shall|to|will))"
    rf"? {_SERVES})*"
    rf"|(?:(?:so|ok|and) )*who(?:s| is)?(?: (?:should|shall))? {_SERVES} of us(?: two)?"
    rf"|(?:(?:so|ok|and|we|won|toss|the|serve|first) )*who(?:s| is)?(?: (?:should|shall|better"
    rf"|best|to|of|us))* {_SERVES} {_US}{_MISSES} or {_US}{_MISSES}"
)
_LEAD = r"(?:(?:so|ok|okay|and|but|wait|hey|um|just|can|could|you|pls|please|tell|me|us) )*"
_SERVES_FIRST = (
    r"(?:(?:serves?|starts?|begins?|serving|starting)(?: serving| to serve| the serve)?)"
)
_FIRST = regex(
    rf"{_LEAD}(?:(?:is it|whats|what is) better (?:(?:that|if|when) )?)?(?:(?:should|shall) )?{_US}"
    rf"(?: should)? {_SERVES_FIRST} first or (?:rather )?{_US}"
    rf"|{_LEAD}(?:should|shall) {_US} or {_US} {_SERVES_FIRST} first"
    rf"|{_LEAD}(?:who|which one)(?: of us)?(?: two)? (?:should|shall|is better to)"
    rf" {_SERVES_FIRST} first(?: of us(?: two)?| {_US} or {_US})?"
    r"|(?:in )?(?:which|what) order (?:(?:do|should|shall|must|is|we|our|serve|serving) )*"
    r"(?:we|serve|serving)"
    r"|(?:what|which)(?: is|s| should be)? (?:our|the) (?:serve|serving|service) order"
)
""" "Should i serve first or bram", "in which order serve we"."""


def asks_first_of_us(message: Message) -> bool:
    """Whether that is what it asks, and nobody but ours is named."""
    named = [one for one in message.mentions if not one.pronoun]
    if any(one not in message.told.ours for one in named):
        return False
    line = named_line(message.said, message.mentions)
    if _FIRST.fullmatch(line):
        return True
    is_of_serving = "serv" in line or "start" in line
    return is_of_serving and _FIRST_OF_US.fullmatch(line) is not None
