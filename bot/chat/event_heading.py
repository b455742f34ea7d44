"""The event before an announcement, as its heading: "womens first. next annika and lucija"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import Word, words_in

_EVENTS = words_in("womens women's women ladies mens men's men mixed doubles dubs mxd wd md xd")
_BESIDE = words_in(
    "first second third then now today up so ok okay hey again day event bracket draw division"
    " the is its our in for at last and"
)
_GOES_ON = frozenset(["next", "nxt"])
_MARKS = frozenset(".,;:!\n-–—")


def without_heading(said: Sequence[Word]) -> Sequence[Word]:
    """The words behind such a heading; all of them where none stands, or nothing follows it.

    It is words of events up to a mark or "next", so no name and no question is cut off.
    """
    stop = next((at for at, word in enumerate(said) if _ends(said, at, word)), len(said))
    heading = {word.folded for word in said[:stop]}
    return said[stop:] if heading & _EVENTS and stop < len(said) else said


def _ends(said: Sequence[Word], at: int, word: Word) -> bool:
    """Whether the heading is over before this word."""
    if word.folded not in _EVENTS | _BESIDE or (at and set(word.gap) & _MARKS):
        return True
    is_headed = any(each.folded in _EVENTS for each in said[:at])
    return is_headed and word.folded in _GOES_ON
