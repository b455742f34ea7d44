"""Whoever "doesn't care", told of beside the other: "he hates it when we lob him, she doesnt care".

What the model reads for both is of the other alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.words import words_in
from knowledge.vocabulary import PlayerId

_NOT = words_in("doesnt don't doesn't dont isnt isn't")
_CARES = words_in("care mind bothered fussed")
_BESIDE = words_in("at all tho though much really either way lol")
_MARKS = frozenset(",;.!\n-–—(")


def without_unbothered(claims: Iterable[Claim], note: NoteLine) -> tuple[Claim, ...]:
    """The claims of everybody else; "she doesnt care about lobs" tells something of her own."""
    unbothered = {*_unbothered(note)}
    return tuple(one for one in claims if one.player not in unbothered)


def _unbothered(note: NoteLine) -> Iterator[PlayerId]:
    said = note.said
    for at in range(1, len(said) - 1):
        if said[at].folded not in _NOT or said[at + 1].folded not in _CARES:
            continue
        behind = next((word for word in said[at + 2 :] if word.folded not in _BESIDE), None)
        who = [one for one in note.whose if one.span[1] == said[at - 1].span[1]]
        is_of_two = len({player for one in note.whose for player in one.players}) > 1
        if is_of_two and (behind is None or set(behind.gap) & _MARKS):
            yield from (player for one in who for player in one.players)
