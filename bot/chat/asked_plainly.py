"""The same question in the verb most ask it with: "where shall we serve", "how does one return"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.utterance import Mask
from knowledge.regex import regex

_WE = r"(?P<who>we|i|one)"
_MODAL = regex(
    rf"\b(?i:shall(?= (?!not\b)\w)|(?:will|must|ought) {_WE}(?: to\b)?"
    r"|(?:are|am) (?P<whose>we|i) to\b|(?:do|does|should|would) one)\b"
)
"""Who means "what is best for us" with another word than "should"; "can we" may ask for a rule."""


def asked_plainly(text: str, masks: Sequence[Mask]) -> tuple[str, list[Mask]] | None:
    """The text and its masks with such a verb put as "should"; None where there is none.

    It is read only where the message itself is not clear, so that it moves no clear one.
    """
    found = _MODAL.search(text)
    if found is None or any(_overlap(one.span, found.span()) for one in masks):
        return None
    who = (found["who"] or found["whose"] or "").lower()
    is_bare = found[0].lower() == "shall"
    plain = "should" if is_bare else f"should {'i' if who == 'i' else 'we'}"
    start, end = found.span()
    moved = len(plain) - (end - start)
    kept = [
        one
        if one.span[0] < start
        else replace(one, span=(one.span[0] + moved, one.span[1] + moved))
        for one in masks
    ]
    return f"{text[:start]}{plain}{text[end:]}", kept


def _overlap(one: tuple[int, int], other: tuple[int, int]) -> bool:
    return one[0] < other[1] and other[0] < one[1]
