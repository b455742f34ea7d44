"""What speaks for a lob over one of them, and what against any lob: the attack lob's page."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from knowledge.ball_facts import Depth, Footing
from knowledge.dataclass import dataclass
from knowledge.effects import Effect, EffectId, Mechanism, OptionId, Points
from knowledge.engine import Option
from knowledge.planning.weighing import from_fact, from_trait
from knowledge.regex import regex
from knowledge.situation import Asked, OnCourt, Situation, Wind
from knowledge.sources import COMMON_PRACTICE, Source
from knowledge.tactics import lob_sizes as sizes
from knowledge.tactics.conditions import in_front, other_of, rule_of_thumb
from knowledge.tactics.lob_lanes import FLIGHT, LANE, straight_costs, wind_feet
from knowledge.tactics.sun_said import SunSide, sun_of_our_lob
from knowledge.tactics.weather_said import wind_told
from knowledge.vocabulary import BallQuality, Side, Trait, Value
from knowledge.wind import MPH_MPS, NOBODY_PLAYS_MPH

NO_LOB: Final = "no lob"


def over(one: OnCourt) -> str:
    """The option that lobs this opponent."""
    return f"over:{one.player}"


_WIND = regex(r"\b(?:wind|breez|gust)")


@dataclass(frozen=True, slots=True, kw_only=True)
class LobQuestion:
    """Who may be lobbed, from where, off which ball, and the day; None where it isn't known."""

    pair: tuple[OnCourt, ...]
    lobber: OnCourt | None = None
    striker_side: Side | None = None
    ball: BallQuality | None = None
    footing: Footing | None = None
    theirs: Depth | None = None
    wind: Wind | None = None
    wind_mph: float = sizes.USUAL_WIND_MPH
    asks_wind: bool = False
    sun: SunSide | None = None
    hot: bool = False

    def options(self) -> tuple[Option, ...]:
        """No lob, or one over each of them."""
        overs = (
            Option(id=OptionId(over(one)), label=f"lob over {one.name}" if one.name else "lob")
            for one in self.pair
        )
        return (Option(id=OptionId(NO_LOB), label="dink"), *overs)


def question_of(situation: Situation, pair: tuple[OnCourt, ...]) -> LobQuestion:
    asked, facts = situation.asked, situation.asked.facts
    lobber = None if situation.striker is None else situation.find(situation.striker)
    mph = _wind_mph(asked)
    return LobQuestion(
        pair=pair,
        lobber=lobber,
        striker_side=asked.striker_side or (lobber.side if lobber is not None else None),
        ball=asked.ball,
        footing=facts.footing,
        theirs=facts.theirs,
        wind=situation.wind,
        wind_mph=sizes.USUAL_WIND_MPH if mph is None else min(mph, sizes.STRONGEST_MPH),
        asks_wind=_WIND.search(asked.words.casefold()) is not None,
        sun=sun_of_our_lob(asked),
        hot=bool(asked.hot),
    )


def _wind_mph(asked: Asked) -> float | None:
    """The wind's speed as told; none of one in which nobody plays, as the reply says."""
    if asked.facts.wind_mps is not None:
        return asked.facts.wind_mps / MPH_MPS
    told = wind_told(asked.words, before=asked.before).mph
    return None if told is None or told > NOBODY_PLAYS_MPH else told


def effects(question: LobQuestion) -> tuple[Effect, ...]:
    """Everything that speaks for or against a lob over each of them."""
    found: list[Effect] = []
    for one in question.pair:
        found += _people(question, one)
        found += _lane(question, one)
        found += _ball(question, one)
        found += _places(question, one)
        found += _day(question, one)
    return tuple(found)


def _people(question: LobQuestion, one: OnCourt) -> Iterator[Effect]:
    on, invites, punishes = (over(one),), sizes.INVITES, sizes.PUNISHES
    error, cover = Mechanism.THEIR_ERROR, Mechanism.COVER
    yield _plain("cold", one, sizes.COLD, Mechanism.THEIR_REPLY, "no reason to lob")
    for trait, mechanism in (
        (Trait.LOB_DEFENSE, error),
        (Trait.FOOT_SPEED, cover),
        (Trait.OVERHEAD, error),
    ):
        yield from_trait(one, trait, invites, mechanism, on=on, up=False)
        yield from_trait(one, trait, punishes, mechanism, on=on, up=True)
    rare = sizes.SHORT_OR_TALL
    yield from_fact(one, Trait.HEIGHT, Value.SHORT, invites, cover, on=on, prevalence=rare)
    yield from_fact(one, Trait.HEIGHT, Value.TALL, punishes, cover, on=on, prevalence=rare)
    yield from_trait(one, Trait.REACH, sizes.SHORT_REACH, cover, on=on, up=False)
    yield from_trait(one, Trait.REACH, sizes.LONG_REACH, cover, on=on, up=True)
    for habit in LEANING:
        yield from_trait(one, habit, sizes.LEANS_IN, Mechanism.HABIT, on=on, up=True, habit=True)
    tires = sizes.TIRES_IN_HEAT if question.hot else sizes.TIRES
    yield from_trait(one, Trait.FITNESS, tires, Mechanism.TIME, on=on, up=False)
    if question.lobber is not None:
        yield from_trait(
            question.lobber, Trait.LOB, sizes.OWN_LOB, Mechanism.OUR_ERROR, on=on, up=True
        )


