"""What the people in front of a dink say for or against it: wing, movement, partner and habits."""

from __future__ import annotations

import math
from collections.abc import Iterator

from knowledge.beliefs import REST_OF_GROUP
from knowledge.effects import ALWAYS, Condition, Effect, Mechanism, Points
from knowledge.tactics.conditions import DINKS, grows_with, rule_of_thumb, skill, two_handed
from knowledge.tactics.dink_aims import Aim, DinkQuestion
from knowledge.tactics.dink_lanes import Lane, Spot
from knowledge.tactics.dink_sizes import (
    ANY_BACKHAND,
    BEHIND_THE_SQUEEZER,
    FOREHAND_IN_THE_MIDDLE,
    IMPATIENT,
    KITCHEN_FAULTS,
    LINE_KEEPS,
    LONG_REACH,
    PARTNER_POACHES,
    PARTNER_SQUEEZES,
    PATIENT,
    QUICK_THAT_WAY,
    SLOW_DOWN_LOW,
    SLOW_THAT_WAY,
    THEY_DO_NOT_TALK,
    TWO_HANDED_IN_THE_MIDDLE,
    TWO_HANDED_WIDE,
    WEAK_WING,
)
from knowledge.vocabulary import Side, Trait, Value, Wing


def wing(question: DinkQuestion, aim: Aim) -> Iterator[Effect]:
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
    yield from _weak_wings(question, aim)
    yield from _two_hander(question, aim)


def _weak_wings(question: DinkQuestion, aim: Aim) -> Iterator[Effect]:
    """What notes say of the wing that meets it; of both alike, it is there whichever that is."""
    backhand, name = question.backhand_at(aim), aim.target.name
    weak_wing = _in_safe_lanes(WEAK_WING, aim)
    common = None if aim.wing is not None else _said_of_both(aim, backhand.prevalence)
    if common is not None:
        trait, named = common, f"{name}'s dink"
        yield skill(aim.target, trait, -weak_wing, Mechanism.THEIR_REPLY, on=(aim.id,), named=named)
    for trait, when in ((Trait.BACKHAND_DINK, backhand), (Trait.FOREHAND_DINK, ~backhand)):
        wing = "backhand" if trait is Trait.BACKHAND_DINK else "forehand"
        yield skill(
            aim.target,
            trait,
            -weak_wing.times(1 - _share_of(common, trait, aim)),
            Mechanism.THEIR_REPLY,
            on=(aim.id,),
            named=f"{name}'s {wing} dink",
            when=when,
        )


def _said_of_both(aim: Aim, meets_backhand: float) -> Trait | None:
    """The wing of which less is said, where notes call both weak or both strong.

    None where what is said of the likelier wing alone counts for more: a weak backhand, noted
    beside a weaker forehand, must not make the middle the lesser target.
    """
    skills = {trait: aim.target.profile.skill(trait) for trait in DINKS.values()}
    levels = [one.level for one in skills.values()]
    if any(one.is_open for one in skills.values()) or math.prod(levels) <= 0:
        return None
    chances = {Trait.BACKHAND_DINK: meets_backhand, Trait.FOREHAND_DINK: 1 - meets_backhand}
    apart = sorted(chances[trait] * abs(one.level) for trait, one in skills.items())
    less = min(skills, key=lambda trait: abs(skills[trait].level))
    more = next(trait for trait in skills if trait is not less)
    least = abs(skills[less].level)
    together = least + REST_OF_GROUP * chances[more] * (abs(skills[more].level) - least)
    return less if together >= apart[1] + REST_OF_GROUP * apart[0] else None


def _share_of(common: Trait | None, trait: Trait, aim: Aim) -> float:
    """How much of what is said of this wing is said of both."""
    if common is None:
        return 0.0
    least, here = (aim.target.profile.skill(one).level for one in (common, trait))
    return least / here


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


def movement(aim: Aim) -> Iterator[Effect]:
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


def partner_effects(question: DinkQuestion, aim: Aim) -> Iterator[Effect]:
    partner = question.partner(aim.target)
    if aim.spot is Spot.SIDELINE:
        yield habit(
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


def habit(aim: Aim, trait: Trait, points: Points, because: str, when: Condition = ALWAYS) -> Effect:
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
