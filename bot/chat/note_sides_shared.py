"""Both sides of a court told in one breath: "hale plays right, ruiz left" tells of both."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.trait_lexicon import NAME
from knowledge.vocabulary import Trait, Value

_OTHER = {Value.LEFT: Value.RIGHT, Value.RIGHT: Value.LEFT}
_BETWEEN = frozenset(["and", "n", "so", "while", "but", "on", "the", "is", "plays", "side"])


def sides_shared(claims: Sequence[Claim], note: NoteLine) -> Iterator[Claim]:
    """The other side, for whoever is named behind the first with nothing but that side."""
    told = {claim.player for claim in claims if claim.trait is Trait.SIDE_PLAYED}
    for claim in claims:
        other = _OTHER.get(claim.value)
        if claim.trait is not Trait.SIDE_PLAYED or claim.denied or other is None:
            continue
        at = _named_behind(claim, note, other)
        players = () if at is None else note.subjects.at(at)
        if at is not None and len(players) == 1 and players[0] not in told:
            span = (note.said[at].span[0], note.said[_last(note, at)].span[1])
            yield replace(claim, player=players[0], value=other, span=span)


def _named_behind(claim: Claim, note: NoteLine, other: Value) -> int | None:
    """The place of the name, where the message goes on "NAME left" and ends there."""
    behind = [at for at, word in enumerate(note.said) if word.span[0] >= claim.span[1]]
    named = [at for at in behind if note.line[at] == NAME]
    if not named or not {note.line[at] for at in behind if at < named[0]} <= _BETWEEN:
        return None
    last = named[-1]
    rest = [note.said[at].folded for at in behind if at > last]
    is_side = [word for word in rest if word not in _BETWEEN] == [other.value]
    return named[0] if is_side and named == list(range(named[0], last + 1)) else None


def _last(note: NoteLine, at: int) -> int:
    sides = {value.value for value in _OTHER}
    return max(place for place in range(at, len(note.said)) if note.said[place].folded in sides)
