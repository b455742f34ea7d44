"""What changed of a player between two moments: new notes, traits that turned, rates that moved.

Both beliefs are read as of the same day, so that age alone changes nothing: only what was written
or logged in between does.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from knowledge.dataclass import dataclass
from knowledge.evidence import OPEN_LEVEL, FactEstimate, Profile, RateEstimate, TraitEstimate
from knowledge.planning.phrases import fact_words, trait_words
from knowledge.planning.rate_lines import rate_words
from knowledge.planning.worth import FACTS, HABITS, SKILLS
from knowledge.sources import Source, book, book_rallies
from knowledge.vocabulary import EvidenceId, Trait

MOVED_LEVEL = 0.15
"""A level that moved less than this is no news. Our own guess."""

MOVED_RATE = 0.03
"""A rate that we believe moved less than this is no news: 3 in 100. Our own guess."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """One thing that changed: what is said of it, what stands behind it, and how much it matters.

    `per_100` is the move times what the trait is worth at full level, in rallies of 100.
    """

    text: str
    source: Source
    per_100: float


def moved(then: Profile, now: Profile) -> tuple[Moved, ...]:
    """What is believed otherwise now, the most telling first."""
    found = [*_traits(then, now), *_facts(then, now), *_rates(then, now)]
    return tuple(sorted(found, key=lambda one: (-one.per_100, one.text)))


def moved_of_all(pairs: Iterable[tuple[Profile, Profile]]) -> tuple[Moved, ...]:
    """The same of several players, the most telling first."""
    found = [one for then, now in pairs for one in moved(then, now)]
    return tuple(sorted(found, key=lambda one: (-one.per_100, one.text)))


def _traits(then: Profile, now: Profile) -> Iterator[Moved]:
    for (trait, habit), estimate in now.skills.items():
        was = then.habit(trait) if habit else then.skill(trait)
        fresh = _fresh(was.evidence, estimate.evidence)
        taken_back = not fresh and len(was.evidence) > len(estimate.evidence)
        if not fresh and not taken_back:
            continue
        step = estimate.level - was.level
        if abs(step) >= MOVED_LEVEL:
            yield Moved(
                text=f"{now.name}: {_told(trait, was, estimate, habit=habit)}",
                source=_source(fresh),
                per_100=abs(step) * _worth(trait, habit=habit),
            )


def _told(trait: Trait, was: TraitEstimate, estimate: TraitEstimate, *, habit: bool) -> str:
    words = trait_words(trait, habit=habit, up=estimate.level > 0)
    before = trait_words(trait, habit=habit, up=was.level > 0)
    if not was.evidence:
        return f"new, {words}"
    if abs(estimate.level) < OPEN_LEVEL:
        return f"{before}, in doubt now"
    if was.level * estimate.level < 0:
        return f"{words}, was {before}"
    surer = "surer" if abs(estimate.level) > abs(was.level) else "less sure"
    return f"{words}, {surer} now"


def _worth(trait: Trait, *, habit: bool) -> float:
    found = (HABITS if habit else SKILLS).get(trait)
    return 0.0 if found is None else found.per_100


def _facts(then: Profile, now: Profile) -> Iterator[Moved]:
    for trait, fact in now.facts.items():
        was = then.facts.get(trait)
        if fact.known is None or (was is not None and was.known is fact.known):
            continue
        yield Moved(
            text=f"{now.name}: {_fact_told(trait, was, fact)}",
            source=_source(_fresh(was.evidence if was else (), fact.evidence)),
            per_100=FACTS[trait].per_100 if trait in FACTS else 0.0,
        )


def _fact_told(trait: Trait, was: FactEstimate | None, fact: FactEstimate) -> str:
    words = fact_words(trait, fact.value)
    if was is None or was.known is None:
        return f"new, {words}"
    return f"{words}, was {fact_words(trait, was.known)}"


def _rates(then: Profile, now: Profile) -> Iterator[Moved]:
    """Rates by what was counted in between; one that nothing was counted of did not move."""
    for rate, found in now.rates.items():
        was = then.rates.get(rate)
        of = found.of - (was.of if was else 0)
        made = found.made - (was.made if was else 0)
        before = was.mean if was else _begun(found)
        if of <= 0 or abs(found.mean - before) < MOVED_RATE:
            continue
        told = f"{now.name}: {rate_words(rate)} {made} of {of}"
        earlier = f", before {was.made} of {was.of}" if was and was.of else ""
        fresh = _fresh(was.evidence if was else (), found.evidence)
        yield Moved(
            text=f"{told}{earlier}",
            source=book_rallies(of, evidence=fresh),
            per_100=100 * abs(found.mean - before) / RATE_PER_RALLY,
        )


RATE_PER_RALLY = 10
"""Ten in a hundred more or fewer of a rate are about one rally. Common practice, no source."""


def _begun(rate: RateEstimate) -> float:
    alpha, beta = rate.begun
    return alpha / (alpha + beta)


def _fresh(was: Sequence[EvidenceId], evidence: Sequence[EvidenceId]) -> tuple[EvidenceId, ...]:
    known = frozenset(was)
    return tuple(one for one in evidence if one not in known)


def _source(fresh: tuple[EvidenceId, ...]) -> Source:
    """What is new behind it: notes, rallies, or both."""
    notes = sum(one.startswith("note:") for one in fresh)
    return book(notes=notes, rallies=len(fresh) - notes, evidence=fresh)
