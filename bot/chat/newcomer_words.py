"""Names of new players among what is told of them: "kenji mori, righty, slow feet"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.trait_lexicon import trait_phrases
from bot.chat.words import Word, words
from knowledge.dataclass import dataclass

LONGEST_NAME = 4
"""Words: Joost van der Meer."""

_ENDS = frozenset(",;:.(–—-\n")
_JOINING = frozenset(["and", "n", "plus", "with"])
_JOINING_MARKS = frozenset("/&+")
_GIVEN = word_set("given_names_that_are_words")
_TELLING = (
    word_set("predicates")
    | word_set("told_adjectives")
    | word_set("owned_skills")
    | word_set("opens_what_is_told")
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Newcomers:
    """One or two names as typed, and whether something is told of them after that."""

    names: tuple[str, ...]
    told: bool


def newcomers_in(typed: str) -> Newcomers:
    """The names that the words begin with, up to a mark or the first word about their play."""
    said = words(typed)
    parts: list[list[Word]] = [[]]
    at = 0
    for at, word in enumerate(said):
        is_marked = bool(set(word.gap) & _JOINING_MARKS)
        goes_on = is_marked or at + 1 < len(said)
        if _joins(word) and parts[-1] and len(parts) == 1 and goes_on:
            parts.append([word] if is_marked else [])
        elif parts[-1] and _ends(said, at, len(parts[-1])):
            break
        elif word.folded not in _JOINING:
            parts[-1].append(word)
    else:
        at = len(said)
    names = tuple(_as_typed(typed, part) for part in parts if part)
    return Newcomers(names=names, told=at < len(said))


def _joins(word: Word) -> bool:
    return word.folded in _JOINING or bool(set(word.gap) & _JOINING_MARKS)


def _ends(said: Sequence[Word], at: int, before: int) -> bool:
    word = said[at]
    is_mark = bool(set(word.gap) & _ENDS) and word.gap != "-"
    is_told = word.folded in _TELLING or word.folded in trait_phrases().words
    is_surname = before == 1 and said[at - 1].folded in _GIVEN
    return is_mark or before >= LONGEST_NAME or (is_told and not is_surname)


def _as_typed(typed: str, part: Sequence[Word]) -> str:
    return typed[part[0].span[0] : part[-1].span[1]]
