"""Somebody beside the court who shouts at us: nobody answers, the referee or desk deals with it.

Common practice, no source. A hard word of ours before it is taken back first.
"""

from __future__ import annotations

from knowledge.advice import Advice, Reason
from knowledge.regex import regex
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.weather_said import folded
from knowledge.vocabulary import Topic

_ONE_OF_THEM = (
    r"(?:(?:her|his|their|the|a|some|this|that|an|one) (?:\w+ ){0,2}?(?:dad|father|mom|mum|mother"
    r"|parents?|husband|wife|boyfriend|girlfriend|coach|brother|sister|son|daughter|friends?|fans?"
    r"|crowd|spectators?|guy in the stands|people in the stands|family|man|lady|guy|woman)"
    r"|spectators?|fans|people|parents|the crowd|somebody|someone)"
)
_SHOUTS = (
    r"(?:yell(?:s|ing|ed)?|shout(?:s|ing|ed)?|scream(?:s|ing|ed)?|swear(?:s|ing)?|swore|curs(?:es"
    r"|ing|ed)|insult(?:s|ing|ed)?|threaten(?:s|ing|ed)?|harass(?:es|ing|ed)?|abus(?:es|ing|ed)"
    r"|heckl(?:es|ing|ed)|boo(?:s|ing|ed)?|mock(?:s|ing|ed)?|calling us|having a go)"
)
_AT_US = regex(
    rf"\b{_ONE_OF_THEM}(?: (?:is|are|was|keeps?|kept|just|now|s|starts?|started|wont stop))* "
    rf"{_SHOUTS}(?: (?:things|stuff|out))?(?: at| to)? (?:us|me|my partner|our)\b"
)
_HARD_WORD = regex(
    r"\b(?:(?:told|called|calls?|tells?|said|yelled|shouted) (?:to |at )?"
    r"(?:her|him|them|she|he|they)? ?(?:\w+ ){0,3}?"
    r"(?:cheat\w*|liar|idiot|names?|stupid|loser|pusher)"
    r"|(?:i|we|partner) (?:swore|cursed|lost it|snapped) at)\b"
)


def shouted_at(words: str) -> bool:
    """Whether somebody who does not play is told to shout at us."""
    return _AT_US.search(folded(words)) is not None


def advise(words: str) -> Advice:
    """Who deals with it; our own hard word first, where one is told."""
    is_ours = _HARD_WORD.search(folded(words)) is not None
    call = "Don't answer. Tell the referee, or send to the desk."
    first = (
        "Own hard word? Say sorry to her or him, once" if is_ours else "Stay together, backs to it"
    )
    lines = (first, "No play till it is quiet; you may ask for that", "Then two breaths, next ball")
    return Advice(
        topic=Topic.RESET_HEAD,
        call=call,
        reasons=tuple(Reason(text=line, source=COMMON_PRACTICE) for line in lines),
        unless="Threats? Off the court and to event staff at once.",
    )
