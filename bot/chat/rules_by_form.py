"""Everyday questions that a rule answers, whatever their words mean in play: ends, phones, calls.

"Her line calls" are no line of a ball, and a phone is no small talk where it is asked whether one
may use it.
"""

from __future__ import annotations

from bot.chat.message import Message
from knowledge.regex import regex
from knowledge.rulebook.bad_calls import LONGEST, tells_of_bad_calls
from knowledge.vocabulary import Trait

_LEAD = r"(?:(?:so|ok|okay|wait|hey|um|and|but|oh) )*"
_AT = r"(?:\d+|four|five|six|seven|eight|nine|ten|eleven)"
_GAME = (
    r"(?:(?:in|for|of) (?:the |a )?(?:game (?:one|two|three|\d)|(?:third|3rd|last|final|deciding)"
    r"(?: game)?|decider|game to \w+))"
)
_TURN = r"(?:switch|change|swap) (?:ends|sides)"
_ENDS = regex(
    rf"{_LEAD}(?:{_GAME} )(?:when |what score )?(?:do|should|must|are) (?:we|you|teams)"
    rf"(?: (?:have to|supposed to|going to))? {_TURN}(?: at {_AT})?"
    rf"|{_LEAD}(?:when |(?:do|should|must) )+(?:we|you|teams) {_TURN}(?: at {_AT})(?: {_GAME})?"
)
"""`in game three do we change ends at six`: the form without the game in front is known already."""

_DEVICE = (
    r"(?:(?:cell ?|mobile ?|smart ?)?phones?|mobiles?|smart ?watch(?:es)?|earbuds?|headphones)"
)
_OWN = r"(?:my|our|the|a|an|their|his|her)"
_MAY = regex(
    rf"{_LEAD}(?:can|could|may|should|do|does) (?:i|we|they|he|she|{_OWN} \w+)(?: (?:even|still))*"
    r" (?:use|look at|look on|check|have|take|take out|wear|hold|bring|read|go on|keep)"
    rf"(?: {_OWN})? {_DEVICE}\b.*"
    rf"|{_LEAD}(?:am i|are we|is he|is she|are they) allowed .*\b{_DEVICE}\b.*"
    rf"|{_LEAD}(?:is|are) (?:{_OWN} )?{_DEVICE} (?:ok|okay|allowed|legal|permitted|fine)\b.*"
)

_OF_CALLS = frozenset([Trait.COMMUNICATION])
"""Read into "they call all our balls out", where nobody calls a ball to their partner."""


def asks_of_rules(message: Message) -> bool:
    """Whether it asks when ends change, or for a phone; or tells that they call good balls out.

    Nothing that notes a trait is taken for it, nor what is called a note.
    """
    line = " ".join(word.folded for word in message.said)
    if line.startswith("note "):
        return False
    if len(message.said) > LONGEST or not {one.trait for one in message.note.claims} <= _OF_CALLS:
        return False
    is_asked = _ENDS.fullmatch(line) or _MAY.fullmatch(line)
    return is_asked is not None or tells_of_bad_calls(message.text)


def tells_of_somebodys_calls(message: Message) -> bool:
    """Whether it says of somebody by name that their calls are bad: words that one may keep."""
    is_named = any(not one.pronoun for one in message.mentions)
    return is_named and not message.asks and tells_of_bad_calls(message.text)
