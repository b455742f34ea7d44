"""The decision behind a dink: the aims we can play, ranked, and the change-up."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from knowledge.dataclass import dataclass
from knowledge.effects import Decision, Effect, Option, OptionId
from knowledge.engine import Ranking, rank
from knowledge.evidence import Profile
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.conditions import marks_weak
from knowledge.tactics.dink_aims import SOFT, Aim, DinkQuestion, aims_at, attack_at
from knowledge.tactics.dink_ball import ball_of, quality
from knowledge.tactics.dink_chances import our_dinks
from knowledge.tactics.dink_effects import effects
from knowledge.tactics.dink_lanes import Spot
from knowledge.tactics.dink_noted import noted_first
from knowledge.tactics.dink_speed_up import attack_effects
from knowledge.vocabulary import BallQuality, Level, PlayerId, RallyChance, Side, Trait

DINK_SHARE = 35.0
"""Rallies of 100 with a neutral dink of ours to aim (rows 11 and 12). Common practice."""

NEUTRAL = RallyChance(0.5)

CHANGE_UP_COSTS_AT_MOST = 5.0
"""A change-up that is worth this much less is not one."""

LEVELS_WITH_SMALLER_DINKS = (Level.L3_0, Level.L3_5)
SMALLER = 0.5
"""Below 4.0 rows 10 to 15 count half: rallies end on plainer mistakes."""

_NOBODY = tuple(
    OnCourt(profile=Profile(player=PlayerId(-number), name=""), side=side)
    for number, side in ((1, Side.LEFT), (2, Side.RIGHT))
)
"""Their left and right player, where we don't know who they are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DinkAnswer:
    """The ranking, and the aims it was made of."""

    question: DinkQuestion
    aims: tuple[Aim, ...]
    ranking: Ranking
    change: Aim | None

    def aim(self, option: OptionId) -> Aim | None:
        return next((aim for aim in self.aims if aim.id == option), None)

    @property
    def best(self) -> Aim | None:
        """The best aim; None if the soft ball or the speed-up is better."""
        return self.aim(self.ranking.best.option.id)


def answer_dink(situation: Situation) -> DinkAnswer:
    """The aims ranked, and the change-up beside the best."""
    answer = ranked_dinks(situation)
    best = answer.best
    if best is None:
        return answer
    question = answer.question
    everything = _playable(question, _named(question, situation) or question.pair)
    return replace(answer, change=_change_up(question, best, everything, situation))


def ranked_dinks(situation: Situation) -> DinkAnswer:
    """The aims ranked, without a change-up."""
    question = _question(situation)
    aims = _of_wing(_playable(question, _named(question, situation) or question.pair), situation)
    is_open = situation.asked.wing is None and not _named(question, situation)
    decision = _decision(question, aims, with_soft=is_open)
    ranking = noted_first(rank(_at_level(decision, situation.level), situation), aims)
    return DinkAnswer(question=question, aims=aims, ranking=ranking, change=None)


def _named(question: DinkQuestion, situation: Situation) -> tuple[OnCourt, ...]:
    """Whom it is about, of those opposite."""
    return tuple(one for one in question.pair if one.player in situation.asked.about)


def _question(situation: Situation) -> DinkQuestion:
    side, striker = _striker(situation)
    pair = situation.theirs or _NOBODY
    if not situation.theirs and side is None:
        side = Side.RIGHT  # the lanes are named from the striker's court, so either will do
    return DinkQuestion(
        pair=pair,
        striker=striker,
        striker_side=side,
        ball=quality(situation) or BallQuality.NEUTRAL,
        met=ball_of(situation),
        scatter=our_dinks(striker, situation.level),
    )


def _striker(situation: Situation) -> tuple[Side | None, OnCourt | None]:
    striker = None if situation.striker is None else situation.find(situation.striker)
    side = situation.asked.striker_side
    if side is None:
        return (None if striker is None else striker.side), striker
    there = next((one for one in situation.ours if one.side is side), None)
    return side, there or (striker if striker and striker.side is None else None)


def _playable(question: DinkQuestion, targets: Iterable[OnCourt]) -> tuple[Aim, ...]:
    """All aims but those that ask for a touch our own profile marks as a weakness."""
    aims = [aim for target in targets for aim in aims_at(target, question.striker_side)]
    if marks_weak(question.striker, Trait.FOREHAND_DINK, Trait.BACKHAND_DINK):
        aims = [aim for aim in aims if aim.spot is not Spot.SIDELINE]
    return tuple(aims)


def _of_wing(aims: tuple[Aim, ...], situation: Situation) -> tuple[Aim, ...]:
    """Only the wing asked for, where it is known which foot that is."""
    wing = situation.asked.wing
    return tuple(aim for aim in aims if wing is None or aim.wing in (None, wing)) or aims


def _decision(question: DinkQuestion, aims: tuple[Aim, ...], *, with_soft: bool) -> Decision:
    options: list[Option] = [aim.option for aim in aims]
    found: list[Effect] = list(effects(question, aims))
    if with_soft or question.ball is BallQuality.STRETCHED:
        options.append(Option(id=SOFT, label="soft, to the middle"))
    else:
        found = [effect for effect in found if SOFT not in effect.on]
    if question.ball is BallQuality.EASY and _can_speed_up(question):
        for target in {aim.target.player: aim.target for aim in aims}.values():
            options.append(attack_at(target))
            found += attack_effects(question, target)
    return Decision(options=tuple(options), effects=tuple(found), neutral=NEUTRAL, share=DINK_SHARE)


def _at_level(decision: Decision, level: Level | None) -> Decision:
    if level not in LEVELS_WITH_SMALLER_DINKS:
        return decision
    smaller = tuple(
        replace(effect, points=effect.points.times(SMALLER)) if effect.is_rule_of_thumb else effect
        for effect in decision.effects
    )
    return replace(decision, effects=smaller)


def _can_speed_up(question: DinkQuestion) -> bool:
    return not marks_weak(question.striker, Trait.SPEED_UP)


def _change_up(
    question: DinkQuestion, best: Aim, aims: tuple[Aim, ...], situation: Situation
) -> Aim | None:
    """The best other aim, at the same player if that costs little; never far worse."""
    if question.ball is BallQuality.STRETCHED:
        return None
    decision = _at_level(_decision(question, aims, with_soft=False), situation.level)
    ranking = rank(decision, situation)
    worth = {one.option.id: 100 * one.chance for one in ranking.ranked}
    near = [
        aim
        for aim in aims
        if aim.id != best.id and worth[best.id] - worth[aim.id] <= CHANGE_UP_COSTS_AT_MOST
    ]
    same_player = [aim for aim in near if aim.target.player == best.target.player]
    return max(same_player or near, key=lambda aim: worth[aim.id], default=None)
