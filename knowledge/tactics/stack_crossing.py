"""What a formation costs while we cross: the longer way in, the one they hit at, tired legs."""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.effects import Mechanism, Points
from knowledge.planning.phrases import trait_words
from knowledge.situation import Formation, OnCourt
from knowledge.tactics import stack_sizes as sizes
from knowledge.tactics.stack_acting import HALF, Acting, scale_of
from knowledge.tactics.stack_formations import Keep, Plan
from knowledge.tactics.stack_run import RUN, crossing_of
from knowledge.tactics.stack_said import StackSaid
from knowledge.tactics.told_ball import told
from knowledge.vocabulary import Trait


def crossing_effects(
    plan: Plan, pair: tuple[OnCourt, OnCourt], said: StackSaid
) -> Iterator[Acting]:
    """What it costs to be on the way when the ball comes."""
    serving, receiving = (HALF * plan.crossing_share(we_serve=serves) for serves in (True, False))
    yield _run(plan, pair, receiving)
    yield Acting(
        name="crosser",
        because="They hit at the one who crosses",
        points=sizes.HIT_AT_CROSSER.times(serving + receiving),
        mechanism=Mechanism.HABIT,
        when=told(
            "they hit at the crosser", said.hit_at_crosser, usual=sizes.HOW_MANY_HIT_AT_CROSSER
        ),
    )
    yield Acting(
        name="return",
        because="A return with a run in mind comes out short",
        points=sizes.RETURN_THEN_CROSS.times(receiving),
        mechanism=Mechanism.TIME,
    )
    if plan.formation is Formation.SIDE_SWAP:
        yield Acting(
            name="both_cross",
            because="Both cross at once, through each other",
            points=sizes.NOBODY_OUTSIDE,
            mechanism=Mechanism.COVER,
        )
    yield from _legs(pair, said, receiving)


def _run(plan: Plan, pair: tuple[OnCourt, OnCourt], receiving: float) -> Acting:
    """The returner's longer way to the line; by a sign only behind a high return."""
    runs = [crossing_of(one) for one in pair]
    picks_its_time = plan.keep(we_serve=False) is Keep.SIGNAL
    each = [one.behind_high_points if picks_its_time else one.points for one in runs]
    cost = sum(each) / len(each)
    return Acting(
        name="run",
        because=f"On return you reach the line {runs[0].extra_s:.1f} s later",
        points=Points(mean=cost, sd=abs(cost) / 2).times(receiving),
        mechanism=Mechanism.TIME,
        source=RUN,
    )


def _legs(pair: tuple[OnCourt, OnCourt], said: StackSaid, receiving: float) -> Iterator[Acting]:
    """What the longer run takes out of them, in the heat or of one who tires."""
    if said.is_hot:
        yield Acting(
            name="heat",
            because="The longer run adds up today",
            points=sizes.EXTRA_RUN_IN_HEAT.times(2 * receiving),
            mechanism=Mechanism.OUR_ERROR,
        )
    for one in pair:
        yield Acting(
            name=f"legs:{one.player}",
            because=trait_words(Trait.FITNESS, habit=False, up=False),
            points=sizes.EXTRA_RUN_IN_HEAT.times(receiving),
            mechanism=Mechanism.OUR_ERROR,
            scale=scale_of(one, Trait.FITNESS, up=False),
        )
