"""Whom a return goes at, or the deep middle: the page of effects behind aim_return's target."""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.effects import Condition, Effect, FactId, Mechanism, Truth
from knowledge.situation import OnCourt, Wind
from knowledge.tactics import return_sizes as sizes
from knowledge.tactics.conditions import grows_with, in_front, other_of, rule_of_thumb, skill
from knowledge.tactics.return_question import CROSSER, MIDDLE, SERVER, ReturnQuestion, at
from knowledge.vocabulary import Trait, Value


def target_effects(question: ReturnQuestion) -> Iterator[Effect]:
    """Everything about whom to return at, and about the deep middle."""
    yield rule_of_thumb(
        "middle", MIDDLE, sizes.DEEP_MIDDLE, Mechanism.COVER, "The middle gives them no angle"
    )
    for one in question.theirs:
        yield grows_with(
            one,
            Trait.COMMUNICATION,
            Value.WEAKNESS,
            sizes.THEY_DO_NOT_TALK,
            Mechanism.COVER,
            on=(MIDDLE,),
            because="They don't call the middle",
        )
        yield from _third(question, one)
        yield from _lane(question, one)
        yield from _our_aim(question, one)
    yield from _crossing(question)
    yield from _inside(question)


def _third(question: ReturnQuestion, one: OnCourt) -> Iterator[Effect]:
    on, name = at(one), one.name
    yield skill(
        one,
        Trait.THIRD_SHOT_DROP,
        -sizes.WORSE_THIRD,
        Mechanism.THEIR_ERROR,
        on=(on,),
        named=f"{name}'s third shot",
    )
    yield grows_with(
        one,
        Trait.CRASH,
        Value.OFTEN,
        sizes.CRASHER_MUST_HIT,
        Mechanism.HABIT,
        on=(on,),
        because=f"Hitting the third, {name} can't crash",
        when=~_better_third(one, other_of(one, question.theirs)),
    )
    yield grows_with(
        one,
        Trait.FORWARD_SPEED,
        Value.WEAKNESS,
        sizes.SLOW_FORWARD,
        Mechanism.TIME,
        on=(on,),
        because=f"{name} is slow forward",
    )
    partner = other_of(one, question.theirs)
    if partner is not None:
        yield grows_with(
            partner,
            Trait.CRASH,
            Value.OFTEN,
            sizes.PARTNER_CRASHES,
            Mechanism.HABIT,
            on=(on,),
            because=f"{partner.name} crashes off {name}'s third",
        )


def _better_third(one: OnCourt, partner: OnCourt | None) -> Condition:
    """Row 4 falls away where the crasher is also the better third shot."""
    own = one.profile.skill(Trait.THIRD_SHOT_DROP).level
    other = 0.0 if partner is None else partner.profile.skill(Trait.THIRD_SHOT_DROP).level
    truth = Truth.of(own > sizes.THIRD_GAP and own - other > sizes.THIRD_GAP)
    return Condition(
        name=f"{one.player} has the better third",
        fact=FactId(""),
        prevalence=0.0,
        test=lambda _situation: truth,
    )


def _lane(question: ReturnQuestion, one: OnCourt) -> Iterator[Effect]:
    """Down the line puts us in front of the third hitter; across the lane is longer."""
    front = in_front(one, other_of(one, question.theirs), question.returner_side)
    yield rule_of_thumb(
        "facing",
        at(one),
        sizes.FACING_THE_THIRD,
        Mechanism.COVER,
        f"Down the line you'd face {one.name}'s third",
        when=front,
    )
    yield rule_of_thumb(
        "longer lane",
        at(one),
        sizes.LONGER_LANE,
        Mechanism.OUR_ERROR,
        "Across is the longer lane",
        when=~front,
    )


def _our_aim(question: ReturnQuestion, one: OnCourt) -> Iterator[Effect]:
    returners = question.ours if question.returner is None else (question.returner,)
    for ours in returners:
        yield grows_with(
            ours,
            Trait.RETURN,
            Value.WEAKNESS,
            sizes.NEEDS_OUR_AIM.times(1 / len(returners)),
            Mechanism.OUR_ERROR,
            on=(at(one),),
            because="Aiming needs a safe return",
        )
    if question.wind is Wind.ACROSS:
        yield rule_of_thumb(
            "cross wind",
            at(one),
            sizes.CROSS_WIND,
            Mechanism.OUR_ERROR,
            "Cross wind carries it off a line",
        )


def _crossing(question: ReturnQuestion) -> Iterator[Effect]:
    if not question.stacked:
        return
    crosser = question.crosser
    if crosser is not None:
        because = f"{crosser.name} is still crossing"
        yield rule_of_thumb("crossing", at(crosser), sizes.CROSSING, Mechanism.HABIT, because)
    elif question.crosser_unknown:
        because = "They stack: one is still crossing"
        yield rule_of_thumb("crossing", CROSSER, sizes.CROSSING, Mechanism.HABIT, because)


def _inside(question: ReturnQuestion) -> Iterator[Effect]:
    if not question.server_inside:
        return
    on = SERVER if question.server is None else at(question.server)
    because = "The server stands inside: no time to back up"
    yield rule_of_thumb("inside", on, sizes.SERVER_INSIDE, Mechanism.TIME, because)
