"""Phrases of a lexicon: a small notation, matched word by word against a message.

`x*` is a word beginning with x, `(a|b)` either, `[x]` perhaps, `..` up to two words in between,
`{name}` a set of words named elsewhere. Every other word stands for itself, folded.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from typing import Generic, TypeVar

from knowledge.dataclass import dataclass
from knowledge.regex import regex

Meaning = TypeVar("Meaning")

_ELEMENT = regex(r"\s*(?:(\.\.)|([\[\](){}|])|([^\s\[\](){}|]+))")
_ENDS = (None, "|", ")", "]")
_GAP = r"(?:\S+ ){0,2}?"

WORDS_KEPT = 2048
"""Words whose phrases are kept by a book: nearly all words of a day come again."""


class PhraseError(ValueError):
    """A phrase that is not in the notation; the message shows it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found(Generic[Meaning]):
    """A phrase in a message: words `start` up to `stop`, and what it means."""

    start: int
    stop: int
    meaning: Meaning

    @property
    def length(self) -> int:
        return self.stop - self.start


@dataclass(frozen=True, slots=True)
class _Parsed:
    """A part of a phrase: its regular expression, the words it may begin with, whether it may
    match nothing."""

    pattern: str
    firsts: frozenset[str]
    empty: bool


class PhraseBook(Generic[Meaning]):
    """Many phrases, each with a meaning, found in a message by their first words.

    `words` holds every word that some phrase spells out. Of a phrase no more is read at first than
    how it begins, since a message meets few of thousands: a faulty one shows when a message begins
    like it, or in `check`, which tests call of every book.
    """

    def __init__(
        self, phrases: Iterable[tuple[str, Meaning]], *, sets: Mapping[str, str] | None = None
    ) -> None:
        phrases_ = tuple(phrases)
        self._by_first: dict[str, list[tuple[str, Meaning]]] = defaultdict(list)
        self._sets = _Sets(sets or {})
        self.words = _words([phrase for phrase, _ in phrases_] + list((sets or {}).values()))
        for entry in phrases_:
            for first in _firsts(entry[0], self._sets):
                self._by_first[first].append(entry)
        self._prefixes = [first for first in self._by_first if first.endswith("*")]
        self._patterns: dict[str, re.Pattern[str]] = {}
        self._beginning_with = lru_cache(maxsize=WORDS_KEPT)(self._looked_up)

    def check(self) -> None:
        """PhraseError for a phrase that is not in the notation, or is not found where it begins."""
        phrases = {phrase for entries in self._by_first.values() for phrase, _ in entries}
        for phrase in phrases:
            if _Parser(phrase, self._sets).whole().firsts != _firsts(phrase, self._sets):
                raise PhraseError(f"not found where it begins: {phrase!r}")

    def find(self, words: Sequence[str]) -> list[Found[Meaning]]:
        """Every phrase at every place, the longest form of each."""
        line = "".join(f"{word} " for word in words)
        found: list[Found[Meaning]] = []
        offset = 0
        for start, word in enumerate(words):
            for phrase, meaning in self._beginning_with(word):
                pattern = self._patterns.get(phrase) or self._read(phrase)
                match = pattern.match(line, offset)
                if match and match.end() > offset:
                    stop = start + line.count(" ", offset, match.end())
                    found.append(Found(start=start, stop=stop, meaning=meaning))
            offset += len(word) + 1
        return found

    def _looked_up(self, word: str) -> tuple[tuple[str, Meaning], ...]:
        """The phrases that may begin with the word."""
        begun = [prefix for prefix in self._prefixes if word.startswith(prefix[:-1])]
        return tuple(phrase for first in (word, *begun) for phrase in self._by_first.get(first, ()))

    def _read(self, phrase: str) -> re.Pattern[str]:
        """What finds the phrase, kept from now on."""
        pattern = re.compile(_Parser(phrase, self._sets).whole().pattern)
        self._patterns[phrase] = pattern
        return pattern


def _words(phrases: Iterable[str]) -> frozenset[str]:
    """Every word that stands for itself in some phrase."""
    return frozenset(" ".join(phrases).translate(_SIGNS_AWAY).split()) - {".."}


_SIGNS_AWAY = str.maketrans("[](){}|", " " * 7)


def _firsts(phrase: str, sets: _Sets) -> frozenset[str]:
    """The words that the phrase may begin with."""
    if _OTHER_THAN_WORDS.search(phrase) is None and (words := phrase.split(None, 1)):
        return frozenset(words[:1])
    return _Parser(phrase, sets).firsts()


_OTHER_THAN_WORDS = regex(r"[][(){}|]|\.\.")


