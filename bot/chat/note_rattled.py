"""Who is rattled: weak nerves, unless the words around it say that nothing does it.

Notes mostly say it with a "not" ("can't be rattled"), so that the model of notes takes the bare
word for praise.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from typing import Final

from bot.chat.clauses import Clause
from bot.chat.forms import word_set
from bot.chat.note_line import NoteLine
from bot.chat.note_manner import condition_of, surety
from bot.chat.said import Claim
from bot.chat.trait_lexicon import NAME, Role
from knowledge.vocabulary import PlayerId, Trait, Value

_RATTLED: Final = word_set("rattled")
_NOTHING: Final = word_set("rattles_nobody")
_OF_US = frozenset(["us", "we", "i", "im", "me", "were", "you", "youre"])
_WHOM = ([NAME], ["him"], ["her"], ["them"])
_MARKS = frozenset(",;.!?:()\n–—")


def with_rattled(
    claims: Iterable[Claim], note: NoteLine, ours: Collection[PlayerId]
) -> tuple[Claim, ...]:
    """The claims with weak nerves for whoever across the net is rattled."""
    told = tuple(one for one in claims if one.player in ours or not is_called_calm(one, note))
    known = {one.player for one in told if one.trait is Trait.NERVES}
    weak = {
        player: _weak(at, player, note)
        for at in _places(note)
        for player in note.subjects.at(at)
        if player not in {*ours, *known}
    }
    return tuple(sorted((*told, *weak.values()), key=lambda one: one.span))


def is_called_calm(claim: Claim, note: NoteLine) -> bool:
    """Whether strong nerves are read where somebody is rattled."""
    is_strong = claim.trait is Trait.NERVES and claim.value is Value.STRENGTH and not claim.denied
    return is_strong and any(claim.player in note.subjects.at(at) for at in _places(note))


def _places(note: NoteLine) -> Iterator[int]:
    for at, word in enumerate(note.line):
        if word not in _RATTLED or note.line[at + 1 : at + 2] in _WHOM:
            continue
        part = _clause(at, note)
        is_denied = bool(note.hits.inside(part).having(Role.NOT, Role.RARELY, Role.FORMER))
        before = {*note.line[part.start : at]}
        if not (is_denied or _NOTHING & {*note.line[part.start : part.stop]} or _OF_US & before):
            yield at


def _clause(at: int, note: NoteLine) -> Clause:
    """The words between the marks around a place."""
    marked = [place for place, word in enumerate(note.said) if place and set(word.gap) & _MARKS]
    start = max((place for place in marked if place <= at), default=0)
    return Clause(
        start=start, stop=min((one for one in marked if one > at), default=len(note.said))
    )


def _weak(at: int, player: PlayerId, note: NoteLine) -> Claim:
    hits = note.hits.inside(_clause(at, note))
    return Claim(
        player=player,
        trait=Trait.NERVES,
        value=Value.WEAKNESS,
        weight=surety(hits),
        span=note.said[at].span,
        tag=condition_of(Trait.NERVES, hits),
    )
