"""Which question of a scout card comes next: what would change our calls the most."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from knowledge.dataclass import dataclass
from knowledge.planning.scout_questions import ScoutQuestion, scout_questions
from knowledge.planning.worth import FACTS, HABITS, SKILLS
from knowledge.planning.worth_knowing import worth_knowing
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import PlayerId, Trait

BESIDE_A_CALL = 0.01
"""What a trait that no call rests on yet counts, of its worth in a report: it comes after those
that would change a call, and is still asked. Our own guess."""

FIRST = "hand"
"""A look that costs nothing and that turns every wing round: it always comes first."""

Place = tuple[PlayerId, str]
"""Of whom, and which question."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToAsk:
    """A question about a player, with what its answer is worth in rallies of 100."""

    player: PlayerId
    question: ScoutQuestion
    per_100: float

    @property
    def place(self) -> Place:
        return self.player, self.question.id


def to_ask(
    situation: Situation, *, warm_up: bool = False, but: Collection[Place] = frozenset()
) -> tuple[ToAsk, ...]:
    """What to watch these opponents for, most useful first, without what is known already.

    `warm_up`: only what shows without a rally. `but`: what was asked before.
    """
    known = {(one.player, one.trait): one.per_100 for one in worth_knowing(situation)}
    found = [
        ToAsk(
            player=one.player,
            question=question,
            per_100=_in_calls(known, one, question) + _beside(question),
        )
        for one in situation.theirs
        for question in _open(one, warm_up=warm_up)
        if (one.player, question.id) not in but
    ]
    order = {one.player: place for place, one in enumerate(situation.theirs)}
    found.sort(key=lambda one: (one.question.id != FIRST, -one.per_100, order[one.player]))
    return tuple(found)


def _in_calls(
    known: Mapping[tuple[PlayerId, Trait], float], one: OnCourt, question: ScoutQuestion
) -> float:
    """What calls gain by it; of a shot that is both, they rest on how good it is."""
    if question.is_habit and question.trait in SKILLS:
        return 0.0
    return known.get((one.player, question.trait), 0.0)


def _open(one: OnCourt, *, warm_up: bool) -> Iterator[ScoutQuestion]:
    for question in scout_questions().values():
        if not is_known(one, question) and (question.warm_up or not warm_up):
            yield question


def is_known(one: OnCourt, question: ScoutQuestion) -> bool:
    """Whether anything settles it already; what contradicts itself is asked again."""
    if question.is_fact:
        return one.profile.fact(question.trait) is not None
    estimate = one.profile.skills.get((question.trait, question.is_habit))
    return estimate is not None and bool(estimate.evidence) and not estimate.is_open


def _beside(question: ScoutQuestion) -> float:
    """A little of what the trait is worth in a report."""
    return BESIDE_A_CALL * _per_100(question.trait, habit=question.is_habit)


def _per_100(trait: Trait, *, habit: bool) -> float:
    table = FACTS if trait in FACTS else HABITS if habit else SKILLS
    return table[trait].per_100 if trait in table else 0.0
