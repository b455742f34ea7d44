"""The third shot against these two: at whom, and which of us drops or drives."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from knowledge.court import at_baseline, at_kitchen_line, x_of_side_m
from knowledge.court_picture import Arrow
from knowledge.dataclass import dataclass
from knowledge.engine import Decision, Option, OptionId
from knowledge.planning import sizes
from knowledge.planning.line import Line, Phase, worth_of
from knowledge.planning.phrases import skill_words
from knowledge.planning.weighing import Weighed, is_weak, weigh
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.third_effects import effects_of
from knowledge.tactics.third_options import DRIVE, DROP, MIDDLE, SHOT_TRAITS, options_of, shots_of
from knowledge.tactics.third_said import third_said
from knowledge.vocabulary import RallyPoints, Trait

__all__ = [
    "DRIVE",
    "DROP",
    "LEAST_GAIN",
    "MIDDLE",
    "Third",
    "aim_x_m",
    "best_third",
    "drives_of",
    "third_line",
    "thirds_of",
]

LEAST_GAIN: float = 0.1
"""Points below which aiming at one player is no better than the middle."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Third:
    """The third that suits one of us (None: not known who); no target is the middle."""

    hitter: OnCourt | None
    shot: str
    target: OnCourt | None
    weighed: Weighed

    @property
    def option(self) -> OptionId:
        """The best option; the middle where one of them is no better."""
        is_at_nobody = self.target is None and self.weighed.best.partition(":")[2].isdecimal()
        return OptionId(f"{self.shot}:{MIDDLE}" if is_at_nobody else self.weighed.best)

    @property
    def where(self) -> str:
        """Its place: a player's number, the middle, the late one, the line."""
        return self.option.partition(":")[2]

    @property
    def is_behind(self) -> bool:
        """Whether it goes behind a poacher, who has left that place, not at its target."""
        driver = self.weighed.driver
        scale = driver.effect.scale if driver else None
        is_poacher = scale is not None and scale.trait is Trait.POACHING
        return self.target is not None and is_poacher

    @property
    def towards(self) -> str:
        return "behind" if self.is_behind else "at"

    def goes_behind(self, option: str) -> bool:
        """Whether this shot is at the place that the third goes behind."""
        return self.is_behind and option.partition(":")[2] == self.where

    def label_of(self, option: Option) -> str:
        """The option's label, which says "behind" of a poacher too."""
        behind = self.goes_behind(option.id)
        return option.label.replace(" at ", " behind ") if behind else option.label


def third_line(situation: Situation) -> Line | None:
    """Where to put the third; None without an opponent or without a third we own."""
    thirds = thirds_of(situation)
    if not thirds or not situation.theirs:
        return None
    best = best_third(thirds)
    if best.target is None:
        return _middle_line(thirds)
    same = [third for third in thirds if third.target == best.target]
    return Line(
        phase=Phase.THIRD,
        do=f"{_shots(same, all_of=len(thirds))} {best.towards} {best.target.name}",
        because=best.weighed.because,
        cue=f"Third {best.towards} {best.target.name}. Follow it in.",
        points=best.weighed.gain,
        share=sizes.THIRD_SHARE * len(same) / len(thirds),
        source=best.weighed.source,
        arrow=_arrow(best.target, behind=best.is_behind),
        we_serve=True,
        option=best.option,
        worth=worth_of(best.weighed.ranking, best.weighed.gain),
    )


def best_third(thirds: Sequence[Third]) -> Third:
    """The one that gains most by its target."""
    return max(thirds, key=lambda third: third.weighed.gain if third.target else 0.0)


def thirds_of(situation: Situation) -> list[Third]:
    """The third of each of us who owns one."""
    hitters: Sequence[OnCourt | None] = situation.ours or (None,)
    return [third for one in hitters if (third := _third_of(one, situation)) is not None]


