"""The decision about a ball sped up at us: counter, reset (or block), or leave it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from knowledge.effects import (
    Condition,
    Decision,
    Effect,
    EffectId,
    FactId,
    Mechanism,
    Option,
    OptionId,
    Points,
    Truth,
)
from knowledge.engine import Ranking, rank
from knowledge.normal import logit
from knowledge.planning.names import name_or
from knowledge.situation import Situation
from knowledge.sources import computed
from knowledge.tactics import reset_sizes as sizes
from knowledge.tactics.conditions import marks_weak, rule_of_thumb, skill
from knowledge.tactics.reset_flight import Passing, chance_out
from knowledge.tactics.reset_question import Attacked, attacked
from knowledge.vocabulary import LOGIT_PER_POINT, Trait, Wing

COUNTER = OptionId("counter")
RESET = OptionId("reset")
BLOCK = OptionId("block")
LEAVE = OptionId("leave")

SOFT = (RESET, BLOCK)
"""The soft answers: a block is what is left to somebody whose own reset is weak."""

FLIES = computed("flight past our line, both lift fits")

LEAVE_FROM: Final = 0.55
"""Row 19: of such balls so many must fly out for leaving to pay."""

SPIN_DOUBT: Final = 0.25
"""How far the share of flat balls may be off: the doubt of the chance that it flies out."""

SUREST: Final = 0.97
"""No chance is taken as surer than this."""


def is_weak(situation: Situation, question: Attacked, *traits: Trait) -> bool:
    """Whether our own profile marks the shot as weak: the hitter's, or both of ours."""
    asked = (question.striker,) if question.striker is not None else situation.ours
    return bool(asked) and all(marks_weak(one, *traits) for one in asked)


def counters_of(question: Attacked) -> tuple[Trait, ...]:
    """The traits of our own counter that this ball needs."""
    of_wing = {
        Wing.FOREHAND: (Trait.COUNTER_FOREHAND,),
        Wing.BACKHAND: (Trait.COUNTER_BACKHAND,),
    }
    return (Trait.COUNTER, *(of_wing[question.wing] if question.wing is not None else ()))


def answer_attacked(situation: Situation) -> tuple[Attacked, Ranking]:
    """The options that our own profile allows, ranked."""
    question = attacked(situation)
    options = [Option(id=_soft(situation, question), label="reset")]
    if not is_weak(situation, question, *counters_of(question)):
        options.append(Option(id=COUNTER, label="counter"))
    if question.passing is not None:
        options.append(Option(id=LEAVE, label="leave it"))
    ids = {one.id for one in options}
    effects = tuple(each for each in _effects(question) if each.on <= ids)
    decision = Decision(
        options=tuple(options), effects=effects, neutral=sizes.NEUTRAL, share=sizes.ATTACKED_SHARE
    )
    return question, _as_called(question, rank(decision, situation))


def _as_called(question: Attacked, ranking: Ranking) -> Ranking:
    """Leaving is called from LEAVE_FROM on: below, what comes next best goes before it."""
    best, *others = ranking.ranked
    if best.option.id != LEAVE or question.passing is None:
        return ranking
    if chance_out(question.passing) >= LEAVE_FROM:
        return ranking
    return replace(ranking, ranked=(others[0], best, *others[1:]))


def _soft(situation: Situation, question: Attacked) -> OptionId:
    return BLOCK if is_weak(situation, question, Trait.RESET) else RESET


def _effects(question: Attacked) -> Iterator[Effect]:
    yield from _height(question)
    if question.is_in_mid_court:
        yield _on_counter(
            "mid-court", sizes.IN_MID_COURT, Mechanism.TIME, "In mid-court a counter sits up"
        )
    if question.is_moving:
        yield _on_counter(
            "moving", sizes.MOVING, Mechanism.OUR_ERROR, "Moving, you lose the second ball"
        )
    if question.leaning:
        because = f"{name_or(question.attacker, 'The attacker')} still leans in"
        yield _on_counter("leaning", sizes.STILL_LEANING, Mechanism.HABIT, because)
    if question.asleep:
        because = f"{name_or(question.sleeper, 'The partner')} isn't ready"
        yield _on_counter("asleep", sizes.PARTNER_ASLEEP, Mechanism.COVER, because)
    yield from _own(question)
    if question.passing is not None:
        yield _leave(question.passing)


def _height(question: Attacked) -> Iterator[Effect]:
    """Row 18 by height: up where it may be hit flat or down, soft where a counter must rise."""
    truth = Truth.of(question.is_waist_up)
    high = Condition(
        name="waist up",
        fact=FactId("height"),
        prevalence=sizes.OFTEN_WAIST_UP,
        test=lambda _situation: truth,
    )
    if not (question.is_moving or question.is_in_mid_court):
        yield rule_of_thumb(
            "waist up",
            COUNTER,
            sizes.WAIST_UP,
            Mechanism.THEIR_REPLY,
            "Waist up and set, a counter goes down",
            when=high,
        )
    yield rule_of_thumb(
        "below",
        COUNTER,
        sizes.BELOW_THE_NET,
        Mechanism.THEIR_REPLY,
        "Below the net a counter rises",
        when=~high,
    )


def _own(question: Attacked) -> Iterator[Effect]:
    one = question.striker
    if one is None:
        return
    for trait in counters_of(question):
        yield skill(
            one,
            trait,
            sizes.OWN_COUNTER,
            Mechanism.OUR_ERROR,
            on=(COUNTER,),
            named=f"{one.name}'s counter",
        )
    yield skill(
        one,
        Trait.HANDLES_PACE,
        sizes.OWN_PACE,
        Mechanism.OUR_ERROR,
        on=(COUNTER,),
        named=f"{one.name} against pace",
    )
    yield skill(
        one,
        Trait.RESET,
        sizes.OWN_RESET,
        Mechanism.OUR_ERROR,
        on=(RESET,),
        named=f"{one.name}'s reset",
    )


def _leave(ball: Passing) -> Effect:
    """Left, the rally is ours as often as it flies out: computed outright."""
    low, middle, high = (
        _points(chance_out(replace(ball, flat_share=_shifted(ball.flat_share, shift))))
        for shift in (-SPIN_DOUBT, 0.0, SPIN_DOUBT)
    )
    return Effect(
        id=EffectId("leave"),
        on=frozenset({LEAVE}),
        points=Points(mean=middle, sd=abs(high - low) / 2),
        mechanism=Mechanism.THEIR_ERROR,
        because="That high past you it lands out",
        source=FLIES,
    )


def _shifted(share: float, shift: float) -> float:
    return min(1.0, max(0.0, share + shift))


def _points(chance: float) -> float:
    held = min(SUREST, max(1 - SUREST, chance))
    return (logit(held) - logit(sizes.NEUTRAL)) / LOGIT_PER_POINT


def _on_counter(name: str, points: Points, mechanism: Mechanism, because: str) -> Effect:
    return rule_of_thumb(name, COUNTER, points, mechanism, because)
