"""Cases of one ball as told: a situation in short words, and which effects act on it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from aim_cases import Case, situation_of

from knowledge.advice import Advice
from knowledge.ball_facts import BallFacts, Depth, Footing, Spin
from knowledge.effects import Effect, Truth
from knowledge.engine import Ranking
from knowledge.situation import Situation
from knowledge.vocabulary import BallKind, Topic, Trait, Wing

_FACTS = {"footing": Footing, "theirs": Depth, "ours": Depth, "spin": Spin}


def told_situation(case: Case, topic: Topic) -> Situation:
    """`situation_of` with `facts` of the ball, `wing`, `kind` and who of ours is asked about."""
    situation = situation_of(case, topic)
    told: dict[str, Any] = {
        key: _FACTS.get(key, _as_is)(value) for key, value in case.get("facts", {}).items()
    }
    named = {*case.get("about", ())}
    asked = replace(
        situation.asked,
        facts=BallFacts(**told),
        wing=Wing(case["wing"]) if "wing" in case else None,
        ball_kind=BallKind(case["kind"]) if "kind" in case else None,
        we_serve=case.get("we_serve"),
        about=tuple(
            one.player for one in (*situation.ours, *situation.theirs) if one.name in named
        ),
    )
    return replace(situation, asked=asked)


def _as_is(value: object) -> object:
    return value


def said_of(advice: Advice) -> str:
    """Everything that the first reply shows."""
    lines = [advice.call, *(one.text for one in advice.reasons)]
    lines += [advice.number or "", advice.unless or "", advice.assumed or "", advice.caution or ""]
    return "\n".join(line for line in lines if line)


def name_of(effect: Effect) -> str:
    """An effect's name without its players and places: "gap", or the trait it looks at."""
    if effect.scale is not None and effect.scale.trait is not None:
        return str(effect.scale.trait)
    first, *rest = str(effect.id).split(":")
    is_of_a_fact = len(rest) > 1 and rest[-2] in set(Trait)
    return rest[-2] if is_of_a_fact else first


def names(effects: Iterable[Effect]) -> set[str]:
    return {name_of(effect) for effect in effects}


def acting(ranking: Ranking) -> set[str]:
    """The effects that hold for sure and move something here."""
    return {
        name_of(part.effect)
        for one in ranking.ranked
        for part in one.parts
        if part.truth is Truth.YES and abs(part.points) > 1e-9
    }


def idle(ranking: Ranking) -> set[str]:
    """The effects that are declared here, or not even that, and surely move nothing."""
    maybe = {
        name_of(part.effect)
        for one in ranking.ranked
        for part in one.parts
        if part.truth is not Truth.NO and abs(part.points) > 1e-9
    }
    return names(ranking.decision.effects) - maybe
