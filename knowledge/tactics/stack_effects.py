"""The page of effects behind stacking: what each formation gains and costs, in rally points.

Everything counts per rally of all: what acts on a share of them is scaled by it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from knowledge.effects import Condition, Effect, EffectId, Mechanism, OptionId, Points, TraitScale
from knowledge.engine import ALWAYS
from knowledge.evidence import NOTHING_KNOWN
from knowledge.planning.phrases import trait_words
from knowledge.planning.weighing import from_fact
from knowledge.situation import Formation, OnCourt
from knowledge.sources import COMMON_PRACTICE, Source
from knowledge.tactics import stack_sizes as sizes
from knowledge.tactics.stack_formations import Keep, Plan, hand_of, inside_share
from knowledge.tactics.stack_run import RUN, crossing_of
from knowledge.tactics.stack_said import StackSaid
from knowledge.tactics.told_ball import told
from knowledge.vocabulary import Hand, Trait, Value

STRENGTHS: tuple[tuple[Trait, bool], ...] = (
    (Trait.FOREHAND_VOLLEY, False),
    (Trait.FOREHAND_DINK, False),
    (Trait.SPEED_UP, False),
    (Trait.FOOT_SPEED, False),
    (Trait.POACHING, True),
)
"""What makes a player good, or active, in the middle; True for a habit."""

BACKHANDS = (Trait.BACKHAND_DINK, Trait.BACKHAND_VOLLEY)

TWO_HANDERS = 0.2
"""Players with a two-handed backhand, where nobody noted it. Common practice, no source."""

HALF = 0.5
"""Rallies in which we serve, of all; in the others we receive."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Acting:
    """One effect on one plan, before it is written down."""

    name: str
    because: str
    points: Points
    mechanism: Mechanism
    when: Condition = ALWAYS
    source: Source = COMMON_PRACTICE
    scale: TraitScale | None = None


def effects_of(plan: Plan, pair: tuple[OnCourt, OnCourt], said: StackSaid) -> tuple[Effect, ...]:
    """Everything for and against one plan, that is not nothing."""
    found = [
        *_who_is_inside(plan, pair),
        *_better_in_the_middle(plan, pair),
        *_backhands(plan, pair),
        *_crossing(plan, pair, said),
        *_used_to_it(plan, said),
    ]
    written = [_written(plan, one) for one in found if one.points.mean and _is_known(one.scale)]
    return (*written, *_of_facts(plan, pair))


def _is_known(scale: TraitScale | None) -> bool:
    """Whether anything tells of the trait: a skill that nobody noted moves nobody."""
    return scale is None or scale.estimate != NOTHING_KNOWN


def _written(plan: Plan, one: _Acting) -> Effect:
    return Effect(
        id=EffectId(f"{one.name}:{plan.id}"),
        on=frozenset({OptionId(plan.id)}),
        points=one.points,
        mechanism=one.mechanism,
        because=one.because,
        source=one.source,
        when=one.when,
        scale=one.scale,
    )


def _turned(share: float) -> float:
    """From a share of the rallies to -1 (never) up to 1 (always); half is 0, as by the score."""
    return 2 * share - 1


def _who_is_inside(plan: Plan, pair: Iterable[OnCourt]) -> Iterator[_Acting]:
    """Two forehands in the middle, or two backhands; two alike hands have one of each anyway."""
    balance = sum(_turned(inside_share(plan, one)) for one in pair) / 2
    wing = "forehands" if balance > 0 else "backhands"
    yield _Acting(
        name="forehands",
        because=f"Puts both {wing} in the middle",
        points=sizes.FOREHANDS_INSIDE.times(balance),
        mechanism=Mechanism.COVER,
    )


