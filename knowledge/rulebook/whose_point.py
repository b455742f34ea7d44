"""Whose point it is after a fault, asked beside whether it is one: "tom foot fault, their pt?"."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.entry import Ruling
from knowledge.rulebook.touching import plain

SIDE_OUT: Final = "Server's fault: no point. Receiver's fault: a point."
"""Only the serving side scores (2025 rulebook, side-out scoring)."""

RALLY: Final = "Rally scoring: a fault is the other side's point."

_ASKS_WHOSE = regex(
    r"\b(?:their|our|my|whose|who gets the) (?:pt|point)\b(?: (?:then|now|or not))*\s*\?*\s*$"
    r"|\b(?:do|does|did) (?:they|we|i|he|she) (?:get|score|win) (?:a |the |that )?(?:pt|point)\b"
)
_FAULT = "Fault"

_THAT = r"(?:that|this|it)"
_POINT = r"(?:pt|point|rally|ball|one)"
_ONLY_WHOSE = regex(
    r"(?:(?:so|ok|okay|wait|hey|um|and|but|oh|hang on|then) )*"
    rf"(?:(?:is|was|isnt|wasnt|does) {_THAT} (?:make it |mean its )?(?:our|their|my) {_POINT}"
    rf"|whose {_POINT}(?: (?:is|was) {_THAT}| now)?|(?:is|was) {_THAT} (?:ours|theirs)"
    rf"|(?:do|did|does|dont|didnt) (?:we|they|i|he|she) (?:get|win|score) (?:the|that|a) {_POINT}"
    rf"(?: (?:for|from) {_THAT})?|who (?:gets|got|won|wins) (?:the|that) {_POINT})"
    r"(?: (?:then|now|or not|or theirs|or ours|right))*"
)
"""`is that our point`: alone it tells nothing of what happened."""


_STATED = regex(
    rf"(?:(?:so|ok|okay|wait|hey|um|and|but|oh|then) )*(?:thats|that is|its|it is|{_THAT} was)"
    rf" (?:our|their|my) {_POINT}(?: (?:then|now|right|yes|no))*"
)
"""`so thats our point?`; without the mark it tells whose it is."""


def asks_only_whose(words: str) -> bool:
    """Whether it is asked whose point it is, and nothing is said of what happened."""
    said = plain(words)
    is_checked = "?" in words and _STATED.fullmatch(said) is not None
    return is_checked or _ONLY_WHOSE.fullmatch(said) is not None


def with_point(ruling: Ruling, words: str, *, rally_scoring: bool) -> Ruling:
    """The ruling, with whose point a fault makes it where that is asked."""
    if not ruling.call.startswith(_FAULT) or _ASKS_WHOSE.search(words.lower()) is None:
        return ruling
    return replace(ruling, now=RALLY if rally_scoring else SIDE_OUT)
