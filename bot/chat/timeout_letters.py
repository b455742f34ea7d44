"""A time-out by its two letters: "t/o", "t.o.", "t/os", and "TO" where the rest is not shouted."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import Word, words_in

_MEANT = {"o": "timeout", "os": "timeouts"}
_GAPS = frozenset("/ .-")


def is_timeout_here(said: Sequence[Word], position: int) -> bool:
    """Whether the letters begin at this word."""
    if position + 1 >= len(said) or said[position].folded != "t":
        return False
    after = said[position + 1]
    return after.folded in _MEANT and len(after.gap) == 1 and after.gap in _GAPS


def meant_by(said: Sequence[Word], position: int) -> str:
    """The word that they stand for, in full."""
    return _MEANT[said[position + 1].folded]


_CAPITALS = {"TO": "timeout", "TOs": "timeouts", "TOS": "timeouts"}


_BEFORE = words_in(
    "a the our their my his her your called call calls calling take takes took taking use"
    " used using burn burned have has had got 1 2 one two no last of any only another second"
    " first for"
)
_BEHIND = words_in("left taken called now here at remaining gone used over in yet or")


def in_capitals(said: Sequence[Word], position: int) -> str | None:
    """What a "TO" or "TOs" there stands for; None for any other word, and where all is in capitals.

    "Serve it TO okoye" only stresses the word: it is a time-out where one is taken or counted.
    """
    meant = _CAPITALS.get(said[position].typed)
    if meant is None or not any(one.typed.islower() and one.typed.isalpha() for one in said):
        return None
    before = said[position - 1].folded if position else ""
    ahead = said[position + 1].folded if position + 1 < len(said) else ""
    is_plural = meant == _MEANT["os"]
    return meant if is_plural or before in _BEFORE or ahead in _BEHIND else None
