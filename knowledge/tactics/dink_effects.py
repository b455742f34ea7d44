"""What makes one dink better than another: the page of effects behind aim_dink.

Row 12 of the trade's table, across or middle against down the line (+2 +- 1.5), is here the
computed misses of a lane and the jump at the corner together.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from knowledge.effects import (
    ALWAYS,
    Condition,
    Effect,
    Mechanism,
    OptionId,
    Points,
)
from knowledge.situation import OnCourt
from knowledge.sources import computed
from knowledge.tactics.conditions import grows_with, rule_of_thumb, skill, two_handed
from knowledge.tactics.dink_aims import SOFT, Aim, DinkQuestion, attack_at
from knowledge.tactics.dink_lanes import Lane, Spot, gain_over_line
from knowledge.tactics.dink_sizes import (
    ANGLE_BACK,
    ANY_BACKHAND,
    BEHIND_THE_SQUEEZER,
    BETWEEN_THEM,
    ERNIE,
    FOREHAND_IN_THE_MIDDLE,
    IMPATIENT,
    KITCHEN_FAULTS,
    LINE_IS_JUMPED,
    LINE_KEEPS,
    LONG_REACH,
    NO_PRESSURE,
    OFF_THE_COURT,
    OWN_DINK_SHAKY,
    PARTNER_POACHES,
    PARTNER_SQUEEZES,
    PATIENT,
    QUICK_THAT_WAY,
    ROUND_THE_POST_LINE,
    ROUND_THE_POST_WIDE,
    SET_COUNTER,
    SLOW_DOWN_LOW,
    SLOW_THAT_WAY,
    SPEED_UP_EASY,
    STRAIGHT_AHEAD,
    STRETCHED_AIM,
    STRETCHED_LINE,
    THEY_DO_NOT_TALK,
    TIME_TO_RECOVER,
    TWO_HANDED_IN_THE_MIDDLE,
    TWO_HANDED_WIDE,
    WEAK_HANDS,
    WEAK_WING,
)
from knowledge.vocabulary import BallQuality, Side, Trait, Value, Wing

LANE_SOURCE = computed("lane: net height, room, scatter")


def effects(question: DinkQuestion, aims: Sequence[Aim]) -> tuple[Effect, ...]:
    """Everything that speaks for or against each of these aims, and for the soft ball."""
    found = [_saved_misses(SOFT, Lane.CENTRE, ALWAYS)]
    for aim in aims:
        found += _lane(question, aim)
        if question.ball is BallQuality.STRETCHED:
            found += _stretched(question, aim)
        else:
            found += _wing(question, aim)
            found += _movement(aim)
            found += _partner(question, aim)
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


def attack_effects(question: DinkQuestion, target: OnCourt) -> Iterator[Effect]:
    """What a speed-up of an easy ball gains over dinking it."""
    on = attack_at(target).id
    yield rule_of_thumb(
        "above the net",
        on,
        SPEED_UP_EASY,
        Mechanism.THEIR_REPLY,
        "Above the net: attack beats dink",
    )
    yield rule_of_thumb(
        "straight",
        on,
        STRAIGHT_AHEAD,
        Mechanism.COVER,
        "Straight: the counter comes to you",
        when=question.in_front(target),
    )
    for trait in (Trait.COUNTER, Trait.COUNTER_FOREHAND, Trait.COUNTER_BACKHAND):
        yield grows_with(
            target,
            trait,
            Value.STRENGTH,
            SET_COUNTER,
            Mechanism.THEIR_REPLY,
            on=(on,),
            because=f"{target.name} counters well",
        )
    for trait in (Trait.COUNTER, Trait.BODY_JAM, Trait.HANDLES_PACE):
        yield grows_with(
            target,
            trait,
            Value.WEAKNESS,
            WEAK_HANDS,
            Mechanism.THEIR_ERROR,
            on=(on,),
            because=f"{target.name} is late with the hands",
        )


def _lane(question: DinkQuestion, aim: Aim) -> Iterator[Effect]:
    front = question.in_front(aim.target)
    name = aim.target.name
    if aim.spot is Spot.MIDDLE:
        yield _saved_misses(aim.id, Lane.STRAIGHT, front)
        yield _saved_misses(aim.id, Lane.CENTRE, ~front)
        yield rule_of_thumb(
            "between", aim.id, BETWEEN_THEM, Mechanism.COVER, "Between them: whose is it?"
        )
        return
    yield rule_of_thumb(
        "corner",
        aim.id,
        LINE_IS_JUMPED,
        Mechanism.HABIT,
        "The corner can be jumped",
        when=front,
    )
    yield _saved_misses(aim.id, Lane.WIDE, ~front)
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
    yield _habit(aim, Trait.ERNIE, ERNIE, f"{name} jumps the corner", when=front)
    yield _habit(aim, Trait.AROUND_POST, ROUND_THE_POST_LINE, f"{name} goes round the post", front)
    yield _habit(aim, Trait.AROUND_POST, ROUND_THE_POST_WIDE, f"{name} goes round the post", ~front)
    for trait in (Trait.FOREHAND_DINK, Trait.BACKHAND_DINK):
        if question.striker is not None:
            yield grows_with(
                question.striker,
                trait,
                Value.WEAKNESS,
                OWN_DINK_SHAKY,
                Mechanism.OUR_ERROR,
                on=(aim.id,),
                because="Your own dink: keep it in the middle",
            )


def _wing(question: DinkQuestion, aim: Aim) -> Iterator[Effect]:
    backhand = question.backhand_at(aim)
    name = aim.target.name
    yield rule_of_thumb(
        "backhand",
        aim.id,
        ANY_BACKHAND,
        Mechanism.THEIR_REPLY,
        "Backhand dinks sit up more",
        when=backhand,
    )
    if aim.spot is Spot.MIDDLE:
        yield rule_of_thumb(
            "forehand",
            aim.id,
            FOREHAND_IN_THE_MIDDLE,
            Mechanism.THEIR_REPLY,
            f"{name}'s forehand waits there",
            when=~backhand,
        )
    weak_wing = _in_safe_lanes(WEAK_WING, aim)
    for trait, when in ((Trait.BACKHAND_DINK, backhand), (Trait.FOREHAND_DINK, ~backhand)):
        wing = "backhand" if trait is Trait.BACKHAND_DINK else "forehand"
        yield skill(
            aim.target,
            trait,
            -weak_wing,
            Mechanism.THEIR_REPLY,
            on=(aim.id,),
            named=f"{name}'s {wing} dink",
            when=when,
        )
    yield from _two_hander(question, aim)


def _in_safe_lanes(points: Points, aim: Aim) -> Points:
    """Less down the line; in between where the lane is not known."""
    if aim.lane is Lane.LINE:
        share = LINE_KEEPS
    elif aim.lane is None and aim.spot is Spot.SIDELINE:
        share = (1 + LINE_KEEPS) / 2
    else:
        share = 1.0
    return points.times(share)


def _two_hander(question: DinkQuestion, aim: Aim) -> Iterator[Effect]:
    """Only where one of the two facts is known: an effect has one condition."""
    middle = aim.spot is Spot.MIDDLE
    points = TWO_HANDED_IN_THE_MIDDLE if middle else TWO_HANDED_WIDE
    because = "Two hands: strong from the middle" if middle else "Two hands: short reach out wide"
    if aim.wing is Wing.BACKHAND:
        when = two_handed(aim.target)
    elif aim.wing is None and aim.target.profile.fact(Trait.TWO_HANDED_BACKHAND) is Value.YES:
        when = question.backhand_at(aim)
    else:
        return
    yield rule_of_thumb("two hands", aim.id, points, Mechanism.THEIR_REPLY, because, when=when)


def _movement(aim: Aim) -> Iterator[Effect]:
    name, spot = aim.target.name, aim.spot
    rows = [
        (Trait.GETS_LOW, Value.WEAKNESS, SLOW_DOWN_LOW, f"{name} is slow getting low"),
        (Trait.PATIENCE, Value.WEAKNESS, IMPATIENT, f"{name} loses patience"),
        (Trait.PATIENCE, Value.STRENGTH, PATIENT, f"{name} dinks all day"),
        (
            Trait.FOOTWORK_KITCHEN_FAULTS,
            Value.OFTEN,
            KITCHEN_FAULTS,
            f"{name} foot-faults here",
        ),
        (Trait.REACH, Value.STRENGTH, LONG_REACH, f"{name} reaches in for it"),
    ]
    toward = _way(aim)
    if toward is not None:
        where = "to the line" if spot is Spot.SIDELINE else "to the middle"
        rows += [
            (toward, Value.WEAKNESS, SLOW_THAT_WAY, f"{name} moves badly {where}"),
            (toward, Value.STRENGTH, QUICK_THAT_WAY, f"{name} moves well {where}"),
        ]
    for trait, value, points, because in rows:
        yield grows_with(
            aim.target, trait, value, points, _MOVES[trait], on=(aim.id,), because=because
        )


_MOVES = {
    Trait.GETS_LOW: Mechanism.THEIR_REPLY,
    Trait.PATIENCE: Mechanism.THEIR_ERROR,
    Trait.FOOTWORK_KITCHEN_FAULTS: Mechanism.THEIR_ERROR,
    Trait.REACH: Mechanism.TIME,
    Trait.MOVES_LEFT: Mechanism.TIME,
    Trait.MOVES_RIGHT: Mechanism.TIME,
}


def _way(aim: Aim) -> Trait | None:
    """Which way they move for it: a left-court player's own left is the sideline."""
    if aim.target.side is None:
        return None
    to_left = (aim.target.side is Side.LEFT) is (aim.spot is Spot.SIDELINE)
    return Trait.MOVES_LEFT if to_left else Trait.MOVES_RIGHT


