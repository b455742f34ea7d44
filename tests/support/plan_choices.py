"""The decisions of a simulated rally, and four ways to take them: ours and the simple ones.

A plan is a share for each option of each decision. Ours is what the engine answers: the mix
where a page has one, else its call; whom_to_target says how often the target gets the ball.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from enum import StrEnum
from types import MappingProxyType
from typing import Final

from knowledge.evidence import Profile
from knowledge.planning.thirds import thirds_of
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics import advise
from knowledge.tactics.attack_answer import aimed
from knowledge.tactics.attack_whether import whether
from knowledge.tactics.dink_answer import answer_dink
from knowledge.tactics.dink_lanes import Spot
from knowledge.tactics.return_answer import answer_return
from knowledge.tactics.serve_answer import answer_serve
from knowledge.tactics.target_answer import Target, target_in
from knowledge.tactics.target_phases import TargetPhase
from knowledge.tactics.third_shot import third_asked
from knowledge.vocabulary import BallQuality, PlayerId, Side, Topic, Trait, Wing

FIRST, SECOND = 3, 4
"""Our opponents' numbers, in the right and in the left court."""


class Decision(StrEnum):
    """A choice of ours in a rally, told apart by what they see of it."""

    SERVE_RIGHT = "serve to the right court"
    SERVE_LEFT = "serve to the left court"
    RETURN = "return"
    THIRD_SHORT = "third off a short return"
    THIRD_DEEP = "third off a deep return"
    DINK_RIGHT = "dink from our right"
    DINK_LEFT = "dink from our left"
    ATTACK = "speed-up"


_LANES = ("wide", "t", "body")
_RETURNS = (f"at:{FIRST}", f"at:{SECOND}", "middle")
_THIRDS = tuple(
    f"{shot}:{where}" for shot in ("drop", "drive") for where in (FIRST, SECOND, "middle")
)
_DINKS = tuple(f"{one}:{spot}" for one in (FIRST, SECOND) for spot in Spot)
_HIPS = tuple(f"{hip}:{one}" for one in (FIRST, SECOND) for hip in ("paddle", "other"))
DINK_ON = "dink"
"""No speed-up: one more dink."""

OPTIONS: Final[Mapping[Decision, tuple[str, ...]]] = MappingProxyType(
    {
        Decision.SERVE_RIGHT: _LANES,
        Decision.SERVE_LEFT: _LANES,
        Decision.RETURN: _RETURNS,
        Decision.THIRD_SHORT: _THIRDS,
        Decision.THIRD_DEEP: _THIRDS,
        Decision.DINK_RIGHT: _DINKS,
        Decision.DINK_LEFT: _DINKS,
        Decision.ATTACK: (*_HIPS, f"feet:{FIRST}", f"feet:{SECOND}", "seam", DINK_ON),
    }
)

Shares = Mapping[str, float]
Plan = Mapping[Decision, Shares]

CHANGE_UP: Final = 0.1
"""How often a dink's change-up is played, "once or twice a game" of a dozen or two dinks."""

_US = (
    OnCourt(profile=Profile(player=PlayerId(1), name="Mira"), side=Side.RIGHT),
    OnCourt(profile=Profile(player=PlayerId(2), name="Tom"), side=Side.LEFT),
)
_COURTS = {Decision.SERVE_RIGHT: Side.RIGHT, Decision.SERVE_LEFT: Side.LEFT}
_FROM = {Decision.DINK_RIGHT: Side.RIGHT, Decision.DINK_LEFT: Side.LEFT}
_BALLS = {
    Decision.THIRD_SHORT: BallQuality.EASY,
    Decision.THIRD_DEEP: BallQuality.STRETCHED,
}

Pair = tuple[OnCourt, OnCourt]


def uniform_plan() -> Plan:
    """Every option alike; a ball to speed up always is, at any hip."""
    shares = {one: _even(options) for one, options in OPTIONS.items()}
    return MappingProxyType({**shares, Decision.ATTACK: _even(_HIPS)})