def drives_of(situation: Situation) -> list[Third]:
    """The drive of each of us who owns one, where it is said that it will be one."""
    hitters: Sequence[OnCourt | None] = situation.ours or (None,)
    found = (_third_of(one, situation, only=DRIVE) for one in hitters)
    return [third for third in found if third is not None]


def _middle_line(thirds: Sequence[Third]) -> Line:
    """Thirds to the middle: about us where one of us has to leave a shot out, else general."""
    left_out = next((third for third in thirds if _left_out(third) is not None), None)
    trait = _left_out(left_out) if left_out else None
    because = ""
    source = COMMON_PRACTICE
    if left_out is not None and left_out.hitter is not None and trait is not None:
        because = f"{left_out.hitter.name} has a {skill_words(trait, strong=False)}"
        source = left_out.hitter.profile.skill(trait).source
    return Line(
        phase=Phase.THIRD,
        do=f"{_shots(thirds, all_of=len(thirds))} to the middle",
        because=because,
        cue="Third to the middle. Follow it in.",
        points=RallyPoints(0.0),
        share=sizes.THIRD_SHARE,
        source=source,
        we_serve=True,
        option=thirds[0].option,
        worth=worth_of(thirds[0].weighed.ranking, thirds[0].weighed.gain),
    )


def _left_out(third: Third) -> Trait | None:
    """The weakness that keeps this hitter off the usual drop."""
    weak = third.hitter is not None and is_weak(third.hitter, Trait.THIRD_SHOT_DROP)
    return Trait.THIRD_SHOT_DROP if weak else None


def _shots(thirds: Sequence[Third], *, all_of: int) -> str:
    """ "Drop thirds", or who drops and who drives where our shots differ."""
    shots = {third.shot for third in thirds}
    named = [f"{third.hitter.name} {third.shot}s" for third in thirds if third.hitter]
    if (len(shots) == 1 and len(thirds) == all_of) or not named:
        return f"{thirds[0].shot.capitalize()} thirds"
    return ", ".join(named)


def _third_of(
    hitter: OnCourt | None, situation: Situation, *, only: str | None = None
) -> Third | None:
    said = third_said(situation)
    shots = [shot for shot in shots_of(hitter, said) if only in (None, shot)]
    if not set(shots) & set(SHOT_TRAITS):
        return None
    options = tuple(options_of(shots, situation.theirs, said))
    decision = Decision(
        options=options,
        effects=effects_of(hitter, options, said, situation),
        neutral=sizes.SERVING_CHANCE,
        share=sizes.THIRD_SHARE,
    )
    first = weigh(decision, situation, plain=f"{shots[0]}:{MIDDLE}")
    shot, _, where = first.best.partition(":")
    gain = first.ranking.gain(OptionId(f"{shot}:{MIDDLE}"))
    weighed = replace(first, gain=gain)
    target = next((one for one in situation.theirs if str(one.player) == where), None)
    worth_it = weighed.gain >= LEAST_GAIN and (weighed.evidence or said.is_told)
    return Third(hitter=hitter, shot=shot, target=target if worth_it else None, weighed=weighed)


BEHIND_SHARE = 0.85
"""How far out a ball behind a poacher is drawn, of the way to the sideline. Common practice."""


def aim_x_m(target: OnCourt, *, behind: bool) -> float | None:
    """How far out it is drawn: at the target's place, or outside of it; None if that is unknown."""
    if target.side is None:
        return None
    if behind:
        return x_of_side_m(target.side, ours=False, share=BEHIND_SHARE)
    return at_kitchen_line(target.side, ours=False).x_m


def _arrow(target: OnCourt, *, behind: bool) -> Arrow | None:
    to_x_m = aim_x_m(target, behind=behind)
    if target.side is None or to_x_m is None:
        return None
    start = at_baseline(target.side, ours=True)
    return Arrow(
        from_x_m=start.x_m,
        from_y_m=start.y_m,
        to_x_m=to_x_m,
        to_y_m=at_kitchen_line(target.side, ours=False).y_m,
        width=1.0,
        label="third",
    )
