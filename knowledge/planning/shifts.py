"""What a pair that is losing may change: who covers, who crosses, who stands where, whom they hit.

How likely each is beside the others is common practice, no source; what each would cost our plan is
computed by supposing it of these people.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from types import MappingProxyType

from knowledge.dataclass import dataclass
from knowledge.evidence import TraitEstimate
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.dink_lanes import Spot
from knowledge.tactics.target_sizes import COVERED_KEEPS
from knowledge.vocabulary import EvidenceId, Trait

SUPPOSED = "supposed:"
"""How the evidence of what is only supposed begins: no note and no rally stands behind it."""

SUPPOSED_LEVEL = 0.8
"""How far a habit goes that they take up on purpose, of full. Common practice, no source."""

SUPPOSED_VARIANCE = 0.02
"""How unsure that is: they may do it half-heartedly. Common practice, no source."""

COVER, POACH, TAKES, DEEP, SWAP = "cover", "poach", "takes", "deep", "swap"
"""The changes by name. `TAKES`: they hide the target, whose partner plays most balls."""

COVER_FIRST = 1.0
POACH_NEXT = 0.7
DEEP_RETURNS = 0.5
TAKES_OVER = 0.5
SWAP_RARELY = 0.4
STACKERS_SWAP = 0.8
"""How likely a change is beside sliding over, which costs them nothing and needs no word.

Who stacks already changes sides more readily. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """One change of theirs: how likely beside the others, its sign, and the match as it then is.

    `kept` tells which option of then is what the plan's option says now.
    """

    id: str
    weight: float
    sign: str
    situation: Situation
    kept: Callable[[str], str] = str


def shifts(situation: Situation, target: OnCourt) -> Iterator[Shift]:
    """Every change that they may make while most of our balls go at the target."""
    partner = next((one for one in situation.theirs if one.player != target.player), None)
    if partner is None:
        return
    yield Shift(
        id=COVER,
        weight=COVER_FIRST,
        sign=f"{partner.name} slides over to cover {target.name}",
        situation=_covering(situation, partner, target),
    )
    yield Shift(
        id=POACH,
        weight=POACH_NEXT,
        sign=f"{partner.name} crosses for our thirds",
        situation=_taking_up(situation, partner, Trait.POACHING),
    )
    yield Shift(
        id=TAKES,
        weight=TAKES_OVER,
        sign=f"{partner.name} takes most of the court",
        situation=_taking_up(_covering(situation, partner, target), partner, Trait.POACHING),
    )
    yield Shift(
        id=DEEP,
        weight=DEEP_RETURNS,
        sign="their returns land deep",
        situation=_returning_deep(situation),
    )
    if all(one.side is not None for one in situation.theirs):
        stacks = any(one.profile.habit(Trait.STACKS).level > 0 for one in situation.theirs)
        yield Shift(
            id=SWAP,
            weight=STACKERS_SWAP if stacks else SWAP_RARELY,
            sign=f"{target.name} moves to the {_other_side(target)} side",
            situation=_swapped(situation),
            kept=_same_wing,
        )


def _other_side(one: OnCourt) -> str:
    return "" if one.side is None else one.side.other.value


def _covering(situation: Situation, partner: OnCourt, target: OnCourt) -> Situation:
    """The partner squeezes, and of the target's weaknesses row 25 leaves its part."""
    left = 1 - (1 - COVERED_KEEPS) * SUPPOSED_LEVEL
    skills = {
        key: replace(one, level=left * one.level) if one.level < 0 and not key[1] else one
        for key, one in target.profile.skills.items()
    }
    covered = replace(target, profile=replace(target.profile, skills=MappingProxyType(skills)))
    squeezed = _taking_up(situation, partner, Trait.SQUEEZES_MIDDLE)
    return _replaced(squeezed, covered)


def _returning_deep(situation: Situation) -> Situation:
    for one in situation.theirs:
        situation = _taking_up(situation, one, Trait.RETURN_DEPTH, habit=False)
    return situation


def _now(situation: Situation, one: OnCourt) -> OnCourt:
    """The same player as supposed so far."""
    return next(each for each in situation.theirs if each.player == one.player)


def _taking_up(
    situation: Situation, one: OnCourt, trait: Trait, *, habit: bool = True
) -> Situation:
    """The same with that habit or skill taken up; a stronger one as noted stands."""
    one = _now(situation, one)
    known = one.profile.habit(trait) if habit else one.profile.skill(trait)
    if known.level >= SUPPOSED_LEVEL:
        return situation
    estimate = TraitEstimate(
        level=SUPPOSED_LEVEL,
        variance=SUPPOSED_VARIANCE,
        evidence=(EvidenceId(f"{SUPPOSED}{one.player}:{trait}"),),
        says_yes=1,
    )
    skills = MappingProxyType({**one.profile.skills, (trait, habit): estimate})
    return _replaced(situation, replace(one, profile=replace(one.profile, skills=skills)))


def _replaced(situation: Situation, changed: OnCourt) -> Situation:
    theirs = tuple(changed if each.player == changed.player else each for each in situation.theirs)
    return replace(situation, theirs=theirs)


def _swapped(situation: Situation) -> Situation:
    theirs = tuple(
        replace(one, side=None if one.side is None else one.side.other) for one in situation.theirs
    )
    return replace(situation, theirs=theirs)


def _same_wing(option: str) -> str:
    """Who changes sides has the same wing at the other foot."""
    player, _, spot = option.partition(":")
    if spot not in {*Spot}:
        return option
    other = Spot.SIDELINE if spot == Spot.MIDDLE else Spot.MIDDLE
    return f"{player}:{other}"
