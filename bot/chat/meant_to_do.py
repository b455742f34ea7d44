"""A clause of what we mean to do about somebody, which nobody has seen them do."""

from __future__ import annotations

from bot.chat.words import folded_line, words
from knowledge.regex import regex

_OUR_PLAN = regex(
    r"\b(?:lets?|make|making|have|get|keep|force) (?:us|him|her|them|em)\b"
    r"|\blets\b|\blet (?=\w+ \w)"
    r"|\b(?:we|i) (?:should|could|can|will|must|need|want|wanna|gotta|gonna|would|might|may"
    r"|have to|ought|just|go|play|lob|hit|drop|drive|attack|target|serve|aim|pick|test)\b"
    r"|\b(?:im|were|am|are) (?:(?:going|trying|about) to|gonna) "
    r"|\b(?:id|ill|wed|well) (?:just |rather )?"
    r"(?:go|play|lob|hit|drop|drive|attack|target|serve|aim)\b"
    r"|^(?:(?:so|and|then|just|plus|but|maybe|probably|please) )*"
    r"(?:(?:lob|hit|drop|dink|drive|attack|target|serve|return|aim|pick|test|play|go|move|run|push"
    r"|force|speed|keep \w+ing)(?:$| (?:him|her|them|em|it|at|to|on|over|short|deep|low|high|more"
    r"|all|every|(?:his|her|their|the) \w+$))"
    r"|(?:overhead|lob|drop|drive|dink|speedup)s?(?:$| (?:over|at|to|on) (?:him|her|them|em)\b))"
)
"""`so lets lob her`, `so overheads`: a clause that says what we would do, not what they do."""


def is_our_plan(clause: str) -> bool:
    """Whether the clause says what we would do: no observation, whatever its reason was."""
    return _OUR_PLAN.search(folded_line(words(clause))) is not None
