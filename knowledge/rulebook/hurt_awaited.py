"""One of the other pair is hurt, and it is asked how long we wait or whether we have won.

They have a medical time-out like anybody (2025 edition, 10.B), and staff decide who plays on:
nobody is to be hurried, and nothing is won yet.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from knowledge.complaints import complains
from knowledge.regex import regex
from knowledge.rulebook.entry import Rule
from knowledge.rulebook.touching import plain

MEDICAL: Final = "medical"
WAIT: Final = "Wait, no rush on them: medical time-out, 15 minutes."
NOW: Final = "Keep warm; what comes of it the desk says."

_LOOKED_AFTER: Final = regex(
    r"\b(?:physios?|medics?|medical (?:staff|team)|paramedics?|first aid|ambulance|trainer)\b"
    r"|\b(?:gone|went|walked|helped|carried|came|taken) off\b"
)
_AWAITED: Final = regex(
    r"\b(?:can|do|did|could|have|should) we (?:just |already |now |then )*"
    r"(?:win|won|(?:claim|take|get) (?:the |a )?(?:point|game|match|win))\b"
    r"|\b(?:is it|is that) (?:our|a) (?:win|match|game|walkover)\b"
    r"|\b(?:do|must|should) we (?:have to |need to |just )*wait\b"
    r"|\b(?:forfeit|default|retire|walkover)\w*\b"
)
_HOW_LONG: Final = regex(
    r"\bhow (?:long|much time|many minutes) (?:can|do|does|may|will|have|has|should) "
    r"(?:she|he|they|it|we|opponents?|(?:\w+ )?\w+)\b"
)
_OURS: Final = regex(r"\b(?:i|im|ive|me|my|partners?)\b")
_OF_PLAY: Final = regex(r"\b(?:between|serv\w+|scores?|returns?|warm ?up|rall(?:y|ies))\b")


def waits_for_hurt(words: str, *, before: str = "") -> bool:
    """Whether it is asked so of somebody hurt, as these words or those `before` tell."""
    said = plain(words)
    is_asked = _AWAITED.search(said) or _HOW_LONG.search(said)
    if not is_asked or _OURS.search(said) or _OF_PLAY.search(said):
        return False
    told = f"{before}\n{words}"
    if complains(told) or _LOOKED_AFTER.search(plain(told)):
        return True
    # What hurts is not kept of the question before; that we asked to wait is.
    return _AWAITED.search(plain(before)) is not None


def as_awaited(rule: Rule, words: str, before: str, ours: Sequence[str]) -> Rule:
    """The rule of a medical time-out, as those who wait need it; `ours` are our names."""
    if rule.name != MEDICAL or not waits_for_hurt(words, before=before):
        return rule
    told = plain(f"{before} {words}").split()
    if _OURS.search(" ".join(told)) or {plain(one) for one in ours} & {*told}:
        return rule
    return replace(rule, ruling=replace(rule.ruling, call=WAIT, now=NOW))
