"""What of a message is of a body's harm or a private life: it is handed back and never stored.

Performance words stay. Where the part about play stands in a clause of its own, it is that part
which may be kept.
"""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from functools import cache
from importlib.resources import files
from itertools import pairwise
from typing import Any

from bot.chat.phrase import Found, Meaning, PhraseBook
from bot.chat.trait_lexicon import traits_data
from bot.chat.words import Word, words
from knowledge.complaints import complains
from knowledge.regex import regex

_LIST = "private_words.toml"
_OF_PLAY = "of_play"
_OF_NOTES = "body"
_OF_BODIES = frozenset(["injury", "illness", "medicine"])
_SETS = "sets"

_MARKS = frozenset(",;.!?\n()—–")
_JOINS = frozenset(
    ["since", "because", "cuz", "cause", "bc", "cos", "coz", "due", "after", "but", "though", "tho",
     "although", "and", "so", "with", "w", "as", "who", "which", "while", "from", "for", "plus",
     "has", "got", "had", "wears", "wearing"]
)  # fmt: skip
"""Words at which a part of a sentence begins that the part before does without."""

WINDOW, OVERLAP = 600, 80
"""Characters looked through at once, and how many of them twice: a phrase is shorter."""

_LOOSE_ENDS = regex(r"^[\s,;.!?)—–-]+|[\s,;(—–-]+$")


def is_private(text: str) -> bool:
    """Whether any of it, however long it is, is of a body's harm or a private life."""
    return any(bool(_private(words(each))) or complains(each) for each in _windows(text))


def is_of_a_body(text: str) -> bool:
    """Whether it is of somebody's health, as far as it is read."""
    said = words(text)
    told = _private(said)
    found = _phrases().find([word.folded for word in said])
    return any(one.meaning in _OF_BODIES and _places([one]) & told for one in found)


def is_of_private_life(text: str) -> bool:
    """Whether it is of a private life: a loss, a marriage, money; not of anybody's health."""
    return is_private(text) and not (is_of_a_body(text) or complains(text))


def _windows(text: str) -> list[str]:
    """The text in overlapping stretches, since of a long one only the beginning is read."""
    step = WINDOW - OVERLAP
    return [text[at : at + WINDOW] for at in range(0, max(1, len(text) - OVERLAP), step)]


def playing_part(text: str) -> str:
    """The clauses without such words, as typed; empty where none is left."""
    return ", ".join(text[start:stop] for start, stop in playing_spans(text))


def without_private(text: str) -> str:
    """The text with such words blanked out, so that who is named beside them still stands."""
    said = words(text)
    for at in _private(said):
        start, stop = said[at].span
        text = text[:start] + " " * (stop - start) + text[stop:]
    return text


def playing_spans(text: str) -> tuple[tuple[int, int], ...]:
    """Where those clauses stand, in characters, without the marks at their ends."""
    said = words(text)
    told = _private(said)
    parts = [(part, _is_of_play(said, part, told)) for part in _parts(said, told)]
    if all(is_of_play for _, is_of_play in parts):
        # What is told of a body stands across clauses: no part is surely without it.
        return ()
    spans = [
        (said[start].span[0], said[stop - 1].span[1])
        for (start, stop), is_of_play in parts
        if is_of_play
    ]
    return tuple(_trimmed(text, start, stop) for start, stop in spans)


def _trimmed(text: str, start: int, stop: int) -> tuple[int, int]:
    """The stretch without loose ends; it holds a word at least."""
    left = _LOOSE_ENDS.sub("", text[start:stop])
    begins = text.index(left, start)
    return begins, begins + len(left)


def _is_of_play(said: Sequence[Word], part: tuple[int, int], told: set[int]) -> bool:
    start, stop = part
    line = " ".join(word.folded for word in said[start:stop])
    return told.isdisjoint(range(start, stop)) and not complains(line)


def _parts(said: Sequence[Word], told: set[int]) -> list[tuple[int, int]]:
    """The message cut where a clause may end, but not between two words of what is private.

    A word that joins belongs to what it brings in.
    """
    cuts = [
        at
        for at, word in enumerate(said)
        if at and (set(word.gap) & _MARKS or word.folded in _JOINS) and not {at - 1, at} <= told
    ]
    return list(pairwise([0, *cuts, len(said)]))


def _private(said: Sequence[Word]) -> set[int]:
    """The places of words that no reading as play explains."""
    line = [word.folded for word in said]
    told = _places(_phrases().find(line))
    return told - _places(_of_play().find(line)) if told else told


def is_of_play(line: Sequence[str], start: int, stop: int) -> bool:
    """Whether the words up to `stop` speak of play: "cheating on the middle"."""
    return not _places(_of_play().find(line)).isdisjoint(range(start, stop))


def _places(found: Sequence[Found[Meaning]]) -> set[int]:
    return {at for one in found for at in range(one.start, one.stop)}


@cache
def _own() -> dict[str, Any]:
    text = files("bot.chat.data").joinpath(_LIST).read_text(encoding="utf-8")
    return tomllib.loads(text)


@cache
def _phrases() -> PhraseBook[str]:
    """The list's own phrases, and what the lexicon of notes has of bodies and private life."""
    own, notes = _own(), traits_data()
    kinds = [kind for kind in own if kind not in (_SETS, _OF_PLAY)]
    told = [(phrase, kind) for kind in kinds for phrase in own[kind]["words"]]
    told += [(phrase, _OF_NOTES) for phrase in notes[_OF_NOTES]["words"]]
    return PhraseBook(told, sets=notes[_SETS] | own[_SETS])


@cache
def _of_play() -> PhraseBook[str]:
    own = _own()
    return PhraseBook([(phrase, _OF_PLAY) for phrase in own[_OF_PLAY]["words"]], sets=own[_SETS])
