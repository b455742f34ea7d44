"""Who we are, told with more beside it: "we are mira and tom, i play left", "im mira w/ tom"."""

from __future__ import annotations

import re
from typing import TypeGuard

from bot.chat.common_words import is_common
from bot.chat.moods import tells_a_state
from bot.chat.words import words
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

_ONE_WITH = regex(
    rf"(?:(?P<before>.*\w.*?)(?:\s*[,.;!\n–—]+\s*| and ))?(?:(?:hi|hey|hello|ok|so|btw)[ ,]+)*"
    rf"(?:i['’]?m|i am|this is) (?P<one>{_NAME})(?P<one_more> {_NAME})?"
    rf"(?: |\s*[,.]\s*)(?:(?:and )?(?:(?:i['’]?m|i am) )?(?:play(?:ing)? )?(?:w/ ?|with )"
    rf"|(?:and )?my partner(?: is|'s)? )"
    rf"(?P<two>{_NAME})(?P<two_more> {_NAME})?(?: today| this time)?[ .!]*"
    rf"(?:[,.;!\n–—]+\s*(?P<after>.*\w.*))?",
    re.IGNORECASE | re.DOTALL,
)


def one_with_partner(typed: str) -> tuple[str, str] | None:
    """The pair of "were in denver, im mira w/ tom", and what is told beside it."""
    found = _ONE_WITH.fullmatch(typed.strip())
    if not _are_names(found) or "?" in (found["before"] or ""):
        return None
    one, two = (f"{found[name]}{found[f'{name}_more'] or ''}" for name in ("one", "two"))
    rest = ", ".join(part.strip() for part in (found["before"], found["after"]) if part)
    return f"{one} and {two}", rest


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
    if found is None:
        return False
    named = [word for name in ("one", "two") for word in words(found[name])]
    return not any(is_common(word.folded) or tells_a_state(word) for word in named)
