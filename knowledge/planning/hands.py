"""Where to speed up: body spots by hand, ready position and side really played.

The paddle hip jams a player who waits on the backhand; the other hip one who waits neutral or
on the forehand. A miss off the hip that faces the middle stays in the seam; off the hip that
faces the sideline it goes wide.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from knowledge.advice import Arrow
from knowledge.court import at_kitchen_line
from knowledge.engine import Decision, Effect, Mechanism, Option
from knowledge.planning import sizes
from knowledge.planning.line import Line, Phase
from knowledge.planning.weighing import (
    Weighed,
    always,
    fact_is,
    from_fact,
    from_trait,
    is_weak,
    option,
    weigh,
)
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import Hand, Side, Trait, Value

CHEST = "chest"
PADDLE_HIP = "paddle"
OTHER_HIP = "other"


@dataclass(frozen=True, slots=True, kw_only=True)
class BodySpot:
    """A hip of one opponent; `paddle_side` is the hip on the side of the hitting hand."""

    target: OnCourt
    paddle_side: bool

    @property
    def id(self) -> str:
        return f"{PADDLE_HIP if self.paddle_side else OTHER_HIP}:{self.target.player}"

    @property
    def hip(self) -> Side | None:
        """Their own right or left hip; None while the hand is not known."""
        if self.target.hand not in (Hand.LEFT, Hand.RIGHT):
            return None
        paddle = Side.RIGHT if self.target.hand is Hand.RIGHT else Side.LEFT
        return paddle if self.paddle_side else paddle.other

    @property
    def label(self) -> str:
        """ "right hip" where the hand is known, else "paddle hip" or "off hip"."""
        if self.hip is not None:
            return f"{self.hip} hip"
        return "paddle hip" if self.paddle_side else "off-hand hip"

    @property
    def faces_middle(self) -> bool | None:
        """Whether the hip is on the middle side of the court; None if hand or side is unknown."""
        if self.hip is None or self.target.side is None:
            return None
        return self.hip is not self.target.side


def hands_line(situation: Situation) -> Line | None:
    """Whom to speed up at and on which spot; None without an opponent or a speed-up of ours."""
    if not situation.theirs or (situation.ours and not _hitters(situation)):
        return None
    spot, weighed = best_spot(situation)
    if spot is None or not weighed.evidence:
        return None
    return Line(
        phase=Phase.HANDS,
        do=call_at(spot, situation),
        because=weighed.because,
        cue=f"{call_at(spot, situation)}.",
        points=weighed.gain,
        share=sizes.HANDS_SHARE,
        source=weighed.source,
        arrow=_arrow(spot.target),
    )


def call_at(spot: BodySpot, situation: Situation) -> str:
    """The speed-up at a hip, and by whom where only one of us owns the shot."""
    hitters = _hitters(situation)
    at = f"{spot.target.name}'s {spot.label}"
    if len(hitters) == len(situation.ours):
        return f"Speed up at {at}"
    return f"{hitters[0].name}: speed up at {at}"


def _hitters(situation: Situation) -> list[OnCourt]:
    """Those of us whose own profile does not mark the speed-up as a weakness."""
    return [one for one in situation.ours if not is_weak(one, Trait.SPEED_UP)]


def hip_spots(situation: Situation) -> list[BodySpot]:
    """Both hips of both opponents."""
    return [
        BodySpot(target=one, paddle_side=paddle_side)
        for one in situation.theirs
        for paddle_side in (True, False)
    ]


def best_spot(situation: Situation) -> tuple[BodySpot | None, Weighed]:
    """The best hip to speed up at against the plain chest-high ball (None)."""
    spots = hip_spots(situation)
    options: list[Option] = [option(CHEST, "chest high")]
    options += [option(spot.id, f"{spot.target.name}'s {spot.label}") for spot in spots]
    decision = Decision(
        options=tuple(options),
        effects=tuple(effect for spot in spots for effect in _effects(spot)),
        neutral=sizes.ATTACKING_CHANCE,
        share=sizes.HANDS_SHARE,
    )
    weighed = weigh(decision, situation, plain=CHEST)
    return next((spot for spot in spots if spot.id == weighed.best), None), weighed


def _effects(spot: BodySpot) -> list[Effect]:
    one, on, reply = spot.target, (spot.id,), Mechanism.THEIR_REPLY
    effects = [
        _fits_ready_position(spot),
        from_trait(one, Trait.BODY_JAM, sizes.JAMS_AT_BODY, Mechanism.THEIR_ERROR, on=on, up=False),
        from_trait(one, Trait.COUNTER, sizes.WEAK_COUNTER, reply, on=on, up=False),
        from_trait(one, Trait.COUNTER, sizes.SET_COUNTER, reply, on=on, up=True),
        _wing_counter(spot, up=False),
        _wing_counter(spot, up=True),
    ]
    if spot.faces_middle is not None:
        size = sizes.MISS_INTO_SEAM if spot.faces_middle else sizes.MISS_GOES_WIDE
        because = "a miss stays in the seam" if spot.faces_middle else "a miss goes wide"
        effects.append(always(f"{spot.id}:miss", because, size, Mechanism.COVER, on=on))
    return effects


def _fits_ready_position(spot: BodySpot) -> Effect:
    """The paddle hip jams one who waits on the backhand, the other hip everyone else."""
    one, ready = spot.target, Trait.READY_POSITION
    fits = from_fact(
        one,
        ready,
        Value.BACKHAND,
        sizes.BODY_SPOT,
        Mechanism.THEIR_REPLY,
        on=(spot.id,),
        prevalence=sizes.WAITS_ON_BACKHAND,
    )
    if spot.paddle_side:
        return fits
    known = one.profile.fact(ready)
    return _with_condition(
        fits,
        because="waits on the forehand" if known is Value.FOREHAND else "waits neutral",
        one=one,
    )


def _with_condition(effect: Effect, *, because: str, one: OnCourt) -> Effect:
    holds = fact_is(one, Trait.READY_POSITION, Value.BACKHAND, prevalence=sizes.WAITS_ON_BACKHAND)
    return replace(effect, because=because, when=~holds)


def counter_met(spot: BodySpot) -> Trait:
    """The counter that the spot meets: the backhand's, as a rule, at either hip.

    Only at the paddle hip of one who waits neutral or on the forehand it is the forehand's.
    """
    ready = spot.target.profile.fact(Trait.READY_POSITION)
    meets_forehand = spot.paddle_side and ready in (Value.FOREHAND, Value.NEUTRAL)
    return Trait.COUNTER_FOREHAND if meets_forehand else Trait.COUNTER_BACKHAND


def _wing_counter(spot: BodySpot, *, up: bool) -> Effect:
    trait = counter_met(spot)
    size = sizes.SET_COUNTER if up else sizes.WEAK_COUNTER
    return from_trait(spot.target, trait, size, Mechanism.THEIR_REPLY, on=(spot.id,), up=up)


def _arrow(target: OnCourt) -> Arrow | None:
    if target.side is None:
        return None
    start = at_kitchen_line(target.side.other, ours=True)
    end = at_kitchen_line(target.side, ours=False)
    return Arrow(
        from_x_m=start.x_m,
        from_y_m=start.y_m,
        to_x_m=end.x_m,
        to_y_m=end.y_m,
        width=1.0,
        label="speed-up",
    )
