"""Who should take a ball through the middle: the page of effects behind cover_middle.

Sizes are rally points on balls through the middle. What being there in time is worth, with the
feet and the reach behind it, is computed (middle_times); the rest is common practice without a
source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType

from knowledge.dataclass import dataclass
from knowledge.effects import (
    ALWAYS,
    Condition,
    Decision,
    Effect,
    EffectId,
    FactId,
    Mechanism,
    Option,
    OptionId,
    Points,
    TraitScale,
    Truth,
)
from knowledge.situation import OnCourt
from knowledge.sources import COMMON_PRACTICE, Source
from knowledge.tactics.conditions import backhand_in_middle, how_good, skill
from knowledge.tactics.middle_times import (
    IN_TIME,
    SCALED,
    Place,
    height_points,
    place_points,
    trait_points,
)
from knowledge.vocabulary import TRAITS, BallKind, PlayerId, RallyChance, Side, Trait, Wing

MIDDLE_SHARE = 25.0
"""Rallies of 100 with a ball through our middle that either could take. Common practice."""

NEUTRAL = RallyChance(0.5)

DIAGONAL: Mapping[BallKind, Points] = MappingProxyType(
    {
        BallKind.DINK: Points(mean=3, sd=2),
        BallKind.FLOATING: Points(mean=2, sd=2),
        BallKind.DRIVE: Points(mean=1.5, sd=1.5),
        BallKind.SPEED_UP: Points(mean=1.5, sd=2),
        BallKind.LOB: Points(mean=0.5, sd=1.5),
    }
)
"""The player diagonal from the hitter moves into the ball and sees it longer."""

FOREHAND: Mapping[BallKind, Points] = MappingProxyType(
    {
        BallKind.DINK: Points(mean=1.5, sd=1.5),
        BallKind.FLOATING: Points(mean=4, sd=2.5),
        BallKind.DRIVE: Points(mean=3, sd=2),
        BallKind.SPEED_UP: Points(mean=2.5, sd=2.5),
        BallKind.LOB: Points(mean=4, sd=2.5),
    }
)
"""A forehand in the middle; least on a dink, and on a speed-up a backhand can be as quick."""

BETTER_SHOT = Points(mean=4, sd=2.5)
LIKES_PACE = Points(mean=2, sd=2)

LEAST_POINTS = 0.05
"""Traits that move a ball by less than this are left out of its decision."""

NO_HESITATION_NEW = 3.0
NO_HESITATION_REGULAR = 1.5
"""Row 24: what agreeing the middle in words is worth on every rally, new pair or not."""

_WING_SHOTS: Mapping[BallKind, Mapping[Wing, Trait]] = MappingProxyType(
    {
        BallKind.DINK: {Wing.FOREHAND: Trait.FOREHAND_DINK, Wing.BACKHAND: Trait.BACKHAND_DINK},
        BallKind.FLOATING: {
            Wing.FOREHAND: Trait.FOREHAND_VOLLEY,
            Wing.BACKHAND: Trait.BACKHAND_VOLLEY,
        },
        BallKind.DRIVE: {
            Wing.FOREHAND: Trait.FOREHAND_VOLLEY,
            Wing.BACKHAND: Trait.BACKHAND_VOLLEY,
        },
        BallKind.SPEED_UP: {
            Wing.FOREHAND: Trait.COUNTER_FOREHAND,
            Wing.BACKHAND: Trait.COUNTER_BACKHAND,
        },
        BallKind.LOB: {},
    }
)
"""The shot that each ball through the middle asks for, by the wing in the middle."""

_OTHER_SHOTS: Mapping[BallKind, tuple[tuple[Trait, Points], ...]] = MappingProxyType(
    {
        BallKind.DINK: (),
        BallKind.FLOATING: (),
        BallKind.DRIVE: ((Trait.HANDLES_PACE, LIKES_PACE),),
        BallKind.SPEED_UP: ((Trait.COUNTER, BETTER_SHOT), (Trait.HANDLES_PACE, LIKES_PACE)),
        BallKind.LOB: ((Trait.OVERHEAD, BETTER_SHOT),),
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """One of our two courts and who plays it; `named` is False where we don't know who."""

    side: Side
    who: OnCourt
    named: bool

    @property
    def option(self) -> Option:
        return Option(id=OptionId(self.side), label=self.who.name)

    @property
    def wing(self) -> Wing | None:
        """The wing next to the centre line, if known."""
        return self.who.middle_wing()


@dataclass(frozen=True, slots=True, kw_only=True)
class MiddleBall:
    """A ball through the middle: its kind, where it comes from, and who is out of place."""

    kind: BallKind
    hitter_side: Side
    pulled_wide: PlayerId | None


