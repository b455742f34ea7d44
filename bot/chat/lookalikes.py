"""Letters that look like Latin ones, and signs that show nothing: pasted text brings them along."""

from __future__ import annotations

LOOKALIKE = str.maketrans("авекмнорстухіјѕԁһԛԝгαβεικνορτυχ", "abekmhopctyxijsdhqwrabeikvoptux")
"""Small Cyrillic and Greek letters, each with the Latin one that it is taken for."""

INVISIBLE = "\u00ad\u034f\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufe0f\ufeff"
"""Zero-width signs, marks of writing direction and soft hyphens, as a character class takes them.

Unicode 15, category Cf without the tags and the signs of other scripts' own.
"""


def as_latin(word: str) -> str:
    """The word in small Latin letters where each of its letters is one or looks like one."""
    small = word.casefold()
    latin = small.translate(LOOKALIKE)
    return latin if latin.isascii() else word
