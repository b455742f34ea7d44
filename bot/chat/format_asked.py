"""What is played, asked in few words: "is it 11 or 15", "best of 3?", "what do we play to"."""

from __future__ import annotations

from bot.chat.occasions import DISCIPLINE
from knowledge.regex import regex

OF_FORMAT = "format"
"""The words of a score asked for by what is played to."""

_LEAD = r"(?:(?:so|ok|okay|wait|hey|um|and|but|btw|quick|sorry) )*"
_TO = r"(?:11|15|21|eleven|fifteen|twenty ?one)(?: points?| pts?)?"
_IT = (
    r"(?:it|this|that|we|they|you|a game|one game|(?:the|this|our|each) (?:game|match|set)|games"
    rf"|matches|(?:the )?{DISCIPLINE})"
)
_PLAYED = r"(?:(?:play|plays|played|playing|go|goes|going|just|only|still) )*"
_BEST = (
    r"(?:(?:the )?best of (?:3|5|1|three|five|one)(?: games)?|(?:2|two) out of (?:3|three)"
    r"|(?:just |only )?(?:one|1|a single) game)"
)
_ONE = rf"(?:{_BEST}|(?:up )?to {_TO}|{_TO}|rally scoring|side ?out scoring)"
_WHAT = rf"{_ONE}(?:(?: or)? {_ONE})*"
_HERE = (
    rf"(?: (?:here|today|now|again|pls|please|in (?:the )?(?:{DISCIPLINE}|this one|pool|bracket)"
    rf"|for (?:the )?(?:{DISCIPLINE}|this one|this match)|{DISCIPLINE}|match(?:es)?|games?))*"
)
_SURE = r"(?: (?:or|right|correct|or not|or what|yes|no|isnt it|is it|true))"
_ASKED = regex(
    rf"{_LEAD}(?:what|how many points|how far|what score) (?:(?:do|are|is|does|will) )?(?:{_IT} )?"
    rf"{_PLAYED}(?:up )?to{_HERE}"
    rf"|{_LEAD}how many points (?:(?:is|are|has|does|in|per|for|to win|do) )+"
    rf"(?:{_IT}|match|game)(?: have| play)?{_HERE}"
    rf"|{_LEAD}(?:what|which|whats)(?: is| s)?(?: the| our| this)? format"
    rf"(?: (?:is|are|do|of) (?:{_IT})| are we playing| do we play)?{_HERE}"
    rf"|{_LEAD}(?:is|are|do|does|was) {_IT} {_PLAYED}{_WHAT}{_HERE}{_SURE}*"
    rf"|{_LEAD}(?:{_IT}|match|game) (?:is|are|plays?|goes) {_PLAYED}{_WHAT}{_HERE}{_SURE}"
    rf"|{_LEAD}how many games (?:(?:do|is|are|in|per|does) )*(?:{_IT}|match)?"
    rf"(?: have| play)?{_HERE}"
)


def asks_of_format(spoken: str) -> bool:
    """Whether nothing else is asked, in a line of folded words; a telling has no question in it."""
    return _ASKED.fullmatch(spoken) is not None
