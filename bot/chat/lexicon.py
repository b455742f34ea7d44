"""What players' words mean: concepts with their surface forms, forgiving of slips of the finger."""

from __future__ import annotations

import tomllib
from collections import defaultdict
from collections.abc import Mapping, Sequence
from functools import cache, lru_cache
from importlib.resources import files

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from bot.chat.forms import court_shorthand
from knowledge.dataclass import dataclass

SHORTEST_REPAIRED = 4  # letters; three-letter words have too many real neighbours
TWO_SLIPS_FROM = 7  # letters


@dataclass(frozen=True, slots=True, kw_only=True)
class ConceptHit:
    """A concept found in a row of words: words[start:end] carry it."""

    concept: str
    start: int
    end: int


class Lexicon:
    """Concepts by surface form. `forms` maps a concept to its folded forms."""

    def __init__(
        self,
        forms: Mapping[str, Sequence[str]],
        *,
        guard: Sequence[str] = (),
        shorthand: Mapping[str, str] | None = None,
    ) -> None:
        self.shorthand = dict(shorthand or {})
        self._by_first: dict[str, list[tuple[tuple[str, ...], str]]] = defaultdict(list)
        for concept, spellings in forms.items():
            for spelling in spellings:
                words = self._words_of(spelling)
                self._by_first[words[0]].append((words, concept))
        for entries in self._by_first.values():
            entries.sort(key=lambda entry: -len(entry[0]))
        self.words = frozenset(
            word for entries in self._by_first.values() for words, _ in entries for word in words
        )
        self._guard = frozenset(guard)
        self._repairs = tuple(sorted(word for word in self.words if len(word) >= SHORTEST_REPAIRED))

    def _words_of(self, spelling: str) -> tuple[str, ...]:
        """A form's words as messages show them after spelling out."""
        typed = spelling.replace("'", "").replace("-", " ").split()
        return tuple(" ".join(self.shorthand.get(word, word) for word in typed).split())

    def find(self, words: Sequence[str]) -> tuple[ConceptHit, ...]:
        """Every concept in the words, longest form first at each place, left to right."""
        hits: list[ConceptHit] = []
        at = 0
        while at < len(words):
            found = self._at(words, at)
            hits += found
            at = found[0].end if found else at + 1
        return tuple(hits)

    def _at(self, words: Sequence[str], at: int) -> list[ConceptHit]:
        found: list[ConceptHit] = []
        for form, concept in self._by_first.get(words[at], ()):
            end = at + len(form)
            if found and end < found[0].end:
                break
            if tuple(words[at:end]) == form:
                found.append(ConceptHit(concept=concept, start=at, end=end))
        return found

    def repair(self, word: str) -> str:
        """The lexicon's word that `word` is a slip of, or `word` itself."""
        if len(word) < SHORTEST_REPAIRED or word in self.words or word in self._guard:
            return word
        return self._nearest(word)

    @lru_cache(maxsize=4096)  # noqa: B019  (the lexicon lives as long as the process)
    def _nearest(self, word: str) -> str:
        slips = 2 if len(word) >= TWO_SLIPS_FROM else 1
        found = process.extract(
            word, self._repairs, scorer=DamerauLevenshtein.distance, score_cutoff=slips, limit=3
        )
        same_start = [match for match in found if match[0][0] == word[0]]
        return (same_start or [m for m in found if m[1] == 1] or [(word, 0, 0)])[0][0]


@cache
def the_lexicon() -> Lexicon:
    """The lexicon shipped with the bot."""
    text = files("bot.chat").joinpath("data/lexicon.toml").read_text(encoding="utf-8")
    data = tomllib.loads(text)
    shorthand = {**data["shorthand"], **court_shorthand()}
    return Lexicon(data["concepts"], guard=data["guard"], shorthand=shorthand)