class _Sets:
    """The named sets, each parsed once."""

    def __init__(self, sets: Mapping[str, str]) -> None:
        self._sets = sets
        self._parsed: dict[str, _Parsed] = {}

    def __contains__(self, name: str) -> bool:
        return name in self._sets

    def __getitem__(self, name: str) -> _Parsed:
        if name not in self._parsed:
            self._parsed[name] = _Parser(self._sets[name], self).whole()
        return self._parsed[name]


@lru_cache(maxsize=1 << 9)
def _word(element: str) -> _Parsed:
    """A word that stands for itself, or for all that begin with it; the same ones come often."""
    stem = element.removesuffix("*")
    pattern = re.escape(stem) + (r"\S* " if element.endswith("*") else " ")
    return _Parsed(pattern, frozenset([element]), False)


class _Parser:
    """Recursive descent: whole = choice; choice = sequence ('|' sequence)*; sequence = element*."""

    def __init__(self, phrase: str, sets: _Sets) -> None:
        self._phrase = phrase
        self._sets = sets
        self._elements = [match[1] or match[2] or match[3] for match in _ELEMENT.finditer(phrase)]
        self._place = 0

    def firsts(self) -> frozenset[str]:
        """As of `whole`, but nothing is read that does not bear upon it."""
        firsts, _ = self._choice_begins()
        if not firsts:
            raise PhraseError(f"not a phrase: {self._phrase!r}")
        return firsts

    def _choice_begins(self) -> tuple[frozenset[str], bool]:
        """Its first words, and whether it may match nothing."""
        firsts, empty = self._sequence_begins()
        while self._peek() == "|":
            self._place += 1
            more, nothing = self._sequence_begins()
            firsts, empty = firsts | more, empty or nothing
        return firsts, empty

    def _sequence_begins(self) -> tuple[frozenset[str], bool]:
        firsts, empty = frozenset[str](), True
        while empty and (element := self._peek()) not in _ENDS:
            assert element is not None
            more, empty = self._element_begins(element)
            firsts |= more
        self._skip_sequence()
        return firsts, empty

    def _element_begins(self, element: str) -> tuple[frozenset[str], bool]:
        if element in ("(", "["):
            self._place += 1
            firsts, empty = self._choice_begins()
            self._place += 1
            return firsts, empty or element == "["
        part = self._element(element)
        return part.firsts, part.empty

    def _skip_sequence(self) -> None:
        """On to the end of the sequence that we are in."""
        depth = 0
        for place in range(self._place, len(self._elements)):
            element = self._elements[place]
            if depth == 0 and element in _ENDS:
                self._place = place
                return
            depth += (element in ("(", "[")) - (element in (")", "]"))
        self._place = len(self._elements)

    def whole(self) -> _Parsed:
        parsed = self._choice()
        if self._place < len(self._elements) or parsed.empty or not parsed.firsts:
            raise PhraseError(f"not a phrase: {self._phrase!r}")
        return parsed

    def _peek(self) -> str | None:
        return self._elements[self._place] if self._place < len(self._elements) else None

    def _choice(self) -> _Parsed:
        options = [self._sequence()]
        while self._peek() == "|":
            self._place += 1
            options.append(self._sequence())
        if len(options) == 1:
            return options[0]
        return _Parsed(
            "(?:" + "|".join(option.pattern for option in options) + ")",
            frozenset().union(*(option.firsts for option in options)),
            any(option.empty for option in options),
        )

    def _sequence(self) -> _Parsed:
        parts: list[_Parsed] = []
        firsts, empty = frozenset[str](), True
        while (element := self._peek()) not in _ENDS:
            assert element is not None
            part = self._element(element)
            parts.append(part)
            if empty:
                firsts, empty = firsts | part.firsts, part.empty
        if len(parts) == 1:
            return parts[0]
        return _Parsed("".join(part.pattern for part in parts), firsts, empty)

    def _element(self, element: str) -> _Parsed:
        self._place += 1
        match element:
            case "..":
                return _Parsed(_GAP, frozenset(), True)
            case "(":
                return self._closed(")")
            case "[":
                inner = self._closed("]")
                return _Parsed(f"(?:{inner.pattern})?", inner.firsts, True)
            case "{":
                return self._named()
            case _:
                return _word(element)

    def _closed(self, bracket: str) -> _Parsed:
        inner = self._choice()
        if self._peek() != bracket:
            raise PhraseError(f"{bracket} is missing: {self._phrase!r}")
        self._place += 1
        return inner

    def _named(self) -> _Parsed:
        name = self._peek()
        self._place += 2
        if name is None or name not in self._sets:
            raise PhraseError(f"no set named {name}: {self._phrase!r}")
        return self._sets[name]
