"""Options, effects and the ranking: one currency for rules of thumb, notes and computed facts.

x[o] is our chance to win the rally, given that the situation has arisen, that we follow option
o until the situation changes, and that everything else goes on as usual. Effects are declared
in rally points, added on the log-odds scale (LOGIT_PER_POINT), and shown in points of the
actual chance. The gain of a plan is, to first order, the sum of share times points: the
performance-difference lemma (Kakade and Langford 2002, from memory).
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import Enum, StrEnum
from typing import NewType

from knowledge.advice import Confidence
from knowledge.evidence import TraitEstimate
from knowledge.situation import Situation
from knowledge.sources import Source, SourceKind
from knowledge.vocabulary import EvidenceId, PlayerId, RallyChance, RallyPoints

OptionId = NewType("OptionId", str)
EffectId = NewType("EffectId", str)
FactId = NewType("FactId", str)

LOGIT_PER_POINT = 0.04
"""Log-odds of one rally point: d(logit x) = dx / (x (1 - x)) = 0.01 / 0.25 at an even rally."""

RULE_OF_THUMB_CLIP_POINTS = 15.0
"""The sum of common-practice effects on one option never moves further than this."""

FLOOR_SD_POINTS = 2.0
"""Doubt that every option keeps: rules are never exact."""

REST_OF_GROUP = 0.25
"""In a mechanism group the largest counts in full and the rest this much."""

CLEAR_CHANCE = 0.80
LEAN_CHANCE = 0.60
"""Words for the chance that the best option is best."""

ASK_POINTS = 0.5
"""An unknown is asked for when knowing it is worth at least this."""


class Truth(Enum):
    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"

    @classmethod
    def of(cls, value: bool | None) -> Truth:
        """UNKNOWN for None."""
        if value is None:
            return cls.UNKNOWN
        return cls.YES if value else cls.NO


class Mechanism(StrEnum):
    """Why an effect helps; effects of one mechanism overlap, so they do not simply add."""

    OUR_ERROR = "fewer misses of ours"
    THEIR_ERROR = "more misses of theirs"
    THEIR_REPLY = "a weaker reply"
    TIME = "time"
    COVER = "court covered"
    HABIT = "their habit"
    AGREEMENT = "no hesitation"


@dataclass(frozen=True, slots=True, kw_only=True)
class Points:
    """A belief about an effect's size: mean and standard deviation in rally points."""

    mean: float
    sd: float

    def __neg__(self) -> Points:
        return Points(mean=-self.mean, sd=self.sd)


@dataclass(frozen=True, slots=True, kw_only=True)
class Condition:
    """A named three-valued test of the situation.

    `fact` is what the test looks at, so that an unknown can be asked for; `prevalence` is how
    often it holds where nobody says, used when the answer is UNKNOWN.
    """

    name: str
    fact: FactId
    prevalence: float
    test: Callable[[Situation], Truth]

    def __invert__(self) -> Condition:
        flipped = {Truth.YES: Truth.NO, Truth.NO: Truth.YES, Truth.UNKNOWN: Truth.UNKNOWN}
        return Condition(
            name=f"not {self.name}",
            fact=self.fact,
            prevalence=1 - self.prevalence,
            test=lambda situation: flipped[self.test(situation)],
        )


