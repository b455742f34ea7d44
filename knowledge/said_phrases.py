"""What a message tells of, by phrases kept as data: with gaps, sets of words, slips and denials.

A phrase is words with blanks between: `word`, `stem*` (any ending), `a|b_c` (either, "a" or
"b c"), `?word` (or not), `{set}` (one of a named set), `..` (up to three more words). A phrase
never crosses the end of a sentence.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import field
from functools import lru_cache

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from knowledge.dataclass import dataclass
from knowledge.regex import regex

SHORTEST_REPAIRED = 5
"""Letters from which a word may carry one slip of the finger; shorter ones have real neighbours."""

OURS, THEIRS = "ourname", "theirname"
"""What the names of our players and of theirs are read as."""

END = "."
"""The end of a sentence, as a word of its own."""

ARTICLES = frozenset({"the", "a", "an"})
"""Words that may stand or be left out anywhere."""

_GAP = r"(?:[^\s.]+ ){0,3}?"
_DENIES = regex(
    r"(?:^| )(?:(?:never|not|dont|doesnt|didnt|isnt|arent|wasnt|wont|wouldnt|no|without|rarely|"
    r"hardly|seldom|neither|nor|stopped|quit|instead of|no longer|no more|less) )"
    r"(?:(?:ever|really|even|actually|any|much|that|like|to|be|do|does|of|so|very|"
    r"seem|usually|often|two|his|her|their) ){0,3}$"
)
"""What, right before a phrase, says the opposite of it."""

_STILL_DOES = regex(
    r"(?:^| )(?:never|not|havent|hasnt|dont|doesnt|didnt|wont) (?:\w+ )?(?:stopped|quit) $|"
    r"(?:^| )(?:no matter|not only|not just)(?: \w+){0,3} $"
)
"""Denials of a denial: "they haven't stopped lobbing"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """An entry that a message tells of, in its words from `start` up to `stop`."""

    id: str
    start: int
    stop: int

    def is_near(self, other: Hit, *, words: int) -> bool:
        """Whether fewer than so many words stand between the two."""
        return max(self.start, other.start) - min(self.stop, other.stop) < words


