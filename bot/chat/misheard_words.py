"""Small words as dictation writes them: "we one that one", "there serving"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.numbers import number
from bot.chat.words import Word

_WHO = frozenset(["we", "they", "he", "she", "weve", "theyve"])
_NOT_WHO_AFTER = frozenset(["for", "to", "between", "with", "are", "is", "do", "did", "than", "as"])
_WHAT = frozenset(["that", "it", "the", "this", "again", "both", "our", "their", "game", "match"])
_A_PLACE_AFTER = frozenset(
    ["over", "out", "up", "in", "back", "down", "is", "was", "are", "were", "be", "stand", "stands",
     "from", "go", "get", "gets", "goes", "stay", "right", "left", "who", "whos", "hes", "shes",
     "been", "near", "around", "if", "isnt", "wasnt"]
)  # fmt: skip
_SERVE = frozenset(["serving", "serve", "serves", "server"])
_THEIRS = frozenset(["ball", "point", "rally", "sideout"])
_ENDS_IT = frozenset(["now", "again", "so", "and", "then"])
_STAND = frozenset(["up", "ahead", "leading", "winning", "down", "behind", "losing", "trailing"])


def as_heard(said: Sequence[Word]) -> list[Word]:
    """The words with "won" for a "one" that somebody does, and "they" for a "there" that serves.

    "There" as a place keeps its word: it stands behind a verb or "over".
    """
    return [replace(word, folded=_meant(said, at)) for at, word in enumerate(said)]


def _meant(said: Sequence[Word], at: int) -> str:
    word = said[at].folded
    if word == "one" and _is_done(said, at):
        return "won"
    if word == "there" and _is_a_side(said, at):
        return "they"
    return word


def _is_done(said: Sequence[Word], at: int) -> bool:
    """`we one that one`, `they one the first game`: somebody, and then what they won."""
    if not at or _before(said, at) not in _WHO or _before(said, at - 1) in _NOT_WHO_AFTER:
        return False
    return _after(said, at) in _WHAT


def _is_a_side(said: Sequence[Word], at: int) -> bool:
    """`there serving`, `there ball now`, `there up nine five`: no place does so."""
    if _before(said, at) in _A_PLACE_AFTER:
        return False
    next_, then = _after(said, at), _after(said, at + 1)
    is_counted = at + 2 < len(said) and number(said[at + 2]) is not None
    return (
        next_ in _SERVE
        or (next_ in _THEIRS and (not then or then in _ENDS_IT))
        or (next_ in _STAND and is_counted)
    )


def _before(said: Sequence[Word], at: int) -> str:
    return said[at - 1].folded if at > 0 else ""


def _after(said: Sequence[Word], at: int) -> str:
    return said[at + 1].folded if at + 1 < len(said) else ""
