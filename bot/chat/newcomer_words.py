"""Names of new players among what is told of them: "kenji mori, righty, slow feet"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.common_words import is_common
from bot.chat.forms import word_set
from bot.chat.trait_lexicon import trait_phrases
from bot.chat.words import Word, words
from knowledge.dataclass import dataclass

LONGEST_NAME = 4
"""Words: Joost van der Meer."""

FULL_NAME = 2
FEWEST_LISTED = 2

_ENDS = frozenset(",;:.(–—-\n")
_JOINING = frozenset(["and", "n", "plus", "with"])
_JOINING_MARKS = frozenset("/&+")
_GIVEN = word_set("given_names_that_are_words")
_SURNAMES = word_set("surnames_that_are_words")
_TELLING = (
    word_set("predicates")
    | word_set("told_adjectives")
    | word_set("owned_skills")
    | word_set("opens_what_is_told")
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Newcomers:
    """The names as typed, and whether something is told of them (one or two) after that."""

    names: tuple[str, ...]
    told: bool


def newcomers_in(typed: str) -> Newcomers:
    """The names that the words begin with, up to a mark or the first word about their play."""
    said = words(typed)
    listed = _listed_in_full(said)
    if listed:
        names = tuple(_as_typed(typed, part) for part in listed)
        return Newcomers(names=names, told=False)
    parts: list[list[Word]] = [[]]
    at = 0
    for at, word in enumerate(said):
        is_marked = word.gap.strip() in _JOINING_MARKS
        goes_on = is_marked or at + 1 < len(said)
        if _joins(word) and parts[-1] and len(parts) == 1 and goes_on:
            parts.append([word] if set(word.gap) & _JOINING_MARKS else [])
        elif parts[-1] and _ends(said, at, len(parts[-1])):
            break
        elif word.folded not in _JOINING:
            parts[-1].append(word)
    else:
        at = len(said)
    names = tuple(_as_typed(typed, part) for part in parts if part)
    return Newcomers(names=names, told=at < len(said))


def _listed_in_full(said: Sequence[Word]) -> list[list[Word]]:
    """Every first and last name of "leo brandt, rob banger and cass whitlow"; else nothing.

    Two parts with only a comma between may be a name and what is told: "leo brandt, crafty guy".
    Of three and more, each joined by a word, one name each will do: "leo and rob and cass".
    """
    parts: list[list[Word]] = [[]]
    for at, word in enumerate(said):
        if at and (_joins(word) or "," in word.gap) and parts[-1]:
            parts.append([])
        if word.folded not in _JOINING:
            parts[-1].append(word)
    if len(parts) < FEWEST_LISTED or (len(parts) == FEWEST_LISTED and "," in parts[1][0].gap):
        return []
    are_joined = len(parts) > FEWEST_LISTED and all(_joins_on(part) for part in said[1:])
    is_name = _is_one_name if are_joined else _is_in_full
    return parts if all(map(is_name, parts)) else []


def _joins_on(word: Word) -> bool:
    return not set(word.gap) & _ENDS


def _is_one_name(part: Sequence[Word]) -> bool:
    """Whether it is a name in full, or a single word that is no everyday one and tells nothing."""
    if len(part) != 1:
        return _is_in_full(part)
    folded = part[0].folded
    tells = folded in _TELLING or folded in trait_phrases().words
    return folded.isalpha() and not is_common(folded) and not tells


def _is_in_full(part: Sequence[Word]) -> bool:
    """Whether it may be a first and a last name, and nothing told ("crafty lobber", "big feet")."""
    if len(part) != FULL_NAME or part[1].gap != " ":
        return False
    first, last = (word.folded for word in part)
    is_told = "," in part[0].gap and first in trait_phrases().words
    is_first = first in _GIVEN or not (is_common(first) or first in _TELLING or is_told)
    return is_first and first.isalpha() and last.isalpha() and last not in _TELLING


def _joins(word: Word) -> bool:
    return word.folded in _JOINING or bool(set(word.gap) & _JOINING_MARKS)


def _ends(said: Sequence[Word], at: int, before: int) -> bool:
    word = said[at]
    is_mark = bool(set(word.gap) & _ENDS) and word.gap != "-"
    is_told = word.folded in _TELLING or word.folded in trait_phrases().words
    is_last = at + 1 == len(said) or _joins(said[at + 1]) or bool(set(said[at + 1].gap) & _ENDS)
    is_known = said[at - 1].folded in _GIVEN or (word.folded in _SURNAMES and is_last)
    is_surname = before == 1 and is_known
    return is_mark or before >= LONGEST_NAME or (is_told and not is_surname)


def _as_typed(typed: str, part: Sequence[Word]) -> str:
    return typed[part[0].span[0] : part[-1].span[1]]
