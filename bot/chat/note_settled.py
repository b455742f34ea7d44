"""The claims of a note's clauses put together: each once, and of what is told both ways one."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.said import Claim
from bot.chat.trait_lexicon import TRAIT_OF_STROKE
from knowledge.vocabulary import Value

_CONTRARY = {Value.STRENGTH: Value.WEAKNESS, Value.WEAKNESS: Value.STRENGTH}

_FAMILY = {trait: family for (family, _), trait in TRAIT_OF_STROKE.items()}


def settled(claims: Sequence[tuple[Claim, bool]]) -> tuple[Claim, ...]:
    """Each claim once; of a skill taken both ways, or denied and told, the first, after a "but" the
    last. What is told of both wings at once gives way to what is told of one of them: "can't volley
    to save his life, forehand volley is decent".
    """
    every = [claim for claim, _ in claims]
    last: dict[tuple[object, ...], Claim] = {}
    for claim, turned in claims:
        contrary = (claim.player, claim.trait, _CONTRARY.get(claim.value), claim.denied)
        unsaid = (claim.player, claim.trait, claim.value, True)
        before = last.get(contrary)
        finer = before is not None and _is_of_both(before, every) and not _is_of_both(claim, every)
        if (before is not None or unsaid in last) and not (turned or finer):
            continue
        last.pop(contrary, None)
        last.setdefault((claim.player, claim.trait, claim.value, claim.denied), claim)
    said = {(one.player, one.trait) for one in last.values() if not one.denied}
    return tuple(
        one for one in last.values() if not (one.denied and (one.player, one.trait) in said)
    )


def _is_of_both(claim: Claim, claims: Sequence[Claim]) -> bool:
    """Whether the same words tell the same of the other wing."""
    family = _FAMILY.get(claim.trait)
    return family is not None and any(
        one.span == claim.span
        and one.player == claim.player
        and one.trait is not claim.trait
        and _FAMILY.get(one.trait) is family
        for one in claims
    )
