"""A message as one line to read a ball from: slips mended, names as sides, units kept."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import field
from functools import lru_cache

from rapidfuzz.distance import DamerauLevenshtein

from bot.chat.ball_forms import form, guarded_words, mended_words, short_words
from bot.chat.common_words import is_common
from bot.chat.forms import short_forms
from bot.chat.said import Mention
from bot.chat.words import Word, words_in
from knowledge.dataclass import dataclass
from knowledge.regex import regex

OURS, THEIRS = "@u", "@t"
"""What stands for a name of ours and of theirs."""

_OF_THEM = words_in(
    "they he she hes shes theyre their his her who other guy guys man woman lady player players"
    " opponent opponents pair"
) | {THEIRS}
OF_US = words_in("i im ive me my we our us were weve") | {OURS}

_SHORTEST_MENDED = 4
_MARK = regex(r"[,;!?()\n:–—…%]|\.(?!\d)|\s-+\s")
_FOOT_MARK = regex(r"^['’′](?!['’])")
_INCH_MARK = regex("^(?:[\"”″]|''|’’)")
_FEET_INCHES = regex(r"(\d+)['’′](\d+)")
_NUMBER_FIRST = regex(r"(\d+)([a-z]+)")
_NUMBER = regex(r"\d+")


@dataclass(slots=True, kw_only=True)
class BallLine:
    """The line, and the place in the message of each of its characters; reading uses it up.

    What is taken is covered by commas, so that nothing else is read from it; `places` are those
    of the words taken so far.
    """

    text: str
    place_at: tuple[int, ...]
    places: set[int] = field(default_factory=set)

    def take(self, form: re.Pattern[str]) -> re.Match[str] | None:
        """The first finding of the form, and covers it."""
        found = form.search(self.text)
        if found is not None:
            self.cover(found)
        return found

    def cover(self, found: re.Match[str]) -> None:
        start, stop = found.span()
        self.places.update(self.place_at[start:stop])
        self.text = f"{self.text[:start]}{',' * (stop - start)}{self.text[stop:]}"

    def has_any(self, words: frozenset[str]) -> bool:
        """Whether one of the words stands in it."""
        return not words.isdisjoint(self.text.split(" "))

    def is_theirs(self, found: re.Match[str]) -> bool:
        """Whether they were spoken of last before it in its clause: "he camps at the line".

        Whom something is played at is not who does it: "do I lob okafor from the line".
        """
        told: bool | None = None
        words = self.before(found).split()
        for at, word in enumerate(words):
            is_object = at > 0 and form("veto", "keeps").fullmatch(words[at - 1])
            if word in OF_US:
                told = False
            elif word in _OF_THEM and not is_object:
                told = True
        return told is True

    def before(self, found: re.Match[str], *, in_clause: bool = True) -> str:
        """The line before a finding, from the last mark on."""
        text = self.text[: found.start()].rstrip(" ")
        return text[text.rfind(",") + 1 :].strip() if in_clause else text


def ball_line(
    said: Sequence[Word], mentions: Sequence[Mention], ours: Sequence[Mention], after: str
) -> BallLine:
    """The line of a message; `after` is what follows its last word ("2'")."""
    text, place_at = "", list[int]()
    names = [one for one in mentions if not one.pronoun]
    last: Mention | None = None
    for place, word in enumerate(said):
        name = next((one for one in names if one.span[0] <= word.span[0] < one.span[1]), None)
        if name is not None and name is last:
            continue
        last = name
        side = None if name is None else OURS if name in ours else THEIRS
        follows = said[place + 1].gap if place + 1 < len(said) else after
        for token in _tokens(word, text, follows, side):
            glue = "" if token[:1] in ("", ".", "/") or text[-1:] in ("", "/", ".") else " "
            text += f"{glue}{token}"
            place_at += [place] * (len(glue) + len(token))
    return BallLine(text=text, place_at=tuple(place_at))


def _tokens(word: Word, before: str, follows: str, side: str | None) -> Iterator[str]:
    """What a word is in the line: a mark before it, itself or its side, a unit's sign after."""
    follows_number = before[-1:].isdigit()
    is_number = _NUMBER.match(word.folded) is not None
    if follows_number and is_number and word.gap in (".", ","):
        yield f".{word.folded}"
    elif follows_number and word.gap == "/":
        yield from (",", word.folded)
    elif word.gap == "/" and before:
        yield from ("/", word.folded)
    else:
        yield from _apart(word, before, is_number=is_number)
        yield from _parts(word) if side is None else (side,)
    if word.folded[-1:].isdigit():
        if _INCH_MARK.match(follows):
            yield "inch"
        elif _FOOT_MARK.match(follows):
            yield "ft"


def _apart(word: Word, before: str, *, is_number: bool) -> Iterator[str]:
    """The mark that parts a word from the one before, if any."""
    if "@" in word.gap:
        yield "at"
    if before and _MARK.search(word.gap):
        yield ","
    if is_number and word.gap[-1:] in ("-", "−"):
        tight = bool(before) and not word.gap[:-1].strip() and len(word.gap) == 1
        yield "to" if tight and before[-1:].isdigit() else "minus"


def _parts(word: Word) -> Iterator[str]:
    """The word in full, a number apart from its unit."""
    feet = _FEET_INCHES.fullmatch(word.typed)
    if feet is not None:
        yield from (feet[1], "ft", feet[2], "inch")
        return
    apart = _NUMBER_FIRST.fullmatch(word.folded)
    if apart is not None and apart[2] not in ("st", "nd", "rd", "th"):
        yield from apart.groups()
    else:
        yield from mended(word.folded).split()


@lru_cache(maxsize=4096)
def mended(folded: str) -> str:
    """The word of a ball that a mistyped word stands for; any other word as it is."""
    if folded in mended_words() or folded in guarded_words():
        return folded
    short = short_words().get(folded) or short_forms().get(folded)
    if short is not None:
        return short
    if len(folded) < _SHORTEST_MENDED or is_common(folded) or not folded.isalpha():
        return folded
    near = [one for one in mended_words() if _is_slip(folded, one)]
    found = sorted(near, key=lambda one: (sorted(one) != sorted(folded), one))
    return found[0] if found else folded


def _is_slip(typed: str, word: str) -> bool:
    """Whether two letters are swapped, or one is wrong, missing or too many after the first."""
    if len(word) < _SHORTEST_MENDED or abs(len(typed) - len(word)) > 1:
        return False
    if typed[0] != word[0] and sorted(typed) != sorted(word):
        return False
    return int(DamerauLevenshtein.distance(typed, word, score_cutoff=1)) == 1
