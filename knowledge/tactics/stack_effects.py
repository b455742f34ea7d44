"""The page of effects behind stacking: what each formation gains and costs, in rally points.

Everything counts per rally of all: what acts on a share of them is scaled by it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from knowledge.effects import Effect, Mechanism, TraitScale
from knowledge.evidence import NOTHING_KNOWN
from knowledge.planning.phrases import trait_words
from knowledge.planning.weighing import from_fact
from knowledge.situation import Formation, OnCourt
from knowledge.tactics import stack_sizes as sizes
from knowledge.tactics.stack_acting import HALF, Acting, scale_of, turned, written
from knowledge.tactics.stack_crossing import crossing_effects
from knowledge.tactics.stack_formations import Keep, Plan, backhands_meet, hand_of, inside_share
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


def effects_of(plan: Plan, pair: tuple[OnCourt, OnCourt], said: StackSaid) -> tuple[Effect, ...]:
    """Everything for and against one plan, that is not nothing."""
    found = [
        *_who_is_inside(plan, pair),
        *_better_in_the_middle(plan, pair),
        *_backhands(plan, pair),
        *crossing_effects(plan, pair, said),
        *_used_to_it(plan, said),
    ]
    found_effects = [
        written(plan, one) for one in found if one.points.mean and _is_known(one.scale)
    ]
    return (*found_effects, *_of_facts(plan, pair))


def _is_known(scale: TraitScale | None) -> bool:
    """Whether anything tells of the trait: a skill that nobody noted moves nobody."""
    return scale is None or scale.estimate != NOTHING_KNOWN


def _who_is_inside(plan: Plan, pair: Iterable[OnCourt]) -> Iterator[Acting]:
    """Two forehands in the middle, or two backhands; two alike hands have one of each anyway."""
    balance = sum(turned(inside_share(plan, one)) for one in pair) / 2
    wing = "forehands" if balance > 0 else "backhands"
    yield Acting(
        name="forehands",
        because=f"Puts both {wing} in the middle",
        points=sizes.FOREHANDS_INSIDE.times(balance),
        mechanism=Mechanism.COVER,
    )


def _better_in_the_middle(plan: Plan, pair: Iterable[OnCourt]) -> Iterator[Acting]:
    """Whoever has the forehand in the middle gets most balls: the better or more active one?"""
    for one in pair:
        inside = turned(inside_share(plan, one))
        if hand_of(one) is Hand.AMBIDEXTROUS:
            continue
        for trait, is_habit in STRENGTHS:
            for up in (True, False):
                sign = 1 if up else -1
                yield Acting(
                    name=f"inside:{one.player}:{trait}:{'up' if up else 'down'}",
                    because=trait_words(trait, habit=is_habit, up=up),
                    points=sizes.MIDDLE_BALLS.times(sign * inside),
                    mechanism=Mechanism.THEIR_REPLY,
                    scale=scale_of(one, trait, up=up, habit=is_habit),
                )


def _backhands(plan: Plan, pair: tuple[OnCourt, OnCourt]) -> Iterator[Acting]:
    """A weak backhand: at the sideline alone, or hidden beside the other's forehand."""
    for one, partner in (pair, pair[::-1]):
        if hand_of(one) is Hand.AMBIDEXTROUS:
            continue
        wide = turned(inside_share(plan, one))
        is_hidden = inside_share(plan, partner) > HALF
        exposed = wide if wide > 0 or is_hidden else 0.0
        for trait in BACKHANDS:
            yield Acting(
                name=f"wing:{one.player}:{trait}",
                because=trait_words(trait, habit=False, up=False),
                points=sizes.WEAK_WING_WIDE.times(-exposed),
                mechanism=Mechanism.OUR_ERROR,
                scale=scale_of(one, trait, up=False),
            )


def _of_facts(plan: Plan, pair: tuple[OnCourt, OnCourt]) -> Iterator[Effect]:
    """The side that somebody always plays, and a two-hander's short reach at the sideline.

    Sides that put both backhands in the middle are no habit worth keeping.
    """
    on = (plan.id,)
    are_kept = not backhands_meet(pair)
    for one in pair:
        left = turned(plan.left_of_all(one))
        if not left:
            continue
        for side, turn in ((Value.LEFT, 1), (Value.RIGHT, -1)) if are_kept else ():
            yield from_fact(
                one,
                Trait.SIDE_PLAYED,
                side,
                sizes.USUAL_SIDE.times(turn * left),
                Mechanism.OUR_ERROR,
                on=on,
                prevalence=HALF,
            )
        inside = turned(inside_share(plan, one))
        yield from_fact(
            one,
            Trait.TWO_HANDED_BACKHAND,
            Value.YES,
            sizes.TWO_HANDED_WIDE.times(-inside),
            Mechanism.COVER,
            on=on,
            prevalence=TWO_HANDERS,
        )


def _used_to_it(plan: Plan, said: StackSaid) -> Iterator[Acting]:
    """Muddle where it is new, calm where it is habit, and a surprise when well behind."""
    moved = _moved_share(plan)
    if moved:
        yield from _muddle(plan, said)
    if said.habit is plan.formation and said.fits_habit(plan):
        yield Acting(
            name="habit",
            because="You do it anyway: no thinking",
            points=sizes.HABIT,
            mechanism=Mechanism.AGREEMENT,
        )
    if plan.formation is Formation.ON_SIGNAL:
        yield from _signs()
    usual = said.habit or Formation.STRAIGHT
    if said.is_behind and plan.formation is not usual:
        yield Acting(
            name="breaks",
            because="Well behind: make them think anew",
            points=sizes.BREAKS_PATTERN.times(moved or _moved_share(Plan(formation=usual))),
            mechanism=Mechanism.HABIT,
        )


def _moved_share(plan: Plan) -> float:
    """The half of the rallies, or all, in which a formation is more than playing by the score."""
    return HALF * sum(plan.keep(we_serve=serves) is not Keep.SCORE for serves in (True, False))


def _muddle(plan: Plan, said: StackSaid) -> Iterator[Acting]:
    weighed = ((True, 1.0), (False, sizes.MUDDLE_ON_RETURN))
    points = sizes.MUDDLE.times(
        sum(
            HALF * weight
            for serves, weight in weighed
            if plan.keep(we_serve=serves) is not Keep.SCORE
        )
    )
    yield Acting(
        name="new",
        because="First time together costs two rallies",
        points=points,
        mechanism=Mechanism.AGREEMENT,
        when=told("we are new together", said.is_new, usual=sizes.NEW_PAIRS, fact="familiarity"),
    )
    yield Acting(
        name="never_done",
        because="You two have never done it",
        points=points,
        mechanism=Mechanism.AGREEMENT,
        when=told("we have never stacked", said.never_done, usual=sizes.HAVE_NEVER_DONE_IT),
    )


def _signs() -> Iterator[Acting]:
    yield Acting(
        name="signs",
        because="A sign each return is seen late at times",
        points=sizes.SIGNS.times(HALF),
        mechanism=Mechanism.OUR_ERROR,
    )
    yield Acting(
        name="unread",
        because="They can't know who will be where",
        points=sizes.UNREAD.times(HALF),
        mechanism=Mechanism.HABIT,
    )
