"""What is most worth finding out about these two: the value of information over every decision.

A fact's worth is the sum over our decisions of points times share: what knowing it would add,
in rallies of 100 (Raiffa and Schlaifer 1961, from memory; to first order, as in the engine).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from types import MappingProxyType

from knowledge.asking import Unknown
from knowledge.dataclass import dataclass
from knowledge.engine import Ranking, rank
from knowledge.evidence import FactEstimate
from knowledge.planning.hands import hands_aim
from knowledge.planning.lobbing import lob_decision
from knowledge.planning.thirds import thirds_of
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics.conditions import RIGHT_HANDERS, player_of, trait_of
from knowledge.tactics.dink_answer import answer_dink
from knowledge.tactics.middle_answer import answer_middle
from knowledge.tactics.return_answer import answer_return
from knowledge.tactics.serve_answer import answer_serve
from knowledge.vocabulary import PlayerId, Side, Topic, Trait, Value

LEAST_PER_100 = 0.01
"""Rallies in 100 below which an answer is not worth a ball: one rally in 300 games."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorthKnowing:
    """A fact about one of them: rallies of 100 it is worth, and what either answer makes best.

    `if_yes` and `if_no` are options as a reply says them, of the decision it matters most to.
    """

    player: PlayerId
    trait: Trait
    per_100: float
    if_yes: str
    if_no: str


def worth_knowing(situation: Situation) -> tuple[WorthKnowing, ...]:
    """What is not known of these two, most worth knowing first; without what hardly matters."""
    theirs = {one.player for one in situation.theirs}
    found: dict[tuple[PlayerId, Trait], list[WorthKnowing]] = {}
    for ranking, share in _rankings(replace(situation, asked=Asked())):
        for unknown in ranking.unknowns:
            one = _about(unknown, ranking, share)
            if one is not None and one.player in theirs:
                found.setdefault((one.player, one.trait), []).append(one)
    for hand in _hands(situation):
        found.setdefault((hand.player, hand.trait), []).append(hand)
    summed = [_summed(parts) for parts in found.values()]
    useful = [one for one in summed if one.per_100 >= LEAST_PER_100]
    return tuple(sorted(useful, key=lambda one: (-one.per_100, one.player, one.trait)))


def _rankings(situation: Situation) -> Iterator[tuple[Ranking, float]]:
    """Every decision we have against these two, with its share of rallies."""
    dinks = answer_dink(replace(situation, topic=Topic.AIM_DINK)).ranking
    yield dinks, dinks.share
    middle = [taken.rankings for taken in answer_middle(situation).taken]
    yield from ((ranking, ranking.share / len(each)) for each in middle for _, ranking in each)
    if not situation.theirs:
        return
    hands = hands_aim(situation).weighed.ranking
    yield hands, hands.share
    thirds = [third.weighed.ranking for third in thirds_of(situation)]
    yield from ((ranking, ranking.share / len(thirds)) for ranking in thirds)
    serves = [
        answer_serve(situation, one, court).ranking for one in situation.theirs for court in Side
    ]
    yield from ((ranking, ranking.share / len(serves)) for ranking in serves)
    returns = answer_return(replace(situation, topic=Topic.AIM_RETURN)).ranking
    lobs = rank(lob_decision(situation), situation)
    yield from ((ranking, ranking.share) for ranking in (returns, lobs))


def _about(unknown: Unknown, ranking: Ranking, share: float) -> WorthKnowing | None:
    player, trait = player_of(unknown.fact), trait_of(unknown.fact)
    if player is None or trait is None:
        return None
    return WorthKnowing(
        player=player,
        trait=trait,
        per_100=unknown.worth * share / 100,
        if_yes=ranking.of(unknown.if_yes).option.label,
        if_no=ranking.of(unknown.if_no).option.label,
    )


def _summed(parts: Iterable[WorthKnowing]) -> WorthKnowing:
    largest, *rest = sorted(parts, key=lambda one: -one.per_100)
    return replace(largest, per_100=largest.per_100 + sum(one.per_100 for one in rest))


def _hands(situation: Situation) -> Iterator[WorthKnowing]:
    """A hand turns the wings round, so it is weighed by answering the dink with either hand."""
    asked = replace(situation, topic=Topic.AIM_DINK, asked=Asked())
    for one in situation.theirs:
        if one.profile.fact(Trait.HAND) is not None:
            continue
        left, right = (
            answer_dink(_supposing(asked, one, hand)).ranking for hand in (Value.LEFT, Value.RIGHT)
        )
        yield WorthKnowing(
            player=one.player,
            trait=Trait.HAND,
            per_100=_worth_of_the_hand(left, right) * right.share,
            if_yes=left.best.option.label,
            if_no=right.best.option.label,
        )


def _worth_of_the_hand(left: Ranking, right: Ranking) -> float:
    """E[best if known] - best now, in chances; options are places, so they stay the same."""
    of_left = {one.option.id: one.chance for one in left.ranked}
    of_right = {one.option.id: one.chance for one in right.ranked}
    share = {"left": 1 - RIGHT_HANDERS, "right": RIGHT_HANDERS}
    informed = share["left"] * max(of_left.values()) + share["right"] * max(of_right.values())
    both = of_left.keys() & of_right.keys()
    now = max(share["left"] * of_left[id] + share["right"] * of_right[id] for id in both)
    return max(0.0, informed - now)


def _supposing(situation: Situation, one: OnCourt, hand: Value) -> Situation:
    fact = FactEstimate(value=hand, chance=1.0, evidence=(), contradicted=False, newest_day=0)
    facts = MappingProxyType({**one.profile.facts, Trait.HAND: fact})
    known = replace(one, profile=replace(one.profile, facts=facts))
    theirs = tuple(known if each.player == one.player else each for each in situation.theirs)
    return replace(situation, theirs=theirs)
