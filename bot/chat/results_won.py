"""Who won what a line tells of: "we beat them", "ended up losing", "they took the second"."""

from __future__ import annotations

from bot.chat.score_words import BADLY_BEATEN
from knowledge.regex import regex

_ENDED_UP = r"(?:(?:end|ended|wound|finished)(?: up)? )"

_WON = regex(
    r"\b(?:won|win(?! by\b)|winning|beat|bt|w|took|take|taking|dub|winners|gold|victory|through)\b"
    rf"|(?:\bwe |^)(?:just )?{BADLY_BEATEN} (?:they|them|em)\b"
    r"|\bover they\b|\bto (?:us|we)\b|\d (?:us|we)$"
)
_LOST = regex(
    r"\b(?:got beat|lost|loss|lose|losing|l|fell|dropped|dropping|beaten|they won|they beat"
    r"|they took|out in|gone in|knocked out)\b"
)
_THEY = r"(?:they|(?:the )?(?:other|opposing) (?:pair|team|side|lot|two))"
_THEY_WON = regex(
    rf"\bgot {BADLY_BEATEN}\b|\bbeaten\b|\b{_THEY} (?:team )?(?:won|beat|took|win|got|had us)\b"
    rf"|\b{_THEY} (?:just |have )?{_ENDED_UP}(?:winning|taking|beating)\b|\blosing\b"
    rf"|\b(?:just|have) (?:won|beat) us\b|\blost\b|\b{BADLY_BEATEN} (?:us|we)\b"
    r"|\b(?:to|for) (?:them|they)\b|\btook us\b|\d (?:them|they)$"
)
_THEY_LOST = regex(
    rf"\b{_THEY} (?:have |just )?{_ENDED_UP}?(?:lost|lose|losing|dropped|dropping)\b"
)


def told_won(line: str) -> bool | None:
    """Whether we won, by the words of the line; None where it does not say."""
    if _THEY_LOST.search(line):
        return True
    if _THEY_WON.search(line):
        return False
    return True if _WON.search(line) else False if _LOST.search(line) else None