def _even(options: tuple[str, ...]) -> Shares:
    return {option: 1 / len(options) for option in options}


def advised_plan(theirs: Pair, *, varied: bool = True) -> Plan:
    """What the engine answers about them; not `varied`: its first choice on every ball."""
    base = Situation(topic=Topic.AIM_SERVE, ours=_US, theirs=theirs)
    found: dict[Decision, Shares] = {
        one: _serve(base, theirs, court) for one, court in _COURTS.items()
    }
    found[Decision.RETURN] = _return(base, theirs)
    found |= {one: _third(base, theirs, ball) for one, ball in _BALLS.items()}
    target = _target(base, theirs, TargetPhase.DINKS)
    found |= {one: _dink(base, theirs, side, target) for one, side in _FROM.items()}
    found[Decision.ATTACK] = _attack(base)
    kept = found if varied else {one: _first(shares) for one, shares in found.items()}
    return MappingProxyType(kept)


def _first(shares: Shares) -> Shares:
    """Only the one played most; of equals the one named first."""
    return {max(shares, key=lambda one: round(shares[one], 9)): 1.0}


def _serve(base: Situation, theirs: Pair, court: Side) -> Shares:
    receiver = theirs[0] if theirs[0].side is court else theirs[1]
    asked = Asked(striker_side=court, about=(receiver.player,))
    situation = replace(base, topic=Topic.AIM_SERVE, asked=asked)
    mix = advise(situation).mix
    if mix is None:
        return {answer_serve(situation, receiver, court).lane.value: 1.0}
    return {one.option: one.share for one in mix.shares}


def _target(base: Situation, theirs: Pair, phase: TargetPhase) -> Target | None:
    """Whom to play at in a phase; None where the answer is both alike."""
    found = target_in(replace(base, topic=Topic.WHOM_TO_TARGET), phase, theirs, mixed=False)
    return found if found is not None and found.one is not None else None


def _return(base: Situation, theirs: Pair) -> Shares:
    situation = replace(base, topic=Topic.AIM_RETURN)
    mix = advise(situation).mix
    if mix is not None:
        return {one.option: one.share for one in mix.shares}
    ranked = [one.option.id for one in answer_return(situation).ranking.ranked]
    return _fed(ranked[0], ranked[1] if len(ranked) > 1 else None, base, theirs, TargetPhase.RETURN)


def _fed(
    best: str, second: str | None, base: Situation, theirs: Pair, phase: TargetPhase
) -> Shares:
    """The call, as often as whom_to_target lets its target have the ball; else the next best."""
    target = _target(base, theirs, phase)
    if second is None or target is None or target.one is None:
        return {best: 1.0}
    if not best.endswith(f":{target.one.player}"):
        return {best: 1.0}
    return {best: target.share, second: 1 - target.share}


def _third(base: Situation, theirs: Pair, ball: BallQuality) -> Shares:
    situation = replace(base, topic=Topic.THIRD_SHOT, asked=Asked(ball=ball))
    shot, _, where = third_asked(thirds_of(situation), situation).option.partition(":")
    shot = "drop" if shot == "lob" else shot
    best = f"{shot}:{where if where.isdecimal() else 'middle'}"
    return _fed(best, f"{shot}:middle", base, theirs, TargetPhase.THIRD)


def _dink(base: Situation, theirs: Pair, side: Side, target: Target | None) -> Shares:
    """The target's best foot most of the time, now and then its change-up, else the other's."""
    found: dict[str, float] = {}
    for one in theirs:
        share = 0.5
        if target is not None and target.one is not None:
            share = target.share if target.one.player == one.player else 1 - target.share
        for option, part in _dinks_at(base, one, side).items():
            found[option] = found.get(option, 0.0) + share * part
    return found


def _dinks_at(base: Situation, one: OnCourt, side: Side) -> Shares:
    asked = Asked(striker_side=side, about=(one.player,))
    answer = answer_dink(replace(base, topic=Topic.AIM_DINK, asked=asked))
    if answer.best is None:
        return {f"{one.player}:{Spot.MIDDLE}": 1.0}
    if answer.change is None or answer.change.target.player != one.player:
        return {answer.best.id: 1.0}
    return {answer.best.id: 1 - CHANGE_UP, answer.change.id: CHANGE_UP}


