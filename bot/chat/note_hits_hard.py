"""Who hits hard has pace of their own: how they meet ours is not told."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from knowledge.regex import regex
from knowledge.vocabulary import Trait, Value

_HITS_HARD = regex(
    r"\b(?:hits?|hitting|bangs?|swings?|smacks?|whacks?|drives?|plays?)(?: (?:it|them|the ball"
    r"|everything|all|very|really|so|super|pretty|always|too))* (?:hard|harder)\b"
)
_WE = frozenset(["we", "i", "us", "me", "you", "our", "my"])


def hits_hard(claim: Claim, note: NoteLine) -> Claim | None:
    """The drive instead of the pace they handle; "when we hit hard" tells of ours."""
    if claim.trait is not Trait.HANDLES_PACE or claim.value is not Value.STRENGTH or claim.denied:
        return claim
    line = " ".join(word.folded for word in note.said)
    found = _HITS_HARD.search(line)
    if found is None or _WE & set(line[: found.start()].split()[-2:]):
        return claim
    return replace(claim, trait=Trait.FOREHAND_DRIVE)
