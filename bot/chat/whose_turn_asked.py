"""Which of us serves or returns, and what a serve from the wrong place costs, by the form alone.

The first the score answers, whoever is named beside it: "who returns first me or her". The second
is the rulebook's, whatever was asked just before: "i served from the wrong side what happens".
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.words import folded_line
from knowledge.regex import regex

_LEAD = r"(?:(?:so|ok|okay|and|but|wait|hey|um|just|can|could|you|pls|please|tell|me|us) )*"
_ONE = r"(?:me|i|her|him|she|he|my partner|partner|\w+)"
_WHICH = rf"(?: (?:me|i|her|him|she|he|my partner) or {_ONE}| {_ONE} or (?:me|i))"
_WHEN = r"(?: (?:first|next|now|here|then|it|us|pls|please))*"
_WHO = r"(?:who|whos|which)(?: (?:one )?of us| one)?(?: (?:should|does|will|is|s))*"
_TURN = regex(
    rf"{_LEAD}{_WHO} (?:receives?|returns?|receiving|returning){_WHEN}{_WHICH}?"
    rf"|{_LEAD}{_WHO} (?:serves?|serving|starts?|starting){_WHEN}{_WHICH}"
    r"|(?:.* )?it was (?:my|her|his|our) serve at .*\b(?:whos|whose|who is)(?: next)?(?: turn)?"
    r"(?: (?:is it|now|next))*"
)
"""`it was my serve at zero zero whos turn`: who serves alone is asked of the running score."""

_WRONG = (
    r"(?:(?:i|we|she|he|they|partner|my partner) (?:(?:just|have|has|had|all|accidentally) )*served"
    r" (?:it )?(?:from|on|in) the wrong (?:side|box|court|place|half)"
    r"|(?:the )?wrong (?:one|person|player|server|partner)(?: of us)? (?:just )?served)"
)
_WRONG_PLACE = regex(
    rf"{_LEAD}(?:oh |shit |oops |if )*{_WRONG}.* ?\b(?:what (?:happens|now|do we do|then)|fault"
    r"|replay|legal|count|counts|lose (?:it|the \w+)|whose (?:ball|point)|rule|ruling)\b.*"
)
"""It asks what follows: told alone it may be how a rally ended."""


_US = rf"(?:me|i|us|her|him|she|he|my partner|partner|{NAME})"
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


def asks_whose_turn(message: Message) -> bool:
    """Whether it asks which of us two returns or serves."""
    return _TURN.fullmatch(folded_line(message.said)) is not None


def asks_who_begins(message: Message) -> bool:
    """Whether it asks which of us two should serve first: ours to agree, and no end to choose."""
    named = [one for one in message.mentions if not one.pronoun]
    if any(one not in message.told.ours for one in named):
        return False
    return _FIRST.fullmatch(named_line(message.said, message.mentions)) is not None


def asks_of_the_wrong_place(message: Message) -> bool:
    """Whether it asks what a serve from the wrong place or by the wrong one costs."""
    return _WRONG_PLACE.fullmatch(folded_line(message.said)) is not None