ALWAYS = Condition(
    name="always", fact=FactId(""), prevalence=1.0, test=lambda _situation: Truth.YES
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TraitScale:
    """An effect that grows with a trait: towards +1 for strength or often, -1 for the opposite."""

    estimate: TraitEstimate
    towards: int
    player: PlayerId


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """One reason for or against some options, in points in the rallies where it applies.

    With `scale` the points are those of the trait at full level. `states` names the fact that
    a computed effect stands for: a rule of thumb that states the same is replaced by it.
    """

    id: EffectId
    on: frozenset[OptionId]
    points: Points
    mechanism: Mechanism
    because: str
    source: Source
    when: Condition = ALWAYS
    scale: TraitScale | None = None
    states: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """Something we could do; `label` is how a reply says it."""

    id: OptionId
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """A topic's question put to the engine.

    `neutral` is the usual chance once the situation has arisen. `share` is how often it arises
    in a rally, in rallies of 100.
    """

    options: tuple[Option, ...]
    effects: tuple[Effect, ...]
    neutral: RallyChance
    share: float

    def __post_init__(self) -> None:
        known = {option.id for option in self.options}
        for effect in self.effects:
            if not effect.on <= known:
                raise ValueError(f"{effect.id} acts on {set(effect.on - known)}, not an option")


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """What one effect contributes to one option, in points of the actual chance."""

    effect: Effect
    points: RallyPoints
    truth: Truth

    @property
    def evidence(self) -> tuple[EvidenceId, ...]:
        """The notes and rallies behind it."""
        return self.effect.scale.estimate.evidence if self.effect.scale else ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranked:
    """An option with its estimate: chance and its sd, and what each effect contributes."""

    option: Option
    chance: RallyChance
    sd: float
    logit: float
    logit_variance: float
    parts: tuple[Part, ...]
    clipped_points: float
    p_best: float

    @property
    def points(self) -> RallyPoints:
        """Rally points on the log-odds scale, away from the neutral rally."""
        return RallyPoints(sum(part.points for part in self.parts) + self.clipped_points)


@dataclass(frozen=True, slots=True, kw_only=True)
class Unknown:
    """An unknown fact: what knowing it is worth in points, and the top option per answer."""

    fact: FactId
    worth: RallyPoints
    if_yes: OptionId
    if_no: OptionId
    condition: Condition


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranking:
    """All options, best first, with the confidence and the most useful unknowns."""

    ranked: tuple[Ranked, ...]
    confidence: Confidence
    unknowns: tuple[Unknown, ...]
    share: float

    @property
    def best(self) -> Ranked:
        return self.ranked[0]

    def gain(self, over: OptionId | None = None) -> RallyPoints:
        """Points of actual chance that the best option gains over another (default: second)."""
        if len(self.ranked) == 1:
            return RallyPoints(0.0)
        other = next((one for one in self.ranked if one.option.id == over), self.ranked[1])
        return RallyPoints(100 * (self.best.chance - other.chance))

    def ask(self) -> Unknown | None:
        """The unknown most worth asking for, if it is worth ASK_POINTS."""
        first = next(iter(self.unknowns), None)
        return first if first and first.worth >= ASK_POINTS else None


def rank(decision: Decision, situation: Situation) -> Ranking:
    """Order the options by our chance to win the rally.

    Effects that hold for every option alike would move the level, not the order; declare
    them on `neutral` instead.
    """
    truths = {effect.id: effect.when.test(situation) for effect in decision.effects}
    ranked = _ranked(decision, truths)
    return Ranking(
        ranked=ranked,
        confidence=_confidence(ranked),
        unknowns=_unknowns(decision, truths),
        share=decision.share,
    )


def _ranked(decision: Decision, truths: Mapping[EffectId, Truth]) -> tuple[Ranked, ...]:
    options = [_weigh(option, decision, truths) for option in decision.options]
    options.sort(key=lambda one: (-one.logit, one.option.id))
    best_chances = chances_of_being_best(
        [one.logit for one in options], [one.logit_variance for one in options]
    )
    return tuple(replace(one, p_best=p) for one, p in zip(options, best_chances, strict=True))


def _weigh(option: Option, decision: Decision, truths: Mapping[EffectId, Truth]) -> Ranked:
    acting = [
        (effect, truths[effect.id])
        for effect in _not_replaced(decision.effects, truths)
        if option.id in effect.on and truths[effect.id] is not Truth.NO
    ]
    believed = [(effect, truth, _believed(effect, truth)) for effect, truth in acting]
    weights = _mechanism_weights([(effect, points) for effect, _, points in believed])
    rule_of_thumb = sum(
        weights[effect.id] * points.mean
        for effect, _, points in believed
        if effect.source.kind is SourceKind.COMMON_PRACTICE
    )
    clip = _clip(rule_of_thumb) - rule_of_thumb
    mean = sum(weights[effect.id] * points.mean for effect, _, points in believed) + clip
    variance = FLOOR_SD_POINTS**2 + sum(
        (weights[effect.id] * points.sd) ** 2 for effect, _, points in believed
    )
    base = logit(decision.neutral)
    position = base + LOGIT_PER_POINT * mean
    chance = logistic(position)
    shown = _secant(base, position)
    return Ranked(
        option=option,
        chance=RallyChance(chance),
        sd=chance * (1 - chance) * LOGIT_PER_POINT * math.sqrt(variance),
        logit=position,
        logit_variance=LOGIT_PER_POINT**2 * variance,
        parts=tuple(
            Part(
                effect=effect,
                points=RallyPoints(shown * weights[effect.id] * points.mean),
                truth=truth,
            )
            for effect, truth, points in sorted(believed, key=lambda each: -abs(each[2].mean))
        ),
        clipped_points=shown * clip,
        p_best=0.0,
    )


def _secant(base: float, position: float) -> float:
    """Points of actual chance per declared point, so that the parts add up to the difference."""
    if math.isclose(base, position, abs_tol=1e-12):
        chance = logistic(base)
        return 100 * LOGIT_PER_POINT * chance * (1 - chance)
    return 100 * LOGIT_PER_POINT * (logistic(position) - logistic(base)) / (position - base)


def _not_replaced(effects: Sequence[Effect], truths: Mapping[EffectId, Truth]) -> Iterable[Effect]:
    """Where a computed effect states the same as a rule of thumb, the computed one stands."""
    computed = {
        effect.states
        for effect in effects
        if effect.states
        and effect.source.kind is SourceKind.COMPUTED
        and truths[effect.id] is not Truth.NO
    }
    for effect in effects:
        rule_of_thumb = effect.source.kind is SourceKind.COMMON_PRACTICE
        if not (rule_of_thumb and effect.states in computed):
            yield effect


def _believed(effect: Effect, truth: Truth) -> Points:
    """The effect's points given what is known: scaled by its trait, then by its condition.

    Scale: level l with variance v, s = max(0, +-l): mean s m, variance s^2 sd^2 + v (m^2 + sd^2).
    Unknown condition with prevalence pi: mean pi m, variance pi sd^2 + pi (1 - pi) m^2.
    """
    mean, variance = effect.points.mean, effect.points.sd**2
    if effect.scale is not None:
        level = max(0.0, effect.scale.towards * effect.scale.estimate.level)
        doubt = effect.scale.estimate.variance
        mean, variance = (
            level * mean,
            level**2 * variance + doubt * (mean**2 + variance),
        )
    if truth is Truth.UNKNOWN:
        holds = effect.when.prevalence
        mean, variance = holds * mean, holds * variance + holds * (1 - holds) * mean**2
    return Points(mean=mean, sd=math.sqrt(variance))


def _mechanism_weights(
    believed: Sequence[tuple[Effect, Points]],
) -> dict[EffectId, float]:
    """1 for the largest effect of each mechanism and sign, REST_OF_GROUP for the others."""
    groups: dict[tuple[Mechanism, bool], list[tuple[float, EffectId]]] = defaultdict(list)
    for effect, points in believed:
        groups[effect.mechanism, points.mean < 0].append((-abs(points.mean), effect.id))
    weights: dict[EffectId, float] = {}
    for group in groups.values():
        for place, (_, effect_id) in enumerate(sorted(group)):
            weights[effect_id] = 1.0 if place == 0 else REST_OF_GROUP
    return weights


def _clip(points: float) -> float:
    return max(-RULE_OF_THUMB_CLIP_POINTS, min(RULE_OF_THUMB_CLIP_POINTS, points))


def _confidence(ranked: Sequence[Ranked]) -> Confidence:
    p_best = ranked[0].p_best
    if p_best >= CLEAR_CHANCE:
        return Confidence.CLEAR
    return Confidence.LEAN if p_best >= LEAN_CHANCE else Confidence.TOSS_UP


def _unknowns(decision: Decision, truths: Mapping[EffectId, Truth]) -> tuple[Unknown, ...]:
    """Value of information per unknown fact: E[best if known] - best now, in points."""
    open_conditions = {
        effect.when.fact: effect.when
        for effect in decision.effects
        if truths[effect.id] is Truth.UNKNOWN
    }
    found = [
        _worth_of_knowing(decision, truths, fact, condition)
        for fact, condition in open_conditions.items()
    ]
    return tuple(sorted(found, key=lambda one: (-one.worth, one.fact)))


def _worth_of_knowing(
    decision: Decision, truths: Mapping[EffectId, Truth], fact: FactId, condition: Condition
) -> Unknown:
    yes = _ranked(decision, _settled(decision, truths, condition, holds=True))
    no = _ranked(decision, _settled(decision, truths, condition, holds=False))
    chance_yes = {one.option.id: one.chance for one in yes}
    chance_no = {one.option.id: one.chance for one in no}
    pi = condition.prevalence
    informed = pi * yes[0].chance + (1 - pi) * no[0].chance
    uninformed = max(
        pi * chance_yes[option.id] + (1 - pi) * chance_no[option.id] for option in decision.options
    )
    return Unknown(
        fact=fact,
        worth=RallyPoints(100 * (informed - uninformed)),
        if_yes=yes[0].option.id,
        if_no=no[0].option.id,
        condition=condition,
    )


def _settled(
    decision: Decision, truths: Mapping[EffectId, Truth], condition: Condition, *, holds: bool
) -> dict[EffectId, Truth]:
    """The truths if the fact were known: equal conditions follow, negations flip.

    Two conditions on one fact are the same test or each other's negation where their names say
    so; any other condition on that fact is its negation.
    """
    settled = dict(truths)
    for effect in decision.effects:
        if effect.when.fact == condition.fact and truths[effect.id] is Truth.UNKNOWN:
            same = effect.when.name == condition.name
            settled[effect.id] = Truth.of(holds is same)
    return settled


def chances_of_being_best(means: Sequence[float], variances: Sequence[float]) -> list[float]:
    """Chance that each of several independent normal beliefs is the largest.

    P(i best) = integral of phi_i(x) times the product of the others' Phi_j(x), by the trapezoid
    rule, which converges geometrically on a normal density: deterministic, no draws.
    """
    sds = [math.sqrt(variance) for variance in variances]
    if len(means) == 2:
        first = normal_cdf((means[0] - means[1]) / math.hypot(*sds))
        return [first, 1 - first]
    raw = [_chance_largest(place, means, sds) for place in range(len(means))]
    total = sum(raw)
    return [value / total for value in raw]


def _chance_largest(place: int, means: Sequence[float], sds: Sequence[float]) -> float:
    chance = 0.0
    for node, weight in _NODES:
        x = means[place] + sds[place] * node
        beats = 1.0
        for other, (mean, sd) in enumerate(zip(means, sds, strict=True)):
            if other != place:
                beats *= normal_cdf((x - mean) / sd)
        chance += weight * beats
    return chance


def _make_nodes(count: int = 61, reach: float = 5.0) -> tuple[tuple[float, float], ...]:
    """Evenly spaced nodes of the standard normal; the trapezoid rule is exact enough to 1e-6."""
    step = 2 * reach / (count - 1)
    nodes = [-reach + step * place for place in range(count)]
    weights = [math.exp(-node * node / 2) for node in nodes]
    total = sum(weights)
    return tuple((node, weight / total) for node, weight in zip(nodes, weights, strict=True))


_NODES = _make_nodes()


def logit(chance: float) -> float:
    """Log-odds of a chance strictly between 0 and 1; ValueError otherwise."""
    if not 0 < chance < 1:
        raise ValueError(f"a chance strictly between 0 and 1 has log-odds, not {chance}")
    return math.log(chance / (1 - chance))


def logistic(log_odds: float) -> float:
    """The chance with these log-odds."""
    return 1 / (1 + math.exp(-log_odds))


def normal_cdf(z: float) -> float:
    """Standard normal distribution function."""
    return 0.5 * (1 + math.erf(z / math.sqrt(2)))
