"""The decision behind an overhead: how we meet it, the aims ranked, and what was assumed."""

from __future__ import annotations

from typing import Final

from knowledge.ball_facts import Depth, Footing
from knowledge.court import HALF_LENGTH_M, METRES_PER_FOOT
from knowledge.dataclass import dataclass
from knowledge.effects import Decision, Option
from knowledge.engine import Part, Ranking, rank
from knowledge.planning.weighing import driver_of
from knowledge.situation import OnCourt, Situation, Wind
from knowledge.tactics import overhead_sizes as sizes
from knowledge.tactics.conditions import first_of_ours, marks_weak
from knowledge.tactics.overhead_effects import Aim, OverheadQuestion, effects
from knowledge.tactics.overhead_outcomes import Contact, Spot
from knowledge.vocabulary import BallQuality, RallyChance, Trait

CLOSE_M: Final = 9 * METRES_PER_FOOT
MIDWAY_M: Final = 12 * METRES_PER_FOOT
DEEP_M: Final = 15 * METRES_PER_FOOT
"""From the net where nobody says: met in balance, on the move, and going back. Common practice."""

STILL_WITHIN_M: Final = 10 * METRES_PER_FOOT
BACK_FROM_M: Final = 14 * METRES_PER_FOOT
"""How we move where only the place is said: row 21's ten feet; going back from here on."""

HEIGHT_M: Final = 2.2
BOUNCED_HEIGHT_M: Final = 1.8
LOWEST_M, HIGHEST_M = 1.0, 2.8
"""Where a paddle meets an overhead: body fractions put a reach upwards at 2.2 to 2.5 m."""

BOUNCE_FROM_M: Final = STILL_WITHIN_M
"""Nearer the net a ball is taken in the air: nothing is gained by waiting."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OverheadAnswer:
    """The aims ranked for one overhead; `hitter` is None where it isn't known who of us."""

    question: OverheadQuestion
    ranking: Ranking
    aims: tuple[Aim, ...]
    hitter: OnCourt | None

    @property
    def best(self) -> Aim:
        return self.aim(self.ranking.best.option.id)

    def aim(self, id: str) -> Aim:
        return next(aim for aim in self.aims if aim.id == id)

    @property
    def driver(self) -> Part | None:
        """The largest help for this aim that notes on them stand behind and settle."""
        return driver_of(self.ranking.best.parts, self.question.pair)

    @property
    def is_held_back(self) -> bool:
        """Whether our own overhead is the weak shot, so that it is placed, not hit."""
        return marks_weak(self.hitter, Trait.OVERHEAD)


def answer_overhead(situation: Situation) -> OverheadAnswer:
    """Where to put this overhead; a weak one of ours has big targets only."""
    hitter = hitter_of(situation)
    question = _question(situation, hitter)
    aims = tuple(_aims(question, situation, placed=marks_weak(hitter, Trait.OVERHEAD)))
    ranking = rank(
        Decision(
            options=tuple(Option(id=aim.id, label=label(aim)) for aim in aims),
            effects=effects(question, aims),
            neutral=RallyChance(question.of(Spot.MIDDLE).worth),
            share=sizes.OVERHEAD_SHARE,
        ),
        situation,
    )
    return OverheadAnswer(question=question, ranking=ranking, aims=aims, hitter=hitter)


_LABELS: Final = {
    Spot.MIDDLE: "deep middle",
    Spot.FEET: "deep at the feet",
    Spot.HIP: "at the hip",
    Spot.ANGLE: "short angle",
    Spot.BEHIND: "behind the runner",
    Spot.BOUNCE: "let it bounce",
}


def label(aim: Aim) -> str:
    """The aim in a sentence; somebody is named where anything is known of them."""
    if aim.target is None or not aim.target.name or not aim.target.profile.is_known:
        return _LABELS[aim.spot]
    part = {Spot.FEET: "feet", Spot.HIP: "hip"}[aim.spot]
    return f"{aim.target.name}'s {part}"


def hitter_of(situation: Situation) -> OnCourt | None:
    """Who of ours hits it: who asks; the one we have if both have a weak overhead."""
    found = first_of_ours(situation, situation.striker, situation.asker)
    if found is not None:
        return found
    weak = [one for one in situation.ours if marks_weak(one, Trait.OVERHEAD)]
    return weak[0] if weak and len(weak) == len(situation.ours) else None


def _question(situation: Situation, hitter: OnCourt | None) -> OverheadQuestion:
    level = 0.0 if hitter is None else hitter.profile.skill(Trait.OVERHEAD).level
    in_the_air = sizes.SUN_WIDENS if situation.asked.sun else 1.0
    if situation.wind not in (None, Wind.NONE):
        in_the_air *= sizes.WIND_WIDENS
    return OverheadQuestion(
        contact=contact_of(situation, wildness=sizes.WILDER**-level),
        in_the_air=in_the_air,
        theirs=situation.asked.facts.theirs,
        pair=situation.theirs,
    )


def contact_of(situation: Situation, *, wildness: float = 1.0) -> Contact:
    """How we meet it, from what is said of footing, place, height and ball quality."""
    facts = situation.asked.facts
    footing = footing_of(situation)
    place = {Footing.STILL: CLOSE_M, Footing.FORWARD: CLOSE_M, Footing.BACKWARD: DEEP_M}
    from_net = facts.from_net_m if facts.from_net_m is not None else place.get(footing, MIDWAY_M)
    usual = BOUNCED_HEIGHT_M if facts.bounced else HEIGHT_M
    height = facts.height_m if facts.height_m is not None else usual
    return Contact(
        footing=footing,
        from_net_m=min(max(from_net, 0.5), HALF_LENGTH_M + 2),
        height_m=min(max(height, LOWEST_M), HIGHEST_M),
        wildness=wildness,
    )


def footing_of(situation: Situation) -> Footing:
    """As said; else by how good the ball is, then by where it is; on the move if nothing is."""
    facts = situation.asked.facts
    if facts.footing is not None:
        return facts.footing
    if facts.bounced:
        return Footing.STILL
    match situation.asked.ball:
        case BallQuality.EASY:
            return Footing.STILL
        case BallQuality.STRETCHED:
            return Footing.BACKWARD
    if facts.from_net_m is None:
        return Footing.SIDEWAYS
    if facts.from_net_m <= STILL_WITHIN_M:
        return Footing.STILL
    return Footing.BACKWARD if facts.from_net_m >= BACK_FROM_M else Footing.SIDEWAYS


def _aims(question: OverheadQuestion, situation: Situation, *, placed: bool) -> list[Aim]:
    """What there is to choose from, by where they stand and what we own."""
    asked = [one for one in situation.theirs if one.player in situation.asked.about]
    targets = asked or list(situation.theirs)
    found = [Aim(spot=Spot.MIDDLE), *_at(Spot.FEET, targets)]
    if not placed:
        found.append(Aim(spot=Spot.ANGLE))
        if question.theirs in (Depth.AT_LINE, Depth.ONE_BACK):
            found += _at(Spot.HIP, targets)
        if question.theirs is Depth.COMING_IN:
            found.append(Aim(spot=Spot.BEHIND))
    if not situation.asked.facts.bounced and question.contact.from_net_m > BOUNCE_FROM_M:
        found.append(Aim(spot=Spot.BOUNCE))
    return found


def _at(spot: Spot, targets: list[OnCourt]) -> list[Aim]:
    return [Aim(spot=spot, target=one) for one in targets] or [Aim(spot=spot)]
