"""Why this third: notes first, then how often it works, the wind, the ball, the other shot."""

from __future__ import annotations

from knowledge.advice import MAX_REASONS, Reason
from knowledge.effects import OptionId, Truth
from knowledge.engine import Part, Ranked
from knowledge.flight import Shot
from knowledge.planning.phrases import skill_words
from knowledge.planning.thirds import Third
from knowledge.situation import Situation
from knowledge.tactics import third_words as words
from knowledge.tactics.aim_words import WIND
from knowledge.tactics.shot_success import SUCCESS, our_scatter
from knowledge.tactics.third_contact import Met, contact_of
from knowledge.tactics.third_effects import scatter_of, third_ball, wind_words
from knowledge.tactics.third_options import DRIVE, DROP, LINE, LOB, trait_of_shot
from knowledge.tactics.third_said import ThirdSaid
from knowledge.tactics.third_success import (
    HANDS,
    ThirdBall,
    drive_words,
    success_words,
)
from knowledge.tactics.told_reasons import best_other_shot, noted_by_name, plain
from knowledge.tactics.wind_along import wind_along_mps
from knowledge.vocabulary import Trait

LIKELY = 0.6
"""A condition that holds this often may carry a reason, with the other branch said."""

LEAST_SAID = 0.3
"""Points below which a reason is none."""


def reasons_of(third: Third, said: ThirdSaid, situation: Situation) -> tuple[Reason, ...]:
    """Notes first, then how often it works, the wind, the ball; the fifth where no call says it."""
    fifth = plain(words.FIFTH[third.shot]) if third.shot in words.FIFTH else ()
    parts = third.weighed.ranking.of(third.option).parts
    noted = noted_by_name([part for part in parts if not _is_success(part)], situation)
    works = [_reason(part) for part in parts if _is_success(part)]
    told = [_reason(part) for part in _told(third, said)]
    asked = told[:1] if said.asks_lob or said.asks_line else []
    found = (
        *(*noted, *_our_note(third, said))[:1],
        *asked,
        *_blown(third, situation),
        *works,
        *told,
        *_against(third, said, situation),
    )
    return (*dict.fromkeys(found),)[: MAX_REASONS - len(fifth)] + fifth


def rule_why(situation: Situation) -> tuple[Reason, ...]:
    """How often the drop works off a deep return, and the time that a drive off a short one leaves.

    For the usual scatter of the level: whose third it will be is not known.
    """
    scatter = our_scatter(None, Trait.THIRD_SHOT_DROP, situation.level)
    wind = wind_along_mps(situation.wind, situation.asked.facts.wind_mps)
    deep, short = Met(deep=True), Met(short=True)
    deep_ball, short_ball = (
        ThirdBall(contact=contact_of(met), wind_mps=wind) for met in (deep, short)
    )
    return (
        Reason(text=success_words(Shot.DROP, deep_ball, scatter, deep), source=SUCCESS),
        Reason(text=success_words(Shot.DRIVE, short_ball, scatter, short), source=SUCCESS),
        *plain(*words.RULE_WHY),
    )


def wind_reasons(thirds: list[Third], shot: str | None = None) -> tuple[Reason, ...]:
    """What the wind does to this shot today, or to the one it does most to."""
    ranked = [each for one in thirds for each in one.weighed.ranking.ranked]
    of_shot = [one for one in ranked if shot in (None, one.option.id.partition(":")[0])]
    blown = [part for one in of_shot for part in one.parts if part.effect.source == WIND]
    blown.sort(key=lambda part: -abs(part.points))
    return tuple(dict.fromkeys(_reason(part) for part in blown))[:1]


def over_the_other_shot(third: Third) -> tuple[str, float]:
    other = best_other_shot(third.weighed.ranking, third.shot)
    if other is None:
        return "", 0.0
    best = third.weighed.ranking.of(third.option)
    return other.option.id.partition(":")[0], 100 * (best.chance - other.chance)


def _our_note(third: Third, said: ThirdSaid) -> tuple[Reason, ...]:
    """What our notes say for this shot of the hitter's, which is in its scatter already."""
    trait = trait_of_shot(third.shot, said)
    estimate = None if third.hitter is None else third.hitter.profile.skill(trait)
    if third.hitter is None or estimate is None or not estimate.evidence:
        return ()
    if estimate.level <= 0 or estimate.is_open:
        return ()
    text = f"{third.hitter.name}: {skill_words(trait, strong=True)}"
    return (Reason(text=text, source=estimate.source),)


def _blown(third: Third, situation: Situation) -> tuple[Reason, ...]:
    """How to aim this shot in today's wind, where that is known."""
    because = wind_words(situation.wind, third.shot)
    return () if because is None else (Reason(text=because, source=WIND),)


def _against(third: Third, said: ThirdSaid, situation: Situation) -> tuple[Reason, ...]:
    """Where the drop is the call and a drive is ours too: how a drive would get there."""
    other, _ = over_the_other_shot(third)
    if third.shot != DROP or other != DRIVE or said.both_back:
        return ()
    scatter = scatter_of(third.hitter, DRIVE, said, situation)
    return (Reason(text=drive_words(third_ball(said, situation), scatter), source=HANDS),)


def _told(third: Third, said: ThirdSaid) -> list[Part]:
    """What is likely of the ball and speaks for this shot, or against the best of the others."""
    ranking = third.weighed.ranking
    against = [
        one
        for one in (best_other_shot(ranking, third.shot), _asked_about(third, said))
        if one is not None
    ]
    found = [part for part in ranking.of(third.option).parts if part.points > LEAST_SAID]
    found += [part for other in against for part in other.parts if part.points < -LEAST_SAID]
    likely = [one for one in found if one.effect.scale is None and _is_likely(one)]
    said_here = [one for one in likely if not _is_success(one) and one.effect.source != WIND]
    return sorted(said_here, key=lambda part: -abs(part.points))


def _is_likely(part: Part) -> bool:
    return part.truth is Truth.YES or part.effect.when.prevalence >= LIKELY


def _asked_about(third: Third, said: ThirdSaid) -> Ranked | None:
    """The lob, or the same shot down the line, where that was asked about and is not the call."""
    ranked = third.weighed.ranking.ranked
    if said.asks_lob and third.shot != LOB:
        return next((one for one in ranked if one.option.id.startswith(LOB)), None)
    if said.asks_line and third.where != LINE and third.shot != LOB:
        return third.weighed.ranking.of(OptionId(f"{third.shot}:{LINE}"))
    return None


def _is_success(part: Part) -> bool:
    return part.effect.source == SUCCESS


def _reason(part: Part) -> Reason:
    return Reason(text=part.effect.because, source=part.effect.source)
