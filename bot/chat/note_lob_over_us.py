"""Lobs over one of us: "her lob is always over my shoulder" tells that they come, not how good."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.note_hits import JUDGEMENTS
from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from knowledge.regex import regex
from knowledge.vocabulary import Trait, Value

_OVER_US = regex(
    r"\bover (?:my|our|me|us)\b(?: (?:left|right|backhand|off|paddle))*(?: (?:shoulder|head|side))?"
)
_OFTEN = regex(r"\b(?:always|often|every|all the time|constantly|keeps?|mostly|usually)\b")


def lob_over_us(claim: Claim, note: NoteLine) -> Claim | None:
    """Often, where it is told how often; else the skill is nobody's guess."""
    is_skill = claim.value in (Value.STRENGTH, Value.WEAKNESS) and not claim.denied
    line = " ".join(word.folded for word in note.said)
    if claim.trait is not Trait.LOB or not is_skill or _OVER_US.search(line) is None:
        return claim
    if note.hits.having(*JUDGEMENTS):
        return claim
    return replace(claim, value=Value.OFTEN) if _OFTEN.search(line) else None
