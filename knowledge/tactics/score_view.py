"""The score as its topics see it: the match, our rally chances with their ground, what follows."""

from __future__ import annotations

from dataclasses import dataclass, replace

from knowledge.advice import Reason
from knowledge.chances import (
    Outlook,
    RallyRates,
    RateBelief,
    base_rates,
    learned_rates,
    outlook,
    prior_rates,
)
from knowledge.game import GameFormat, MatchState, start
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE, SAID, Source, book_rallies
from knowledge.tactics.odds_words import of_hundred


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoreView:
    """Where the match stands, what we believe of its rallies, and what follows from both.

    `assumed` says what had to be taken because nobody said it; None where all was said.
    """

    match: MatchState
    belief: RateBelief
    outlook: Outlook
    rates_reason: Reason
    assumed: str | None

    @property
    def score_read(self) -> str:
        """The score in words, so that everybody sees which one the answer is about."""
        game, match = self.match.game, self.match
        so_far = f"{match.games_ours}-{match.games_theirs}"
        games = "" if so_far == "0-0" else f", games {so_far}"
        return f"At {game.call}, {'we' if game.we_serve else 'they'} serve{games}."

    @property
    def rally_chance(self) -> float:
        """Our chance to win the rally that comes."""
        rates = self.belief.rates
        return rates.serving if self.match.game.we_serve else rates.receiving


def view_of(situation: Situation) -> ScoreView:
    """The score of the question or of the running match, else a game's start.

    EndlessGameError for rates with which no such game ends, StateError for a state that no
    game reaches.
    """
    match, assumed = _match(situation)
    belief, reason = _rates(situation)
    return ScoreView(
        match=match,
        belief=belief,
        outlook=outlook(match, belief),
        rates_reason=reason,
        assumed=assumed,
    )


def _match(situation: Situation) -> tuple[MatchState, str | None]:
    if situation.match is not None:
        return situation.match, None
    if situation.game is not None:
        return MatchState(game=situation.game), None
    format = situation.format or GameFormat()
    we_serve = situation.asked.we_serve is not False
    first = start(format, we_serve=we_serve)
    whose = "we serve" if we_serve else "they serve"
    return MatchState(game=first), f"No score said: I took {first.call}, {whose}."


def rates_of(situation: Situation) -> RateBelief:
    """Our rally chances: said ones as they are, else the usual ones moved by the rallies logged."""
    return _rates(situation)[0]


def _rates(situation: Situation) -> tuple[RateBelief, Reason]:
    learned = learned_rates(_prior(situation), situation.tallies)
    said_serving, said_receiving = situation.asked.rates or (None, None)
    belief = RateBelief(
        serving=learned.serving if said_serving is None else said_serving,
        receiving=learned.receiving if said_receiving is None else said_receiving,
    )
    return belief, Reason(text=_in_words(belief.rates), source=_ground(situation))


def _prior(situation: Situation) -> RateBelief:
    """The book's own base, where it has one, else what is usual at the level."""
    usual = prior_rates(level=situation.level, mixed=situation.mixed)
    ours = situation.base_rates
    if ours is None:
        return usual
    rates = usual.rates
    return base_rates(
        RallyRates(
            serving=rates.serving if ours[0] is None else ours[0],
            receiving=rates.receiving if ours[1] is None else ours[1],
        )
    )


def _in_words(rates: RallyRates) -> str:
    serving, receiving = of_hundred(rates.serving), of_hundred(rates.receiving)
    return f"You win {serving} of 100 serving, {receiving} receiving"


def _ground(situation: Situation) -> Source:
    """Where the two numbers come from: said, rallies, the book's own base, or what is usual."""
    if situation.asked.rates is not None and None not in situation.asked.rates:
        return SAID
    counted = sum(tally.rallies for tally in situation.tallies)
    if situation.asked.rates is not None:
        return replace(SAID, citation="one of two")
    if counted:
        return book_rallies(counted)
    if situation.base_rates is not None:
        return replace(SAID, citation="as a rule")
    return COMMON_PRACTICE
