"""Whether to speed a ball up at all, against one more dink: height, balance, them, our own shot."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from knowledge.dataclass import dataclass
from knowledge.effects import Decision, Effect, EffectId, Mechanism, Option, OptionId, Points
from knowledge.engine import Ranking, rank
from knowledge.normal import logit, normal_cdf
from knowledge.planning.weighing import from_trait
from knowledge.situation import Situation
from knowledge.tactics import attack_sizes as sizes
from knowledge.tactics.attack_answer import Aimed, hitters
from knowledge.tactics.attack_question import FLIGHT, AttackQuestion, Contact, cross_to
from knowledge.tactics.attack_spots import counter_met
from knowledge.tactics.conditions import marks_weak, rule_of_thumb, skill
from knowledge.vocabulary import LOGIT_PER_POINT, Level, Trait

ATTACK = OptionId("attack")
DINK = OptionId("dink")

HIGH_LEVELS = (Level.L4_5, Level.L5_0)
LOW_LEVELS = (Level.L3_0, Level.L3_5)
SMALLER = 0.5
"""Below 4.0 rows 14 and 15 count half: rallies end on plainer mistakes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Whether:
    """The speed-up against one more dink. `owned` is False where our own profile forbids it."""

    ranking: Ranking
    owned: bool

    @property
    def attacks(self) -> bool:
        return self.ranking.best.option.id == ATTACK


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
    if question.facts.partner_set is False and (
        found.spot is None or cross_to(found.spot.target, question)
    ):
        yield _rule(
            "partner",
            sizes.CROSS_TO_NO_PARTNER,
            Mechanism.TIME,
            "The counter finds your partner unready",
        )


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
        because="The longer way gives them time" if points < 0 else _less_time(question),
        source=FLIGHT,
    )


def _less_time(question: AttackQuestion) -> str:
    return "The bounce hides your swing" if question.facts.bounced else "So near they have no time"


def _rule(name: str, points: Points, mechanism: Mechanism, because: str) -> Effect:
    return rule_of_thumb(name, ATTACK, points, mechanism, because)


def gain_over_dink(one: Whether) -> float:
    """Points that speeding this ball up gains over one more dink; below 0 it loses."""
    if not one.owned:
        return -math.inf
    return 100 * (one.ranking.of(ATTACK).chance - one.ranking.of(DINK).chance)
