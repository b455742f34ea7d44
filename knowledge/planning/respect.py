"""What of theirs to respect, and what to do about it with shots we own."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from knowledge.dataclass import dataclass
from knowledge.planning.line import Line, Phase
from knowledge.planning.phrases import trait_words
from knowledge.planning.weighing import is_weak
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import EvidenceId, RallyPoints, Trait


@dataclass(frozen=True, slots=True, kw_only=True)
class Threat:
    """A strength or habit of theirs: what it costs us unanswered, and the answer to it.

    Points and share as in `sizes`, common practice. `needs` is the shot of ours that the
    answer takes, if any.
    """

    points: float
    share: float
    answer: str
    cue: str
    habit: bool = False
    needs: Trait | None = None


THREATS: Mapping[Trait, Threat] = MappingProxyType(
    {
        Trait.SPEED_UP: Threat(points=5, share=15, answer="paddle up", cue="Paddle up early."),
        Trait.POACHING: Threat(
            points=4, share=25, answer="go behind", cue="Go behind the poacher.", habit=True
        ),
        Trait.CRASH: Threat(
            points=4,
            share=15,
            answer="block at the feet",
            cue="Block at the feet.",
            habit=True,
            needs=Trait.RESET,
        ),
        Trait.ERNIE: Threat(
            points=5, share=8, answer="dink middle", cue="Dink middle.", habit=True
        ),
        Trait.AROUND_POST: Threat(
            points=4, share=5, answer="dink middle", cue="Dink middle.", habit=True
        ),
        Trait.FOREHAND_DRIVE: Threat(
            points=4,
            share=20,
            answer="return deeper",
            cue="Return deep, paddle up.",
            needs=Trait.RETURN,
        ),
        Trait.OVERHEAD: Threat(points=4, share=6, answer="keep it low", cue="Keep it low."),
        Trait.LOB: Threat(
            points=3, share=6, answer="turn and run", cue="Lob: turn and run.", habit=True
        ),
        Trait.TOPSPIN: Threat(
            points=3, share=15, answer="let high ones go", cue="Let the high ones go.", habit=True
        ),
        Trait.SQUEEZES_MIDDLE: Threat(
            points=3, share=20, answer="hit behind", cue="Hit behind the squeeze.", habit=True
        ),
        Trait.COUNTER: Threat(
            points=5, share=15, answer="keep it low", cue="Keep it low and wait."
        ),
        Trait.LEAVES_OUT_BALLS: Threat(
            points=3, share=5, answer="aim lower", cue="Aim lower, take pace off.", habit=True
        ),
        Trait.SERVE: Threat(
            points=2, share=50, answer="stand back", cue="Stand back, return deep."
        ),
        Trait.REACH: Threat(points=2, share=10, answer="go at the body", cue="Go at the body."),
        Trait.PATIENCE: Threat(
            points=2, share=20, answer="one more dink", cue="One more dink.", needs=Trait.PATIENCE
        ),
    }
)

MIN_LEVEL = 0.15
"""A threat below this level is hardly noted: half a hedged note gives less."""


def respect_line(situation: Situation, *, said: frozenset[EvidenceId] = frozenset()) -> Line | None:
    """The threat that costs us most, with its answer; None if none is noted.

    Notes that other lines stand on (`said`) are not said twice.
    """
    found = [
        line
        for one in situation.theirs
        for trait, threat in THREATS.items()
        if (line := _line(one, trait, threat, situation)) is not None
        and not said.issuperset(line.evidence)
    ]
    return max(found, key=lambda line: line.per_100, default=None)


def _line(one: OnCourt, trait: Trait, threat: Threat, situation: Situation) -> Line | None:
    estimate = one.profile.habit(trait) if threat.habit else one.profile.skill(trait)
    unable = threat.needs is not None and any(is_weak(our, threat.needs) for our in situation.ours)
    if estimate.level < MIN_LEVEL or estimate.is_open or unable:
        return None
    words = trait_words(trait, habit=threat.habit, up=True)
    return Line(
        phase=Phase.RESPECT,
        do=f"Respect {one.name}, {threat.answer}",
        because=words,
        cue=threat.cue,
        points=RallyPoints(estimate.level * threat.points),
        share=threat.share,
        source=estimate.source,
    )
