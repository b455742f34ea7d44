"""Whose fault at the net it was: theirs is called by them, and nobody calls it on himself."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.entry import Rule
from knowledge.rulebook.touching import NET_TOUCH, plain

THEIRS: Final = "Theirs to call: ask. If they agree, your rally."
LOGGED: Final = 'Theirs to call. If they agree: "no, our rally".'
"""The rally stands in the log already; these words change whose it was. Common practice."""

_LEAD = r"(?:(?:wait|hang on|hold on|hey|no|but|oh|actually|ok|so|i think|i saw|pretty sure) )*"
_LATE: Final = regex(r"(?:(?:no|but|oh|hey|actually) )*(?:wait|hang on|hold on|hold up)\b")
_OURS: Final = regex(r"\b(?:i|im|my|me|mine|we|our|us|partners?|partner s)\b")
_DID: Final = (
    r"(?:\w+ ){0,2}?(?:touch(?:es|ed)?|grabb?(?:ed|s)|brush(?:es|ed)|nick(?:ed|s)|bump(?:ed|s)"
    r"|was (?:in|on|touching)|hits?(?= the net with))"
)
_THEY: Final = regex(
    rf"{_LEAD}(?:he|she|they|\w+(?: \w+)?) {_DID} (?:the |into the )?(?:net|tape)\b"
)


def told_late(words: str) -> bool:
    """Whether it opens as what is remembered after the rally was told does: "wait, he ..."."""
    return _LATE.match(plain(words)) is not None


def tells_their_touch(words: str, ours: Sequence[str] = ()) -> bool:
    """Whether one of the other pair is told to have touched the net; `ours` are our names."""
    said = plain(words)
    if _OURS.search(said) or {plain(one) for one in ours} & {*said.split()}:
        return False
    return _THEY.match(said) is not None


def as_theirs(rule: Rule, words: str, ours: Sequence[str]) -> Rule:
    """The rule of such a touch, with what to do where it is the other pair's."""
    if rule.name != NET_TOUCH or not tells_their_touch(words, ours):
        return rule
    return replace(rule, ruling=replace(rule.ruling, now=LOGGED if told_late(words) else THEIRS))
