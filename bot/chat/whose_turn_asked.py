"""Which of us serves or returns, and what a serve from the wrong place costs, by the form alone.

The first the score answers, whoever is named beside it: "who returns first me or her". The second
is the rulebook's, whatever was asked just before: "i served from the wrong side what happens".
"""

from __future__ import annotations

from bot.chat.message import Message
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


def asks_whose_turn(message: Message) -> bool:
    """Whether it asks which of us two returns or serves."""
    return _TURN.fullmatch(folded_line(message.said)) is not None


def asks_of_the_wrong_place(message: Message) -> bool:
    """Whether it asks what a serve from the wrong place or by the wrong one costs."""
    return _WRONG_PLACE.fullmatch(folded_line(message.said)) is not None
