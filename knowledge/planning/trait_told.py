"""What a report says first where one trait is asked after: yes, no, or what is noted instead."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.advice import Reason
from knowledge.dataclass import dataclass
from knowledge.evidence import TraitEstimate
from knowledge.planning.aged import aged, source_of
from knowledge.planning.known import fact_said
from knowledge.planning.names import first_that_fits
from knowledge.planning.phrases import trait_words
from knowledge.situation import OnCourt
from knowledge.sources import book
from knowledge.trait_asked import TraitAsked
from knowledge.vocabulary import TRAITS, Trait, TraitKind, Value

PAIR = 2
_UP = frozenset({Value.STRENGTH, Value.OFTEN})
_HABIT = frozenset({Value.OFTEN, Value.RARELY})


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """What is noted of one player: the words, whether it is so as asked, and what says it."""

    player: OnCourt
    words: str
    is_so: bool | None
    reason: Reason | None

    @property
    def alone(self) -> str:
        if self.reason is None:
            return f"{self.words}."
        answer = {True: "Yes. ", False: "No. ", None: ""}[self.is_so]
        return f"{answer}{self.player.name}: {self.words}."


def trait_told(
    people: Sequence[OnCourt], asked: TraitAsked, *, today: int | None
) -> tuple[str, tuple[Reason, ...]]:
    """The answer in a line, and what it rests on, a line each."""
    told = [_told(one, asked, today) for one in people]
    reasons = tuple(one.reason for one in told if one.reason is not None)
    if len(told) == 1:
        return first_that_fits((told[0].alone, told[0].words)), reasons
    known = [f"{one.player.name}: {one.words}." for one in told if one.reason is not None]
    if not known:
        whose = "either" if len(told) == PAIR else "them"
        return first_that_fits((f"Not noted of {whose}: {TRAITS[asked.trait].label}.",)), reasons
    unknown = [one.words for one in told if one.reason is None]
    every = " ".join([*known, *(f"{words}." for words in unknown)])
    return first_that_fits((every, " ".join(known) or every)), reasons


def said_by_notes(trait: Trait, estimate: TraitEstimate, *, habit: bool, up: bool) -> str:
    """ "weak backhand dink", or both sides of a contradiction with how many say each."""
    yes, no = estimate.says_yes, estimate.says_no
    if not (yes and no):
        return trait_words(trait, habit=habit, up=up, denied=estimate.only_denied)
    sides = [
        (yes, trait_words(trait, habit=habit, up=True)),
        (no, trait_words(trait, habit=habit, up=False)),
    ]
    if not up:
        sides.reverse()
    return ", ".join(f"{count} say{'s' if count == 1 else ''} {words}" for count, words in sides)


def led_by(first: Sequence[Reason], lines: Sequence[Reason]) -> tuple[Reason, ...]:
    """The lines of a report with what was asked after in front, each thing said once."""
    lead = [next((line for line in lines if _says(line, one)), one) for one in first]
    return (*lead, *(line for line in lines if line not in lead))


def _says(line: Reason, one: Reason) -> bool:
    name, _, words = one.text.partition(": ")
    return line.text.startswith(f"{name}: ") and words in line.text


def _told(player: OnCourt, asked: TraitAsked, today: int | None) -> _Told:
    if TRAITS[asked.trait].kind is TraitKind.FACT:
        return _fact(player, asked, today)
    return _skill(player, asked, today)


def _fact(player: OnCourt, asked: TraitAsked, today: int | None) -> _Told:
    fact = player.profile.facts.get(asked.trait)
    if fact is None:
        return _not_noted(player, asked.trait)
    words = fact_said(asked.trait, fact)
    source = aged(book(notes=len(fact.evidence), evidence=fact.evidence), fact.newest_day, today)
    is_told = asked.value is None or asked.is_open or fact.contradicted
    is_so = None if is_told else fact.value is asked.value
    return _reading(player, words, is_so, Reason(text=f"{player.name}: {words}", source=source))


def _skill(player: OnCourt, asked: TraitAsked, today: int | None) -> _Told:
    habit = asked.value in _HABIT
    estimate = player.profile.skills.get((asked.trait, habit))
    if estimate is None and asked.is_open:
        # "How many of her drops go in" may have been noted as how good they are.
        habit = not habit
        estimate = player.profile.skills.get((asked.trait, habit))
    if estimate is None or not estimate.evidence:
        return _not_noted(player, asked.trait)
    up = estimate.level > 0
    words = said_by_notes(asked.trait, estimate, habit=habit, up=up)
    is_even = estimate.is_open or 0 < estimate.says_yes == estimate.says_no
    is_told = is_even or asked.is_open or asked.value is None
    is_so = None if is_told else up is (asked.value in _UP)
    reason = Reason(text=f"{player.name}: {words}", source=source_of(estimate, today))
    return _reading(player, words, is_so, reason)


def _reading(player: OnCourt, words: str, is_so: bool | None, reason: Reason) -> _Told:
    return _Told(player=player, words=words, is_so=is_so, reason=reason)


def _not_noted(player: OnCourt, trait: Trait) -> _Told:
    words = f"Not noted: {player.name}'s {TRAITS[trait].label}"
    return _Told(player=player, words=words, is_so=None, reason=None)
