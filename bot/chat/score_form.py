"""Numbers alone that are no score: a minus, a decimal point, four of them, or thousands."""

from __future__ import annotations

import re

from knowledge.regex import regex

_ONLY_NUMBERS = regex(r"[\s\d.,:/\-–—]+")
_NUMBER = regex(r"\d+")
_MINUS = regex(r"^\s*[-–—]\s*\d|\d\s*[-–—]\s*[-–—]\s*\d|\s[-–—]\d")
_DECIMAL = regex(r"\d\.\d")
_NUMBERS = (2, 3)
"""Of a score: the two sides' points, and in doubles the server."""

LONGEST_NUMBER = 3
"""Digits of a number that any score has."""


def is_no_score(text: str) -> bool:
    """Whether a message of numbers alone can be no score; a clock or one number is not meant."""
    if not _ONLY_NUMBERS.fullmatch(text):
        return False
    found = _NUMBER.findall(text)
    if len(found) < min(_NUMBERS) or (
        len(found) == min(_NUMBERS) and not re.search(r"[-–—\s]", text.strip())
    ):
        return False
    is_odd = _MINUS.search(text) or _DECIMAL.search(text)
    too_long = any(len(one.lstrip("0")) > LONGEST_NUMBER for one in found)
    return bool(is_odd) or too_long or len(found) not in _NUMBERS
