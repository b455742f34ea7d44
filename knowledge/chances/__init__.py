"""Exact win chances of games and matches from the two rally chances, from any state and format."""

from knowledge.chances.belief import (
    PRIOR_RALLIES,
    Beta,
    RallyTally,
    RateBelief,
    base_rates,
    learned_rates,
    prior_rates,
)
from knowledge.chances.counts import expected_rallies, serve_first_worth, shutout_chance
from knowledge.chances.gains import gain_if_kept, gain_this_rally, weight_to_come
from knowledge.chances.game_table import GameTable, StateError, game_table
from knowledge.chances.match_chance import match_chance
from knowledge.chances.outlook import Outlook, Range, outlook
from knowledge.chances.pooling import RingSum, RingTally, pooled_prior, ring_sums
from knowledge.chances.rates import EndlessGameError, RallyRates, RateError
from knowledge.chances.reads import MOST_TRIES, Read, worth_of_a_try
from knowledge.chances.stretches import stretch_chance
from knowledge.chances.swings import (
    Grouping,
    Leak,
    LeakPart,
    Swing,
    by_serve,
    by_server,
    by_side,
    by_tag,
    leak,
    swings,
)
from knowledge.chances.timeouts import TimeoutWorth, timeout_worth
from knowledge.chances.toss import TossWorth, game_across_ends, toss_worth
from knowledge.game import PlayedRally

__all__ = [
    "MOST_TRIES",
    "PRIOR_RALLIES",
    "Beta",
    "EndlessGameError",
    "GameTable",
    "Grouping",
    "Leak",
    "LeakPart",
    "Outlook",
    "PlayedRally",
    "RallyRates",
    "RallyTally",
    "Range",
    "RateBelief",
    "RateError",
    "Read",
    "RingSum",
    "RingTally",
    "StateError",
    "Swing",
    "TimeoutWorth",
    "TossWorth",
    "base_rates",
    "by_serve",
    "by_server",
    "by_side",
    "by_tag",
    "expected_rallies",
    "gain_if_kept",
    "gain_this_rally",
    "game_across_ends",
    "game_table",
    "leak",
    "learned_rates",
    "match_chance",
    "outlook",
    "pooled_prior",
    "prior_rates",
    "ring_sums",
    "serve_first_worth",
    "shutout_chance",
    "stretch_chance",
    "swings",
    "timeout_worth",
    "toss_worth",
    "weight_to_come",
    "worth_of_a_try",
]
