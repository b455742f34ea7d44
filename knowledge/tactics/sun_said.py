"""Which side looks into the sun, by the words of a question and of what goes on from it."""

from __future__ import annotations

from collections.abc import Callable
from enum import StrEnum

from knowledge.regex import regex
from knowledge.situation import Asked


class SunSide(StrEnum):
    """Who looks into the sun."""

    THEM = "them"
    US = "us"


_IN_OUR_EYES = regex(
    r"\b(?:our|my) (?:eyes?|face)\b|\b(?:into|facing|against|looking at) the sun"
    r"|\bsun'?s?\b.*\b(?:behind (?:them|him|her)|(?:their|his|her) backs?)\b"
    r"|\b(?:their|his|her) backs? (?:is |are )?(?:to|against) the sun\b"
)
_BEHIND_US = regex(
    r"\b(?:their|his|her|receiver'?s|returner'?s) (?:eyes?|face)"
    r"|\bbehind (?:us|me)|\b(?:our|my) backs?|they (?:look|face|are looking|are facing)"
)
_INTO_IT = regex(
    r"\blob\w*(?: \w+){0,3} (?:in(?:to)?|up (?:in)?to|at|out of|toward|towards) (?:the )?sun\b"
    r"|\blob\w*(?: \w+){0,3} (?:on|to|at)? ?(?:the |their )?sun(?:ny)? (?:side|end)\b"
)
"""Where a lob of ours goes: into the sun for whoever looks up at it."""

_EYES = regex(r"\b(?:eyes?|faces?|behind|backs?)\b")
"""Words that say themselves whose sun it is."""


def sun_side(words: str) -> SunSide | None:
    """Which side a question says looks into the sun."""
    said = words.lower()
    if _BEHIND_US.search(said):
        return SunSide.THEM
    return SunSide.US if _IN_OUR_EYES.search(said) else None


def sun_told(asked: Asked) -> SunSide | None:
    """Which side looks into it; what was told after the question goes first."""
    if not asked.sun:
        return None
    return _latest(asked, of=sun_side)


def sun_of_our_lob(asked: Asked) -> SunSide | None:
    """The same of a lob of ours: "lob into the sun" goes where they look up into it."""
    if not asked.sun:
        return None
    return _latest(asked, of=_side_of_our_lob)


def _side_of_our_lob(words: str) -> SunSide | None:
    goes_into_it = _INTO_IT.search(words.lower()) and not _EYES.search(words.lower())
    return SunSide.THEM if goes_into_it else sun_side(words)


def _latest(asked: Asked, *, of: Callable[[str], SunSide | None]) -> SunSide | None:
    lines = (*reversed(asked.before.splitlines()), asked.words)
    return next((side for line in lines if (side := of(line)) is not None), None)
