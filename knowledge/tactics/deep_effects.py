"""What speaks for each ball against a deep pair: the sums, and the people."""

from __future__ import annotations

import math
from collections.abc import Iterator
from enum import StrEnum

from knowledge.dataclass import dataclass
from knowledge.effects import Effect, EffectId, Mechanism, OptionId, Points
from knowledge.normal import logit
from knowledge.situation import OnCourt, Wind
from knowledge.sources import computed
from knowledge.tactics import deep_sizes as sizes
from knowledge.tactics.conditions import grows_with, rule_of_thumb
from knowledge.tactics.deep_outcomes import (
    COMING_IN_S,
    MOVING_BACK_S,
    WRONG_FOOTED_S,
    Runner,
    deep,
    drop,
    put_away,
)
from knowledge.tactics.overhead_outcomes import Outcome
from knowledge.vocabulary import LOGIT_PER_POINT, Trait, Value

RACE = computed("their run against the second bounce")
SUM = computed("our scatter, the flight and their run")


class DeepShot(StrEnum):
    DEEP = "deep"
    DROP = "drop"
    PUT_AWAY = "put_away"


@dataclass(frozen=True, slots=True, kw_only=True)
class DeepAim:
    """A shot, and at whom; a put-away is at nobody."""

    shot: DeepShot
    target: OnCourt | None = None

    @property
    def id(self) -> OptionId:
        return OptionId(
            self.shot.value if self.target is None else f"{self.shot}:{self.target.player}"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class DeepQuestion:
    """How we meet the ball, where they stand and how they move, and our touch.

    `said_level` is what the question itself says of their speed forward (-1 to 1), of everybody
    it is about.
    """

    pair: tuple[OnCourt, ...]
    height_m: float
    from_net_m: float
    their_depth_m: float
    moving_back: bool = False
    wrong_footed: bool = False
    coming_in: bool = False
    said_level: float | None = None
    touch: float = 1.0
    wind: Wind | None = None

    @property
    def said_slow(self) -> bool:
        return self.said_level is not None and self.said_level < 0

    def runner(self, one: OnCourt | None, *, more: float = 0.0) -> Runner:
        """One of them in the race; `more` standard deviations quicker than we believe."""
        level, sd = 0.0, 0.0
        if self.said_level is not None:
            level = self.said_level
        elif one is not None:
            estimate = one.profile.skill(Trait.FORWARD_SPEED)
            level, sd = estimate.level, math.sqrt(estimate.variance)
        return Runner(
            from_net_m=self.their_depth_m,
            level=max(-1.0, min(1.0, level + more * sd)),
            delay_s=MOVING_BACK_S * self.moving_back
            + WRONG_FOOTED_S * self.wrong_footed
            + COMING_IN_S * self.coming_in,
        )

    def drop(self, one: OnCourt | None, *, more: float = 0.0) -> Outcome:
        return drop(self.runner(one, more=more), self.height_m, self.from_net_m, touch=self.touch)

    def put_away(self) -> Outcome:
        return put_away(self.height_m, self.from_net_m, self.their_depth_m)


def effects(question: DeepQuestion, aims: tuple[DeepAim, ...]) -> tuple[Effect, ...]:
    """Everything that speaks for or against each of these."""
    found: list[Effect] = []
    for aim in aims:
        match aim.shot:
            case DeepShot.DEEP:
                found += _deep(aim)
            case DeepShot.DROP:
                found += _drop(question, aim)
            case DeepShot.PUT_AWAY:
                found += _put_away(question, aim.id)
    return tuple(found)


def _points(one: Outcome) -> float:
    """Against deep at the feet, which the decision takes as its level."""
    kept = min(max(one.worth, 0.01), 0.99)
    return (logit(kept) - logit(deep().worth)) / LOGIT_PER_POINT


def _computed(id: str, on: OptionId, mean: float, sd: float, because: str) -> Effect:
    return Effect(
        id=EffectId(f"{id}:{on}"),
        on=frozenset({on}),
        points=Points(mean=mean, sd=sd),
        mechanism=Mechanism.TIME,
        because=because,
        source=RACE if id == "race" else SUM,
    )


def _deep(aim: DeepAim) -> Iterator[Effect]:
    one = aim.target
    if one is None:
        return
    for trait, value, points, why in (
        (Trait.FOOT_SPEED, Value.WEAKNESS, sizes.SLOWER_ONE, "has slow feet"),
        (Trait.TRANSITION, Value.WEAKNESS, sizes.WEAK_LOW, "is weak on balls at the feet"),
        (Trait.GETS_LOW, Value.WEAKNESS, sizes.WEAK_LOW, "is slow getting low"),
        (Trait.FOREHAND_DRIVE, Value.STRENGTH, sizes.DRIVES_WELL, "drives well from there"),
    ):
        yield grows_with(
            one,
            trait,
            value,
            points,
            Mechanism.THEIR_REPLY,
            on=(aim.id,),
            because=f"{one.name} {why}",
        )


def _drop(question: DeepQuestion, aim: DeepAim) -> Iterator[Effect]:
    """The race, as far as their speed is known; then touch, nerve and wind."""
    one = aim.target
    mean, quicker, slower = (_points(question.drop(one, more=more)) for more in (0.0, 1.0, -1.0))
    spread = abs(slower - quicker) / 2
    yield _computed("race", aim.id, mean, spread + sizes.JUDGEMENT_SD, "The race to the drop")
    if question.wind is Wind.BEHIND_US:
        yield rule_of_thumb(
            "wind", aim.id, sizes.WIND_BEHIND_DROP, Mechanism.OUR_ERROR, "Wind behind: drops sail"
        )
    if one is None:
        return
    for trait, points, why in (
        (Trait.HANDLES_NO_PACE, sizes.DISLIKES_SLOW_BALLS, "dislikes slow balls"),
        (Trait.FITNESS, sizes.TIRES, "tires"),
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


def _put_away(question: DeepQuestion, on: OptionId) -> Iterator[Effect]:
    mean = _points(question.put_away())
    yield _computed("finish", on, mean, sizes.JUDGEMENT_SD, "The put-away from that height")
