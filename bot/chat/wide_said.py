"""Who of ours is off to the side: "they pulled me wide", "tom is way over by the fence"."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from bot.chat.near_words import mended
from bot.chat.one_of_us import ONE, token, whom
from bot.chat.said import Mention, OneOfUs
from bot.chat.words import Word, words_in
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId

_WHO = rf"(?<!do )(?<!should )(?<!shud )(?<!can )(?<!could )(?P<who>{ONE})"
_OFF_COURT = (
    r"(?:off (?:the |my |our |his |her )?(?:court|ct)"
    r"|(?:past|beyond|outside) the (?:side ?lines?|doubles line|court)"
    r"|by the (?:fence|bench|side ?line)|(?:in|into) (?:the )?(?:doubles )?(?:alley|tramlines))"
)
_FAR = r"(?:(?:way|all the way|far|really|so|too|right|out|over) )*"
_MOVED = (
    r"(?:pulled|dragged|drawn|yanked|stuck|taken|sent|caught|forced|stretched|run|runs|ran|went"
    r"|gone|jerked|moved|stranded)"
)
_BE = r"(?:(?:is|am|was|are|s|got|gets|get|has|have|been|being|just|now|still) )*"
_STANDS_WIDE = regex(
    rf"{_WHO} {_BE}(?:{_MOVED} {_FAR}wide|(?:out|way|so|too|really) wide"
    rf"|{_MOVED} (?:way|far|all the way|off|out) (?:to the )?(?:left|right)"
    rf"|(?:{_MOVED} )?{_FAR}{_OFF_COURT})\b"
)
_MADE_WIDE = regex(
    rf"\b(?:pulled|pulls?|pulling|dragged|drags?|yanked|yanks?|took|takes?|sent|sends?|got|drew|ran"
    rf"|have|has|stretched|moved) {_WHO} (?:{_MOVED} )?{_FAR}(?:wide|{_OFF_COURT})\b"
)
_ME = frozenset(["i", "im", "me", "ive"])
_PARTNER = frozenset(["partner", "partners", "pard", "pardner", "p"])
_SPELT: Final = words_in("pulled dragged drawn yanked stretched stranded forced wide court")
"""Words that a slip is mended in: "if tom is pulld wdie"."""


def who_is_wide(said: Sequence[Word], ours: Sequence[Mention]) -> PlayerId | OneOfUs | None:
    """Who is drawn off the court, by name or as "me" and "my partner"; None if nobody is."""
    line = " ".join(_token(word, ours) for word in said)
    found = _MADE_WIDE.search(line) or _STANDS_WIDE.search(line)
    if found is None:
        return None
    return whom(found["who"], ours)


def _token(word: Word, ours: Sequence[Mention]) -> str:
    return mended(token(word, ours, me=_ME, partner=_PARTNER), _SPELT)
