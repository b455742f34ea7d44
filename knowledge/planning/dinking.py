"""The dink line of a plan, from the dink's own topic: an aim for either of our courts."""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import Arrow
from knowledge.engine import Part
from knowledge.planning.line import Line, Phase
from knowledge.planning.phrases import fact_words
from knowledge.planning.weighing import is_weak, said_of
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics.dink_aims import Aim
from knowledge.tactics.dink_answer import DinkAnswer, answer_dink
from knowledge.tactics.dink_picture import picture
from knowledge.tactics.dink_words import call
from knowledge.vocabulary import BallQuality, EvidenceId, RallyPoints, Topic, Trait

ACROSS_ONLY = "across; not down the line"
"""How the dink's own answer says it; a plan's line has less room."""

ROOM = 50
"""Characters that the aim and its reason may share before the place is left out."""


def dink_line(situation: Situation) -> Line | None:
    """Where to dink; None without an opponent or an aim of our own.

    Where one of us has weak dinks and the other's best aim is another one, the better line is
    that player's, by name.
    """
    if not situation.theirs:
        return None
    shaky = [one for one in situation.ours if _has_weak_dinks(one)]
    able = [one for one in situation.ours if one not in shaky]
    for_both = answer_dink(_before_the_rally(situation, shaky[0] if shaky else None))
    line = _line(for_both, situation, only=None)
    if not shaky or not able:
        return line
    for_one = answer_dink(_before_the_rally(situation, able[0]))
    if for_one.ranking.best.option.id == for_both.ranking.best.option.id:
        return line
    by_name = _line(for_one, situation, only=able[0])
    return max((each for each in (line, by_name) if each), key=_first, default=None)


def _first(line: Line) -> tuple[int, float]:
    """A line with more notes behind it goes first: it says more about these people."""
    return len(line.evidence), line.per_100


def _has_weak_dinks(one: OnCourt) -> bool:
    return is_weak(one, Trait.FOREHAND_DINK) or is_weak(one, Trait.BACKHAND_DINK)


def _line(answer: DinkAnswer, situation: Situation, *, only: OnCourt | None) -> Line | None:
    best = answer.best
    if best is None:
        return None
    because, evidence = _grounds(answer, best, situation)
    where = call(best).rstrip(".").replace(": ", ", ").removesuffix(", at the feet")
    where = where.replace(ACROSS_ONLY, "across")
    if len(where) + len(because) > ROOM:
        where = where.partition(",")[0]
    if only is not None:
        where = f"{only.name}: {where[0].lower()}{where[1:]}"
    return Line(
        phase=Phase.DINK,
        do=where,
        because=because,
        cue=f"{where.partition(',')[0]}. Stay patient.",
        points=RallyPoints(_gain_over_any_aim(answer)),
        share=answer.ranking.share / (1 if only is None else len(situation.ours)),
        evidence=evidence,
        arrow=_arrow(answer, situation),
    )


def _before_the_rally(situation: Situation, striker: OnCourt | None) -> Situation:
    """The question as a plan puts it: a neutral ball, from either of our courts."""
    return replace(
        situation,
        topic=Topic.AIM_DINK,
        asked=Asked(ball=BallQuality.NEUTRAL),
        ours=tuple(replace(one, side=None) for one in situation.ours),
        striker=None if striker is None else striker.player,
    )


def _grounds(
    answer: DinkAnswer, best: Aim, situation: Situation
) -> tuple[str, tuple[EvidenceId, ...]]:
    """What notes say for the aim: a trait, or the hand that settles which wing is there."""
    driver = _driver(answer, situation)
    if driver is not None:
        return said_of(driver.effect), driver.evidence
    hand = best.target.profile.facts.get(Trait.HAND)
    if best.wing is None or hand is None:
        return "", ()
    return f"{fact_words(Trait.HAND, hand.value)} on the {best.target.side}", hand.evidence


def _driver(answer: DinkAnswer, situation: Situation) -> Part | None:
    theirs = {one.player for one in situation.theirs}
    return next(
        (
            part
            for part in answer.ranking.best.parts
            if part.points > 0
            and part.evidence
            and part.effect.scale is not None
            and part.effect.scale.player in theirs
        ),
        None,
    )


def _gain_over_any_aim(answer: DinkAnswer) -> float:
    chances = [one.chance for one in answer.ranking.ranked]
    return 100 * (chances[0] - sum(chances) / len(chances))


def _arrow(answer: DinkAnswer, situation: Situation) -> Arrow | None:
    best = answer.best
    if best is None or best.target.side is None:
        return None
    drawn = picture(
        best,
        None,
        ours=situation.ours,
        theirs=situation.theirs,
        striker_side=best.target.side,
    )
    arrow = next(iter(drawn.arrows), None) if drawn else None
    return None if arrow is None else replace(arrow, label="dink", width=1.0)
