"""Words of the court typed short or misspelt ("thm", "srv2", "thier"), written in full."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import cache

from bot.chat.forms import short_forms, word_set
from bot.chat.words import Word

_SERVER = re.compile(r"(s|srv|srvr|serv|server)([12])")
_SERVERS = frozenset(["srv", "srvr", "serv"])
_CALL = re.compile(r"(0)([0-9])([12])")
"""`002`: a call typed as one number; no other number begins with a zero."""


def in_full(said: Sequence[Word]) -> list[Word]:
    """The same words in full; a number that hangs on a word is a word of its own."""
    told: list[Word] = []
    for place, word in enumerate(said):
        ahead = said[place + 1].folded if place + 1 < len(said) else ""
        if word.folded in _SERVERS and ahead in ("1", "2"):
            told.append(replace(word, folded="server"))
            continue
        told += _parts(word) or [replace(word, folded=_full(word.folded, ahead))]
    return told


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
