"""What a note tells of whoever types it, without a mark: "hale serves rockets | im late on the bh".

Who is late there is the writer, whose moments pass; read on, it would be the opponent's wing.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import Word
from knowledge.regex import regex

_TROUBLE = regex(
    r"(?:im|i am|i was|i keep|i get|ive been|i feel)"
    r" (?:(?:always|just|so|too|way|still|really|getting|being|constantly|often|all) )*"
    r"(?:late|slow|early|stuck|jammed|cramped|caught|beat|beaten|missing|popping|netting|floating"
    r"|struggling|reaching|stretched|off balance|behind|lost)\b"
)
_MARKS = frozenset(",;.!?\n()—–")
_GOES_ON = frozenset(["but", "so", "he", "she", "they", "hes", "shes", "theyre", "his", "her"])
_JOINS = frozenset(["and", "n", "so", "but", "cause", "because", "bc"])


def without_own_trouble(said: Sequence[Word]) -> Sequence[Word]:
    """The words without such a clause that follows what is told of another."""
    line = [word.folded for word in said]
    begins = next((at for at in range(1, len(line)) if _opens(line[at:])), None)
    if begins is None:
        return said
    ends = next((at for at in range(begins + 2, len(said)) if _parts(said[at])), len(said))
    while begins > 1 and line[begins - 1] in _JOINS:
        begins -= 1
    return [*said[:begins], *said[ends:]]


def _opens(line: Sequence[str]) -> bool:
    return line[0] in {"im", "i", "ive"} and _TROUBLE.match(" ".join(line)) is not None


def _parts(word: Word) -> bool:
    return bool(set(word.gap) & _MARKS) or word.folded in _GOES_ON
