"""The name of a partner as a message has it: somebody of the book, or words that may be a name."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.said import Certainty, Mention
from bot.chat.unknown_names import may_bear_a_name
from bot.chat.words import Word, words_in
from knowledge.dataclass import dataclass

LONGEST = 2
"""Words of a name."""

GOES_ON = words_in("and but he she hes shes who i im we so also his her")
"""What goes on behind a name, and is none."""

_OF_VERBS = ("ing", "ed")
"""Endings of what tells how somebody is, where no capital says that it is a name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """A name as typed, whom the book knows by it, and the place of the word behind it."""

    typed: str
    known: Mention | None
    stop: int


def name_at(
    text: str,
    said: Sequence[Word],
    start: int,
    mentions: Sequence[Mention],
    *,
    longest: int = LONGEST,
) -> Named | None:
    """The name that begins with this word: somebody of the book, or words that may be a name."""
    if start >= len(said):
        return None
    known = next((one for one in mentions if one.span[0] == said[start].span[0]), None)
    if known is not None and not known.pronoun and known.certainty is not Certainty.NOBODY:
        stop = sum(word.span[0] < known.span[1] for word in said)
        return Named(typed=known.typed, known=known, stop=stop)
    stop = start
    while stop < min(len(said), start + longest) and _is_name(said[stop]):
        if stop > start and said[stop].gap != " ":
            break
        stop += 1
    if stop == start:
        return None
    typed = text[said[start].span[0] : said[stop - 1].span[1]]
    return Named(typed=typed, known=None, stop=stop)


def _is_name(word: Word) -> bool:
    of_verb = word.folded.endswith(_OF_VERBS) and not word.is_capitalised
    return may_bear_a_name(word) and not of_verb and word.folded not in GOES_ON
