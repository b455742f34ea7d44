"""What goes wrong under pressure: a shot where one is named, the nerves only where none is."""

from __future__ import annotations

from collections.abc import Iterable

from bot.chat.said import Claim
from knowledge.vocabulary import Tag, Trait, Value


def without_nerves(claims: Iterable[Claim]) -> tuple[Claim, ...]:
    """The claims, weak nerves left out where the same words tell of a shot under pressure."""
    told = tuple(claims)
    shots = [one for one in told if one.tag is Tag.UNDER_PRESSURE and not _is_nerves(one)]
    return tuple(one for one in told if not _is_nerves(one) or not _is_of(one, shots))


def _is_nerves(claim: Claim) -> bool:
    return claim.trait is Trait.NERVES and claim.value is Value.WEAKNESS


def _is_of(nerves: Claim, shots: Iterable[Claim]) -> bool:
    start, stop = nerves.span
    return any(
        one.player == nerves.player and start <= one.span[0] and one.span[1] <= stop
        for one in shots
    )
