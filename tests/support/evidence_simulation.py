"""Simulated opponents of known strength: how often our intervals cover the truth.

A hundred thousand players would be exact; some hundreds tell a coverage to 2 or 3 in 100.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import exp, log
from unittest.mock import patch

from scipy.stats import norm
from scouted import TODAY, observation

from knowledge.chances import Beta, RallyTally, RingTally, learned_rates, pooled_prior, prior_rates
from knowledge.evidence import (
    PLAYERS_DIFFER,
    USUAL_RATE,
    RateTally,
    Ring,
    beta_interval,
    estimate_rate,
    estimate_trait,
    rates,
)
from knowledge.vocabulary import EvidenceId, PlayerId, Rate, Trait, Value

COVERAGES = (0.5, 0.8, 0.95)
DOUBTS = (0.5, 1.0, 2.0)
"""Stated doubts as they are, halved and doubled: a right one covers what it claims."""

PAIRS_DIFFER = 0.05
"""How far our rally chance truly differs from pair to pair: what PRIOR_RALLIES = 100 states."""

Interval = tuple[float, float]
Covers = Callable[[float], tuple[Interval, float]]
"""An interval of that coverage, and the truth it should cover."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Coverage:
    """How often intervals covered the truth, in parts of 1, by what they claim."""

    what: str
    doubt: float
    found: tuple[float, ...]

    def __str__(self) -> str:
        shown = "  ".join(
            f"{100 * claim:.0f}%: {100 * one:5.1f}%"
            for claim, one in zip(COVERAGES, self.found, strict=True)
        )
        return f"{self.what:46} doubt x{self.doubt:<4} {shown}"


def _logistic(value: float) -> float:
    return 1 / (1 + exp(-value))


def _tally(rate: Rate, made: int, missed: int) -> RateTally:
    names = [EvidenceId(f"rally:1:{n}") for n in range(made + missed)]
    return RateTally(
        player=PlayerId(1),
        rate=rate,
        day=TODAY,
        made=tuple(names[:made]),
        missed=tuple(names[made:]),
    )


def _made(rng: random.Random, chance: float, rallies: int) -> int:
    return sum(rng.random() < chance for _ in range(rallies))


def rate_of_a_player(rng: random.Random, rate: Rate, rallies: int, *, doubt: float) -> Covers:
    """Players of a level differ as stated; so many of this one's rallies are logged."""
    usual = USUAL_RATE[rate]
    truth = _logistic(log(usual / (1 - usual)) + PLAYERS_DIFFER * rng.gauss(0, 1))
    made = _made(rng, truth, rallies)
    with patch.object(rates, "PLAYERS_DIFFER", doubt * PLAYERS_DIFFER):
        estimate = estimate_rate(rate, [_tally(rate, made, rallies - made)], today=TODAY)
    return lambda coverage: (estimate.interval(coverage), truth)


def level_of_a_trait(
    rng: random.Random, notes: int, rallies: int, *, doubt: float, rate: Rate = Rate.RETURN_IN
) -> Covers:
    """A place among players of a level that notes and rallies both speak of.

    Each note says strength with that chance; the rallies' rate stands where the place puts it.
    A doubt doubled lets every note weigh half.
    """
    place = rng.random()
    usual = USUAL_RATE[rate]
    own = _logistic(log(usual / (1 - usual)) + PLAYERS_DIFFER * float(norm.ppf(place)))
    made = _made(rng, own, rallies)
    claims = [
        observation(
            Trait.RETURN,
            Value.STRENGTH if rng.random() < place else Value.WEAKNESS,
            number=n + 1,
            author=f"watcher {n}",
            weight=1 / doubt,
        )
        for n in range(notes)
    ]
    counted = estimate_rate(rate, [_tally(rate, made, rallies - made)], today=TODAY)
    estimate = estimate_trait(claims, today=TODAY, rate=counted)
    return lambda coverage: (estimate.interval(coverage), 2 * place - 1)


def rally_chance(
    rng: random.Random, rallies: int, elsewhere: int, *, doubt: float, of_us: float = 0.6
) -> Covers:
    """Our serving chance against a pair, after rallies against it and against others.

    `of_us` is the part of the spread's variance that is our own strength, alike against all.
    """
    prior = prior_rates()
    assert isinstance(prior.serving, Beta)
    us: float = prior.serving.mean + PAIRS_DIFFER * of_us**0.5 * rng.gauss(0, 1)

    def against() -> float:
        return float(us + PAIRS_DIFFER * (1 - of_us) ** 0.5 * rng.gauss(0, 1))

    truth = against()
    scaled = Beta(wins=prior.serving.wins / doubt**2, losses=prior.serving.losses / doubt**2)
    per_match = 20
    others = []
    for _ in range(elsewhere // per_match):
        won = _made(rng, against(), per_match)
        others.append(
            RingTally(
                ring=Ring.OTHERS, tally=RallyTally(served_won=won, served_lost=per_match - won)
            )
        )
    won = _made(rng, truth, rallies)
    begun = pooled_prior(type(prior)(serving=scaled, receiving=prior.receiving), others)
    belief = learned_rates(begun, [RallyTally(served_won=won, served_lost=rallies - won)]).serving
    assert isinstance(belief, Beta)
    return lambda coverage: (beta_interval(coverage, belief.wins, belief.losses), truth)


def covered(
    what: str, one: Callable[[random.Random], Covers], *, doubt: float, players: int
) -> Coverage:
    """How often so many simulated truths lie in their intervals; the same ones every time."""
    rng = random.Random(1975)
    inside = [0] * len(COVERAGES)
    for _ in range(players):
        covers = one(rng)
        for place, claim in enumerate(COVERAGES):
            (low, high), truth = covers(claim)
            inside[place] += low <= truth <= high
    return Coverage(what=what, doubt=doubt, found=tuple(each / players for each in inside))


def table(*, players: int) -> Iterator[Coverage]:
    """Every kind of estimate, each with the doubt as stated, halved and doubled."""
    for doubt in DOUBTS:
        for rallies in (10, 40, 200):
            yield covered(
                f"return in, {rallies} rallies",
                lambda rng, n=rallies, d=doubt: rate_of_a_player(rng, Rate.RETURN_IN, n, doubt=d),  # type: ignore[misc]
                doubt=doubt,
                players=players,
            )
        for notes, rallies in ((3, 0), (12, 0), (3, 40), (3, 200)):
            yield covered(
                f"return, {notes} notes and {rallies} rallies",
                lambda rng, n=notes, r=rallies, d=doubt: level_of_a_trait(rng, n, r, doubt=d),  # type: ignore[misc]
                doubt=doubt,
                players=players,
            )
        for rallies, elsewhere in ((30, 0), (30, 200), (150, 1000)):
            yield covered(
                f"serving chance, {rallies} rallies, {elsewhere} vs others",
                lambda rng, n=rallies, e=elsewhere, d=doubt: rally_chance(rng, n, e, doubt=d),  # type: ignore[misc]
                doubt=doubt,
                players=players,
            )