@dataclass(frozen=True, slots=True, eq=False)
class Phrases:
    """Phrases of many entries. `sets` are named sets of words; `shorthand` is spelled out first.

    A word of `guard` is never taken for a slip of another.
    """

    entries: Mapping[str, Sequence[str]]
    sets: Mapping[str, Sequence[str]] = field(default_factory=dict)
    shorthand: Mapping[str, str] = field(default_factory=dict)
    guard: frozenset[str] = frozenset()
    _patterns: dict[str, re.Pattern[str]] = field(init=False, default_factory=dict)
    _known: frozenset[str] = field(init=False, default=frozenset())

    def __post_init__(self) -> None:
        for id, phrases in self.entries.items():
            written = "|".join(f"(?:{self._written(phrase)})" for phrase in phrases)
            self._patterns[id] = re.compile(rf"(?<!\S)(?:{written})")
        object.__setattr__(self, "_known", self._vocabulary())

    def find(
        self, said: str, *, ours: Iterable[str] = (), theirs: Iterable[str] = ()
    ) -> tuple[Hit, ...]:
        """Every entry that is told of and not denied, in the order of the words.

        Of phrases at one place the longer one comes first. `ours` and `theirs` are names.
        """
        text = self._read(said, tuple(ours), tuple(theirs))
        found = [hit for id in self.entries if (hit := self._first(id, text)) is not None]
        return tuple(sorted(found, key=lambda hit: (hit.start, -hit.stop)))

    def denied(self, said: str) -> frozenset[str]:
        """Every entry that is told of only to say that it is not so: "they never lob"."""
        text = self._read(said, (), ())
        told = (id for id in self.entries if self._patterns[id].search(text))
        return frozenset(id for id in told if self._first(id, text) is None)

    def _first(self, id: str, text: str) -> Hit | None:
        for match in self._patterns[id].finditer(text):
            before = text[: match.start()]
            if not _DENIES.search(before) or _STILL_DOES.search(before):
                start = len(before.split())
                return Hit(id=id, start=start, stop=start + len(match[0].split()))
        return None

    def _read(self, said: str, ours: tuple[str, ...], theirs: tuple[str, ...]) -> str:
        """The message as phrases see it: folded, names as roles, shorthand in full, slips mended.

        A blank stands after every word.
        """
        folded = fold(said)
        for names, role in ((ours, OURS), (theirs, THEIRS)):
            for name in names:
                folded = re.sub(rf"(?<!\S){re.escape(fold(name).strip())}s?(?!\S)", role, folded)
        words = " ".join(self.shorthand.get(word, word) for word in folded.split()).split()
        return "".join(f"{self._mended(word)} " for word in words if word not in ARTICLES)

    def _mended(self, word: str) -> str:
        if len(word) < SHORTEST_REPAIRED or not word.isalpha() or word in self._known:
            return word
        return word if word in self.guard else self._nearest(word)

    @lru_cache(maxsize=4096)  # noqa: B019  (phrases live as long as the process)
    def _nearest(self, word: str) -> str:
        """The known word one slip away that begins alike, if there is one."""
        found = process.extract(
            word,
            sorted(one for one in self._known if len(one) >= SHORTEST_REPAIRED),
            scorer=DamerauLevenshtein.distance,
            score_cutoff=1,
            limit=3,
        )
        alike = [near for near, *_ in found if near[0] == word[0]]
        return alike[0] if alike else word

    def _written(self, phrase: str) -> str:
        parts = [part for part in phrase.split() if part.lstrip("?") not in ARTICLES]
        return "".join(self._part(part) for part in parts)

    def _part(self, part: str) -> str:
        if part == "..":
            return _GAP
        if part.startswith("?"):
            return f"(?:{self._part(part[1:])})?"
        alternatives = [
            each
            for one in part.split("|")
            for each in (self.sets[one[1:-1]] if one.startswith("{") else (one,))
            if one not in ARTICLES
        ]
        written = f"(?:{'|'.join(self._run(each) for each in alternatives)}) "
        return f"(?:{written})?" if ARTICLES & set(part.split("|")) else written

    @staticmethod
    def _run(words: str) -> str:
        """One word or a run of words, with a blank between two and none behind the last."""
        kept = [word for word in words.replace("_", " ").split() if word not in ARTICLES]
        return re.escape(" ".join(kept)).replace(r"\*", "[a-z]*").replace(r"\ ", " ")

    def _vocabulary(self) -> frozenset[str]:
        """Whole words of the phrases and sets: what a slip may be mended to."""
        spelled = [
            word
            for entry in self.entries.values()
            for each in entry
            for word in each.replace("_", " ").split()
        ]
        spelled += [word for forms in self.sets.values() for each in forms for word in each.split()]
        parts = {one for word in spelled for one in word.lstrip("?").split("|")}
        return frozenset(one for one in parts if one.isalpha()) | frozenset(
            one[:-1] for one in parts if one.endswith("*") and one[:-1].isalpha()
        )


def fold(said: str) -> str:
    """Lower case without accents or apostrophes; the end of a sentence is a word of its own."""
    plain = without_accents(said).replace("'", "")
    ended = re.sub(r"[.?!;:\n]+(?![a-z0-9])", f" {END} ", plain)
    return " ".join(re.sub(r"[^a-z0-9.]+|\.(?=[a-z0-9])", " ", ended).split())


def without_accents(said: str) -> str:
    """Lower case, plain letters and plain apostrophes."""
    if said.isascii():
        return said.lower()
    plain = unicodedata.normalize("NFKD", said.casefold()).replace("’", "'")
    return "".join(one for one in plain if not unicodedata.combining(one))
