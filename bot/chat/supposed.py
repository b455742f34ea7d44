"""What a question only supposes of a player ("if he's lefty?"): for its answer, never the book."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from knowledge.evidence import FactEstimate
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import Hand, PlayerId, Trait, Value


def supposing(situation: Situation, hands: Sequence[tuple[PlayerId, Hand]]) -> Situation:
    """The situation with these hands, whatever the notes say of them."""
    if not hands:
        return situation
    supposed = dict(hands)
    return replace(
        situation,
        ours=tuple(_with_hand(one, supposed) for one in situation.ours),
        theirs=tuple(_with_hand(one, supposed) for one in situation.theirs),
    )


def _with_hand(one: OnCourt, supposed: Mapping[PlayerId, Hand]) -> OnCourt:
    hand = supposed.get(one.player)
    if hand is None:
        return one
    fact = FactEstimate(
        value=Value(hand), chance=1.0, evidence=(), contradicted=False, newest_day=0
    )
    facts = MappingProxyType({**one.profile.facts, Trait.HAND: fact})
    return replace(one, profile=replace(one.profile, facts=facts))
