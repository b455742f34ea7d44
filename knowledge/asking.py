"""What is most worth asking: the value, in points, of knowing what is not known."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence

from knowledge.beliefs import Belief, believe, chance_of, places_on
from knowledge.dataclass import dataclass
from knowledge.effects import Condition, Decision, FactId, OptionId, TraitScale, Truth
from knowledge.evidence import TraitEstimate
from knowledge.vocabulary import RallyChance, RallyPoints


@dataclass(frozen=True, slots=True, kw_only=True)
class Unknown:
    """An unknown fact: what knowing it is worth in points, and the top option per answer.

    A little-known trait is one too: "yes" is one standard deviation above its level, "no" one
    below (two points that keep its mean and variance).
    """

    fact: FactId
    worth: RallyPoints
    if_yes: OptionId
    if_no: OptionId
    condition: Condition


def unknowns_of(decision: Decision, beliefs: Sequence[Belief]) -> tuple[Unknown, ...]:
    """Value of information per unknown fact, largest first: E[best if known] - best now."""
    acting = {option.id: places_on(option.id, beliefs) for option in decision.options}
    now = _chances(decision.neutral, acting, beliefs)
    touched = _touched_by_facts(beliefs)
    asked = [*_open_conditions(beliefs), *_doubtful_traits(beliefs)]
    found = []
    for condition in asked:
        places = touched[condition.fact]
        moved = {option: those for option, those in acting.items() if not places.isdisjoint(those)}
        yes, no = (
            now | _chances(decision.neutral, moved, _if(beliefs, places, condition, holds=holds))
            for holds in (True, False)
        )
        found.append(_unknown(condition, now=now, yes=yes, no=no))
    return tuple(sorted(found, key=lambda one: (-one.worth, one.fact)))


def _chances(
    neutral: RallyChance, acting: Mapping[OptionId, Sequence[int]], beliefs: Sequence[Belief]
) -> dict[OptionId, float]:
    """Our chance with each option, of the beliefs at those places that do not fail to hold."""
    return {
        option: chance_of(
            neutral, [beliefs[place] for place in those if beliefs[place].truth is not Truth.NO]
        )
        for option, those in acting.items()
    }


def _touched_by_facts(beliefs: Sequence[Belief]) -> dict[FactId, set[int]]:
    """Which beliefs, by their places, a fact settles: that scales them, or that they wait for."""
    found: defaultdict[FactId, set[int]] = defaultdict(set)
    for place, one in enumerate(beliefs):
        if one.truth is Truth.NO:
            continue
        if one.effect.scale is not None and (fact := one.effect.scale.fact) is not None:
            found[fact].add(place)
        if one.truth is Truth.UNKNOWN:
            found[one.effect.when.fact].add(place)
    return found


def _open_conditions(beliefs: Iterable[Belief]) -> Iterable[Condition]:
    found: dict[FactId, Condition] = {}
    for one in beliefs:
        if one.truth is Truth.UNKNOWN:
            found.setdefault(one.effect.when.fact, one.effect.when)
    return found.values()


def _doubtful_traits(beliefs: Iterable[Belief]) -> Iterable[Condition]:
    """Each trait that scales an effect, as a condition: is its level above what we believe?"""
    facts = {one.effect.scale.fact for one in beliefs if one.effect.scale}
    return [
        Condition(
            name=f"{fact} is high", fact=fact, prevalence=0.5, test=lambda _situation: Truth.UNKNOWN
        )
        for fact in sorted(fact for fact in facts if fact is not None)
    ]


def _unknown(
    condition: Condition,
    *,
    now: Mapping[OptionId, float],
    yes: Mapping[OptionId, float],
    no: Mapping[OptionId, float],
) -> Unknown:
    """What knowing it is worth, by the options' chances as they are and with either answer."""
    pi = condition.prevalence
    informed = pi * max(yes.values()) + (1 - pi) * max(no.values())
    uninformed = max(pi * yes[option] + (1 - pi) * no[option] for option in now)
    return Unknown(
        fact=condition.fact,
        worth=RallyPoints(100 * (informed - uninformed)),
        if_yes=_top(yes),
        if_no=_top(no),
        condition=condition,
    )


def _top(chances: Mapping[OptionId, float]) -> OptionId:
    return min(chances, key=lambda option: (-chances[option], option))


def _if(
    beliefs: Sequence[Belief], places: Iterable[int], condition: Condition, *, holds: bool
) -> Sequence[Belief]:
    """The beliefs if the fact were known, which settles those at these places."""
    settled = list(beliefs)
    for place in places:
        settled[place] = _settled(beliefs[place], condition, holds=holds)
    return settled


def _settled(one: Belief, condition: Condition, *, holds: bool) -> Belief:
    """The belief if the fact were known: equal conditions follow, negations flip.

    Two conditions on one fact are the same test if their names are equal; any other condition
    on that fact is its negation. A trait moves one standard deviation up or down.
    """
    effect = one.effect
    if effect.scale is not None and effect.scale.fact == condition.fact:
        return believe(effect, one.truth, scale=_moved(effect.scale, up=holds))
    same = effect.when.name == condition.name
    return believe(effect, Truth.of(holds is same))


def _moved(scale: TraitScale, *, up: bool) -> TraitScale:
    estimate = scale.estimate
    step = math.sqrt(estimate.variance)
    level = max(-1.0, min(1.0, estimate.level + (step if up else -step)))
    known = TraitEstimate(level=level, variance=0.0, evidence=estimate.evidence)
    return TraitScale(
        estimate=known,
        towards=scale.towards,
        player=scale.player,
        trait=scale.trait,
        habit=scale.habit,
        both_ways=scale.both_ways,
    )
