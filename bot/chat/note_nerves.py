"""What goes wrong under pressure: a shot where one is named, the nerves only where none is."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.trait_lexicon import TRAIT_OF_STROKE, Family, Role
from knowledge.vocabulary import Tag, Trait, Value

_MARKS = frozenset(",;:.!?()\n–—|")
_NEAR = 3
"""Words from "under pressure" to its wing: "on his backhand". Our own bound."""


def without_nerves(claims: Iterable[Claim], note: NoteLine) -> tuple[Claim, ...]:
    """The claims, weak nerves left out where the same words tell of a shot under pressure.

    Of a wing alone it is the dink: "pops up under pressure on his backhand".
    """
    told = tuple(each for one in claims for each in _on_its_wing(one, note))
    shots = [one for one in told if one.tag is Tag.UNDER_PRESSURE and not _is_nerves(one)]
    return tuple(one for one in told if not _is_nerves(one) or not _is_of(one, shots))


def _on_its_wing(claim: Claim, note: NoteLine) -> tuple[Claim, ...]:
    """The weak dinks that weak nerves under pressure are, where one wing is said right behind."""
    if not _is_nerves(claim) or claim.tag is not Tag.UNDER_PRESSURE:
        return (claim,)
    at = next((at for at, word in enumerate(note.said) if word.span[1] == claim.span[1]), None)
    behind = [] if at is None else note.hits.having(Role.WING)
    near = [hit for hit in behind if at is not None and at < hit.start <= at + _NEAR]
    is_apart = bool(near) and any(
        set(word.gap) & _MARKS for word in note.said[(at or 0) + 1 : near[0].start + 1]
    )
    if len(near) != 1 or is_apart or note.hits.having(Role.STROKE):
        return (claim,)
    dinks = (TRAIT_OF_STROKE[Family.DINK, wing] for wing in near[0].meaning.wings)
    return tuple(replace(claim, trait=trait) for trait in dinks)


def _is_nerves(claim: Claim) -> bool:
    return claim.trait is Trait.NERVES and claim.value is Value.WEAKNESS


def _is_of(nerves: Claim, shots: Iterable[Claim]) -> bool:
    start, stop = nerves.span
    return any(
        one.player == nerves.player and start <= one.span[0] and one.span[1] <= stop
        for one in shots
    )
