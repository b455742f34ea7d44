"""Words as one line to search in, and which words a finding covers."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from bot.chat.words import Word
from knowledge.dataclass import dataclass

COUNTS = {
    "a": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7,
    "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "zero": 0, "no": 0, "none": 0,
    "nil": 0, "love": 0, "nothing": 0, "both": 2, "couple": 2,
}  # fmt: skip

NUMBER = r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\d{1,2})"


@dataclass(frozen=True, slots=True, kw_only=True)
class SpokenLine:
    """The folded words with single spaces; `place_at` has a word's place for every character."""

    text: str
    place_at: tuple[int, ...]

    def covered(self, *found: re.Match[str] | None) -> frozenset[int]:
        """The places of all words that the findings touch."""
        spans = [one.span() for one in found if one is not None]
        return frozenset(place for start, stop in spans for place in self.place_at[start:stop])


def line_of(said: Sequence[Word], *, without: Collection[int] = ()) -> SpokenLine:
    """The line of the words, those at some places left out (a comma in their stead)."""
    text, place_at = "", list[int]()
    for place, word in enumerate(said):
        token = "," if place in without else word.folded
        text += f"{token} "
        place_at += [place] * (len(token) + 1)
    return SpokenLine(text=text.rstrip(), place_at=tuple(place_at))


def count(word: str) -> int:
    """The number that a NUMBER or a small word of quantity stands for."""
    return int(word) if word.isdigit() else COUNTS[word]
