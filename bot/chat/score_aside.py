"""What is told behind a score and its server: "5-3 oskar serving, imani is at net"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.numbers import Group, number
from bot.chat.words import Word, words_in

_SERVES = words_in("serve serves serving servin")
_OF_THE_SERVE = _SERVES | words_in(
    "serv server service ball receive receives receiving return returns returning first second"
    " us them we they ours theirs up down"
)
_STANDS = words_in("is are was at stands standing stays staying plays playing")
_MARKS = frozenset(",;.!\n-–—(")
_SHORTEST = 3
"""Words of such a clause: who, a verb or "at", and where."""


def without_aside(said: Sequence[Word], group: Group | None) -> Sequence[Word]:
    """The words up to that clause: read on, "serving imani" would be their serve.

    Who serves stands right before its mark; a clause that tells of the serve or of numbers stays,
    whoever it is about.
    """
    if group is None:
        return said
    cuts = range(group.stop + 1, len(said))
    stop = next((at for at in cuts if _is_cut(said, at)), None)
    return said if stop is None else said[:stop]


def _is_cut(said: Sequence[Word], at: int) -> bool:
    if said[at - 1].folded not in _SERVES or not set(said[at].gap) & _MARKS:
        return False
    clause = said[at:]
    tells = any(word.folded in _STANDS for word in clause[1:3]) and len(clause) >= _SHORTEST
    is_of_score = any(
        word.folded in _OF_THE_SERVE or number(word) is not None for word in clause[1:]
    )
    return tells and not is_of_score
