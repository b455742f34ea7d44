"""A note cut into what it says of whom, so that one part of it can go and the rest stay."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Sequence
from itertools import pairwise

from bot.chat.clauses import clauses
from bot.chat.names import find_mentions
from bot.chat.said import Certainty, Mention
from bot.chat.view import ChatView
from bot.chat.words import Word, words, words_in
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId

_BEFORE_ANOTHER = words_in(
    "and n or with plus to at over past behind beside vs against from for than on like not of"
)
"""Before a name that does not begin something new."""

_LEANS = words_in("when whenever if unless because cuz bc cause since so while as")
"""What a clause begins with that says when or why the one before it is so."""

_LEADS = regex(r"^(?:(?:and|but|n|plus|then|also|so|though|while)\b|[\s,;:.&+–—-])+", re.IGNORECASE)
_ENDING = regex(r"(?<=[a-z]{3})(?:(?<=([a-z]))\1)?(?:ing|ed|es|er|ers|s|e)$")
"""What "lobbing", "lobs" and "lobbed" differ in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NotePart:
    """Characters `start` up to `stop` of the note, and whom they speak of."""

    start: int
    stop: int
    players: tuple[PlayerId, ...]
    names_them: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CutNote:
    """What goes of a note and what is left of it, both in its own words."""

    gone: str
    left: str
    going: tuple[NotePart, ...]

    def keeps(self, span: tuple[int, int] | None) -> bool:
        """Whether what those characters of the note say is left; what has no place is."""
        return span is None or not any(one.start <= span[0] < one.stop for one in self.going)


def note_parts(text: str, view: ChatView) -> tuple[NotePart, ...]:
    """The parts in order: a clause, or less where another name begins something new."""
    said = words(text)
    mentions = find_mentions(said, view)
    starts = [one.start for one in clauses(said, ()) if said[one.start].folded not in _LEANS]
    starts += [at for at in range(1, len(said)) if _begins_anew(at, said, mentions)]
    cuts = [*sorted({0, *starts}), len(said)]
    found: list[NotePart] = []
    for first, last in pairwise(cuts):
        stop = said[last].span[0] if last < len(said) else len(text)
        start = said[first].span[0] if first else 0
        inside = [one for one in mentions if start <= one.span[0] < stop]
        players = _first_of(inside) or (found[-1].players if found else ())
        named = any(not one.pronoun for one in inside)
        found.append(NotePart(start=start, stop=stop, players=players, names_them=named))
    return tuple(found)


def cut_note(
    text: str, view: ChatView, goes: Callable[[NotePart], bool], *, name: Callable[[PlayerId], str]
) -> CutNote | None:
    """The note without the parts that go; None where none does.

    A part that leans on a name that goes gets it by `name`: "he lobs" is nobody's without it.
    """
    parts = note_parts(text, view)
    going = [one for one in parts if goes(one)]
    if not going:
        return None
    left: list[str] = []
    last: tuple[PlayerId, ...] = ()
    for one in parts:
        if one in going:
            continue
        words_left = _LEADS.sub("", text[one.start : one.stop]).strip(" ,;.")
        if one.players and one.players != last and not one.names_them:
            words_left = f"{name(one.players[0])}: {words_left}"
        left.append(words_left)
        last = one.players
    gone = ", ".join(_LEADS.sub("", text[one.start : one.stop]).strip(" ,;.") for one in going)
    return CutNote(gone=gone, left=", ".join(filter(None, left)), going=tuple(going))


def says_one_of(text: str, asked: Collection[str]) -> bool:
    """Whether the text has one of the words, in whatever form: "cheats" for "cheating"."""
    return any(_same_stem(word.folded, each) for word in words(text) for each in asked)


def _same_stem(first: str, second: str) -> bool:
    return first == second or _ENDING.sub("", first) == _ENDING.sub("", second)


def _begins_anew(at: int, said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether a name starts there that is no other end of what went before."""
    begins = any(one.span[0] == said[at].span[0] and not one.pronoun for one in mentions)
    return begins and said[at - 1].folded not in _BEFORE_ANOTHER


def _first_of(mentions: Sequence[Mention]) -> tuple[PlayerId, ...]:
    sure = [one for one in mentions if one.certainty is Certainty.SURE]
    return sure[0].players if sure else ()
