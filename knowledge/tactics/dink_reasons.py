"""What speaks for a dink, said in short lines, and the figures behind it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from knowledge.advice import Reason
from knowledge.effects import Truth
from knowledge.engine import Part, Ranked
from knowledge.planning.weighing import is_open
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import dink_words as words
from knowledge.tactics.conditions import marked_wing
from knowledge.tactics.dink_answer import DinkAnswer
from knowledge.tactics.dink_chances import LANE_SOURCE, LaneChance, gain_over_line, lane_chance
from knowledge.tactics.dink_lanes import Lane, Spot, lane_net_height_m
from knowledge.tactics.dink_sideless import noted_way
from knowledge.tactics.told_reasons import figures
from knowledge.vocabulary import Trait, Wing

GROOVED_AFTER_THREE = 2.0
"""What a fourth ball to the same spot loses (row 13). Common practice."""

LIKELY = 0.75
"""A condition that holds this often may carry a reason, with the assumption said."""

REASONS_BESIDE_THE_CHANGE = 2

LANES: Final[Mapping[Lane, str]] = MappingProxyType(
    {Lane.LINE: "line", Lane.CENTRE: "middle", Lane.WIDE: "across"}
)
"""The lanes that are compared, by the names of their figures."""


def reasons(answer: DinkAnswer, *, named: bool) -> tuple[Reason, ...]:
    found = [
        Reason(text=part.effect.because, source=part.effect.source)
        for part in _speaking_parts(answer)
    ]
    if not found and answer.best is not None and answer.best.spot is Spot.MIDDLE:
        found = [Reason(text="Lower net, and a miss stays in", source=LANE_SOURCE)]
    found = _about_the_weak_wing(answer) + noted_way(answer) + found + _price_of_the_line(answer)
    found = list(dict.fromkeys(found))[:REASONS_BESIDE_THE_CHANGE]
    change = answer.change
    if change is not None and answer.best is not None:
        same = change.target.player == answer.best.target.player
        found.append(
            Reason(
                text=words.change_up(change, same_target=same, named=named), source=COMMON_PRACTICE
            )
        )
    return tuple(found)


def _about_the_weak_wing(answer: DinkAnswer) -> list[Reason]:
    """Why the call names a wing though the foot is not known, or why it leaves the weak one."""
    best = answer.best
    weak = None if best is None else marked_wing(best.target)
    if best is None or weak is None or best.wing is weak:
        return []
    if best.wing is None and best.lane is not None:
        return []
    if best.wing is None:
        text = f"{best.target.name}'s {weak} dink is weak"
    elif best.lane is Lane.STRAIGHT:
        text = f"The weak {weak} is down the line: pick it"
    else:
        text = f"The weak {weak} is the harder ball here"
    trait = Trait.BACKHAND_DINK if weak is Wing.BACKHAND else Trait.FOREHAND_DINK
    estimate = best.target.profile.skill(trait)
    return [Reason(text=text, source=estimate.source)]


def _price_of_the_line(answer: DinkAnswer) -> list[Reason]:
    """What a call down the line costs against the inside foot."""
    if answer.best is None or answer.best.lane is not Lane.LINE:
        return []
    line, foot = (chance_of(answer, lane) for lane in (Lane.LINE, Lane.STRAIGHT))
    return [Reason(text=words.against(Lane.LINE, line, Lane.STRAIGHT, foot), source=LANE_SOURCE)]


def chance_of(answer: DinkAnswer, lane: Lane) -> LaneChance:
    """How this ball goes by a lane, for our own scatter."""
    met, scatter = answer.question.met, answer.question.scatter
    return lane_chance(lane, met, scatter.factor * met.scatters)


def _speaking_parts(answer: DinkAnswer) -> list[Part]:
    """What speaks for the best, and what notes say against the next: notes first, then sums."""
    first, *others = answer.ranking.ranked
    parts = [part for part in first.parts if part.points > 0 and _may_say(part)]
    if others:
        parts += [
            part
            for part in others[0].parts
            if part.points < 0
            and part.evidence
            and not is_open(part)
            and not _is_about_the_called(part, answer, others[0])
        ]
    return sorted(
        parts,
        key=lambda part: (
            not part.evidence,
            part.effect.is_rule_of_thumb,
            -abs(part.points),
        ),
    )


def _is_about_the_called(part: Part, answer: DinkAnswer, other: Ranked) -> bool:
    """Whether it is a habit of whom the call is aimed at that makes the partner's ball harder.

    Behind a dink at the poacher it would sound like a reason to play at him.
    """
    called, there, scale = answer.best, answer.aim(other.option.id), part.effect.scale
    if called is None or there is None or scale is None:
        return False
    return scale.player == called.target.player != there.target.player


def _may_say(part: Part) -> bool:
    """Whether a reason is true enough to be said: known, or noted and likely."""
    if is_open(part):
        return False
    if part.truth is Truth.YES:
        return True
    return bool(part.evidence) and part.effect.when.prevalence >= LIKELY


def gain_over_any_aim(answer: DinkAnswer) -> float:
    """What the call gains over aiming anywhere."""
    chances = [one.chance for one in answer.ranking.ranked]
    return 100 * (chances[0] - sum(chances) / len(chances))


def numbers(answer: DinkAnswer) -> Mapping[str, float]:
    """What the call is worth, and by lane how it goes."""
    ranking = answer.ranking
    gain = gain_over_any_aim(answer)
    found = {
        **figures(ranking),
        "points_gained": gain,
        "rallies_in_100": gain * ranking.share / 100,
        "grooved_after_three": GROOVED_AFTER_THREE,
        "scatter_factor": answer.question.scatter.factor * answer.question.met.scatters,
    }
    if answer.best is not None and answer.best.lane is not None:
        found["net_height_m"] = lane_net_height_m(answer.best.lane)
        found |= _lane_numbers(answer, answer.best.lane, "")
    for lane, name in LANES.items():
        found |= _lane_numbers(answer, lane, f"{name}_")
    return MappingProxyType(found)


def _lane_numbers(answer: DinkAnswer, lane: Lane, prefix: str) -> dict[str, float]:
    chance = chance_of(answer, lane)
    gain = gain_over_line(lane, answer.question.met, answer.question.scatter)
    return {
        f"{prefix}clearance_m": chance.clearance_m,
        f"{prefix}in_play": chance.in_play,
        f"{prefix}stays_short": chance.short,
        f"{prefix}window": chance.window,
        f"{prefix}over_line_points": gain.mean,
        f"{prefix}over_line_sd": gain.sd,
    }


def more(answer: DinkAnswer, ball: str) -> tuple[str, ...]:
    """The ball, the sum in full, the air by lane, what comes back, and the grooving."""
    lines = [
        f"{part.points:+.1f} {part.effect.because} ({part.effect.source.kind})"
        for part in answer.ranking.best.parts
        if abs(part.points) >= 0.1
    ]
    lines.insert(0, ball)
    lines.append(words.by_lane({lane: chance_of(answer, lane).clearance_m for lane in LANES}))
    best = answer.best
    if best is not None and best.spot is Spot.SIDELINE:
        lines.append("It comes back wide: partner shades the middle.")
    if best is not None:
        lines.append(f"After three to one spot it loses {GROOVED_AFTER_THREE:.0f} in 100: move it.")
    return tuple(lines)
