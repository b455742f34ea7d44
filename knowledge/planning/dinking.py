"""The dink line of a plan, from the dink's own topic: an aim for either of our courts."""

from __future__ import annotations

from dataclasses import replace

from knowledge.court_picture import Arrow
from knowledge.engine import Part
from knowledge.planning.line import Line, Phase, worth_of
from knowledge.planning.phrases import fact_words
from knowledge.planning.weighing import is_weak, said_of
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE, Source
from knowledge.tactics.dink_aims import Aim
from knowledge.tactics.dink_answer import DinkAnswer, answer_dink
from knowledge.tactics.dink_picture import picture
from knowledge.tactics.dink_reasons import gain_over_any_aim
from knowledge.tactics.dink_words import call, names_wing, places
from knowledge.vocabulary import RallyPoints, Topic, Trait

ACROSS_ONLY = "across; not down the line"
"""How the dink's own answer says it; a plan's line has less room."""

ROOM = 50
"""Characters that the aim and its reason may share before the place is left out."""


def dink_line(situation: Situation) -> Line | None:
    """Where to dink, as the dink's own topic answers; None without an opponent or an aim.

    Where nobody says who asks, one of us has weak dinks, and their aim is another one, the line
    is the other player's answer, by name.
    """
    if not situation.theirs:
        return None
    asked = replace(situation, topic=Topic.AIM_DINK, asked=Asked())
    for_asker = answer_dink(asked)
    shaky = [one for one in situation.ours if _has_weak_dinks(one)]
    able = [one for one in situation.ours if one not in shaky]
    if situation.striker is not None or not shaky or not able:
        return _line(for_asker, situation, only=None)
    safe = answer_dink(replace(asked, striker=shaky[0].player))
    if _same_aim(safe, for_asker):
        return _line(for_asker, situation, only=None)
    return _line(answer_dink(replace(asked, striker=able[0].player)), situation, only=able[0])


def _same_aim(one: DinkAnswer, other: DinkAnswer) -> bool:
    return one.ranking.best.option.id == other.ranking.best.option.id


def _has_weak_dinks(one: OnCourt) -> bool:
    return is_weak(one, Trait.FOREHAND_DINK) or is_weak(one, Trait.BACKHAND_DINK)


def _line(answer: DinkAnswer, situation: Situation, *, only: OnCourt | None) -> Line | None:
    best = answer.best
    if best is None:
        return None
    because, source = _grounds(answer, best, situation)
    said = call(best, names_wing=names_wing(best, None))
    where = said.rstrip(".").replace(": ", ", ").removesuffix(", at the feet")
    where = where.replace(ACROSS_ONLY, "across")
    if len(where) + len(because) > ROOM:
        where = where.replace(*places(best))
    if len(where) + len(because) > ROOM:
        where = where.partition(",")[0]
    if only is not None:
        where = f"{only.name}: {where[0].lower()}{where[1:]}"
    return Line(
        phase=Phase.DINK,
        do=where,
        because=because,
        cue=f"{where.partition(',')[0]}. Stay patient.",
        points=RallyPoints(gain_over_any_aim(answer)),
        share=answer.ranking.share / (1 if only is None else len(situation.ours)),
        source=source,
        arrow=_arrow(answer, situation),
        option=answer.ranking.best.option.id,
        worth=worth_of(answer.ranking, gain_over_any_aim(answer)),
    )


def _grounds(answer: DinkAnswer, best: Aim, situation: Situation) -> tuple[str, Source]:
    """What notes say for the aim: a trait, or the hand that settles which wing is there."""
    driver = _driver(answer, situation)
    if driver is not None:
        return said_of(driver.effect), driver.source
    hand = best.target.profile.facts.get(Trait.HAND)
    if best.wing is None or hand is None:
        return "", COMMON_PRACTICE
    because = f"{fact_words(Trait.HAND, hand.value)} on the {best.target.side}"
    return because, hand.source


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
            and not part.effect.scale.estimate.is_open
        ),
        None,
    )


def _arrow(answer: DinkAnswer, situation: Situation) -> Arrow | None:
    best = answer.best
    if best is None or best.target.side is None:
        return None
    drawn = picture(
        best,
        None,
        ours=situation.ours,
        theirs=situation.theirs,
        striker_side=answer.question.striker_side or best.target.side,
    )
    arrow = next(iter(drawn.arrows), None) if drawn else None
    return None if arrow is None else replace(arrow, label="dink", width=1.0)