LEANING: Final = (Trait.CRASH, Trait.ERNIE, Trait.POACHING)
"""Habits of a player who leans forward: the weight is on the wrong foot for a lob."""


def _plain(
    name: str,
    one: OnCourt,
    points: Points,
    mechanism: Mechanism,
    because: str,
    *,
    source: Source = COMMON_PRACTICE,
) -> Effect:
    return Effect(
        id=EffectId(f"{over(one)}:{name}"),
        on=frozenset({OptionId(over(one))}),
        points=points,
        mechanism=mechanism,
        because=because,
        source=source,
    )


def _lane(question: LobQuestion, one: OnCourt) -> Iterator[Effect]:
    """Over whoever stands across from us the court is shorter."""
    if question.striker_side is None:
        return
    yield rule_of_thumb(
        "straight",
        OptionId(over(one)),
        straight_costs(),
        Mechanism.OUR_ERROR,
        "Straight is the shorter court",
        when=in_front(one, other_of(one, question.pair), question.striker_side),
        source=LANE,
    )


def _ball(question: LobQuestion, one: OnCourt) -> Iterator[Effect]:
    on_the_run = question.footing in (Footing.BACKWARD, Footing.SIDEWAYS)
    if question.ball is BallQuality.STRETCHED or on_the_run:
        yield _plain(
            "seen", one, sizes.NO_DISGUISE, Mechanism.TIME, "Off a stretch they see it coming"
        )
    if question.ball is BallQuality.EASY:
        yield _plain(
            "high ball",
            one,
            sizes.HIGH_BALL_WASTED,
            Mechanism.THEIR_REPLY,
            "A ball above the net is to be hit down",
        )


def _places(question: LobQuestion, one: OnCourt) -> Iterator[Effect]:
    match question.theirs:
        case Depth.BOTH_BACK:
            size, why = sizes.BACK_ALREADY, "They are back already"
        case Depth.ONE_BACK:
            size, why = sizes.ONE_IS_BACK, "One of them is back already"
        case Depth.COMING_IN:
            size, why = sizes.JUST_MOVED_IN, "They have just moved forward"
        case _:
            return
    yield _plain("places", one, size, Mechanism.COVER, why)


def _day(question: LobQuestion, one: OnCourt) -> Iterator[Effect]:
    wind = _wind(question)
    if wind is not None:
        points, why, source = wind
        yield _plain("wind", one, points, Mechanism.OUR_ERROR, why, source=source)
    if question.sun is SunSide.THEM:
        yield _plain(
            "sun", one, sizes.SUN_IN_THEIR_EYES, Mechanism.THEIR_ERROR, "They look up into the sun"
        )


def _wind(question: LobQuestion) -> tuple[Points, str, Source] | None:
    """Row 23, in proportion to the wind; the feet are computed."""
    mph, part = question.wind_mph, question.wind_mph / sizes.USUAL_WIND_MPH
    match question.wind:
        case Wind.BEHIND_US:
            feet = wind_feet(mph)
            why = f"{mph:.0f} mph behind: lands {feet:.0f} ft longer"
            return sizes.WIND_BEHIND_10_MPH.times(part), why, FLIGHT
        case Wind.AGAINST_US if mph >= sizes.HOLDS_BELOW_MPH:
            why = f"{mph:.0f} mph against: falls {-wind_feet(-mph):.0f} ft short"
            return sizes.TOO_STRONG_AGAINST, why, FLIGHT
        case Wind.AGAINST_US:
            why = f"Into {mph:.0f} mph it holds: hit it {-wind_feet(-mph):.0f} ft further"
            return sizes.INTO_WIND_HOLDS.times(part), why, FLIGHT
        case Wind.ACROSS:
            why = "Cross wind: a high ball drifts"
            return sizes.WIND_ACROSS_10_MPH.times(part), why, COMMON_PRACTICE
        case Wind.SOME:
            return sizes.WIND_ANY_10_MPH.times(part), "Wind moves a lob most", COMMON_PRACTICE
    return None