def _better_in_the_middle(plan: Plan, pair: Iterable[OnCourt]) -> Iterator[_Acting]:
    """Whoever has the forehand in the middle gets most balls: the better or more active one?"""
    for one in pair:
        inside = _turned(inside_share(plan, one))
        if hand_of(one) is Hand.AMBIDEXTROUS:
            continue
        for trait, is_habit in STRENGTHS:
            for up in (True, False):
                sign = 1 if up else -1
                yield _Acting(
                    name=f"inside:{one.player}:{trait}:{'up' if up else 'down'}",
                    because=trait_words(trait, habit=is_habit, up=up),
                    points=sizes.MIDDLE_BALLS.times(sign * inside),
                    mechanism=Mechanism.THEIR_REPLY,
                    scale=_scale(one, trait, up=up, habit=is_habit),
                )


def _scale(one: OnCourt, trait: Trait, *, up: bool, habit: bool = False) -> TraitScale:
    profile = one.profile
    return TraitScale(
        estimate=profile.habit(trait) if habit else profile.skill(trait),
        towards=1 if up else -1,
        player=one.player,
        trait=trait,
        habit=habit,
    )


def _backhands(plan: Plan, pair: tuple[OnCourt, OnCourt]) -> Iterator[_Acting]:
    """A weak backhand: at the sideline alone, or hidden beside the other's forehand."""
    for one, partner in (pair, pair[::-1]):
        if hand_of(one) is Hand.AMBIDEXTROUS:
            continue
        wide = _turned(inside_share(plan, one))
        is_hidden = inside_share(plan, partner) > HALF
        exposed = wide if wide > 0 or is_hidden else 0.0
        for trait in BACKHANDS:
            yield _Acting(
                name=f"wing:{one.player}:{trait}",
                because=trait_words(trait, habit=False, up=False),
                points=sizes.WEAK_WING_WIDE.times(-exposed),
                mechanism=Mechanism.OUR_ERROR,
                scale=_scale(one, trait, up=False),
            )


def _of_facts(plan: Plan, pair: tuple[OnCourt, OnCourt]) -> Iterator[Effect]:
    """The side that somebody always plays, and a two-hander's short reach at the sideline."""
    on = (plan.id,)
    for one in pair:
        left = _turned(plan.left_of_all(one))
        if not left:
            continue
        for side, turn in ((Value.LEFT, 1), (Value.RIGHT, -1)):
            yield from_fact(
                one,
                Trait.SIDE_PLAYED,
                side,
                sizes.USUAL_SIDE.times(turn * left),
                Mechanism.OUR_ERROR,
                on=on,
                prevalence=HALF,
            )
        inside = _turned(inside_share(plan, one))
        yield from_fact(
            one,
            Trait.TWO_HANDED_BACKHAND,
            Value.YES,
            sizes.TWO_HANDED_WIDE.times(-inside),
            Mechanism.COVER,
            on=on,
            prevalence=TWO_HANDERS,
        )


def _crossing(plan: Plan, pair: tuple[OnCourt, OnCourt], said: StackSaid) -> Iterator[_Acting]:
    """What it costs to be on the way when the ball comes."""
    serving, receiving = (HALF * plan.crossing_share(we_serve=serves) for serves in (True, False))
    yield _run(plan, pair, receiving)
    yield _Acting(
        name="crosser",
        because="They hit at the one who crosses",
        points=sizes.HIT_AT_CROSSER.times(serving + receiving),
        mechanism=Mechanism.HABIT,
        when=told(
            "they hit at the crosser", said.hit_at_crosser, usual=sizes.HOW_MANY_HIT_AT_CROSSER
        ),
    )
    yield _Acting(
        name="return",
        because="A return with a run in mind comes out short",
        points=sizes.RETURN_THEN_CROSS.times(receiving),
        mechanism=Mechanism.TIME,
    )
    if plan.formation is Formation.SIDE_SWAP:
        yield _Acting(
            name="both_cross",
            because="Both cross at once, through each other",
            points=sizes.NOBODY_OUTSIDE,
            mechanism=Mechanism.COVER,
        )
    yield from _legs(pair, said, receiving)


