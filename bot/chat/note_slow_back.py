"""Slow or quick "back": how they run for a lob, and not their feet in general."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from knowledge.vocabulary import Tag, Trait

_BACK = frozenset(["back", "backwards", "backward"])
_ELSEWHERE = frozenset(
    ["to", "up", "in", "into", "onto", "at", "after", "from", "on", "hand", "side", "then", "again"]
)
"""Behind a "back" that is somewhere to get to: "slow back up to the line", "slow back to her side".
"""


def slow_back(claim: Claim, note: NoteLine) -> Claim | None:
    """ "Isn't that slow back" speaks of lobs, as "slow moving back" does."""
    if claim.trait is not Trait.FOOT_SPEED:
        return claim  # who stays back is no slower back
    start, stop = claim.span
    own = [at for at, word in enumerate(note.said) if start <= word.span[0] < stop]
    at = own[-1] + 1 if own else len(note.said)
    if own and note.said[own[-1]].folded in _BACK:
        at = own[-1]
    is_back = (
        at < len(note.said) and note.said[at].folded in _BACK and not note.said[at].gap.strip()
    )
    if not is_back or _goes_on(at + 1, note):
        return claim
    return replace(claim, trait=Trait.LOB_DEFENSE, tag=claim.tag or Tag.MOVING_BACK)


def _goes_on(at: int, note: NoteLine) -> bool:
    if at >= len(note.said) or note.said[at].gap.strip():
        return False
    return note.said[at].folded in _ELSEWHERE
