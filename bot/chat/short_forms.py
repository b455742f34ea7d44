"""Words of the court typed short or misspelt ("thm", "srv2", "thier"), written in full."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace
from functools import cache, lru_cache

from bot.chat.forms import short_forms, word_set
from bot.chat.score_spelling import as_meant, run_together
from bot.chat.timeout_letters import in_capitals, is_timeout_here, meant_by
from bot.chat.words import Word
from knowledge.regex import regex

WORDS_KEPT = 1024
"""Words whose parts are kept: one message is asked for them by several readers."""

_SERVER = regex(r"(s|srv|srvr|svr|serv|server)([12])")
_SERVERS = frozenset(["srv", "srvr", "svr", "serv"])
_CALL = regex(r"(0)([0-9])([12])")
"""`002`: a call typed as one number; no other number begins with a zero."""

_NUMBER_FIRST = regex(r"(\d{1,2})([a-z]+)")
_NUMBER_LAST = regex(r"([a-z]+)(\d{1,2})")
_ROUND_ZERO = regex(r"([12])o")
"""`1o`: ten, with the letter for the zero."""


def in_full(said: Sequence[Word], *, names: Collection[tuple[int, int]] = ()) -> list[Word]:
    """The same words in full; a number that hangs on a word is a word of its own.

    Words within the spans of `names`, and others written as names, are never mended.
    """
    apart = [
        part for word in said for part in (_apart(word) if _is_no_name(word, names) else (word,))
    ]
    told: list[Word] = []
    for place, word in enumerate(apart):
        if is_timeout_here(apart, place):
            told.append(replace(word, folded=meant_by(apart, place)))
            continue
        if place and is_timeout_here(apart, place - 1):
            continue
        if (timeout := in_capitals(apart, place)) is not None:
            told.append(replace(word, folded=timeout))
            continue
        ahead = apart[place + 1].folded if place + 1 < len(apart) else ""
        if word.folded in _SERVERS and ahead in ("1", "2"):
            told.append(replace(word, folded="server"))
            continue
        told += _parts(word) or [_reading(word, _full(word.folded, ahead))]
    return told


def _reading(word: Word, folded: str) -> Word:
    """The word read as `folded`: itself where nothing changes, as for most words."""
    return word if word.folded == folded else replace(word, folded=folded)


def _is_no_name(word: Word, names: Collection[tuple[int, int]]) -> bool:
    within = any(start <= word.span[0] < stop for start, stop in names)
    return not within and (not word.is_capitalised or word.typed.isupper() or word.span[0] == 0)


@lru_cache(maxsize=WORDS_KEPT)
def _apart(word: Word) -> tuple[Word, ...]:
    """The word spelled as it was meant, or the words it runs together: "3down", "forthem"."""
    first, last = _NUMBER_FIRST.fullmatch(word.folded), _NUMBER_LAST.fullmatch(word.folded)
    if _ROUND_ZERO.fullmatch(word.folded):
        return (replace(word, folded=f"{word.folded[0]}0"),)
    if first is not None and as_meant(first[2]) in _beside_a_number():
        return _split(word, first[1], first[2])
    if last is not None and as_meant(last[1]) in _beside_a_number():
        return _split(word, last[1], last[2])
    parts = run_together(word.folded)
    return _split(word, *parts) if parts else (_reading(word, as_meant(word.folded)),)


def _split(word: Word, *parts: str) -> tuple[Word, ...]:
    """The word as several, each with its own letters of what was typed."""
    found: list[Word] = []
    start = word.span[0]
    for part in parts:
        span, gap = (start, start + len(part)), " " if found else word.gap
        typed = word.typed[start - word.span[0] :][: len(part)]
        found.append(replace(word, folded=as_meant(part), typed=typed, span=span, gap=gap))
        start += len(part)
    return tuple(found)


def _full(folded: str, ahead: str) -> str:
    """`r` is "our" before what a side has, and "are" elsewhere; so are "there" and "their"."""
    ahead = _short().get(ahead, ahead)
    if folded in ("r", "there") and ahead in _owned():
        return "our" if folded == "r" else "their"
    return "are" if folded == "r" else _short().get(folded, folded)


def _parts(word: Word) -> list[Word]:
    """`srv2` as "server 2", `002` as "0-0-2"."""
    server, call = _SERVER.fullmatch(word.folded), _CALL.fullmatch(word.folded)
    if server is not None:
        first = replace(word, folded="server", span=(word.span[0], word.span[1] - 1))
        last = replace(word, folded=server[2], gap="", span=(word.span[1] - 1, word.span[1]))
        return [first, last]
    if call is None:
        return []
    start = word.span[0]
    return [
        replace(word, folded=digit, gap="-" if at else word.gap, span=(start + at, start + at + 1))
        for at, digit in enumerate(call.groups())
    ]


@cache
def _short() -> dict[str, str]:
    return dict(short_forms())


@cache
def _owned() -> frozenset[str]:
    return word_set("owned_by_a_side")


@cache
def _beside_a_number() -> frozenset[str]:
    return word_set("beside_a_number")
