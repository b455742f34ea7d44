"""Balls of theirs told by the body they come at alone: "he keeps hitting at my chest"."""

from __future__ import annotations

from knowledge.regex import regex

AT_THE_BODY = "hip"
"""The symptom of patterns.toml."""

_TOLD = regex(
    r"[\w '’]{2,40}? (?:hit(?:s|ting)?|go(?:es|ing)?|aim(?:s|ing)?|com(?:e|es|ing)|attack(?:s|ing)?"
    r"|play(?:s|ing)?)(?: (?:it|balls?|them|the|every|everything|hard|straight|right|fast|all))*"
    r" (?:at|into|to|in|on|for) (?:my|our|\w+['’]?s)(?: (?:right|left|paddle|upper))*"
    r" (?:chest|body|hips?|shoulders?|belly|stomach|ribs?|torso|armpit)\b"
)


def tells_only_of_a_body(words: str) -> bool:
    """Whether they are told to hit at a body, and no stroke, spin or bounce beside it: then no
    likeness with another habit's wording counts for more."""
    return _TOLD.match(words.lower().strip()) is not None
