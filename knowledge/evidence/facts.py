"""Notes on a fact, such as the playing hand, to its best-supported value by adding log-odds."""

from __future__ import annotations

import math
from collections.abc import Iterable

from knowledge.evidence.estimates import FactEstimate
from knowledge.evidence.observation import (
    Observation,
    age_factor,
    one_per_author_and_day,
    standings,
)
from knowledge.vocabulary import TRAITS, Seen, Trait, Value

HAND_LOG_ODDS_LIVE = math.log(20.0)
"""One look at a player's hand is right about 20 times in 21. Common practice, no source."""

HAND_LOG_ODDS_HEARSAY = math.log(5.0)

LASTING_FACTS = frozenset({Trait.HAND, Trait.HEIGHT, Trait.TWO_HANDED_BACKHAND})
"""Facts that do not fade: a lefty of last year is a lefty. The other facts age like notes."""

AMBIDEXTROUS_LOG_ODDS = math.log(0.02)
"""Two forehands are rare, about one player in fifty of either hand. Common practice, no source."""


def estimate_fact(observations: Iterable[Observation], *, today: int) -> FactEstimate | None:
    """Best-supported value of a fact by adding log-odds per observation; None without any.

    A denial ("not a lefty") counts for the values it leaves open. Beforehand all values are
    equally likely, but for two forehands, which are rare. LASTING_FACTS do not age.
    """
    kept = one_per_author_and_day(observations)
    if not kept:
        return None
    values = TRAITS[kept[0].trait].values
    support = dict.fromkeys(values, 0.0)
    if Value.AMBIDEXTROUS in support:
        support[Value.AMBIDEXTROUS] = AMBIDEXTROUS_LOG_ODDS
    for one, stands in zip(kept, standings(kept), strict=True):
        step = _log_odds(one, today=today) * stands
        support[one.value] += -step if one.denied else step
    best = max(values, key=lambda value: support[value])
    chance = 1 / sum(math.exp(support[value] - support[best]) for value in values)
    against = sum(not _agrees(one, best) for one in kept)
    return FactEstimate(
        value=best,
        chance=chance,
        evidence=tuple(sorted(one.evidence for one in kept)),
        contradicted=against > 0,
        newest_day=max(one.day for one in kept),
        disagreeing=against,
    )


def _agrees(one: Observation, value: Value) -> bool:
    """Whether a claim fits a fact's value: a denial of another value does."""
    return (one.value is value) is not one.denied


def _log_odds(one: Observation, *, today: int) -> float:
    full = HAND_LOG_ODDS_LIVE if one.seen is Seen.LIVE else HAND_LOG_ODDS_HEARSAY
    age = 1.0 if one.trait in LASTING_FACTS else age_factor(one.day, today=today)
    return full * min(1.0, one.weight) * age
