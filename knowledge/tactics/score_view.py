"""The score as its topics see it: the match, our rally chances with their ground, what follows."""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import MAX_REASONS, Reason
from knowledge.chances import (
    PRIOR_RALLIES,
    Outlook,
    RallyRates,
    RateBelief,
    RingSum,
    base_rates,
    learned_rates,
    outlook,
    pooled_prior,
    prior_rates,
    ring_sums,
)
from knowledge.dataclass import dataclass
from knowledge.evidence import Ring
from knowledge.game import Discipline, GameFormat, MatchState, start
from knowledge.odds_words import of_hundred
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE, SAID, Source, SourceKind, book_rallies
from knowledge.tactics.score_read import score_read


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
        """The score in words, and the games before it."""
        return score_read(self.match.game, games=self._games)

    @property
    def both_read(self) -> str:
        """The same with whose number is whose, whoever serves."""
        return score_read(self.match.game, games=self._games, names_both=True)

    @property
    def _games(self) -> str:
        so_far = f"{self.match.games_ours}-{self.match.games_theirs}"
        return "" if so_far == "0-0" else f", games {so_far}"

    @property
    def rally_chance(self) -> float:
        """Our chance to win the rally that comes."""
        rates = self.belief.rates
        return rates.of_rally(we_serve=self.match.game.we_serve)


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
    """Our rally chances: said ones as they are, else the usual ones moved by the rallies played."""
    return _rates(situation)[0]


def rates_before(situation: Situation) -> RateBelief:
    """The same as they stood before this match: what its rallies are measured against."""
    return _with_said(situation, learned_rates(_prior(situation), situation.earlier_rallies))


def rallies_counted(situation: Situation) -> float:
    """Rallies behind our rates, older ones for less."""
    return sum(tally.weight * tally.rallies for tally in situation.tallies)


def _rates(situation: Situation) -> tuple[RateBelief, Reason]:
    learned = learned_rates(_prior(situation), situation.tallies)
    belief = _with_said(situation, learned)
    return belief, Reason(text=_in_words(belief.rates), source=_ground(situation))


def _with_said(situation: Situation, learned: RateBelief) -> RateBelief:
    serving, receiving = situation.asked.rates or (None, None)
    return RateBelief(
        serving=learned.serving if serving is None else serving,
        receiving=learned.receiving if receiving is None else receiving,
    )


def _prior(situation: Situation) -> RateBelief:
    """The book's own base, where it has one, else the usual one as others have moved it."""
    usual = pooled_prior(_usual(situation), situation.other_rallies)
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


def _usual(situation: Situation) -> RateBelief:
    """What is usual at the level, before any rally of ours."""
    format = _format(situation)
    return prior_rates(
        level=situation.level,
        mixed=situation.mixed,
        singles=format is not None and format.discipline is Discipline.SINGLES,
    )


def against_others(situation: Situation) -> tuple[str, ...]:
    """A line per ring of other opponents: what was won there beyond the usual, and its part."""
    if situation.base_rates is not None:
        return ()
    return tuple(map(_ring_line, ring_sums(_usual(situation), situation.other_rallies)))


_RING_NAMES = {Ring.ALIKE: "pairs like them", Ring.OTHERS: "everybody else"}


def _ring_line(one: RingSum) -> str:
    """ "Vs everybody else: 3 more of 30 than expected, counted 15%." """
    count = round(abs(one.excess))
    more = "as many" if not count else f"{count} {'more' if one.excess > 0 else 'fewer'}"
    than = "as" if not count else "than"
    return (
        f"Vs {_RING_NAMES[one.ring]}: {more} of {one.rallies} {than} expected, "
        f"counted {100 * one.part:.0f}%."
    )


def _format(situation: Situation) -> GameFormat | None:
    """What is played, by whatever of the match is known."""
    if situation.match is not None:
        return situation.match.format
    if situation.played:
        return situation.played[-1].before.format
    return situation.game.format if situation.game is not None else situation.format


def _in_words(rates: RallyRates) -> str:
    serving, receiving = of_hundred(rates.serving), of_hundred(rates.receiving)
    return f"You win {serving} of 100 serving, {receiving} receiving"


def _ground(situation: Situation) -> Source:
    """Where the two numbers come from: said, rallies with what is usual, the book's own base."""
    said = situation.asked.rates
    if said is not None:
        return replace(SAID, citation="one of two") if None in said else SAID
    counted = round(rallies_counted(situation))
    if situation.asked.tally is not None:
        return replace(SAID, citation=f"{situation.asked.tally.rallies} rallies")
    if counted:
        rest = "" if counted > 2 * PRIOR_RALLIES else "and the usual"
        evidence = tuple(each for tally in situation.tallies for each in tally.evidence)
        return book_rallies(counted, rest=rest, evidence=evidence)
    if situation.base_rates is not None:
        return replace(SAID, citation="as a rule")
    others = [one.tally for one in situation.other_rallies]
    if others:
        evidence = tuple(each for tally in others for each in tally.evidence)
        rallies = sum(tally.rallies for tally in others)
        return book_rallies(rallies, rest="vs others", evidence=evidence)
    return COMMON_PRACTICE


def said_rates_first(view: ScoreView, *reasons: Reason) -> tuple[Reason, ...]:
    """The reasons, led by the user's own numbers where those count: they are always shown."""
    if view.rates_reason.source.kind is not SourceKind.SAID:
        return reasons
    return (view.rates_reason, *reasons)[:MAX_REASONS]