def _partner(question: DinkQuestion, aim: Aim) -> Iterator[Effect]:
    partner = question.partner(aim.target)
    if aim.spot is Spot.SIDELINE:
        yield _habit(
            aim,
            Trait.SQUEEZES_MIDDLE,
            BEHIND_THE_SQUEEZER,
            f"Behind {aim.target.name}'s squeeze",
        )
    if partner is None or aim.spot is Spot.SIDELINE:
        return
    on = (aim.id,)
    name = partner.name
    yield grows_with(
        partner,
        Trait.POACHING,
        Value.OFTEN,
        PARTNER_POACHES,
        Mechanism.HABIT,
        on=on,
        because=f"{name} poaches the middle",
    )
    yield grows_with(
        partner,
        Trait.SQUEEZES_MIDDLE,
        Value.OFTEN,
        PARTNER_SQUEEZES,
        Mechanism.HABIT,
        on=on,
        because=f"{name} squeezes the middle",
    )
    for one in (aim.target, partner):
        yield grows_with(
            one,
            Trait.COMMUNICATION,
            Value.WEAKNESS,
            THEY_DO_NOT_TALK,
            Mechanism.COVER,
            on=on,
            because="They don't call the middle",
        )


def _stretched(question: DinkQuestion, aim: Aim) -> Iterator[Effect]:
    yield rule_of_thumb(
        "stretched", aim.id, STRETCHED_AIM, Mechanism.OUR_ERROR, "You can't aim it stretched"
    )
    if aim.spot is Spot.SIDELINE:
        yield rule_of_thumb(
            "stretched line",
            aim.id,
            STRETCHED_LINE,
            Mechanism.TIME,
            "The line comes back at once",
            when=question.in_front(aim.target),
        )


def _saved_misses(on: OptionId, lane: Lane, when: Condition) -> Effect:
    because = {
        Lane.CENTRE: "Lowest net, and a miss stays in",
        Lane.STRAIGHT: "Lower net than at the line",
        Lane.WIDE: "Longest lane, low net",
    }[lane]
    points, ours = gain_over_line(lane), Mechanism.OUR_ERROR
    return rule_of_thumb(str(lane), on, points, ours, because, when=when, source=LANE_SOURCE)


def _habit(
    aim: Aim, trait: Trait, points: Points, because: str, when: Condition = ALWAYS
) -> Effect:
    return grows_with(
        aim.target,
        trait,
        Value.OFTEN,
        points,
        Mechanism.HABIT,
        on=(aim.id,),
        because=because,
        when=when,
    )
