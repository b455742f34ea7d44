"""What two players say to each other in a break: one ball to play, and one calm word.

Common practice, no source: who hears more than one thing in a minute keeps none.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from knowledge.advice import Advice, Reason
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.weather_said import folded
from knowledge.vocabulary import Topic

_TIMEOUT = r"time[ -]?outs?"
_BREAK = regex(
    rf"\b(?:{_TIMEOUT}|t/o|(?:the|this|our|a) break|between (?:the )?games|change ?over"
    r"|(?:chang|switch)(?:e|ing) (?:ends|sides)|huddle)\b"
)
_SAY = regex(
    r"\bwhat (?:(?:do|should|can|shall|could|would|are|to|we|i|you|u|both|even|the two of us|best"
    r"|things?|need|have|want|going|gonna) )*(?:talk|say|discuss|tell|speak|chat)\b"
    r"|\b(?:tell|give) us (?:what|something) to (?:say|talk about)\b"
)
_TAKEN = regex(
    rf"\b(?:they|we|he|she|i|just|opponents?|\w+) (?:just |have |ve )*(?:called|took|take|burned"
    rf"|used) (?:a |the |their |our |another |last )*{_TIMEOUT}\b"
)
_NOW = regex(r"\b(?:what now|now what|so what now|what do (?:we|i) do(?: now)?)\W*$")
_OF_RULES = regex(r"\b(?:ref|referee|umpire|rules?|legal|allowed|desk|to (?:call|get|ask))\b")

CALM: Final = "Then breathe out, and say: next one, together"
ONLY: Final = "One ball and one word: more is forgotten"


def asks_what_to_say(words: str) -> bool:
    """Whether it asks what to say to each other in a break: "they called time out what now"."""
    said = folded(words)
    if _OF_RULES.search(said):
        return False
    in_break = _BREAK.search(said) is not None and _SAY.search(said) is not None
    return in_break or (_TAKEN.search(said) is not None and _NOW.search(said) is not None)


def with_calm(advice: Advice, situation: Situation) -> Advice:
    """The one line, with the calm word under it where it is for a break."""
    if situation.topic is not Topic.CUE or not asks_what_to_say(situation.asked.words):
        return advice
    calm = tuple(Reason(text=text, source=COMMON_PRACTICE) for text in (CALM, ONLY))
    return replace(advice, reasons=calm)