def _attack(base: Situation) -> Shares:
    situation = replace(base, topic=Topic.AIM_ATTACK, asked=Asked(ball=BallQuality.EASY))
    mix = advise(situation).mix
    if mix is not None:
        return {one.option: one.share for one in mix.shares}
    found = aimed(situation)
    if not whether(situation, found).attacks:
        return {DINK_ON: 1.0}
    if not found.is_settled or found.weighed.best == "chest":
        return _even((f"paddle:{FIRST}", f"paddle:{SECOND}"))
    return {found.weighed.best: 1.0}


def weakest_plan(theirs: Pair) -> Plan:
    """Always at the weakest wing of the weaker player, as the notes say.

    The weaker one has the lower sum of noted levels; of equal ones the first. Where notes say
    nothing the backhand is the weak wing.
    """
    return _always_at(min(theirs, key=_level), theirs)


def fed_plan(theirs: Pair, share: float) -> Plan:
    """So many of the balls at the weaker one's weakest wing, the others at the partner's."""
    weak = min(theirs, key=_level)
    other = theirs[1] if weak is theirs[0] else theirs[0]
    here, there = _always_at(weak, theirs), _always_at(other, theirs)
    return MappingProxyType(
        {
            decision: {
                option: share * here[decision].get(option, 0.0)
                + (1 - share) * there[decision].get(option, 0.0)
                for option in (*here[decision], *there[decision])
            }
            for decision in Decision
        }
    )


def _always_at(one: OnCourt, theirs: Pair) -> Plan:
    """Every ball at one of them; the serve goes to whoever must receive."""
    dink = _dink_of(one)
    hip = "other" if _jams_elsewhere(one) else "paddle"
    return MappingProxyType(
        {
            Decision.SERVE_RIGHT: {_lane_of(theirs[0]): 1.0},
            Decision.SERVE_LEFT: {_lane_of(theirs[1]): 1.0},
            Decision.RETURN: {f"at:{one.player}": 1.0},
            Decision.THIRD_SHORT: {f"drive:{one.player}": 1.0},
            Decision.THIRD_DEEP: {f"drop:{one.player}": 1.0},
            Decision.DINK_RIGHT: {dink: 1.0},
            Decision.DINK_LEFT: {dink: 1.0},
            Decision.ATTACK: {f"{hip}:{one.player}": 1.0},
        }
    )


def _level(one: OnCourt) -> float:
    skills = one.profile.skills.items()
    return sum(estimate.level for (_, is_habit), estimate in skills if not is_habit)


def _weak_wing(one: OnCourt, forehand: Trait, backhand: Trait) -> Wing:
    skill = one.profile.skill
    return Wing.FOREHAND if skill(forehand).level < skill(backhand).level else Wing.BACKHAND


def _dink_of(one: OnCourt) -> str:
    wing = _weak_wing(one, Trait.FOREHAND_DINK, Trait.BACKHAND_DINK)
    middle = one.middle_wing() or (Wing.FOREHAND if one.side is Side.LEFT else Wing.BACKHAND)
    return f"{one.player}:{Spot.MIDDLE if wing is middle else Spot.SIDELINE}"


def _lane_of(one: OnCourt) -> str:
    wing = _weak_wing(one, Trait.FOREHAND_DRIVE, Trait.BACKHAND_DRIVE)
    middle = one.middle_wing() or (Wing.FOREHAND if one.side is Side.LEFT else Wing.BACKHAND)
    return "t" if wing is middle else "wide"


def _jams_elsewhere(one: OnCourt) -> bool:
    """Whether the weak wing is the backhand's counter and nothing says that the body is weaker."""
    skill = one.profile.skill
    weak = min(Trait.COUNTER_BACKHAND, Trait.BODY_JAM, key=lambda trait: skill(trait).level)
    return weak is Trait.COUNTER_BACKHAND and skill(weak).level < 0