def decisions(seats: tuple[Seat, Seat], balls: Sequence[MiddleBall]) -> tuple[Decision, ...]:
    """Which of our two takes each of these balls of one kind, wherever it comes from."""
    own = tuple(effect for seat in seats for effect in _own(seat, balls[0].kind))
    return tuple(
        Decision(
            options=tuple(seat.option for seat in seats),
            effects=(*own, *(effect for seat in seats for effect in _placed(seat, ball))),
            neutral=NEUTRAL,
            share=MIDDLE_SHARE,
        )
        for ball in balls
    )


def _name(seat: Seat) -> str:
    return seat.who.name if seat.named else seat.who.name.capitalize()


def _own(seat: Seat, kind: BallKind) -> Iterator[Effect]:
    """The wing in the middle and the shots that this kind asks for."""
    backhand = backhand_in_middle(seat.who, None)
    forehand = ~backhand
    yield _rule(
        "forehand",
        seat,
        FOREHAND[kind],
        Mechanism.THEIR_REPLY,
        f"{_name(seat)}'s forehand is in the middle",
        when=forehand,
    )
    for wing, trait in _WING_SHOTS[kind].items():
        yield _skill(seat, trait, BETTER_SHOT, backhand if wing is Wing.BACKHAND else forehand)
    for trait, points in _OTHER_SHOTS[kind]:
        yield _skill(seat, trait, points, ALWAYS)


def _placed(seat: Seat, ball: MiddleBall) -> Iterator[Effect]:
    """What depends on where it comes from: the look at it, and being there in time."""
    yield _rule(
        "cross from the ball",
        seat,
        DIAGONAL[ball.kind],
        Mechanism.TIME,
        "Cross from the ball sees it longer",
        when=_is_diagonal(seat, ball),
    )
    yield from _in_time(seat, ball)


def place_of(seat: Seat, ball: MiddleBall) -> Place:
    """Where the player is to this ball. Their left court is cross from our left."""
    return Place(
        kind=ball.kind,
        is_cross=ball.hitter_side is seat.side,
        is_wide=ball.pulled_wide == seat.who.player,
    )


def _in_time(seat: Seat, ball: MiddleBall) -> Iterator[Effect]:
    """Whether this player is there in time: from this place, with these feet and this reach."""
    place = place_of(seat, ball)
    mechanism, because = (
        (Mechanism.COVER, "is pulled wide")
        if place.is_wide
        else (Mechanism.TIME, "has more time for it")
    )
    because = f"{_name(seat)} {because}"
    yield _rule("in time", seat, place_points(place), mechanism, because, source=IN_TIME)
    for trait, more, less in SCALED:
        points = trait_points(place, more, less)
        if points.mean >= LEAST_POINTS:
            yield _grown(seat, trait, points)
    height = seat.who.profile.fact(Trait.HEIGHT)
    if height is not None:
        points = height_points(place, height)
        source = seat.who.profile.facts[Trait.HEIGHT].source
        yield _rule(
            "height", seat, points, Mechanism.TIME, f"{_name(seat)} is {height}", source=source
        )


def _grown(seat: Seat, trait: Trait, points: Points) -> Effect:
    """A computed effect that grows with a trait, both ways."""
    estimate = seat.who.profile.skill(trait)
    return Effect(
        id=EffectId(f"{trait}:{seat.side}"),
        on=frozenset({seat.option.id}),
        points=points,
        mechanism=Mechanism.TIME,
        because=f"{_name(seat)}'s {TRAITS[trait].label} is {how_good(estimate)}",
        source=IN_TIME,
        scale=TraitScale(
            estimate=estimate, towards=1, player=seat.who.player, trait=trait, both_ways=True
        ),
    )


def _skill(
    seat: Seat,
    trait: Trait,
    points: Points,
    when: Condition,
) -> Effect:
    return skill(
        seat.who,
        trait,
        points,
        Mechanism.OUR_ERROR,
        on=(seat.option.id,),
        named=f"{seat.who.name}'s {TRAITS[trait].label}",
        when=when,
    )


def _is_diagonal(seat: Seat, ball: MiddleBall) -> Condition:
    """Their left court is diagonal from our left: each side counts facing the net."""
    seat_is_diagonal = ball.hitter_side is seat.side
    return Condition(
        name=f"{seat.side} is cross from the ball",
        fact=FactId("hitter"),
        prevalence=0.5,
        test=lambda _situation: Truth.of(seat_is_diagonal),
    )


def _rule(
    name: str,
    seat: Seat,
    points: Points,
    mechanism: Mechanism,
    because: str,
    *,
    when: Condition = ALWAYS,
    source: Source = COMMON_PRACTICE,
) -> Effect:
    return Effect(
        id=EffectId(f"{name}:{seat.side}"),
        on=frozenset({seat.option.id}),
        points=points,
        mechanism=mechanism,
        because=because,
        source=source,
        when=when,
    )
