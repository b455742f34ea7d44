"""Where to serve: lane and depth for whoever must receive, the change-up, what would flip it."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from knowledge.advice import Advice, AdvisedMix, Choice, Confidence, MatchFact
from knowledge.evidence import FactEstimate
from knowledge.flight import Shot
from knowledge.honest_risk import misses_paid_for
from knowledge.mixing import advised_mix
from knowledge.planning.phrases import skill_words
from knowledge.planning.probes import hand_choices
from knowledge.planning.sizes import SERVING_CHANCE
from knowledge.situation import Situation, Wind
from knowledge.tactics import serve_sizes as sizes
from knowledge.tactics import serve_words as words
from knowledge.tactics.aim_words import (
    SUN_CAUTION,
    aim_said,
    assumed,
    deep_pays,
    sum_lines,
    wind_choices,
)
from knowledge.tactics.conditions import marks_weak, player_of, trait_of
from knowledge.tactics.serve_answer import ServeAnswer, answer_serve, court_of, receivers
from knowledge.tactics.serve_lanes import Lane, wing_at
from knowledge.tactics.serve_picture import picture
from knowledge.tactics.serve_reasons import reasons_for
from knowledge.tactics.serve_return_depth import carry_ft
from knowledge.tactics.sun_said import sun_told
from knowledge.tactics.wind_along import BREEZE_MPS
from knowledge.vocabulary import (
    TRAITS,
    RallyPoints,
    Side,
    Topic,
    Trait,
    TraitKind,
    Value,
)

STRONG_WIND = f"Strong wind behind you: aim {carry_ft(Shot.SERVE, BREEZE_MPS):.0f} ft shorter."

LEAST_WORTH = 0.05
"""Points below which an unknown that would flip the call is not worth a line."""


def advise(situation: Situation) -> Advice:
    """The call for whoever receives, why, how far depth pays, and what would change it."""
    court = court_of(situation)
    each = tuple(
        tuple(answer_serve(situation, one, side) for side in _courts(court))
        for one in receivers(situation)
    )
    first = _speaks_first(each)
    mix = _mix(first, situation)
    is_weak = marks_weak(first.question.server, Trait.SERVE)
    is_general = not is_weak and not any(answer.driver for group in each for answer in group)
    change = Lane(mix.change_up.option) if mix is not None and mix.change_up else None
    return Advice(
        topic=Topic.AIM_SERVE,
        call=_call(each, is_weak=is_weak),
        reasons=reasons_for(each, first, situation),
        number=_number(first),
        unless=_unless(first, situation, mix, one_lane=len(each) == 1 and court is not None),
        assumed=assumed(situation, is_general=is_general),
        caution=SUN_CAUTION if situation.asked.sun else None,
        confidence=Confidence.GENERAL_RULE if is_general else _confidence(first, is_weak=is_weak),
        numbers=_numbers(first),
        choices=_choices(situation, court, is_general=is_general),
        picture=picture(first, change) if court is not None and len(each) == 1 else None,
        more=_more(each, first),
        mix=mix,
    )


def _courts(court: Side | None) -> tuple[Side, ...]:
    return (Side.RIGHT, Side.LEFT) if court is None else (court,)


def _speaks_first(each: tuple[tuple[ServeAnswer, ...], ...]) -> ServeAnswer:
    """The answer that notes say most for."""
    answers = [answer for group in each for answer in group]
    return max(answers, key=lambda one: one.driver.points if one.driver else 0.0)


def _call(each: tuple[tuple[ServeAnswer, ...], ...], *, is_weak: bool) -> str:
    if is_weak:
        return words.BIG_TARGET
    return words.call_for(each[0]) if len(each) == 1 else words.call_for_both(each)


def _mix(answer: ServeAnswer, situation: Situation) -> AdvisedMix | None:
    """How to vary the lane; None where there is one target, or nobody named to guess it."""
    lanes = [Lane(one.option.id) for one in answer.ranking.ranked]
    if len(lanes) < 2 or not situation.theirs:
        return None
    found = advised_mix(
        replace(situation, topic=Topic.AIM_SERVE),
        answer.ranking,
        calls={lane.value: words.lane_call(lane) for lane in lanes},
        trigger="",
        counts_as=lambda logged: _lane_of(logged, answer),
    )
    if found.change_up is None:
        is_close = answer.ranking.confidence is Confidence.TOSS_UP and not found.logged_aims
        return None if is_close else found  # "every ball" beside "little in it" helps nobody
    sign = words.sign(Lane(found.change_up.option), answer.question.receiver.name)
    return replace(found, trigger=sign)


def _lane_of(logged: str, answer: ServeAnswer) -> str:
    """A logged "backhand" or "forehand" as the lane where that wing is."""
    question = answer.question
    for lane in Lane:
        if wing_at(lane, question.receiver, question.court) == logged:
            return lane.value
    return logged


def _confidence(answer: ServeAnswer, *, is_weak: bool) -> Confidence:
    return answer.depth.confidence if is_weak else answer.ranking.confidence


def _number(answer: ServeAnswer) -> str:
    """Where to aim, and the misses that a deeper aim costs."""
    return aim_said(answer.question.depth, answer.aim_ft)


def _pays() -> float:
    """The honest risk: a miss costs the chance we would have had."""
    return misses_paid_for(RallyPoints(sizes.DEEP.mean), SERVING_CHANCE)


def _numbers(answer: ServeAnswer) -> MappingProxyType[str, float]:
    ranking = answer.ranking
    points = ranking.gain()
    return MappingProxyType(
        {
            "points_over_next": float(points),
            "p_best": ranking.best.p_best,
            "chance": float(ranking.best.chance),
            "chance_sd": ranking.best.sd,
            "share": ranking.share,
            "rallies_in_100": points * ranking.share / 100,
            "deep_points": sizes.DEEP.mean,
            "deep_pays_for_misses": _pays(),
            **answer.question.depth.numbers(answer.aim_ft),
            "line_costs_misses": answer.question.scatter.line_misses,
        }
    )


def _unless(
    answer: ServeAnswer, situation: Situation, mix: AdvisedMix | None, *, one_lane: bool
) -> str | None:
    """What would change the call; beside a change-up, which says that too, only what flips it."""
    if situation.asked.sun and sun_told(situation.asked) is None:
        return "Sun behind you? A higher arc, into their eyes."
    if one_lane:
        flipped = _flip(answer, situation)
        if flipped is not None:
            return flipped
    changes = mix is not None and mix.change_up is not None
    return STRONG_WIND if situation.wind in (None, Wind.SOME) and not changes else None


def _flip(answer: ServeAnswer, situation: Situation) -> str | None:
    """The unknown that would move the lane, and to where: the hand, else the most worth."""
    one, now = answer.question.receiver, answer.ranking.best.option.id
    who = one.name or "They"
    unknowns = [each for each in answer.ranking.unknowns if each.worth >= LEAST_WORTH]
    for unknown in sorted(unknowns, key=lambda each: trait_of(each.fact) is not Trait.HAND):
        trait = trait_of(unknown.fact)
        if player_of(unknown.fact) != one.player or trait is None:
            continue
        is_up = unknown.if_yes != now
        to = words.LANE_CALLS[Lane(unknown.if_yes if is_up else unknown.if_no)]
        if trait in (Trait.HAND, Trait.TWO_HANDED_BACKHAND):
            said = _if_known(answer, situation, trait)
            if said is not None:
                return said
        elif trait is Trait.STACKS and is_up:
            return f"They stack? Serve {to}."
        elif TRAITS[trait].kind is TraitKind.SKILL and unknown.if_yes != unknown.if_no:
            return f"{who}: {skill_words(trait, strong=is_up)}? Serve {to}."
    return None


def _if_known(answer: ServeAnswer, situation: Situation, trait: Trait) -> str | None:
    value, what = (
        (Value.LEFT, "left-handed") if trait is Trait.HAND else (Value.YES, "two-handed backhand")
    )
    one = answer.question.receiver
    fact = FactEstimate(value=value, chance=1.0, evidence=(), contradicted=False, newest_day=0)
    profile = replace(one.profile, facts=MappingProxyType({**one.profile.facts, trait: fact}))
    other = answer_serve(situation, replace(one, profile=profile), answer.question.court)
    if other.lane is answer.lane:
        return None
    who = f"{one.name} {what}?" if one.name else f"{what.capitalize()}?"
    return f"{who} Serve {words.LANE_CALLS[other.lane]}."


def _choices(situation: Situation, court: Side | None, *, is_general: bool) -> tuple[Choice, ...]:
    found: list[Choice] = []
    who = receivers(situation)
    if len(who) > 1:
        found += [
            Choice(
                label=f"{one.name} receives",
                topic=Topic.AIM_SERVE,
                fact=MatchFact.ABOUT.value,
                about=one.player,
            )
            for one in who
        ]
    elif court is None:
        found += [
            Choice(
                label=f"from our {side}",
                topic=Topic.AIM_SERVE,
                fact=MatchFact.STRIKER.value,
                value=side.value,
            )
            for side in (Side.RIGHT, Side.LEFT)
        ]
    found += hand_choices([one for one in who if one.name], Topic.AIM_SERVE)
    found += wind_choices(Topic.AIM_SERVE, situation.wind)
    if is_general and situation.theirs:
        found.append(Choice(label="what to look for", topic=Topic.PROBE))
    return tuple(found)


def _more(each: tuple[tuple[ServeAnswer, ...], ...], first: ServeAnswer) -> tuple[str, ...]:
    """Each receiver and court with its lane, the sum behind the one that reasons speak of."""
    places = (f"{_box(answer)}: {words.place(answer)}" for group in each for answer in group)
    parts = (*first.ranking.best.parts, *first.depth.best.parts)
    aim = aim_said(first.question.depth, first.aim_ft)
    return (*places, *sum_lines(parts, what=_box(first)), aim, deep_pays(_pays()), STRONG_WIND)


def _box(answer: ServeAnswer) -> str:
    return f"{answer.question.receiver.name or 'Receiver'}, {answer.question.court} court"
