"""Calls typed as one number or with dots, "721" and "7.2.1", in a running match."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.message import Message
from bot.chat.said import RallySaid, ScoreSaid
from bot.chat.scores import score_message, stray_words
from bot.chat.words import Word
from knowledge.regex import regex

DOTTED = regex(r"\s*\d{1,2}\.\d{1,2}\.[12]\s*")
_CALL = regex(r"(\d)(\d)([12])|(1\d)(\d)([12])")
_PAIR = regex(r"(1\d)(\d)")
"""Two numbers, if the message says whose they are: "107 us"."""


def packed_call(message: Message) -> ScoreSaid | None:
    """The score in such a message, if it is nothing but that."""
    if "?" in message.text:
        return None
    if DOTTED.fullmatch(message.text):
        return _score(message.text, [replace(word, gap="-") for word in message.said])
    said = _without_slips(message.told.of_score)
    if stray_words(said) or sum(word.folded.isdigit() for word in said) != 1:
        return None
    at = next(at for at, word in enumerate(said) if word.folded.isdigit())
    found = _CALL.fullmatch(said[at].folded)
    if found is None and len(said) > 1:
        found = _PAIR.fullmatch(said[at].folded)
    if found is None:
        return None
    numbers = [one for one in found.groups() if one is not None]
    return _score(message.text, [*said[:at], *_apart(said[at], numbers), *said[at + 1 :]])


_SLIPS = frozenset(["sorry", "oops", "lol", "pls", "please", "thx", "thanks"])


def _without_slips(said: Sequence[Word]) -> Sequence[Word]:
    """The words without a courtesy at either end: "761 sorry"."""
    return [word for word in said if word.folded not in _SLIPS]


def _apart(word: Word, numbers: Sequence[str]) -> list[Word]:
    return [
        replace(word, folded=one, gap="-" if at else word.gap) for at, one in enumerate(numbers)
    ]


def _score(text: str, said: Sequence[Word]) -> ScoreSaid | None:
    found = score_message(text, said)
    return None if isinstance(found, RallySaid) else found
