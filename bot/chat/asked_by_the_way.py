"""Topics asked for in a few spoken words: "gimme the plan", "who smashes", "what if its windy".

Each is a form whose words ask for one page and no other; names are taken out before they are read.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from knowledge.regex import regex

_LEAD = r"(?:(?:ok|okay|so|and|hey|yo|bro|dude|pls|please|quick|now) )*"
_END = r"(?: (?:now|pls|please|quick|again|then|bro|dude|thanks))*"

_PLAN = regex(
    rf"{_LEAD}(?:gimme|lemme (?:see|have|get|hear)|hit me with|hand me|wanna (?:see|have|hear)"
    r"|need|i need|we need|lets (?:see|hear|have)) (?:(?:the|a|our|my|that) )?(?:game ?)?plan"
    rf"(?: (?:vs|for|against|on)(?: (?:{NAME}|and|them|these|two|guys))+)?{_END}"
)
""" "Gimme a cue" is one line, the plan is the plan."""

_BOUNCE_OR_VOLLEY = regex(
    r"\b(?:bounce|let (?:it|that|the ball|them|one) (?:bounce|drop))(?: it| that)? or "
    r"(?:(?:do|should|shall) i |just )?(?:volley|take|hit|smash|attack|punch)\b"
    r"|\b(?:volley|take|hit|punch)(?: it| that| them| one)?(?: (?:in|out of|from) the air)? or "
    r"(?:(?:do|should|shall) i )?(?:let (?:it|that|them) )?bounce\b"
)
_MAY_FLY_OUT = regex(
    r"\b(?:out|long|leave|let it go|let it fly|duck|fast|hard|drives?|driven|bangs?)\b"
)
"""A ball that may fly out is another question than one that bounces."""

_WHO_SMASHES = regex(
    r"\b(?:who|whos|which of us)(?: (?:is|of us|should|shall|does|gets to|has to|takes it and))* "
    r"(?:smash(?:es)?|(?:takes?|hits?|gets?|puts? away|plays?|has|owns?) (?:the |that |this |it )*"
    r"(?:overheads?|smash|high (?:ball|one)|put ?away))\b"
)
_MIDDLE = regex(r"\b(?:middle|mid|centre|center|between us|seam)\b")


_IF_WINDY = regex(
    rf"{_LEAD}(?:what|how)(?: about)? (?:if|when) (?:its|it is|it gets|it turns|it becomes|theres"
    r"|there is|the wind|we get)(?: (?:a|some|really|very|super|so|too|is|gets|strong|lot of))*"
    r" ?(?:windy|gusty|breezy|wind|picks up|comes up|blows|blowing)"
    rf"(?: (?:today|out there|outside|later|on court|a lot|hard|up))*{_END}"
)
"""With no word on where it blows from, the wind page says more than that a call stands."""


def wants_the_plan(message: Message) -> bool:
    """Whether the plan is asked for, however shortly."""
    return _PLAN.fullmatch(named_line(message.said, message.mentions)) is not None


def asks_if_windy(message: Message) -> bool:
    """Whether nothing is asked but what a wind changes, and none was told of yet."""
    if message.chat.windy:
        return False
    return _IF_WINDY.fullmatch(" ".join(word.folded for word in message.said)) is not None


def asks_bounce_or_volley(message: Message) -> bool:
    """Whether a ball is to be taken in the air or let bounce, of one that surely stays in."""
    line = " ".join(word.folded for word in message.said)
    return _BOUNCE_OR_VOLLEY.search(line) is not None and _MAY_FLY_OUT.search(line) is None


def asks_who_smashes(message: Message) -> bool:
    """Whether it is asked whose a high ball between the two of us is."""
    line = " ".join(word.folded for word in message.said)
    return _WHO_SMASHES.search(line) is not None and _MIDDLE.search(line) is not None
