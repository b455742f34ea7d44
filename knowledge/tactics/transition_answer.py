"""The decisions on the way in: go or split, where the fifth goes, where the fourth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from knowledge.ball_facts import Depth
from knowledge.dataclass import dataclass
from knowledge.effects import Decision, Effect, Option, OptionId
from knowledge.engine import Ranking, rank
from knowledge.planning.thirds import LEAST_GAIN
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import transition_sizes as sizes
from knowledge.tactics.conditions import marks_weak
from knowledge.tactics.told_ball import striker_of
from knowledge.tactics.transition_effects import (
    ANGLE,
    ATTACK,
    BLOCK,
    BOUNCE,
    DEEP,
    DEEP_LATE,
    GO,
    LIFT,
    SHORT,
    SOFT,
    SOFT_LATE,
    SOFT_LINE,
    SPLIT,
    deep_at,
    fifth_effects,
    fourth_effects,
    move_effects,
    soft_at,
)
from knowledge.tactics.transition_said import Stage, TransitionSaid, transition_said
from knowledge.vocabulary import RallyChance, Trait

COMING = (Depth.COMING_IN, Depth.ONE_BACK)


@dataclass(frozen=True, slots=True, kw_only=True)
class TransitionAnswer:
    """What was asked, the options ranked, and who of theirs the best one goes at."""

    said: TransitionSaid
    ranking: Ranking
    target: OnCourt | None
    striker: OnCourt | None

    @property
    def best(self) -> OptionId:
        return self.ranking.best.option.id


def answer_transition(situation: Situation) -> TransitionAnswer:
    said = transition_said(situation)
    striker = striker_of(situation)
    match said.stage:
        case Stage.MOVE:
            decision = _move(said, striker, situation.theirs)
        case Stage.FIFTH:
            decision = _fifth(said, striker, situation.theirs)
        case Stage.FOURTH:
            decision = _fourth(said, striker, situation.theirs)
    ranking = _ranked(decision, situation)
    where = ranking.best.option.id.partition(":")[2]
    target = next((one for one in situation.theirs if str(one.player) == where), None)
    return TransitionAnswer(said=said, ranking=ranking, target=target, striker=striker)


def _ranked(decision: Decision, situation: Situation) -> Ranking:
    """At one of them only where that gains something over the middle."""
    ranking = rank(decision, situation)
    shot, _, where = ranking.best.option.id.partition(":")
    if not where.isdecimal() or ranking.gain(OptionId(f"{shot}:middle")) >= LEAST_GAIN:
        return ranking
    kept = [one for one in decision.options if not one.id.partition(":")[2].isdecimal()]
    known = {one.id for one in kept}
    effects = tuple(effect for effect in decision.effects if effect.on <= known)
    return rank(replace(decision, options=tuple(kept), effects=effects), situation)


def _decision(
    options: Sequence[tuple[OptionId, str]],
    effects: Sequence[Effect],
    neutral: RallyChance,
    share: float,
) -> Decision:
    known = {id for id, _ in options}
    return Decision(
        options=tuple(Option(id=id, label=label) for id, label in options),
        effects=tuple(effect for effect in effects if effect.on <= known),
        neutral=neutral,
        share=share,
    )


def _move(said: TransitionSaid, runner: OnCourt | None, theirs: tuple[OnCourt, ...]) -> Decision:
    options = [(GO, "run in"), (SPLIT, "stop and split")]
    effects = list(move_effects(said, runner, theirs))
    return _decision(options, effects, sizes.COMING_IN_CHANCE, sizes.MOVE_SHARE)


def _fifth(said: TransitionSaid, hitter: OnCourt | None, theirs: tuple[OnCourt, ...]) -> Decision:
    """With a weak reset of our own the soft ball is a block; no attack with a weak speed-up."""
    resets = not marks_weak(hitter, Trait.RESET)
    soft = SOFT if resets else BLOCK
    options = [(soft, "soft, low to the middle" if resets else "block it to the middle")]
    if resets:
        options += [(soft_at(one), f"soft at {one.name}'s feet") for one in theirs]
        if said.asks_line:
            options.append((SOFT_LINE, "soft down the line"))
        if said.theirs in COMING:
            options.append((SOFT_LATE, "soft at the one coming in"))
    if not marks_weak(hitter, Trait.SPEED_UP):
        options.append((ATTACK, "hit down on it"))
    effects = list(fifth_effects(said, hitter, theirs, soft))
    return _decision(options, effects, sizes.COMING_IN_CHANCE, sizes.FIFTH_SHARE)


def _fourth(said: TransitionSaid, hitter: OnCourt | None, theirs: tuple[OnCourt, ...]) -> Decision:
    """Whoever's volleys are both weak lets it bounce and plays it soft."""
    if all(marks_weak(hitter, each) for each in (Trait.FOREHAND_VOLLEY, Trait.BACKHAND_VOLLEY)):
        options = [(BOUNCE, "let it bounce, soft to the middle")]
        return _decision(options, [], sizes.FOURTH_CHANCE, sizes.FOURTH_SHARE)
    options = [(DEEP, "deep to the middle, at the feet")]
    options += [(deep_at(one), f"deep at {one.name}'s feet") for one in theirs]
    if said.theirs in COMING:
        options.append((DEEP_LATE, "deep at the feet of the one coming in"))
    options += [(LIFT, "soft to the middle"), (SHORT, "drop it short"), (ANGLE, "angle it")]
    effects = list(fourth_effects(said, theirs))
    return _decision(options, effects, sizes.FOURTH_CHANCE, sizes.FOURTH_SHARE)
