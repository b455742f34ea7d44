"""Reasons and figures that the pages on one told ball share."""

from __future__ import annotations

from collections.abc import Iterable
from types import MappingProxyType

from knowledge.advice import Confidence, Reason
from knowledge.effects import Truth
from knowledge.engine import Part, Ranked, Ranking, confidence_of
from knowledge.normal import chances_of_being_best
from knowledge.planning.weighing import is_open
from knowledge.rulebook import rule_named
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.vocabulary import TRAITS, Trait

GENERAL = "General rule: no notes decide."


def plain(*texts: str) -> tuple[Reason, ...]:
    """What good players do and teach."""
    return tuple(Reason(text=text, source=COMMON_PRACTICE) for text in texts)


def ruled(name: str, text: str, *, reason: int = 0) -> Reason:
    """Our short words for a reason of a rule, with the edition it stands in; KeyError without."""
    rule = rule_named(name)
    if rule is None:
        raise KeyError(f"the rulebook has no {name!r}")
    return Reason(text=text, source=rule.ruling.reasons[reason].source)


def weak_shot(one: OnCourt, trait: Trait) -> Reason:
    """A shot of our own that the notes mark as weak."""
    text = f"{one.name}'s {TRAITS[trait].label} is weak"
    return Reason(text=text, source=one.profile.skill(trait).source)


def noted(parts: Iterable[Part]) -> tuple[Reason, ...]:
    """What notes say, where they do not contradict each other."""
    return tuple(
        Reason(text=part.effect.because, source=part.source)
        for part in parts
        if part.evidence and not is_open(part)
    )


def noted_for(ranking: Ranking) -> tuple[Reason, ...]:
    """What notes say for the best option, and then against the others."""
    helping = [part for part in ranking.best.parts if part.points > 0]
    return tuple(dict.fromkeys((*noted(helping), *noted_against_others(ranking))))


def noted_against_others(ranking: Ranking) -> tuple[Reason, ...]:
    return noted(part for one in ranking.ranked[1:] for part in one.parts if part.points < 0)


def noted_by_name(parts: Iterable[Part], situation: Situation) -> list[Reason]:
    """What notes say for it in these parts, with whom they are of."""
    found = []
    for part in parts:
        scale = part.effect.scale
        one = None if scale is None else situation.find(scale.player)
        if one is None or part.points <= 0 or not part.evidence or is_open(part):
            continue
        said = part.effect.because
        text = said if one.name in said else f"{one.name}: {said}"
        found.append(Reason(text=text, source=part.source))
    return found


def told_for(ranking: Ranking) -> tuple[Reason, ...]:
    """What the ball itself, as told, says for the best option or against the next one."""
    found = [part for part in ranking.best.parts if part.points > 0]
    found += [part for one in ranking.ranked[1:2] for part in one.parts if part.points < 0]
    sure = [part for part in found if part.truth is Truth.YES and part.effect.scale is None]
    sure.sort(key=lambda part: -abs(part.points))
    return tuple(
        dict.fromkeys(Reason(text=one.effect.because, source=one.effect.source) for one in sure)
    )


def is_general(ranking: Ranking) -> bool:
    """Whether no note has a say in the ranking."""
    return not any(part.evidence for one in ranking.ranked for part in one.parts)


def best_other_shot(ranking: Ranking, shot: str) -> Ranked | None:
    """The best option of another shot, where ids are "shot:place"; None without one."""
    others = (one for one in ranking.ranked if one.option.id.partition(":")[0] != shot)
    return next(others, None)


def shot_confidence(ranking: Ranking) -> Confidence:
    """How sure the best shot is, over the other shots: where it goes is the smaller question."""
    best = ranking.best
    other = best_other_shot(ranking, best.option.id.partition(":")[0])
    if other is None:
        return Confidence.CLEAR
    p_best = chances_of_being_best(
        [best.logit, other.logit], [best.logit_variance, other.logit_variance]
    )[0]
    return confidence_of(p_best)


def figures(ranking: Ranking, **more: float) -> MappingProxyType[str, float]:
    """The ranking's figures by name, with the page's own."""
    points = float(ranking.gain())
    return MappingProxyType(
        {
            "points_over_next": points,
            "p_best": ranking.best.p_best,
            "chance": float(ranking.best.chance),
            "chance_sd": ranking.best.sd,
            "share": ranking.share,
            "rallies_in_100": points * ranking.share / 100,
            **more,
        }
    )
