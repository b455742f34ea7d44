"""What makes one serve better than another: the page of effects behind aim_serve."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from knowledge.dataclass import dataclass
from knowledge.effects import (
    Condition,
    Effect,
    Mechanism,
    OptionId,
    Truth,
    trait_fact,
)
from knowledge.situation import Formation, OnCourt, Wind
from knowledge.sources import computed
from knowledge.tactics import serve_sizes as sizes
from knowledge.tactics.aim_words import deep_costs
from knowledge.tactics.conditions import grows_with, rule_of_thumb, skill, two_handed
from knowledge.tactics.serve_lanes import Lane, backhand_at, run_ft, way_to, wing_at
from knowledge.tactics.serve_return_depth import Depth
from knowledge.tactics.serve_scatter import Scatter, line_cost
from knowledge.tactics.shot_success import success_effect
from knowledge.vocabulary import Side, Trait, Value, Wing

DEEP = OptionId("deep")
MID_BOX = OptionId("mid-box")

MISSES = computed("misses: scatter round the aim, times the rally chance")
DEPTH = computed("flight tables, our scatter and row 5's size")

STACKED = (Formation.STACK_ALWAYS, Formation.STACK_ON_RETURN, Formation.ON_SIGNAL)
"""Formations in which a receiver changes sides; who stacks on serve only receives straight."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ServeQuestion:
    """Who receives where, and who of ours serves; None where it isn't known."""

    receiver: OnCourt
    court: Side
    server: OnCourt | None
    scatter: Scatter
    depth: Depth
    wind: Wind | None = None
    their_formation: Formation | None = None


def lane_effects(question: ServeQuestion, lanes: tuple[Lane, ...]) -> tuple[Effect, ...]:
    """Everything that speaks for or against each of these lanes."""
    found: list[Effect] = []
    for lane in lanes:
        found += _body(question) if lane is Lane.BODY else _corner(question, lane)
        if lane is Lane.WIDE:
            found += _wide(question)
        if lane is Lane.T:
            found += _down_the_t(question)
    return tuple(found)


def depth_effects(question: ServeQuestion) -> tuple[Effect, ...]:
    """A deep aim against the middle of the box: what depth gains, and what its misses cost.

    That the returner then runs further is what row 5 is about, so it is not counted again.
    """
    return (
        rule_of_thumb(
            "depth",
            DEEP,
            question.depth.gain,
            Mechanism.TIME,
            "Depth keeps the returner behind the run",
            source=DEPTH,
        ),
        success_effect(
            DEEP,
            question.depth.cost,
            question.depth.scatter,
            because=deep_costs(question.depth.extra_misses),
            one=question.server,
        ),
    )


def _body(question: ServeQuestion) -> Iterator[Effect]:
    receiver, on = question.receiver, OptionId(Lane.BODY)
    yield rule_of_thumb("body", on, sizes.AT_BODY, Mechanism.COVER, "The body gives no angle back")
    jam = skill(receiver, Trait.BODY_JAM, -sizes.JAM, Mechanism.THEIR_REPLY, on=(on,), named="")
    jams = receiver.profile.skill(Trait.BODY_JAM).level < 0
    how = "jams at the body" if jams else "is fine at the body"
    yield replace(jam, because=f"{receiver.name} {how}")
    yield rule_of_thumb(
        "cramped",
        on,
        sizes.TWO_HANDS_JAMMED,
        Mechanism.THEIR_REPLY,
        "Two hands are cramped at the body",
        when=two_handed(receiver),
    )


