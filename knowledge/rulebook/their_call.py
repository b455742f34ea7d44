"""A call of the other pair that we asked them to change, or that helps us: it stays theirs.

Their end is their call (2022 edition, 6.D.1), whichever way they erred: what they call in is in,
and nobody but the caller, or a referee appealed to, takes a call back.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.bad_calls import BAD_CALL
from knowledge.rulebook.entry import Rule
from knowledge.rulebook.told_people import asks_to_take_back
from knowledge.rulebook.touching import plain

CALLERS_ALONE: Final = "No: only the caller can take a call back."
THEIRS_IS_IN: Final = "It stands: their end, their call, so it's in."
SAY_IT: Final = "Saw it out? You may say so; they decide."

_OUT: Final = r"(?:out|long|wide)"
_CALLED_IN: Final = regex(
    rf"\b(?:it|ball|one|shot|serve|return|drive|drop|lob|dink|smash|third|that)"
    rf" (?:(?:was|is|went|landed|clearly|way|just|a bit|sailed|flew) )*{_OUT}"
    r"(?: by \w+(?: \w+)?)?"
    r" (?:(?:but|and|though|yet|still) )*(?P<who>\w+(?: \w+)?)"
    r" (?:(?:just|still|have|has|also) )*(?:called?|calls|said|says|gave|gives|ruled|played)"
    r" (?:(?:it|that|the ball|was|as|is|its) )*(?:in|good)\b"
)
_OF_US: Final = frozenset({"i", "we", "me", "my partner", "partner", "he", "she"})
"""Who is one of us, or may be."""


def called_in_by_them(words: str, ours: Sequence[str]) -> bool:
    """Whether the other pair is told to have called a ball in that was out; `ours` are our names.

    "He called it in" may be a partner, with whom we differ.
    """
    found = _CALLED_IN.search(plain(words))
    if found is None:
        return False
    who = found["who"]
    return who not in _OF_US and not {plain(one) for one in ours} & {*who.split()}


def as_their_call(rule: Rule, words: str, before: str, ours: Sequence[str]) -> Rule:
    """The rule of a call that we doubt, where it helps us or we want it changed."""
    if rule.name != BAD_CALL:
        return rule
    if called_in_by_them(words, ours):
        return replace(rule, ruling=replace(rule.ruling, call=THEIRS_IS_IN, now=SAY_IT))
    if asks_to_take_back(words, before=before):
        return replace(rule, ruling=replace(rule.ruling, call=CALLERS_ALONE))
    return rule
