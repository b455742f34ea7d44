"""What a plan changes because of our own profile."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from knowledge.dataclass import dataclass
from knowledge.planning.line import Line, Phase
from knowledge.planning.phrases import skill_words
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import RallyPoints, Trait


@dataclass(frozen=True, slots=True, kw_only=True)
class Habit:
    """What one of us does about a weakness of our own; sizes are common practice."""

    points: float
    share: float
    what: str
    cue: str
    we_serve: bool | None = None


OUR_WEAKNESSES: Mapping[Trait, Habit] = MappingProxyType(
    {
        Trait.FORWARD_SPEED: Habit(
            points=6,
            share=25,
            what="return high, then run",
            cue="{name}: return high, then run.",
            we_serve=False,
        ),
        Trait.PATIENCE: Habit(
            points=2, share=30, what="one more dink", cue="{name}: one more dink."
        ),
        Trait.THIRD_SHOT_DROP: Habit(
            points=4,
            share=12,
            what="drive, then drop the fifth",
            cue="{name}: drive, then drop.",
            we_serve=True,
        ),
        Trait.SPEED_UP: Habit(
            points=5,
            share=10,
            what="keep dinking, let them start",
            cue="{name}: dink and be ready.",
        ),
        Trait.RETURN_DEPTH: Habit(
            points=5,
            share=25,
            what="return higher, middle",
            cue="{name}: high return, middle.",
            we_serve=False,
        ),
        Trait.LOB_DEFENSE: Habit(
            points=3, share=5, what="call the lob early", cue="{name}: call the lob early."
        ),
    }
)

_NEEDS_TOO: Mapping[Trait, Trait] = MappingProxyType(
    {Trait.THIRD_SHOT_DROP: Trait.FOREHAND_DRIVE, Trait.SPEED_UP: Trait.PATIENCE}
)
"""The shot that the way round a weakness needs: it must not be weak as well."""


def our_line(situation: Situation) -> Line | None:
    """The most useful change for one of us; None if no weakness of ours is noted."""
    found = [
        line
        for one in situation.ours
        for trait, habit in OUR_WEAKNESSES.items()
        if (line := _line(one, trait, habit)) is not None
    ]
    return max(found, key=lambda line: line.per_100, default=None)


def _line(one: OnCourt, trait: Trait, habit: Habit) -> Line | None:
    estimate = one.profile.skill(trait)
    needs = _NEEDS_TOO.get(trait)
    unable = needs is not None and one.profile.skill(needs).is_weak
    if not estimate.is_weak or estimate.is_open or unable:
        return None
    return Line(
        phase=Phase.OURS,
        do=f"{one.name}: {habit.what}",
        because=skill_words(trait, strong=False),
        who=one.player,
        we_serve=habit.we_serve,
        cue=habit.cue.format(name=one.name),
        points=RallyPoints(-estimate.level * habit.points),
        share=habit.share,
        source=estimate.source,
    )
