"""A rally whose first words say whose it was, with what happened in it right behind, unmarked."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import Word, folded_line
from knowledge.regex import regex

_STILL_WHOSE = frozenset(
    ["is", "to", "now", "again", "serve", "ball", "the", "serving", "and", "was"]
)
_IT = r"(?:that(?: one| rally| point)?|this one|it|the (?:rally|point))"
_WON_OR_LOST = regex(
    rf"^(?:(?:ok|so|and|ugh|nice|yes|no|damn|argh) )*(?:(?:we|they) )?(?:just )?"
    rf"(?:(?:lost|won) {_IT}|dropped that (?:one|rally|point))"
    r"(?= (?:i|we|they|he|she|my|our|their|his|her|hes|shes|theyre)\b(?! (?:$|too|again|now)))"
)
"""`lost that one i popped it up`: who did it begins a clause of its own, "one i" is no score."""


def opened_by(said: Sequence[Word]) -> int:
    """How many words at the beginning only say whose the rally was; 0 where more belongs there."""
    if said[0].folded in ("ours", "theirs"):
        return int(len(said) > 1 and said[1].folded not in _STILL_WHOSE)
    found = _WON_OR_LOST.match(folded_line(said))
    return len(found[0].split()) if found else 0
