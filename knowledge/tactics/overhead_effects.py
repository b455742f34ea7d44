"""What makes one overhead better than another: the sum of the shot itself, and the people."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from knowledge.ball_facts import Depth, Footing
from knowledge.dataclass import dataclass
from knowledge.effects import Effect, EffectId, Mechanism, OptionId, Points
from knowledge.normal import logit
from knowledge.situation import OnCourt
from knowledge.sources import computed
from knowledge.tactics import overhead_sizes as sizes
from knowledge.tactics.conditions import grows_with, rule_of_thumb
from knowledge.tactics.overhead_outcomes import Contact, Outcome, Spot, outcome
from knowledge.vocabulary import LOGIT_PER_POINT, Trait, Value

SUM = computed("our scatter, the flight and their run")


@dataclass(frozen=True, slots=True, kw_only=True)
class Aim:
    """A spot, and at whom where it is at somebody."""

    spot: Spot
    target: OnCourt | None = None

    @property
    def id(self) -> OptionId:
        return OptionId(
            self.spot.value if self.target is None else f"{self.spot}:{self.target.player}"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class OverheadQuestion:
    """How we meet the ball, where they stand (None: a step off the line), and who they are."""

    contact: Contact
    in_the_air: float
    theirs: Depth | None
    pair: tuple[OnCourt, ...]

    def of(self, spot: Spot, *, scatter: float = 1.0) -> Outcome:
        """The worth of a spot; sun and wind bother only a ball that we take in the air."""
        wild = self.contact.wildness * scatter
        wild *= 1.0 if spot is Spot.BOUNCE else self.in_the_air
        return outcome(spot, replace(self.contact, wildness=wild), self.theirs)


def effects(question: OverheadQuestion, aims: tuple[Aim, ...]) -> tuple[Effect, ...]:
    """Everything that speaks for or against each of these."""
    found: list[Effect] = []
    for aim in aims:
        found.append(_shot(question, aim))
        match aim.spot:
            case Spot.MIDDLE:
                found += _middle(question, aim.id)
            case Spot.FEET:
                found += _feet(question, aim)
            case Spot.HIP:
                found += _hip(question, aim)
            case Spot.ANGLE:
                found += _angle(question, aim.id)
    return tuple(found)


def _shot(question: OverheadQuestion, aim: Aim) -> Effect:
    """The shot's own worth against the deep middle, which the decision takes as its level."""
    points = [
        _points(question.of(aim.spot, scatter=each), question.of(Spot.MIDDLE, scatter=each))
        for each in (1.0, 1 - sizes.DOUBT, 1 + sizes.DOUBT)
    ]
    spread = abs(points[2] - points[1]) / 2
    sd = 0.0 if aim.spot is Spot.MIDDLE else spread + sizes.JUDGEMENT_SD
    return Effect(
        id=EffectId(f"shot:{aim.id}"),
        on=frozenset({aim.id}),
        points=Points(mean=points[0], sd=sd),
        mechanism=Mechanism.OUR_ERROR,
        because="The shot itself: misses, winners, what goes on",
        source=SUM,
    )


def _points(one: Outcome, other: Outcome) -> float:
    return (logit(one.worth) - logit(other.worth)) / LOGIT_PER_POINT


def _middle(question: OverheadQuestion, on: OptionId) -> Iterator[Effect]:
    yield rule_of_thumb(
        "no angle",
        on,
        sizes.NO_ANGLE_BACK,
        Mechanism.COVER,
        "The middle gives them no angle back",
    )
    for one in question.pair:
        yield grows_with(
            one,
            Trait.COMMUNICATION,
            Value.WEAKNESS,
            sizes.THEY_DO_NOT_TALK,
            Mechanism.THEIR_ERROR,
            on=(on,),
            because=f"{one.name} talks little: the middle is nobody's",
        )
        yield grows_with(
            one,
            Trait.SQUEEZES_MIDDLE,
            Value.OFTEN,
            sizes.SQUEEZES,
            Mechanism.COVER,
            on=(on,),
            because=f"{one.name} squeezes the middle",
        )


def _near_one(question: OverheadQuestion, on: OptionId) -> Iterator[Effect]:
    if question.theirs is Depth.ONE_BACK:
        yield rule_of_thumb(
            "near one",
            on,
            sizes.NO_TIME_AT_THE_LINE,
            Mechanism.TIME,
            "The one at the line has no time",
        )


def _feet(question: OverheadQuestion, aim: Aim) -> Iterator[Effect]:
    yield from _near_one(question, aim.id)
    one = aim.target
    if one is None:
        return
    for trait, points, why in (
        (Trait.FOOT_SPEED, sizes.SLOW_FEET, "has slow feet"),
        (Trait.GETS_LOW, sizes.STIFF, "is slow getting low"),
        (Trait.TRANSITION, sizes.WEAK_LOW, "is weak on balls at the feet"),
        (Trait.HANDLES_PACE, sizes.DISLIKES_PACE, "dislikes pace"),
    ):
        yield grows_with(
            one,
            trait,
            Value.WEAKNESS,
            points,
            Mechanism.THEIR_REPLY,
            on=(aim.id,),
            because=f"{one.name} {why}",
        )
    if question.theirs in (Depth.BOTH_BACK, Depth.ONE_BACK):
        yield grows_with(
            one,
            Trait.FOREHAND_DRIVE,
            Value.STRENGTH,
            sizes.WAITING_FOREHAND,
            Mechanism.THEIR_REPLY,
            on=(aim.id,),
            because=f"{one.name}'s forehand waits deep",
        )


def _hip(question: OverheadQuestion, aim: Aim) -> Iterator[Effect]:
    yield from _near_one(question, aim.id)
    if question.contact.footing is Footing.BACKWARD:
        yield rule_of_thumb(
            "not set",
            aim.id,
            sizes.NOT_SET_FOR_THE_BODY,
            Mechanism.THEIR_REPLY,
            "Off balance a ball at the body sits up",
        )
    one = aim.target
    if one is None:
        return
    yield grows_with(
        one,
        Trait.BODY_JAM,
        Value.WEAKNESS,
        sizes.JAMS,
        Mechanism.THEIR_REPLY,
        on=(aim.id,),
        because=f"{one.name} jams at the body",
    )
    yield grows_with(
        one,
        Trait.COUNTER,
        Value.STRENGTH,
        sizes.COUNTERS_WELL,
        Mechanism.THEIR_REPLY,
        on=(aim.id,),
        because=f"{one.name} counters well",
    )


def _angle(question: OverheadQuestion, on: OptionId) -> Iterator[Effect]:
    if question.theirs not in (Depth.BOTH_BACK, Depth.ONE_BACK):
        return
    for one in question.pair:
        yield grows_with(
            one,
            Trait.FORWARD_SPEED,
            Value.WEAKNESS,
            sizes.SLOW_FORWARD,
            Mechanism.TIME,
            on=(on,),
            because=f"{one.name} is slow forward",
        )
