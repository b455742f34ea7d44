"""The desperate lob: high, deep and middle, both go back; or soft while we still get under it."""

from __future__ import annotations

from types import MappingProxyType
from typing import Final

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import Footing
from knowledge.effects import Decision, Effect, Mechanism, Option, OptionId
from knowledge.engine import Ranking, rank
from knowledge.situation import OnCourt, Situation, Wind
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import lob_sizes as sizes
from knowledge.tactics.conditions import first_of_ours, marks_weak, rule_of_thumb, skill
from knowledge.tactics.lob_lanes import FLIGHT, HIGH_LOB, SOFT_BLOCK, aloft_s
from knowledge.tactics.lob_words import CAUTION
from knowledge.tactics.sun_said import SunSide, sun_of_our_lob
from knowledge.vocabulary import RallyChance, Topic, Trait

HIGH, SOFT = OptionId("high lob"), OptionId("soft to the middle")

IN_TROUBLE: Final = RallyChance(0.30)
"""Our chance when stretched or pulled off the court. Common practice, no source."""

CALLS: Final = {
    HIGH: "Lob it high, deep and middle; both go back.",
    SOFT: "Block it soft to the middle, then recover.",
}


def advise(situation: Situation) -> Advice:
    """High lob or soft ball; a shot that our own profile marks as weak is no choice."""
    ranking = answer_desperate(situation)
    best = ranking.best.option.id
    is_noted = any(part.evidence for one in ranking.ranked for part in one.parts)
    return Advice(
        topic=Topic.LOB,
        call=CALLS[best],
        reasons=_reasons(ranking),
        now="Then go back together, level; no gap." if best == HIGH else None,
        unless=_UNLESS[best] if len(ranking.ranked) > 1 else None,
        caution=CAUTION,
        confidence=ranking.confidence if is_noted else Confidence.GENERAL_RULE,
        numbers=MappingProxyType(
            {
                "points_over_next": float(ranking.gain()),
                "chance": float(ranking.best.chance),
                "share": ranking.share,
                "high_lob_s": aloft_s(HIGH_LOB),
                "soft_s": aloft_s(SOFT_BLOCK),
            }
        ),
        choices=_choices(situation),
    )


_UNLESS: Final = {
    HIGH: "You can still get under it: soft to the middle.",
    SOFT: "Can't get under it? High, deep and middle.",
}


def answer_desperate(situation: Situation) -> Ranking:
    """The two ways out, ranked."""
    hitter = _hitter(situation)
    allowed = [
        option
        for option, needs in (
            (Option(id=HIGH, label="high, deep, middle"), Trait.LOB),
            (Option(id=SOFT, label="soft to the middle"), Trait.RESET),
        )
        if not marks_weak(hitter, needs)
    ]
    options = allowed or [Option(id=HIGH, label="high, deep, middle")]
    known = {option.id for option in options}
    return rank(
        Decision(
            options=tuple(options),
            effects=tuple(one for one in _effects(situation, hitter) if one.on <= known),
            neutral=IN_TROUBLE,
            share=sizes.LOB_SHARE,
        ),
        situation,
    )


def _hitter(situation: Situation) -> OnCourt | None:
    return first_of_ours(situation, situation.asked.pulled_wide, situation.striker, situation.asker)


def _effects(situation: Situation, hitter: OnCourt | None) -> list[Effect]:
    time, error = Mechanism.TIME, Mechanism.OUR_ERROR
    found = [rule_of_thumb("time", HIGH, sizes.HIGH_LOB_TIME, time, _time_bought(), source=FLIGHT)]
    if situation.asked.facts.footing is Footing.STILL:
        found.append(
            rule_of_thumb(
                "reached",
                SOFT,
                sizes.SOFT_WHEN_REACHED.times(2.0),
                error,
                "Feet still: a soft ball is under control",
            )
        )
    else:
        found.append(
            rule_of_thumb(
                "on the run",
                SOFT,
                sizes.SOFT_ON_THE_RUN,
                error,
                "On the run a soft ball sits up",
            )
        )
    if situation.wind is Wind.BEHIND_US:
        found.append(
            rule_of_thumb(
                "wind",
                HIGH,
                sizes.WIND_BEHIND_10_MPH.times(2.0),
                error,
                "Wind behind: a high lob sails out",
            )
        )
    if situation.wind is Wind.AGAINST_US:
        found.append(
            rule_of_thumb("wind", HIGH, sizes.INTO_WIND_HOLDS, error, "Into the wind it holds")
        )
    if sun_of_our_lob(situation.asked) is SunSide.THEM:
        found.append(
            rule_of_thumb(
                "sun",
                HIGH,
                sizes.SUN_IN_THEIR_EYES,
                Mechanism.THEIR_ERROR,
                "They look up into the sun",
            )
        )
    for one in situation.theirs:
        found.append(
            skill(
                one,
                Trait.OVERHEAD,
                sizes.THEIR_OVERHEAD,
                Mechanism.THEIR_ERROR,
                on=(HIGH,),
                named=f"{one.name}'s overhead",
            )
        )
    if hitter is not None:
        for trait, on, named in ((Trait.LOB, HIGH, "lob"), (Trait.RESET, SOFT, "reset")):
            found.append(
                skill(
                    hitter,
                    trait,
                    sizes.OWN_TOUCH,
                    error,
                    on=(on,),
                    named=f"{hitter.name}'s {named}",
                )
            )
    return found


def _time_bought() -> str:
    return f"{aloft_s(HIGH_LOB):.1f} s in the air, a soft ball {aloft_s(SOFT_BLOCK):.1f} s"


def _reasons(ranking: Ranking) -> tuple[Reason, ...]:
    """What speaks for it or against the other, notes first; then the general ones."""
    best = ranking.best
    parts = [part for part in best.parts if part.points > 0]
    against = [part for one in ranking.ranked[1:] for part in one.parts if part.points < 0]
    known = [
        part
        for part in sorted([*parts, *against], key=lambda one: not one.evidence)
        if part.evidence or part.effect.scale is None
    ]
    found = [Reason(text=part.effect.because, source=part.source) for part in known]
    found.append(Reason(text="Middle gives no angle to the overhead", source=COMMON_PRACTICE))
    found.append(Reason(text="Both back together, then move in", source=COMMON_PRACTICE))
    return tuple(dict.fromkeys(found))[:3]


def _choices(situation: Situation) -> tuple[Choice, ...]:
    if situation.asked.facts.footing is not None:
        return ()
    return (
        Choice(
            label="I get under it",
            topic=Topic.LOB,
            fact=MatchFact.FOOTING.value,
            value=Footing.STILL.value,
        ),
    )
