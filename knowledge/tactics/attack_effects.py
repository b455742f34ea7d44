"""What makes one spot of a speed-up better than another: the page of effects behind aim_attack."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from knowledge.ball_facts import Footing
from knowledge.effects import Condition, Effect, FactId, Mechanism, Truth
from knowledge.planning import sizes as planned
from knowledge.planning.ended_on import ended_on
from knowledge.planning.weighing import always, fact_is, from_fact, from_trait
from knowledge.situation import OnCourt
from knowledge.tactics import attack_sizes as sizes
from knowledge.tactics.attack_question import AttackQuestion, cross_to
from knowledge.tactics.attack_spots import SEAM_ID, BodySpot, Spot, counter_met
from knowledge.tactics.conditions import other_of, rule_of_thumb, two_handed
from knowledge.vocabulary import Trait, Value

_REPLY, _ERROR = Mechanism.THEIR_REPLY, Mechanism.THEIR_ERROR


def spot_effects(question: AttackQuestion, spots: Iterable[BodySpot]) -> tuple[Effect, ...]:
    """Everything that speaks for or against each of these spots, and the seam."""
    found: list[Effect] = []
    shown = list(spots)
    for spot in shown:
        found += _body(spot)
        if spot.spot is Spot.FEET:
            found += _feet(spot, question)
        else:
            found += _hips_and_shoulder(spot)
        found += _lane(spot, question)
    if len(question.pair) > 1:
        found += _seam(question.pair)
    for one in question.pair:
        on = [spot.id for spot in shown if spot.target.player == one.player]
        ended = ended_on(one, other_of(one, question.pair), on=on)
        found += [] if ended is None else [ended]
    return tuple(found)


def _body(spot: BodySpot) -> Iterator[Effect]:
    """Who is late with hands: wherever on the body it goes."""
    one, on = spot.target, (spot.id,)
    yield from_trait(one, Trait.COUNTER, planned.WEAK_COUNTER, _REPLY, on=on, up=False)
    yield from_trait(one, Trait.COUNTER, planned.SET_COUNTER, _REPLY, on=on, up=True)
    yield from_trait(one, Trait.HANDLES_PACE, sizes.DISLIKES_PACE, _ERROR, on=on, up=False)
    yield from_trait(one, Trait.HANDLES_PACE, -sizes.DISLIKES_PACE, _ERROR, on=on, up=True)
    yield from_trait(one, Trait.RESET, sizes.CANNOT_RESET, _REPLY, on=on, up=False)
    yield from_trait(one, Trait.RESET, -sizes.CANNOT_RESET, _REPLY, on=on, up=True)


def _hips_and_shoulder(spot: BodySpot) -> Iterator[Effect]:
    one, on = spot.target, (spot.id,)
    yield from_trait(one, Trait.BODY_JAM, planned.JAMS_AT_BODY, _ERROR, on=on, up=False)
    for up in (False, True):
        size = planned.SET_COUNTER if up else planned.WEAK_COUNTER
        yield from_trait(one, counter_met(spot), size, _REPLY, on=on, up=up)
    yield rule_of_thumb(
        "two hands",
        spot.id,
        sizes.TWO_HANDS_JAMMED,
        _REPLY,
        "Two hands are cramped at the body",
        when=two_handed(one),
    )
    if spot.is_noted is not None and one.profile.fact(Trait.READY_POSITION) is None:
        # Who was seen to jam at one hip needs no guess of how they wait.
        yield from _seen_to_jam(spot)
    elif spot.is_hip:
        yield _fits_ready_position(spot)
    else:
        yield always(
            f"{spot.id}:leaning",
            "leaning in, the shoulder is open",
            sizes.SHOULDER_OF_ONE_LEANING,
            _REPLY,
            on=on,
        )
    if spot.faces_middle is not None:
        size = planned.MISS_INTO_SEAM if spot.faces_middle else planned.MISS_GOES_WIDE
        because = "a miss stays in the seam" if spot.faces_middle else "a miss goes wide"
        yield always(f"{spot.id}:miss", because, size, Mechanism.COVER, on=on)


def _seen_to_jam(spot: BodySpot) -> Iterator[Effect]:
    if spot.is_noted:
        yield always(
            f"{spot.id}:seen",
            f"jams at the {spot.label}, as you noted",
            planned.BODY_SPOT,
            _REPLY,
            on=(spot.id,),
        )


def _fits_ready_position(spot: BodySpot) -> Effect:
    """The paddle hip jams one who waits on the backhand, the other hip everyone else."""
    one, ready = spot.target, Trait.READY_POSITION
    fits = from_fact(
        one,
        ready,
        Value.BACKHAND,
        planned.BODY_SPOT,
        _REPLY,
        on=(spot.id,),
        prevalence=planned.WAITS_ON_BACKHAND,
    )
    if spot.spot is Spot.PADDLE_HIP:
        return fits
    known = one.profile.fact(ready)
    holds = fact_is(one, ready, Value.BACKHAND, prevalence=planned.WAITS_ON_BACKHAND)
    because = "waits on the forehand" if known is Value.FOREHAND else "waits neutral"
    return replace(fits, because=because, when=~holds)


def _feet(spot: BodySpot, question: AttackQuestion) -> Iterator[Effect]:
    """A hard ball to make at a set player; the ball for one who is still coming in."""
    one, on = spot.target, (spot.id,)
    yield always(
        f"{spot.id}:dips", "from the feet they hit up", sizes.FEET, Mechanism.OUR_ERROR, on=on
    )
    yield from_trait(one, Trait.GETS_LOW, sizes.SLOW_DOWN, _REPLY, on=on, up=False)
    if not question.they_are_back:
        return
    yield always(
        f"{spot.id}:on the way",
        "on the way in they hit up from the feet",
        sizes.FEET_ON_THE_WAY,
        _REPLY,
        on=on,
    )
    yield from_trait(one, Trait.TRANSITION, sizes.WEAK_IN_MID_COURT, _ERROR, on=on, up=False)


def _lane(spot: BodySpot, question: AttackQuestion) -> Iterator[Effect]:
    """Where the counter comes back: straight ahead of whoever hits it, so cross is my partner's."""
    is_cross, on = cross_to(spot.target, question), (spot.id,)
    if is_cross is None:
        return
    if not is_cross:
        if question.facts.footing in (None, Footing.STILL):
            return
        yield always(
            f"{spot.id}:back at us",
            "straight, the counter is back at you at once",
            sizes.STRAIGHT_BACK_AT_US,
            Mechanism.TIME,
            on=on,
        )
        return
    ready = partner_ready(question)
    for when, size, because in (
        (~ready, sizes.CROSS_TO_NO_PARTNER, "cross, the counter finds your partner unready"),
        (ready, sizes.CROSS_TO_A_READY_PARTNER, "your partner waits for the counter"),
    ):
        yield rule_of_thumb("cross", spot.id, size, Mechanism.TIME, because, when=when)


def partner_ready(question: AttackQuestion) -> Condition:
    truth = Truth.of(question.facts.partner_set)
    return Condition(
        name="our partner is ready",
        fact=FactId("partner_set"),
        prevalence=1 - sizes.PARTNER_NOT_READY,
        test=lambda _situation: truth,
    )


def _seam(pair: tuple[OnCourt, ...]) -> Iterator[Effect]:
    on = (SEAM_ID,)
    yield always("seam", "the seam is nobody's ball", sizes.SEAM, Mechanism.COVER, on=on)
    for one in pair:
        yield from_trait(
            one, Trait.COMMUNICATION, sizes.TALK_LITTLE, Mechanism.AGREEMENT, on=on, up=False
        )
        for habit in (Trait.SQUEEZES_MIDDLE, Trait.POACHING):
            yield from_trait(
                one, habit, sizes.SEAM_IS_GUARDED, Mechanism.HABIT, on=on, up=True, habit=True
            )
