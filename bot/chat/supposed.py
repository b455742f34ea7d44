"""What a question only supposes of a player ("if he's lefty?"): for its answer, never the book."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from knowledge.evidence import FactEstimate, TraitEstimate
from knowledge.planning.shifts import SUPPOSED_LEVEL, SUPPOSED_VARIANCE
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import TRAITS, Hand, PlayerId, Trait, TraitKind, Value


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
    return _with_fact(one, Trait.HAND, Value(hand))


def with_trait(situation: Situation, player: PlayerId, trait: Trait, value: Value) -> Situation:
    """The situation with that of one player, as if it had been noted."""

    def known(one: OnCourt) -> OnCourt:
        if one.player != player:
            return one
        is_fact = TRAITS[trait].kind is TraitKind.FACT
        return (_with_fact if is_fact else _with_skill)(one, trait, value)

    ours, theirs = tuple(map(known, situation.ours)), tuple(map(known, situation.theirs))
    return replace(situation, ours=ours, theirs=theirs)


def _with_fact(one: OnCourt, trait: Trait, value: Value) -> OnCourt:
    fact = FactEstimate(value=value, chance=1.0, evidence=(), contradicted=False, newest_day=0)
    facts = MappingProxyType({**one.profile.facts, trait: fact})
    return replace(one, profile=replace(one.profile, facts=facts))


def _with_skill(one: OnCourt, trait: Trait, value: Value) -> OnCourt:
    sign = 1 if value in (Value.STRENGTH, Value.OFTEN) else -1
    estimate = TraitEstimate(
        level=sign * SUPPOSED_LEVEL, variance=SUPPOSED_VARIANCE, evidence=(), says_yes=1
    )
    is_habit = value in (Value.OFTEN, Value.RARELY)
    skills = MappingProxyType({**one.profile.skills, (trait, is_habit): estimate})
    return replace(one, profile=replace(one.profile, skills=skills))