def _corner(question: ServeQuestion, lane: Lane) -> Iterator[Effect]:
    receiver, on = question.receiver, OptionId(lane)
    backhand = backhand_at(lane, receiver, question.court)
    name = receiver.name
    yield rule_of_thumb(
        "line",
        on,
        line_cost(question.scatter),
        Mechanism.OUR_ERROR,
        "A line is nearer there",
        source=MISSES,
    )
    yield rule_of_thumb(
        "backhand",
        on,
        sizes.ANY_BACKHAND,
        Mechanism.THEIR_REPLY,
        "Most return worse off the backhand",
        when=backhand,
    )
    for trait, when, wing in (
        (Trait.BACKHAND_DRIVE, backhand, Wing.BACKHAND),
        (Trait.FOREHAND_DRIVE, ~backhand, Wing.FOREHAND),
    ):
        yield skill(
            receiver,
            trait,
            -sizes.WEAK_WING,
            Mechanism.THEIR_REPLY,
            on=(on,),
            named=f"{name}'s {wing} drive",
            when=when,
        )
    yield grows_with(
        receiver,
        Trait.RETURN,
        Value.WEAKNESS,
        sizes.WEAK_RETURN,
        Mechanism.THEIR_ERROR,
        on=(on,),
        because=f"{name}'s return is weak: make it the backhand",
        when=backhand,
    )
    toward = way_to(lane, question.court)
    if toward is not None:
        yield grows_with(
            receiver,
            toward,
            Value.WEAKNESS,
            sizes.SLOW_THAT_WAY,
            Mechanism.TIME,
            on=(on,),
            because=f"{name} moves badly that way",
        )
    if wing_at(lane, receiver, question.court) is Wing.BACKHAND:
        yield _two_hander(question, lane)


def _two_hander(question: ServeQuestion, lane: Lane) -> Effect:
    """Only where the hand settles the wing: an effect has one condition."""
    is_wide = lane is Lane.WIDE
    return rule_of_thumb(
        "two hands",
        OptionId(lane),
        sizes.TWO_HANDS_WIDE if is_wide else sizes.TWO_HANDS_DRIVE,
        Mechanism.THEIR_REPLY,
        "Two hands: short reach out wide" if is_wide else "Two hands drive it off the T",
        when=two_handed(question.receiver),
    )


def _wide(question: ServeQuestion) -> Iterator[Effect]:
    receiver, on = question.receiver, OptionId(Lane.WIDE)
    name = receiver.name
    yield rule_of_thumb("angle", on, sizes.ANGLE, Mechanism.COVER, "Wide gives an angle back")
    yield rule_of_thumb(
        "run", on, sizes.LONGER_RUN, Mechanism.TIME, "Wide pulls them off the court"
    )
    yield grows_with(
        receiver,
        Trait.RETURN,
        Value.STRENGTH,
        sizes.GOOD_RETURNERS_ANGLE,
        Mechanism.COVER,
        on=(on,),
        because=f"Wide gives {name} the angle",
    )
    yield grows_with(
        receiver,
        Trait.FORWARD_SPEED,
        Value.WEAKNESS,
        sizes.SLOW_RUNNER_WIDE,
        Mechanism.TIME,
        on=(on,),
        because=f"{name} is slow forward: a longer run",
    )
    crosses = _crosses(question)
    more = run_ft(Lane.WIDE, question.court, to=question.court.other) - run_ft(
        Lane.T, question.court, to=question.court.other
    )
    yield rule_of_thumb(
        "crosses",
        on,
        sizes.CROSSES_AFTER_A_WIDE_ONE,
        Mechanism.TIME,
        f"They stack: wide adds {more:.0f} ft to the cross",
        when=crosses,
    )


def _down_the_t(question: ServeQuestion) -> Iterator[Effect]:
    receiver, on = question.receiver, OptionId(Lane.T)
    yield rule_of_thumb(
        "middle",
        on,
        sizes.THROUGH_THE_MIDDLE,
        Mechanism.COVER,
        "The T sends it back to the middle",
    )
    yield grows_with(
        receiver,
        Trait.FORWARD_SPEED,
        Value.WEAKNESS,
        sizes.SLOW_RUNNER_T,
        Mechanism.TIME,
        on=(on,),
        because=f"Away from the T slow {receiver.name} runs further",
    )


def _crosses(question: ServeQuestion) -> Condition:
    """Whether this receiver has to run to the other court after the return."""
    receiver = question.receiver
    truth = Truth.UNKNOWN
    if receiver.side in (None, question.court) or question.their_formation in (
        Formation.STRAIGHT,
        Formation.STACK_ON_SERVE,
    ):
        truth = Truth.NO
    elif question.their_formation in STACKED or receiver.profile.habit(Trait.STACKS).level > 0:
        truth = Truth.YES
    return Condition(
        name=f"{receiver.player} crosses",
        fact=trait_fact(receiver.player, Trait.STACKS),
        prevalence=sizes.CHANCE_OF_STACKING,
        test=lambda _situation: truth,
    )
