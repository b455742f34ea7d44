"""Misses of whoever writes: no weakness of whoever was named before."""

from __future__ import annotations

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.words import words_in
from knowledge.vocabulary import Value

_MARKS = frozenset(",;:.!?()\n—–|")
_I = frozenset(["i", "we"])
_STILL = words_in("keep just only always often sometimes also have ve do")
_MISSES = words_in(
    "miss missed missing net netted netting dump dumped dumping fault faulted faulting"
    " shank shanked shanking whiff whiffed whiffing"
)


def is_no_weakness(claim: Claim, note: NoteLine) -> bool:
    """Whether a weakness was read of misses that are the writer's."""
    if claim.value is not Value.WEAKNESS or claim.denied:
        return False
    return _are_mine(claim, note)


def _are_mine(claim: Claim, note: NoteLine) -> bool:
    """ "Soren starts serving, i miss 1 in 20": its words run over a mark into what I do."""
    start, stop = claim.span
    for at, word in enumerate(note.said):
        is_inside = start < word.span[0] < stop
        if is_inside and word.folded in _I and set(word.gap) & _MARKS:
            ahead = (one.folded for one in note.said[at + 1 :])
            if next((one for one in ahead if one not in _STILL), "") in _MISSES:
                return True
    return False
