"""What a model of entries sees of a message: its words, neighbouring words, and runs of letters."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from knowledge.dataclass import dataclass
from knowledge.reading.keys import Group, character_keys, key_of
from knowledge.reading.stems import stem
from knowledge.said_phrases import END, fold

LENGTHS = (1.0, 1.0, 1.0)
"""Words, pairs and runs of letters count alike: no other share did better by more than a line in a
hundred of writers left out."""

WORDS_READ = 160
"""Words of a message that are read: no writer's longest line has more than 90."""

LETTERS_READ = 24
"""Letters of a word that are read: what is longer is no word."""

SMALL_NUMBER_DIGITS = 2
A_NUMBER = "<number>"
"""What a number of more digits is read as."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """A message by its groups of features; places count in `words`."""

    groups: tuple[Group, ...]
    words: tuple[str, ...]


def told(text: str) -> Told:
    """The message as the models of entries read it."""
    words = tuple(_read(word) for word in fold(text).split() if word != END)[:WORDS_READ]
    stems = [stem(word) for word in words]
    return Told(groups=(_singles(stems), _pairs(stems), _letters(words)), words=words)


def _read(word: str) -> str:
    if word.isdigit():
        return word if len(word) <= SMALL_NUMBER_DIGITS else A_NUMBER
    return word[:LETTERS_READ]


def _singles(stems: Sequence[str]) -> Group:
    group: Group = {}
    for at, word in enumerate(stems):
        group.setdefault(key_of(f"w:{word}"), (at, at + 1))
    return group


def _pairs(stems: Sequence[str]) -> Group:
    """Neighbours, with the edges, and words with one between."""
    group: Group = {}
    last = len(stems)
    for at, (left, right) in enumerate(pairwise(["^", *stems, "$"])):
        group.setdefault(key_of(f"b:{left} {right}"), (max(0, at - 1), min(last, at + 1)))
    for at, (left, right) in enumerate(zip(stems, stems[2:], strict=False)):
        group.setdefault(key_of(f"s:{left} {right}"), (at, at + 3))
    return group


def _letters(words: Sequence[str]) -> Group:
    group: Group = {}
    for at, word in enumerate(words):
        if word != A_NUMBER:
            for key in character_keys(word):
                group.setdefault(key, (at, at + 1))
    return group
