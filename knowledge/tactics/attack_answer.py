"""The decision behind a speed-up: at whom and where, shared with the plan, and whether at all."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from knowledge.beliefs import FLOOR_SD_POINTS
from knowledge.effects import Decision, Effect, EffectId, Mechanism, Option, OptionId, Points
from knowledge.engine import Part, Ranked, Ranking, rank
from knowledge.evidence import TraitEstimate
from knowledge.normal import logit, normal_cdf
from knowledge.planning import sizes as planned
from knowledge.planning.weighing import Weighed, driver_of, from_trait, option
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import attack_sizes as sizes
from knowledge.tactics.attack_effects import spot_effects
from knowledge.tactics.attack_question import FLIGHT, AttackQuestion, Contact, question_of
from knowledge.tactics.attack_spots import (
    CHEST,
    PADDLE_HIP,
    SEAM_ID,
    BodySpot,
    counter_met,
    spots_of,
)
from knowledge.tactics.conditions import marks_weak, rule_of_thumb, skill
from knowledge.vocabulary import LOGIT_PER_POINT, Level, Trait

ATTACK = OptionId("attack")
DINK = OptionId("dink")

HIGH_LEVELS = (Level.L4_5, Level.L5_0)
LOW_LEVELS = (Level.L3_0, Level.L3_5)
SMALLER = 0.5
"""Below 4.0 rows 14 and 15 count half: rallies end on plainer mistakes."""

SEAM_LABEL = "the seam"


@dataclass(frozen=True, slots=True, kw_only=True)
class Aimed:
    """Where a speed-up goes: the spots, and how they weigh. `spot` is None for the seam."""

    question: AttackQuestion
    spots: tuple[BodySpot, ...]
    weighed: Weighed
    spot: BodySpot | None

    @property
    def is_settled(self) -> bool:
        """Whether notes on them stand behind it."""
        return bool(self.weighed.evidence)

    def spot_of(self, option: OptionId) -> BodySpot | None:
        return next((one for one in self.spots if one.id == option), None)


def aimed(situation: Situation) -> Aimed:
    """The best spot against the plain chest-high ball: of near-equals what notes speak for.

    Two options within the doubt that every rule keeps are as good as equal: then whoever the book
    speaks of goes first. Plan, cue, whom to target and the speed-up's own page all ask here.
    """
    question = question_of(situation)
    spots = spots_of(question.pair, leaning=question.leaning)
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


def best_spot(situation: Situation) -> tuple[BodySpot | None, Weighed]:
    """The spot that `aimed` calls, None for the seam or the plain ball, and how it weighs."""
    found = aimed(situation)
    return found.spot, found.weighed


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Whether:
    """The speed-up against one more dink. `owned` is False where our own profile forbids it."""

    ranking: Ranking
    owned: bool

    @property
    def attacks(self) -> bool:
        return self.ranking.best.option.id == ATTACK

    @property
    def driver(self) -> Part | None:
        """The largest part that speaks for the choice."""
        parts = self.ranking.of(ATTACK).parts
        wanted = 1 if self.attacks else -1
        return next((part for part in parts if wanted * part.points > 0), None)


def hitters(situation: Situation) -> list[OnCourt]:
    """Those of us whose own profile does not mark the speed-up as a weakness."""
    return [one for one in situation.ours if not marks_weak(one, Trait.SPEED_UP)]


def whether(situation: Situation, found: Aimed) -> Whether:
    """Whether to speed this ball up at the spot that was found."""
    striker = found.question.striker if found.question.striker in situation.ours else None
    owned = not marks_weak(striker, Trait.SPEED_UP)
    if situation.ours and not hitters(situation):
        owned = False
    options = [Option(id=DINK, label="one more dink")]
    if owned:
        options.append(Option(id=ATTACK, label="speed up"))
    effects = tuple(_whether_effects(found)) if owned else ()
    decision = Decision(
        options=tuple(options),
        effects=_at_level(effects, situation.level),
        neutral=sizes.DINKING_CHANCE,
        share=sizes.ATTACKABLE_SHARE,
    )
    return Whether(ranking=rank(decision, situation), owned=owned)


def _at_level(effects: tuple[Effect, ...], level: Level | None) -> tuple[Effect, ...]:
    if level not in LOW_LEVELS:
        return effects
    return tuple(
        replace(effect, points=effect.points.times(SMALLER)) if effect.is_rule_of_thumb else effect
        for effect in effects
    )


def _whether_effects(found: Aimed) -> Iterator[Effect]:
    question = found.question
    yield from _contact(question)
    if question.is_stretched:
        yield _rule(
            "stretched",
            sizes.STRETCHED,
            Mechanism.OUR_ERROR,
            "Off balance you lose the second ball",
        )
    if question.leaning or question.out_of_place or question.they_are_back:
        yield _rule(
            "out of place",
            sizes.THEY_ARE_OUT_OF_PLACE,
            Mechanism.THEIR_REPLY,
            "They are not set for it",
        )
    yield from _own(question)
    yield from _met(found)
    late = _time(question)
    if late is not None:
        yield late
    if question.facts.partner_set is False and (found.spot is None or _goes_cross(found)):
        yield _rule(
            "partner",
            sizes.CROSS_TO_NO_PARTNER,
            Mechanism.TIME,
            "The counter finds your partner unready",
        )


def _goes_cross(found: Aimed) -> bool:
    side = found.question.striker_side
    return found.spot is not None and side is not None and found.spot.target.side is side


def _contact(question: AttackQuestion) -> Iterator[Effect]:
    """Rows 14 and 15, and the ball between them: off the bounce, with topspin."""
    error = Mechanism.OUR_ERROR
    match question.contact:
        case None | Contact.ABOVE_NET if not question.is_stretched:
            yield _rule("above", sizes.ABOVE_THE_NET, error, "Above the net it goes down")
        case Contact.AT_NET if question.facts.bounced is not False:
            has_it = rolls(question)
            size = sizes.ROLLED if has_it else sizes.ROLLED_BELOW_4_5
            because = "Off the bounce: roll it with topspin" if has_it else "Too low to hit down"
            yield _rule("rolled", size, error, because)
        case Contact.AT_NET | Contact.LOW:
            yield _rule("low", sizes.LOW_IN_THE_AIR, error, "Below the net you hit it up")
        case Contact.BELOW_KNEE:
            yield _rule("too low", sizes.TOO_LOW, error, "Hit up, it comes back down at you")
    if question.is_from_mid_court:
        yield _rule(
            "mid-court", sizes.LOW_IN_THE_AIR, Mechanism.TIME, "From back there they see it coming"
        )


def rolls(question: AttackQuestion) -> bool:
    """Whether our hitter has the roll: by the level, or by notes of speed-ups or topspin."""
    striker = question.striker
    if question.level in HIGH_LEVELS or striker is None:
        return question.level in HIGH_LEVELS
    profile = striker.profile
    return profile.skill(Trait.SPEED_UP).level > 0 or profile.habit(Trait.TOPSPIN).level > 0


def _own(question: AttackQuestion) -> Iterator[Effect]:
    striker = question.striker
    if striker is None:
        return
    yield skill(
        striker,
        Trait.SPEED_UP,
        sizes.OWN_SPEED_UP,
        Mechanism.OUR_ERROR,
        on=(ATTACK,),
        named=f"{striker.name}'s speed-up",
    )
    if question.contact is Contact.AT_NET:
        yield from_trait(
            striker,
            Trait.TOPSPIN,
            sizes.OWN_TOPSPIN,
            Mechanism.OUR_ERROR,
            on=(ATTACK,),
            up=True,
            habit=True,
        )


def _met(found: Aimed) -> Iterator[Effect]:
    """A set target who counters well takes row 14 away; at the seam whoever counters less well."""
    spot, pair = found.spot, found.question.pair
    if spot is None and not pair:
        return
    weaker = min(pair, key=lambda one: one.profile.skill(Trait.COUNTER).level)
    target = weaker if spot is None else spot.target
    of_wing = () if spot is None else (counter_met(spot),)
    for trait in (Trait.COUNTER, *of_wing):
        yield from_trait(
            target,
            trait,
            sizes.SET_COUNTER,
            Mechanism.THEIR_REPLY,
            on=(ATTACK,),
            up=True,
        )


def won_outright(question: AttackQuestion) -> float:
    """Share of the balls that are won because a set pair of hands is late.

    The bounce hides the swing: that buys back about what the longer way gives away.
    """
    is_hidden = question.facts.bounced and _hides(question)
    has = question.they_have_s - (sizes.DISGUISE_S if is_hidden else 0.0)
    late = normal_cdf((sizes.HANDS_NEED_S - has) / sizes.HANDS_SPREAD_S)
    return sizes.TIME_COUNTS * late


def _hides(question: AttackQuestion) -> bool:
    """Whether the same swing could be a dink: high enough, or rolled by one who has the roll."""
    if question.contact is Contact.AT_NET:
        return rolls(question)
    return question.contact in (None, Contact.ABOVE_NET)


def _time(question: AttackQuestion) -> Effect | None:
    """What our distance gives them, against a ball out of the air at the line: w + (1 - w) v."""
    if question.facts.from_net_m is None and question.facts.bounced is None:
        return None
    plain = replace(question, facts=replace(question.facts, from_net_m=None, bounced=None))
    v = float(sizes.DINKING_CHANCE)
    here, line = (w + (1 - w) * v for w in (won_outright(question), won_outright(plain)))
    points = (logit(here) - logit(line)) / LOGIT_PER_POINT
    return Effect(
        id=EffectId("time"),
        on=frozenset({ATTACK}),
        points=Points(mean=points, sd=abs(points) / 2),
        mechanism=Mechanism.TIME,
        because=f"They have {question.they_have_s:.2f} s at 35 mph",
        source=FLIGHT,
    )


def _rule(name: str, points: Points, mechanism: Mechanism, because: str) -> Effect:
    return rule_of_thumb(name, ATTACK, points, mechanism, because)


def punishing(found: Aimed) -> dict[str, TraitEstimate]:
    """The counter that each hip meets when they wait for it."""
    return {
        spot.id: spot.target.profile.skill(counter_met(spot)) for spot in found.spots if spot.is_hip
    }


def gain_over_dink(one: Whether) -> float:
    """Points that speeding this ball up gains over one more dink; below 0 it loses."""
    if not one.owned:
        return -math.inf
    return 100 * (one.ranking.of(ATTACK).chance - one.ranking.of(DINK).chance)
