"""What a rules question speaks of: words and phrases that mean the same read as one idea."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache, cached_property

from rapidfuzz.distance import OSA

from knowledge.general_rule import RuleDataError, load_table
from knowledge.reading.stems import KEPT_LETTERS, stem

CORRECTED_LETTERS = 5
"""A word from this length on may have one slip of the keyboard; shorter ones are too alike."""

GAP = 1
"""Words or stops that may stand between two words of a phrase: "after the volley"."""

Tokens = tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class Vocabulary:
    """Ideas by their phrases and words, and the words that tell nothing.

    `leaning` are the ideas of questions that hang on the one before. The words of `phrases` are
    read like those of a text; `known` are never taken for a slip.
    """

    phrases: tuple[tuple[Tokens, str], ...]
    words: Mapping[str, str]
    untelling: frozenset[str]
    leaning: frozenset[str]
    known: frozenset[str]

    def ideas(self, said: str) -> frozenset[str]:
        """The ideas of a text: of phrases and single words alike, in no order."""
        tokens = [self.spelled(token) for token in tokens_of(said)]
        read = [self.read(token) for token in tokens]
        begun = [row for token in set(read) for row in self._begun_with.get(token, ())]
        found = {idea for phrase, idea in begun if _stands(phrase, read)}
        told = zip(tokens, read, strict=True)
        single = {idea for token, idea in told if token not in self.untelling}
        return frozenset(found | {idea for idea in single if idea.isalnum()})

    @cached_property
    def ideas_known(self) -> frozenset[str]:
        """All that a text may speak of in the words of the ways of asking."""
        spoken = {self.read(word) for word in self.known}
        return frozenset(spoken | {idea for _, idea in self.phrases})

    @cached_property
    def _begun_with(self) -> Mapping[str, Sequence[tuple[Tokens, str]]]:
        """Phrases by their first word."""
        begun: dict[str, list[tuple[Tokens, str]]] = {}
        for phrase, idea in self.phrases:
            begun.setdefault(phrase[0], []).append((phrase, idea))
        return begun

    def read(self, token: str) -> str:
        """The idea of a single word, else its stem."""
        return self.words.get(token) or stem(token)

    def spelled(self, token: str) -> str:
        """The token, or the known word that it is a slip of."""
        if token in self.known or token.isdigit():
            return token
        alike = self._doubled.get(_undoubled(token)) or self._nearest(token)
        return alike or token

    @cached_property
    def _doubled(self) -> Mapping[str, str]:
        """Known words without doubled letters: "bal", "hitt"."""
        return {_undoubled(word): word for word in sorted(self.known, reverse=True)}

    def _nearest(self, token: str) -> str | None:
        is_slip = is_one_slip if len(token) >= CORRECTED_LETTERS else is_swapped
        near = self._by_letter.get(token[0], ())
        alike = (w for w in near if abs(len(w) - len(token)) <= 1 and is_slip(w, token))
        return min(alike, default=None)

    @cached_property
    def _by_letter(self) -> Mapping[str, Sequence[str]]:
        """Known words that are long enough to be slipped in, by their first letter."""
        words: dict[str, list[str]] = {}
        for word in self.known:
            if len(word) >= KEPT_LETTERS:
                words.setdefault(word[0], []).append(word)
        return words


def tokens_of(said: str) -> list[str]:
    """Words, numbers and the stops between them in lower case, apostrophes dropped."""
    return re.findall(r"[a-z]+|[0-9]+|[,.;:!?]", re.sub(r"['’]", "", said.lower()))


def is_one_slip(one: str, other: str) -> bool:
    """Whether a letter is missing, added, wrong, or two stand swapped (Damerau 1964)."""
    return OSA.distance(one, other, score_cutoff=1) == 1


def is_swapped(one: str, other: str) -> bool:
    """Whether two neighbouring letters stand swapped and all else is the same."""
    return sorted(one) == sorted(other) and is_one_slip(one, other)


def _undoubled(token: str) -> str:
    return re.sub(r"(.)\1+", r"\1", token)


def _stands(phrase: Tokens, tokens: Sequence[str]) -> bool:
    """Whether the words of a phrase stand in their order, at most GAP others between two."""
    return any(
        token == phrase[0] and _goes_on(phrase[1:], tokens[at + 1 :])
        for at, token in enumerate(tokens)
    )


def _goes_on(rest: Tokens, tokens: Sequence[str]) -> bool:
    if not rest:
        return True
    return any(
        token == rest[0] and _goes_on(rest[1:], tokens[at + 1 :])
        for at, token in enumerate(tokens[: GAP + 1])
    )


def read_vocabulary(table: Mapping[str, object], forms: Sequence[str]) -> Vocabulary:
    """The vocabulary of a data file; the words of all ways of asking are known words too."""
    phrases = _lists(table.get("phrases"))
    words = _lists(table.get("words"))
    untelling = frozenset(str(table.get("untelling", "")).split())
    spelled = [(tuple(tokens_of(one)), idea) for idea, many in phrases.items() for one in many]
    single = {word: idea for idea, many in words.items() for word in (idea, *many)}
    known = {token for form in forms for token in tokens_of(form)}
    known |= {token for phrase, _ in spelled for token in phrase} | set(single) | untelling
    read = {
        (tuple(single.get(token) or stem(token) for token in phrase), idea)
        for phrase, idea in spelled
    }
    return Vocabulary(
        phrases=tuple(sorted(read)),
        words=single,
        untelling=untelling,
        leaning=frozenset(str(table.get("leaning", "")).split()),
        known=frozenset(known),
    )


def _lists(said: object) -> dict[str, list[str]]:
    if not isinstance(said, dict) or not all(isinstance(many, list) for many in said.values()):
        raise RuleDataError(f"words stand in lists under their idea, not {said!r}")
    return {str(idea): [str(one) for one in many] for idea, many in said.items()}


@cache
def words_table() -> Mapping[str, object]:
    """The words file beside the rules."""
    return load_table("knowledge.rulebook", "words.toml")
