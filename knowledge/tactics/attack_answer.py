"""The decision behind a speed-up: at whom and where, shared with plan, cue and targets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from knowledge.beliefs import FLOOR_SD_POINTS
from knowledge.dataclass import dataclass
from knowledge.effects import Decision, OptionId
from knowledge.engine import Part, Ranked, Ranking, rank
from knowledge.evidence import TraitEstimate
from knowledge.planning import sizes as planned
from knowledge.planning.weighing import Weighed, driver_of, is_open, option
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.attack_effects import spot_effects
from knowledge.tactics.attack_question import AttackQuestion, question_of
from knowledge.tactics.attack_spots import (
    CHEST,
    PADDLE_HIP,
    SEAM_ID,
    BodySpot,
    counter_met,
    spots_of,
)
from knowledge.tactics.conditions import marks_weak
from knowledge.vocabulary import LOGIT_PER_POINT, Trait

SEAM_LABEL = "the seam"

LEAST_LEAD = 0.5
"""Points by which notes must speak more against the one than against the other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Aimed:
    """Where a speed-up goes: the spots, and how they weigh. `spot` is None for the seam."""

    question: AttackQuestion
    spots: tuple[BodySpot, ...]
    weighed: Weighed
    spot: BodySpot | None

    @property
    def is_settled(self) -> bool:
        """Whether notes on them stand behind it: for the one it is aimed at, or against the other.

        A strong counter beside the target points at the target as a weak one in it would.
        """
        return bool(self.weighed.evidence) or self.spared is not None

    @property
    def spared(self) -> tuple[OnCourt, Part] | None:
        """Whom of the two notes speak against, and the part that does so most.

        None where they speak as much against the one it is aimed at.
        """
        if self.spot is None:
            return None
        best = self.weighed.ranking.best
        for ranked in self.weighed.ranking.ranked:
            spot = self.spot_of(ranked.option.id)
            if spot is None or spot.target.player == self.spot.target.player:
                continue
            lead = _noted(self.spot.target, best) - _noted(spot.target, ranked)
            against = _most_against(spot.target, ranked) if lead >= LEAST_LEAD else None
            return None if against is None else (spot.target, against)
        return None

    @property
    def turned_from(self) -> OnCourt | None:
        """Whom the call leaves out, where nothing but that speaks for the one it is aimed at."""
        return None if self.weighed.driver or self.spared is None else self.spared[0]

    def spot_of(self, option: OptionId) -> BodySpot | None:
        return next((one for one in self.spots if one.id == option), None)


def aimed(situation: Situation) -> Aimed:
    """The best spot against the plain chest-high ball: of near-equals what notes speak for.

    Two options within the doubt that every rule keeps are as good as equal: then whoever the book
    speaks of goes first. Plan, cue, whom to target and the speed-up's own page all ask here.
    """
    question = question_of(situation)
    spots = spots_of(question.pair, leaning=question.leaning, jammed=question.jammed)
    options = [option(CHEST, "chest high"), *(spot.option for spot in spots)]
    if len(question.pair) > 1:
        options.append(option(SEAM_ID, SEAM_LABEL))
    decision = Decision(
        options=tuple(options),
        effects=spot_effects(question, spots),
        neutral=planned.ATTACKING_CHANCE,
        share=planned.HANDS_SHARE,
    )
    weighed = _noted_first(rank(decision, situation), question.pair)
    best = OptionId(weighed.best)
    return Aimed(
        question=question,
        spots=spots,
        weighed=weighed,
        spot=next((one for one in spots if one.id == best), None),
    )


def _settled(one: OnCourt, ranked: Ranked) -> list[Part]:
    """What notes on this player say of a ball there, where they agree."""
    return [
        part
        for part in ranked.parts
        if part.evidence
        and part.effect.scale is not None
        and part.effect.scale.player == one.player
        and not is_open(part)
    ]


def _noted(one: OnCourt, ranked: Ranked) -> float:
    return sum(part.points for part in _settled(one, ranked))


def _most_against(one: OnCourt, ranked: Ranked) -> Part | None:
    return next((part for part in _settled(one, ranked) if part.points < 0), None)


def _noted_first(ranking: Ranking, pair: Sequence[OnCourt]) -> Weighed:
    first = _called(ranking, pair)
    rest = (one for one in ranking.ranked if one is not first)
    ordered = replace(ranking, ranked=(first, *rest))
    return Weighed(
        ranking=ordered,
        gain=ordered.gain(OptionId(CHEST)),
        driver=driver_of(first.parts, pair),
    )


def _called(ranking: Ranking, pair: Sequence[OnCourt]) -> Ranked:
    best = ranking.best
    near = [
        one
        for one in ranking.ranked
        if one.option.id != CHEST
        and (best.logit - one.logit) / LOGIT_PER_POINT <= FLOOR_SD_POINTS
        and driver_of(one.parts, pair) is not None
    ]
    return min(near, key=_order, default=best)


def _order(one: Ranked) -> tuple[float, bool]:
    """Best first; of equal ones the paddle hip, as the general rule has it."""
    return -round(one.logit, 9), not one.option.id.startswith(PADDLE_HIP)


def hitters(situation: Situation) -> list[OnCourt]:
    """Those of us whose own profile does not mark the speed-up as a weakness."""
    return [one for one in situation.ours if not marks_weak(one, Trait.SPEED_UP)]


def punishing(found: Aimed) -> dict[str, TraitEstimate]:
    """The counter that each hip meets when they wait for it."""
    return {
        spot.id: spot.target.profile.skill(counter_met(spot)) for spot in found.spots if spot.is_hip
    }
