"""The decision behind stacking: every formation of our two, ranked, against playing straight."""

from __future__ import annotations

from dataclasses import replace
from itertools import chain
from typing import Final

from knowledge.dataclass import dataclass
from knowledge.effects import Decision, Option, OptionId
from knowledge.engine import Part, Ranking, rank
from knowledge.evidence import Profile
from knowledge.planning import sizes as planning_sizes
from knowledge.situation import Familiarity, Formation, OnCourt, Situation
from knowledge.tactics import stack_sizes as sizes
from knowledge.tactics.stack_effects import effects_of
from knowledge.tactics.stack_formations import Plan, plans
from knowledge.tactics.stack_said import StackSaid, stack_said
from knowledge.vocabulary import PlayerId, Side

STRAIGHT: Final = OptionId(Formation.STRAIGHT)

LEAST_GAIN: Final = 0.3
"""Rallies in 100 that a formation must gain over a simpler one to be worth it."""

SIMPLEST_FIRST: Final = (
    Formation.STRAIGHT,
    Formation.STACK_ON_SERVE,
    Formation.STACK_ON_RETURN,
    Formation.STACK_ALWAYS,
    Formation.ON_SIGNAL,
    Formation.SIDE_SWAP,
)

NAMELESS = (
    OnCourt(profile=Profile(player=PlayerId(-1), name="you")),
    OnCourt(profile=Profile(player=PlayerId(-2), name="your partner")),
)
"""Our two where the book does not know them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StackAnswer:
    """Our two, every plan ranked, and the one to play."""

    pair: tuple[OnCourt, OnCourt]
    said: StackSaid
    ranking: Ranking
    plan: Plan

    @property
    def is_named(self) -> bool:
        return self.pair != NAMELESS

    @property
    def gain(self) -> float:
        """Rallies in 100 over playing straight."""
        return self.gain_of(OptionId(self.plan.id))

    def gain_of(self, option: OptionId) -> float:
        straight = self.ranking.of(STRAIGHT)
        return 100 * (self.ranking.of(option).chance - straight.chance)

    @property
    def parts(self) -> tuple[Part, ...]:
        return self.ranking.of(OptionId(self.plan.id)).parts


def answer_stack(situation: Situation) -> StackAnswer:
    """The plan that gains most; of those that gain about as much the simplest.

    Where nothing tells two apart, whoever plays left now stays there.
    """
    pair = pair_of(situation)
    said = stack_said(situation)
    every = plans(pair)
    decision = Decision(
        options=tuple(Option(id=OptionId(plan.id), label=label(plan)) for plan in every),
        effects=tuple(chain.from_iterable(effects_of(plan, pair, said) for plan in every)),
        neutral=planning_sizes.EVEN_CHANCE,
        share=sizes.SHARE,
    )
    ranking = rank(decision, situation)
    best = ranking.best.chance
    near = [
        plan for plan in every if 100 * (best - ranking.of(OptionId(plan.id)).chance) < LEAST_GAIN
    ]
    least = min(
        near,
        key=lambda plan: (
            SIMPLEST_FIRST.index(plan.formation),
            round(-ranking.of(OptionId(plan.id)).logit, 6),
            plan.left is not None and plan.left.side is Side.RIGHT,
        ),
    )
    return StackAnswer(pair=pair, said=said, ranking=ranking, plan=least)


def pair_of(situation: Situation) -> tuple[OnCourt, OnCourt]:
    """Our two; two without a name where the book does not know exactly two."""
    ours = tuple({one.player: one for one in situation.ours}.values())
    return (ours[0], ours[1]) if len(ours) == 2 else NAMELESS


def label(plan: Plan) -> str:
    """The formation in a sentence."""
    what = {
        Formation.STRAIGHT: "straight",
        Formation.STACK_ON_SERVE: "stack on serve",
        Formation.STACK_ON_RETURN: "stack on return",
        Formation.STACK_ALWAYS: "stack on both",
        Formation.ON_SIGNAL: "stack on serve, signal on return",
        Formation.SIDE_SWAP: "swap sides every rally",
    }[plan.formation]
    return what if plan.left is None else f"{what}, {plan.left.name} left"


def when_new(situation: Situation) -> StackAnswer:
    """The same, were we together for the first time."""
    return answer_stack(_supposed(situation, Familiarity.NEW))


def when_used(situation: Situation) -> StackAnswer:
    """The same, were we a pair that knows it."""
    return answer_stack(
        replace(_supposed(situation, Familiarity.REGULAR), formation=Formation.STACK_ON_SERVE)
    )


def _supposed(situation: Situation, familiarity: Familiarity) -> Situation:
    asked = replace(situation.asked, words="")
    return replace(situation, asked=asked, familiarity=familiarity, formation=None, agreements={})


def unknown_hands(pair: tuple[OnCourt, OnCourt]) -> tuple[OnCourt, ...]:
    """Those of us whose hand nobody noted."""
    return tuple(one for one in pair if one.hand is None)
