"""From what was seen to what we believe: notes and logged rallies to estimates with doubt.

The door: import from here.
"""

from __future__ import annotations

from knowledge.evidence.estimates import (
    FACT_KNOWN_CHANCE,
    NOTHING_KNOWN,
    OPEN_LEVEL,
    FactEstimate,
    TraitEstimate,
)
from knowledge.evidence.facts import (
    AMBIDEXTROUS_LOG_ODDS,
    HAND_LOG_ODDS_HEARSAY,
    HAND_LOG_ODDS_LIVE,
    LASTING_FACTS,
    estimate_fact,
)
from knowledge.evidence.intervals import beta_cdf, beta_interval, beta_quantile
from knowledge.evidence.notes import estimate_trait
from knowledge.evidence.observation import (
    A_DAY_AHEAD,
    CONDITION_PART,
    HALF_LIFE_DAYS,
    HEARSAY_WEIGHT,
    TAKEN_BACK_WEIGHT,
    Observation,
    age_factor,
)
from knowledge.evidence.peers import (
    NO_PEERS,
    Peers,
    RateCount,
    RateRing,
    Rings,
    Stance,
    peers_of,
)
from knowledge.evidence.profile import Profile, Recall, profile, recall_nothing
from knowledge.evidence.rates import (
    PLAYERS_DIFFER,
    RATE_TRAIT,
    USUAL_RATE,
    RateEstimate,
    RateTally,
    estimate_rate,
    usual_counts,
)
from knowledge.evidence.reading import Looked, watched
from knowledge.evidence.rings import RING_PART, Ring, RingCount, moved_mean

__all__ = [
    "AMBIDEXTROUS_LOG_ODDS",
    "A_DAY_AHEAD",
    "CONDITION_PART",
    "FACT_KNOWN_CHANCE",
    "HALF_LIFE_DAYS",
    "HAND_LOG_ODDS_HEARSAY",
    "HAND_LOG_ODDS_LIVE",
    "HEARSAY_WEIGHT",
    "LASTING_FACTS",
    "NOTHING_KNOWN",
    "NO_PEERS",
    "OPEN_LEVEL",
    "PLAYERS_DIFFER",
    "RATE_TRAIT",
    "RING_PART",
    "TAKEN_BACK_WEIGHT",
    "USUAL_RATE",
    "FactEstimate",
    "Looked",
    "Observation",
    "Peers",
    "Profile",
    "RateCount",
    "RateEstimate",
    "RateRing",
    "RateTally",
    "Recall",
    "Ring",
    "RingCount",
    "Rings",
    "Stance",
    "TraitEstimate",
    "age_factor",
    "beta_cdf",
    "beta_interval",
    "beta_quantile",
    "estimate_fact",
    "estimate_rate",
    "estimate_trait",
    "moved_mean",
    "peers_of",
    "profile",
    "recall_nothing",
    "usual_counts",
    "watched",
]
