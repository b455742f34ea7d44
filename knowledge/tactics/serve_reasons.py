"""Why a serve is called so: the day, notes on the receiver, our own serve, and depth."""

from __future__ import annotations

from knowledge.advice import Reason
from knowledge.effects import Truth
from knowledge.flight import Shot
from knowledge.planning.weighing import is_open
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.aim_words import REASONS, naive_said, short, wind_reasons
from knowledge.tactics.conditions import marks_weak
from knowledge.tactics.serve_answer import ServeAnswer
from knowledge.tactics.shot_success import SUCCESS
from knowledge.tactics.sun_said import SunSide, sun_told
from knowledge.vocabulary import Trait


def reasons_for(
    each: tuple[tuple[ServeAnswer, ...], ...],
    first: ServeAnswer,
    situation: Situation,
) -> tuple[Reason, ...]:
    """The day first where it was asked about, then notes, and depth."""
    wind_mps = first.question.depth.ball.wind_mps
    wind = wind_reasons(situation.wind, Shot.SERVE, wind_mps)
    found = [*_sun(situation), *wind, *_own_serve(first)]
    if not first.is_deep:
        found.append(_depth(first))
    found += _from_notes(each)
    found += _spoken(first)
    found.append(_depth(first))
    return tuple(list(dict.fromkeys(found))[:REASONS])


def _from_notes(each: tuple[tuple[ServeAnswer, ...], ...]) -> list[Reason]:
    """What notes say for each receiver's lane, the strongest first."""
    drivers = [
        max((answer.driver for answer in group if answer.driver), key=lambda one: one.points)
        for group in each
        if any(answer.driver for answer in group)
    ]
    return [
        Reason(text=part.effect.because, source=part.effect.source)
        for part in sorted(drivers, key=lambda one: -one.points)
    ]


def _spoken(answer: ServeAnswer) -> list[Reason]:
    """What else is known to speak for this lane, or from notes against the next."""
    best, *others = answer.ranking.ranked
    parts = [
        part
        for part in best.parts
        if part.points > 0 and part.truth is Truth.YES and part.effect.scale is None
    ]
    against = [
        part
        for other in others
        for part in other.parts
        if part.points < 0 and part.evidence and not is_open(part)
    ]
    return [
        Reason(text=part.effect.because, source=part.effect.source) for part in [*against, *parts]
    ]


def _depth(answer: ServeAnswer) -> Reason:
    if answer.is_deep:
        return Reason(text="Depth keeps the returner behind the run", source=COMMON_PRACTICE)
    return Reason(text=naive_said(answer.question.depth), source=SUCCESS)


def _own_serve(answer: ServeAnswer) -> list[Reason]:
    server = answer.question.server
    if server is None or not marks_weak(server, Trait.SERVE):
        return []
    estimate = server.profile.skill(Trait.SERVE)
    source = estimate.source
    said = (f"{server.name}'s own serve: get it in first", "Your own serve: get it in first")
    return [Reason(text=short(said), source=source)]


def _sun(situation: Situation) -> list[Reason]:
    match sun_told(situation.asked):
        case SunSide.THEM:
            text = "Higher arc: they look up into the sun"
        case SunSide.US:
            text = "Sun in your eyes: low toss or drop serve"
        case _:
            return []
    return [Reason(text=text, source=COMMON_PRACTICE)]
