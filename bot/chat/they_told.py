"""A result whose winner hangs on "they": to a coach that is as readily their own pair."""

from __future__ import annotations

import re

from bot.chat.names import find_mentions
from bot.chat.view import ChatView
from bot.chat.words import folded_line, words
from knowledge.regex import regex

_THEY = regex(r"\bthey(?:['’]?(?:ve|d))?\b|\b(?:the )?other (?:pair|team|two)\b", re.IGNORECASE)
_US = regex(r"\b(?:we|us|ours?|weve|were|my|i|me)\b")
_SAYS_OF_OTHERS = regex(r"\b(?:says?|said|tells?|told|texts?|texted|thinks?)\b")


def hears_they(typed: str) -> bool:
    """Whether the words that wait for somebody are such a "they"."""
    return _THEY.fullmatch(typed) is not None


def is_other(typed: str) -> bool:
    """Whether it is "the other pair": the one across the net, or another of the coach's own."""
    return "other" in typed.lower()


def hangs_on_they(text: str, chat: ChatView) -> str | None:
    """The "they" of such a result as it is typed; None where "we" or a name says whose it was.

    Who only passes on what somebody said has named no side: "danka says they lost".
    """
    found, line = _THEY.search(text), folded_line(words(text))
    if found is None or _US.search(line):
        return None
    named = any(not one.pronoun for one in find_mentions(words(text), chat))
    return None if named and not _SAYS_OF_OTHERS.search(line) else found[0]
