"""When or in what event a pair plays, told behind its names: "again for the final", "in mixed"."""

from __future__ import annotations

from knowledge.regex import regex

DISCIPLINE = r"(?:mixed|doubles|dubs|wom[ae]n['’]?s?|men['’]?s?|girls|ladies|open|seniors?)"
_STAGE = (
    r"(?:finals?|semis?|semi ?finals?|quarters?|quarter ?finals?|bronze|gold|match|game|one|event"
    r"|round|draw|bracket|medal|day|tournament)"
)
_WHICH = rf"(?:(?:the|our|this|that|next|last|first|second|{DISCIPLINE}) )*"
OCCASION = (
    r" (?:again|now|today|tonight|tomorrow|tmrw|here|back together|together|this time|next"
    rf"|(?:for|in|at) {_WHICH}(?:{DISCIPLINE}|{_STAGE}))"
)
"""One such told behind a name, in folded words, with the space before it."""

_BEHIND = regex(rf"(?P<names>.+?)(?:{OCCASION})+[ .!]*")


def without_occasion(typed: str) -> str:
    """The names of "mira and tom again for the final"; all of it where no such words follow."""
    found = _BEHIND.fullmatch(typed.lower())
    return typed if found is None else typed[: found.end("names")]
