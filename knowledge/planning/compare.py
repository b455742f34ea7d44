"""Players and pairs held against each other by what the book knows of them."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.advice import Reason
from knowledge.dataclass import dataclass
from knowledge.planning.aged import aged, source_of
from knowledge.planning.known import Known, how_sure
from knowledge.planning.names import pair_name
from knowledge.planning.phrases import fact_words, trait_words
from knowledge.planning.report import known_of
from knowledge.planning.report_bars import helps_when_up
from knowledge.situation import OnCourt, Situation
from knowledge.sources import Source, book
from knowledge.vocabulary import TRAITS, Trait, TraitKind, Value

ALIKE = 0.1
"""Rallies per hundred between two sides that we call no difference. Common practice, no source."""

HABIT_VALUES = frozenset({Value.OFTEN, Value.RARELY})


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """A player or a pair with what is known of them, most useful first.

    `danger` is what they cost us against what they give us, in rallies per hundred.
    """

    people: tuple[OnCourt, ...]
    known: tuple[Known, ...]
    danger: float

    @property
    def name(self) -> str:
        return pair_name(self.people)

    @property
    def telling_first(self) -> tuple[Known, ...]:
        """What moves the danger, most first; hands and sides last."""
        return tuple(sorted(self.known, key=lambda one: one.estimate is None))

    def telling(self, *, weakest: bool) -> Known | None:
        """What tells most for their weakness, or for their strength; else what tells most."""
        fitting = [one for one in self.known if _danger(one) * (-1 if weakest else 1) > 0]
        return next(iter((*fitting, *self.known)), None)


def side_of(people: Sequence[OnCourt], situation: Situation) -> Side:
    """What the book comes to on these."""
    known = sorted(
        (one for player in people for one in known_of(player, situation)),
        key=lambda one: -one.per_100,
    )
    return Side(people=tuple(people), known=tuple(known), danger=sum(map(_danger, known)))


def _danger(one: Known) -> float:
    """What it costs us; below nothing where it helps us, nothing for hands and sides."""
    if one.estimate is None or one.estimate.is_open:
        return 0.0
    return one.per_100 * (-1 if helps_when_up(one, ()) is one.up else 1)


def line_of(one: Known) -> Reason:
    """The thing known, as a report says it."""
    return Reason(text=f"{one.player.name}: {one.text}", source=one.source)


def act_of(one: Known) -> Reason:
    """What to do about it, where there is something to do."""
    if not one.use:
        return line_of(one)
    return Reason(text=one.use.format(name=one.player.name), source=one.source)


@dataclass(frozen=True, slots=True, kw_only=True)
class Holder:
    """A player who has a trait, how far, and what says so."""

    player: OnCourt
    level: float
    words: str
    reason: Reason


def holders(
    people: Sequence[OnCourt], trait: Trait, value: Value, *, today: int | None
) -> tuple[Holder, ...]:
    """Who has it by the book, the clearest first."""
    if TRAITS[trait].kind is TraitKind.FACT:
        found = [one for player in people if (one := _of_fact(player, trait, value, today))]
    else:
        found = [one for player in people if (one := _of_skill(player, trait, value, today))]
    return tuple(sorted(found, key=lambda one: -one.level))


def _of_fact(player: OnCourt, trait: Trait, value: Value, today: int | None) -> Holder | None:
    fact = player.profile.facts.get(trait)
    if fact is None or fact.known is not value:
        return None
    words = fact_words(trait, value)
    source = book(notes=len(fact.evidence), evidence=fact.evidence)
    reason = Reason(text=f"{player.name}: {words}", source=aged(source, fact.newest_day, today))
    return Holder(player=player, level=fact.chance, words=words, reason=reason)


def _of_skill(player: OnCourt, trait: Trait, value: Value, today: int | None) -> Holder | None:
    habit = value in HABIT_VALUES
    estimate = player.profile.skills.get((trait, habit))
    if estimate is None or not estimate.evidence or estimate.is_open:
        return None
    up = value in (Value.STRENGTH, Value.OFTEN)
    level = estimate.level if up else -estimate.level
    if level <= 0:
        return None
    words = trait_words(trait, habit=habit, up=up)
    reason = Reason(text=f"{player.name}: {words}", source=source_of(estimate, today))
    return Holder(player=player, level=level, words=words, reason=reason)


@dataclass(frozen=True, slots=True, kw_only=True)
class Whether:
    """What the book says of one trait of one player: whether it is so, None where notes disagree.

    `sure` is how sure that is in words, empty of a fact.
    """

    is_so: bool | None
    words: str
    source: Source
    sure: str = ""


def whether(player: OnCourt, trait: Trait, value: Value, *, today: int | None) -> Whether | None:
    """Whether the book has them so; None where it says nothing of it."""
    if TRAITS[trait].kind is TraitKind.FACT:
        fact = player.profile.facts.get(trait)
        if fact is None:
            return None
        return Whether(
            is_so=None if fact.known is None else fact.known is value,
            words=fact_words(trait, fact.value),
            source=aged(fact.source, fact.newest_day, today),
        )
    habit = value in HABIT_VALUES
    estimate = player.profile.skills.get((trait, habit))
    if estimate is None or not estimate.evidence:
        return None
    wanted_up, up = value in (Value.STRENGTH, Value.OFTEN), estimate.level > 0
    return Whether(
        is_so=None if estimate.is_open else up is wanted_up,
        words=trait_words(trait, habit=habit, up=up),
        source=source_of(estimate, today),
        sure=how_sure(estimate),
    )


def is_known(player: OnCourt, trait: Trait, value: Value) -> bool:
    """Whether the book says anything of it."""
    if TRAITS[trait].kind is TraitKind.FACT:
        return trait in player.profile.facts
    return (trait, value in HABIT_VALUES) in player.profile.skills
