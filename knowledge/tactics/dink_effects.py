"""What makes one dink better than another: the page of effects behind aim_dink.

Row 12 of the trade's table, across or middle against down the line (+2 +- 1.5), is here how often a
lane comes off (computed, `dink_chances`) and what the corner costs, together.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from knowledge.effects import ALWAYS, Condition, Effect, Mechanism, OptionId
from knowledge.tactics.conditions import grows_with, rule_of_thumb
from knowledge.tactics.dink_aims import SOFT, Aim, DinkQuestion
from knowledge.tactics.dink_chances import LANE_SOURCE, gain_over_line, lane_chance
from knowledge.tactics.dink_lanes import Lane, Spot
from knowledge.tactics.dink_people import habit, movement, partner_effects, wing
from knowledge.tactics.dink_sizes import (
    ANGLE_BACK,
    BETWEEN_THEM,
    ERNIE,
    LINE_IS_JUMPED,
    NO_PRESSURE,
    OFF_THE_COURT,
    PARTNER_POACHES,
    ROUND_THE_POST_LINE,
    ROUND_THE_POST_WIDE,
    STRETCHED_LINE,
    TIME_TO_RECOVER,
)
from knowledge.tactics.dink_words import against
from knowledge.vocabulary import BallQuality, Trait, Value


def effects(question: DinkQuestion, aims: Sequence[Aim]) -> tuple[Effect, ...]:
    """Everything that speaks for or against each of these aims, and for the soft ball."""
    found = [_comes_off(question, SOFT, Lane.CENTRE)]
    for aim in aims:
        found += _lane(question, aim)
        if question.ball is BallQuality.STRETCHED:
            found += _stretched(question, aim)
        else:
            found += wing(question, aim)
            found += movement(aim)
            found += partner_effects(question, aim)
    found += _soft(question)
    return tuple(found)


def _soft(question: DinkQuestion) -> Iterator[Effect]:
    if question.ball is BallQuality.STRETCHED:
        because = "A soft ball buys you time"
        yield rule_of_thumb("recover", SOFT, TIME_TO_RECOVER, Mechanism.TIME, because)
        return
    yield rule_of_thumb(
        "free", SOFT, NO_PRESSURE, Mechanism.THEIR_REPLY, "A soft one asks nothing of them"
    )
    for one in question.pair:
        yield grows_with(
            one,
            Trait.POACHING,
            Value.OFTEN,
            PARTNER_POACHES,
            Mechanism.HABIT,
            on=(SOFT,),
            because=f"{one.name} poaches the middle",
        )


def _lane(question: DinkQuestion, aim: Aim) -> Iterator[Effect]:
    front = question.in_front(aim.target)
    name = aim.target.name
    if aim.spot is Spot.MIDDLE:
        yield _comes_off(question, aim.id, Lane.STRAIGHT, front)
        yield _comes_off(question, aim.id, Lane.CENTRE, ~front)
        yield rule_of_thumb(
            "between", aim.id, BETWEEN_THEM, Mechanism.COVER, "Between them: whose is it?"
        )
        return
    yield rule_of_thumb(
        "corner",
        aim.id,
        LINE_IS_JUMPED,
        Mechanism.HABIT,
        "Short way back, and it can be jumped",
        when=front,
    )
    yield _comes_off(question, aim.id, Lane.WIDE, ~front)
    yield rule_of_thumb(
        "angle", aim.id, ANGLE_BACK, Mechanism.COVER, "Wide gives an angle back", when=~front
    )
    yield rule_of_thumb(
        "pulled",
        aim.id,
        OFF_THE_COURT,
        Mechanism.COVER,
        "Pulls them off the court",
        when=~front,
    )
    yield habit(aim, Trait.ERNIE, ERNIE, f"{name} jumps the corner", when=front)
    yield habit(aim, Trait.AROUND_POST, ROUND_THE_POST_LINE, f"{name} goes round the post", front)
    yield habit(aim, Trait.AROUND_POST, ROUND_THE_POST_WIDE, f"{name} goes round the post", ~front)


def _stretched(question: DinkQuestion, aim: Aim) -> Iterator[Effect]:
    if aim.spot is Spot.SIDELINE:
        yield rule_of_thumb(
            "stretched line",
            aim.id,
            STRETCHED_LINE,
            Mechanism.TIME,
            "The line comes back at once",
            when=question.in_front(aim.target),
        )


def _comes_off(
    question: DinkQuestion, on: OptionId, lane: Lane, when: Condition = ALWAYS
) -> Effect:
    """What the lane gains over down the line by coming off more often: row 12, computed."""
    factor = question.scatter.factor * question.met.scatters
    chance, line = (lane_chance(one, question.met, factor) for one in (lane, Lane.LINE))
    return rule_of_thumb(
        str(lane),
        on,
        gain_over_line(lane, question.met, question.scatter),
        Mechanism.OUR_ERROR,
        against(lane, chance, Lane.LINE, line),
        when=when,
        source=LANE_SOURCE,
    )
