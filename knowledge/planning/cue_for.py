"""Whose cue is asked for: "cue for Tom", "one line each", "three things to shout"."""

from __future__ import annotations

from knowledge.regex import regex
from knowledge.said_phrases import fold
from knowledge.situation import OnCourt, Situation

THEM_ALL = (
    r"(?:them|my (?:players|pair|two|girls|guys|boys|kids|ladies|team)|the (?:pair|two|girls))"
)
"""How a bench calls both of its own."""

_EACH = regex(
    r"\b(?:each|apiece|both|two of them|(?:one|1) for (?:her|him|me) and"
    r"|(?:tell|(?:say|shout|yell|call) (?:to|at)"
    r"|(?:cue|shout|line|word|message|msg|thought|liner)s? (?:for|to|at))"
    rf" {THEM_ALL})\b"
)
_SEVERAL = regex(
    r"\b(?:two|three|four|five|2|3|4|5|few|couple|some|several)(?: of)?(?: \w+)?"
    r" (?:things|lines|cues|points|words|shouts|reminders|calls|keys)\b"
)


def told_to(situation: Situation) -> tuple[OnCourt, ...]:
    """Those of ours whom the cue is for, by name or as "each"; nobody where it is for the pair."""
    named = tuple(one for one in situation.ours if one.player in situation.asked.about)
    if named:
        return named
    return situation.ours if _EACH.search(fold(situation.asked.words)) else ()


def asks_several(words: str) -> bool:
    """Whether more lines than one are wanted."""
    return _SEVERAL.search(fold(words)) is not None