def _run(plan: Plan, pair: tuple[OnCourt, OnCourt], receiving: float) -> _Acting:
    """The returner's longer way to the line; by a sign only behind a high return."""
    runs = [crossing_of(one) for one in pair]
    picks_its_time = plan.keep(we_serve=False) is Keep.SIGNAL
    each = [one.behind_high_points if picks_its_time else one.points for one in runs]
    cost = sum(each) / len(each)
    return _Acting(
        name="run",
        because=f"On return you reach the line {runs[0].extra_s:.1f} s later",
        points=Points(mean=cost, sd=abs(cost) / 2).times(receiving),
        mechanism=Mechanism.TIME,
        source=RUN,
    )


def _legs(pair: tuple[OnCourt, OnCourt], said: StackSaid, receiving: float) -> Iterator[_Acting]:
    """What the longer run takes out of them, in the heat or of one who tires."""
    if said.is_hot:
        yield _Acting(
            name="heat",
            because="The longer run adds up today",
            points=sizes.EXTRA_RUN_IN_HEAT.times(2 * receiving),
            mechanism=Mechanism.OUR_ERROR,
        )
    for one in pair:
        yield _Acting(
            name=f"legs:{one.player}",
            because=trait_words(Trait.FITNESS, habit=False, up=False),
            points=sizes.EXTRA_RUN_IN_HEAT.times(receiving),
            mechanism=Mechanism.OUR_ERROR,
            scale=_scale(one, Trait.FITNESS, up=False),
        )


def _used_to_it(plan: Plan, said: StackSaid) -> Iterator[_Acting]:
    """Muddle where it is new, calm where it is habit, and a surprise when well behind."""
    moved = _moved_share(plan)
    if moved:
        yield from _muddle(plan, said)
    if said.habit is plan.formation and said.fits_habit(plan):
        yield _Acting(
            name="habit",
            because="You do it anyway: no thinking",
            points=sizes.HABIT,
            mechanism=Mechanism.AGREEMENT,
        )
    if plan.formation is Formation.ON_SIGNAL:
        yield from _signs()
    usual = said.habit or Formation.STRAIGHT
    if said.is_behind and plan.formation is not usual:
        yield _Acting(
            name="breaks",
            because="Well behind: make them think anew",
            points=sizes.BREAKS_PATTERN.times(moved or _moved_share(Plan(formation=usual))),
            mechanism=Mechanism.HABIT,
        )


def _moved_share(plan: Plan) -> float:
    """The half of the rallies, or all, in which a formation is more than playing by the score."""
    return HALF * sum(plan.keep(we_serve=serves) is not Keep.SCORE for serves in (True, False))


def _muddle(plan: Plan, said: StackSaid) -> Iterator[_Acting]:
    weighed = ((True, 1.0), (False, sizes.MUDDLE_ON_RETURN))
    points = sizes.MUDDLE.times(
        sum(
            HALF * weight
            for serves, weight in weighed
            if plan.keep(we_serve=serves) is not Keep.SCORE
        )
    )
    yield _Acting(
        name="new",
        because="First time together costs two rallies",
        points=points,
        mechanism=Mechanism.AGREEMENT,
        when=told("we are new together", said.is_new, usual=sizes.NEW_PAIRS, fact="familiarity"),
    )
    yield _Acting(
        name="never_done",
        because="You two have never done it",
        points=points,
        mechanism=Mechanism.AGREEMENT,
        when=told("we have never stacked", said.never_done, usual=sizes.HAVE_NEVER_DONE_IT),
    )


def _signs() -> Iterator[_Acting]:
    yield _Acting(
        name="signs",
        because="A sign each return is seen late at times",
        points=sizes.SIGNS.times(HALF),
        mechanism=Mechanism.OUR_ERROR,
    )
    yield _Acting(
        name="unread",
        because="They can't know who will be where",
        points=sizes.UNREAD.times(HALF),
        mechanism=Mechanism.HABIT,
    )
