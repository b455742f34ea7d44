"""The wind spoken of as "it", once it was told: "what if its across", "drive my third into it"."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.situation import Wind

_LEAD = r"(?:(?:ok|okay|so|and|but|or|then|what|how|about|if|when|even|now|same|with) )*"
_IT = r"(?:(?:its|it is|it was|it|the wind(?: is)?|thats|that is) )?"
_TAIL = r"(?: (?:now|then|instead|today|here|though|tho|the court|all the way))*"
_BLOWS = r"(?:(?:blowing|coming|going|right|straight) )*"
_OURS = r"(?:our|my)"
_WAYS = {
    Wind.ACROSS: r"(?:across|sideways|from the side)",
    Wind.BEHIND_US: rf"(?:behind (?:us|me)|(?:at|on) {_OURS} backs?)",
    Wind.AGAINST_US: rf"(?:against (?:us|me|it)|(?:in|into|at) {_OURS} faces?|into it)",
}
_FORMS = {wind: regex(rf"{_LEAD}{_IT}{_BLOWS}{way}{_TAIL}") for wind, way in _WAYS.items()}
_INTO_IT = regex(
    r"\b(?:serves?|returns?|thirds?|drops?|drives?|lobs?|dinks?|hit|hitting|play|playing|serving"
    r"|driving|dropping|lobbing)(?: (?:or|and|my|our|a|the|third|thirds|drop|drive|shot|ball|balls"
    r"|high|deep|it))* (?:into|against) it\b"
)
"""Into the wind, where a shot is named; "run into it" is a ball."""


def wind_pointed_at(message: Message, chat: ChatView) -> Wind | None:
    """Where it blows, said of it alone; None while no wind was told."""
    if not chat.windy:
        return None
    line = " ".join(word.folded for word in message.said)
    return next((wind for wind, form in _FORMS.items() if form.fullmatch(line)), None)


def shot_into_it(line: str) -> bool:
    """Whether a shot is asked about that goes against the wind told before."""
    return _INTO_IT.search(line.lower()) is not None
