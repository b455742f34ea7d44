"""Who we are, told with more behind it: "we are mira and tom, i play left"."""

from __future__ import annotations

import re
from typing import TypeGuard

from bot.chat.common_words import is_common
from knowledge.regex import regex

_NAME = r"[^\W\d_]+(?:['’-][^\W\d_]+)*"
_PAIR = (
    rf"(?P<pair>(?P<one>{_NAME})(?: {_NAME})?(?: and | n | ?[&/+] ?)(?P<two>{_NAME})(?: {_NAME})?)"
)
_ALONE = regex(rf"{_PAIR}[ .!]*", re.IGNORECASE)
_WITH_MORE = regex(
    rf"{_PAIR}(?:\s*[,.;:!\n–—]+\s*|\s+and (?=(?:i|im|i'm|we|he|she)\b))(?P<rest>.*\w.*)",
    re.IGNORECASE | re.DOTALL,
)


def pair_and_rest(typed: str) -> tuple[str, str] | None:
    """The two names and what is told behind them; None where they are not surely names.

    No everyday word passes for a name here: "we are gassed and cooked, what now" names nobody.
    """
    found = _WITH_MORE.fullmatch(typed.strip())
    return (found["pair"], found["rest"].strip()) if _are_names(found) else None


def is_surely_pair(typed: str) -> bool:
    """Whether it is two names and nothing else, none of them an everyday word."""
    return _are_names(_ALONE.fullmatch(typed.strip()))


def _are_names(found: re.Match[str] | None) -> TypeGuard[re.Match[str]]:
    return found is not None and not any(is_common(found[name].lower()) for name in ("one", "two"))
