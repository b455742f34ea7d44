"""The draw that a pair plays, by the words for it: "womens", "mixed", "mens"."""

from __future__ import annotations

import re

from knowledge.regex import regex

DRAW = r"(?:wom[ae]n['’]?s?['’]?|ladies['’]?|m[ae]n['’]?s['’]?|mixed|mxd?|xd|wd|md)"
"""A draw in an expression that ignores case."""

_NAMED = (
    ("womens", regex(r"wom[ae]n['’]?s?['’]?|ladies['’]?|wd", re.IGNORECASE)),
    ("mens", regex(r"m[ae]n['’]?s['’]?|md", re.IGNORECASE)),
    ("mixed", regex(r"mixed|mxd?|xd", re.IGNORECASE)),
)


def draw_of(typed: str) -> str:
    """The draw that the word is for; empty for any other word."""
    return next((draw for draw, form in _NAMED if form.fullmatch(typed)), "")
