"""The leak is an identity: what every rally swung adds up to how far our chance moved.

W_end − W_start = Σ weight · (result − expected) over the rallies, since a rally's swing is
weight · (1 − p) or −weight · p (engineering notes 1.9). Its variance over whole games is
W_start (1 − W_start), as the game ends at 0 or 1 (a martingale's increments; textbook).
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from chance_elimination import eliminated
from chance_formats import COMMON, SINGLES, rates
from chance_oracles import chain_of, expected_payoff, folded, weights, with_ends
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.chances import (
    PlayedRally,
    RallyRates,
    by_serve,
    by_server,
    by_side,
    by_tag,
    leak,
    match_chance,
    swings,
)
from knowledge.game import GameFormat, Lineup, MatchState, Scoring, after, start
from knowledge.vocabulary import PlayerId

CLOSE = 1e-12
FORMATS = (COMMON, GameFormat(target=15), SINGLES, GameFormat(scoring=Scoring.RALLY))
GAMES = 200
EVEN = RallyRates(serving=0.44, receiving=0.56)


def played(format: GameFormat, outcomes: list[bool], *, we_serve: bool) -> list[PlayedRally]:
    """The rallies of one game, up to its end."""
    state, rallies = start(format, we_serve=we_serve), []
    for n, won in enumerate(outcomes):
        if state.is_over:
            break
        rallies.append(PlayedRally(before=state, won_by_us=won, tags=(f"tag {n % 3}",)))
        state = after(state, won_by_us=won)
    return rallies


games = st.builds(
    lambda format, outcomes, we_serve: played(format, outcomes, we_serve=we_serve),
    st.sampled_from(FORMATS),
    st.lists(st.booleans(), min_size=1, max_size=90),
    st.booleans(),
)


@settings(max_examples=40, deadline=None)
@given(games, rates, rates)
def test_the_swings_add_up_to_what_the_chance_moved(
    rallies: list[PlayedRally], serving: float, receiving: float
) -> None:
    """Against the chain's values and weights, rally by rally summed."""
    found = leak(rallies, RallyRates(serving=serving, receiving=receiving))
    assert found is not None
    chain = chain_of(rallies[0].before.format)
    values = with_ends(chain, expected_payoff(chain, serving, receiving))
    weight = weights(chain, serving, receiving)
    first, last = chain.at(values, rallies[0].before), chain.at(values, rallies[-1].next)
    total = sum(
        chain.at(weight, one.before)
        * (one.won_by_us - (serving if one.before.we_serve else receiving))
        for one in rallies
    )
    assert found.start == pytest.approx(first, abs=CLOSE)
    assert found.end == pytest.approx(last, abs=CLOSE)
    assert found.total == pytest.approx(last - first, abs=CLOSE)
    assert sum(part.swing for part in found.parts) == pytest.approx(total, abs=CLOSE)
    assert found.unlogged == pytest.approx(0, abs=CLOSE)


def exact_values(format: GameFormat, rates: tuple[Fraction, Fraction]) -> dict[object, Fraction]:
    """Our chance in every state of a game, in fractions, by eliminating one state after another."""
    chain = chain_of(format)
    ends = [Fraction(end.we_won is True) for end in chain.ends]
    values = [*eliminated(chain, *rates), *ends]
    return {key: values[place] for key, place in chain.index.items()}


@pytest.mark.parametrize("format", [GameFormat(target=5), GameFormat(target=7, win_by=1)])
def test_in_fractions_the_identity_holds_without_a_rest(format: GameFormat) -> None:
    """W_end - W_start = sum of weight (result - expected), to the last digit; and rally by rally
    the swings of the engine are these, so that its unlogged rest is nothing but rounding."""
    serving, receiving = Fraction(11, 25), Fraction(14, 25)
    values = exact_values(format, (serving, receiving))
    random = np.random.default_rng(19)
    for we_serve in (True, False):
        outcomes = [bool(each) for each in random.random(200) < 0.5]
        rallies = played(format, outcomes, we_serve=we_serve)
        exact = []
        for one in rallies:
            won, lost = (
                values[folded(after(one.before, won_by_us=each))] for each in (True, False)
            )
            chance = serving if one.before.we_serve else receiving
            exact.append((won - lost) * (int(one.won_by_us) - chance))
        moved = values[folded(rallies[-1].next)] - values[folded(rallies[0].before)]
        assert sum(exact) == moved
        rates = RallyRates(serving=float(serving), receiving=float(receiving))
        for found_one, swing in zip(swings(rallies, rates), exact, strict=True):
            assert found_one.swing == pytest.approx(float(swing), abs=CLOSE)
        found = leak(rallies, rates)
        assert found is not None
        assert found.unlogged == pytest.approx(0, abs=CLOSE)
        for part in found.parts:
            own = [
                swing
                for one, swing in zip(rallies, exact, strict=True)
                if by_serve(one) == part.name
            ]
            assert part.swing == pytest.approx(float(sum(own)), abs=CLOSE)


GROUPINGS: dict[str, Callable[[PlayedRally], str]] = {
    "who served": by_serve,
    "server": by_server,
    "side": by_side,
    "tag": by_tag,
    "one of ours": lambda one: f"{one.before.we_serve} {one.before.server}",
}


def test_groupings_name_what_they_group_by() -> None:
    lineup = Lineup(
        our_starter=PlayerId(1),
        our_partner=PlayerId(2),
        their_starter=PlayerId(3),
        their_partner=PlayerId(4),
    )
    first = PlayedRally(before=start(COMMON, we_serve=True, lineup=lineup), won_by_us=False)
    second = PlayedRally(before=first.next, won_by_us=True, tags=("net", "dink"))
    assert [by_serve(one) for one in (first, second)] == ["serving", "receiving"]
    assert [by_server(one) for one in (first, second)] == ["player 1", "player 3"]
    assert [by_side(one) for one in (first, second)] == ["serving right", "receiving right"]
    assert [by_tag(one) for one in (first, second)] == ["untagged", "dink and net"]
    nameless = PlayedRally(before=start(COMMON, we_serve=False), won_by_us=True)
    assert by_server(nameless) == "receiving 2"


@settings(max_examples=40, deadline=None)
@given(games, rates, rates, st.sampled_from(sorted(GROUPINGS)))
def test_any_grouping_sums_to_the_same_total(
    rallies: list[PlayedRally], serving: float, receiving: float, grouping: str
) -> None:
    """Each part has its own rallies' swing, count, expectation and spread."""
    by = GROUPINGS[grouping]
    found = leak(rallies, RallyRates(serving=serving, receiving=receiving), by=by)
    assert found is not None
    chain = chain_of(rallies[0].before.format)
    weight = weights(chain, serving, receiving)
    groups: dict[str, list[PlayedRally]] = defaultdict(list)
    for one in rallies:
        groups[by(one)].append(one)
    assert {part.name for part in found.parts} == set(groups)
    for part in found.parts:
        own = groups[part.name]
        chances = [serving if one.before.we_serve else receiving for one in own]
        swing = [chain.at(weight, one.before) for one in own]
        assert (part.rallies, part.won) == (len(own), sum(one.won_by_us for one in own))
        assert part.expected == pytest.approx(sum(chances), abs=CLOSE)
        terms = zip(swing, own, chances, strict=True)
        moved = sum(w * (one.won_by_us - p) for w, one, p in terms)
        assert part.swing == pytest.approx(moved, abs=CLOSE)
        variance = sum(w * w * p * (1 - p) for w, p in zip(swing, chances, strict=True))
        assert part.spread == pytest.approx(math.sqrt(variance), abs=CLOSE)
    swung = [part.swing for part in found.parts]
    assert swung == sorted(swung), "the costliest first"
    assert sum(swung) == pytest.approx(found.end - found.start, abs=CLOSE)


def _random_game(random: np.random.Generator, at: RallyRates) -> list[PlayedRally]:
    state, rallies = start(COMMON, we_serve=True), []
    while not state.is_over:
        chance = at.serving if state.we_serve else at.receiving
        rallies.append(PlayedRally(before=state, won_by_us=bool(random.random() < chance)))
        state = rallies[-1].next
    return rallies


def test_the_spread_by_chance_alone_is_that_of_simulated_games() -> None:
    """200 games: mean squared spread and variance of the totals, four standard errors each."""
    random = np.random.default_rng(20_250_621)
    found = [leak(_random_game(random, EVEN), EVEN, by=lambda _: "all") for _ in range(GAMES)]
    totals = np.array([one.total for one in found if one is not None])
    squares = np.array([one.parts[0].spread ** 2 for one in found if one is not None])
    assert len(totals) == GAMES
    at_start = float(expected_payoff(chain_of(COMMON), EVEN.serving, EVEN.receiving)[0])
    variance = at_start * (1 - at_start)
    error = squares.std() / math.sqrt(len(squares))
    assert abs(squares.mean() - variance) < 4 * error
    assert abs(totals.mean()) < 4 * math.sqrt(variance / len(totals))


def test_what_was_told_and_not_tapped_is_kept_apart() -> None:
    """Two rallies with a jump between them: the jump is `unlogged`, and all still adds up."""
    first = PlayedRally(before=start(COMMON, we_serve=True), won_by_us=True)
    later = replace(first.next, ours=6, theirs=4, server=1, starter_serves=None)
    second = PlayedRally(before=later, won_by_us=False)
    found = leak([first, second], EVEN)
    assert found is not None
    chain = chain_of(COMMON)
    values = expected_payoff(chain, EVEN.serving, EVEN.receiving)
    jump = chain.at(values, later) - chain.at(values, first.next)
    assert found.unlogged == pytest.approx(jump, abs=CLOSE)
    moved = sum(part.swing for part in found.parts) + found.unlogged
    assert moved == pytest.approx(found.total, abs=CLOSE)
    assert found.total == pytest.approx(found.end - found.start, abs=CLOSE)


def test_no_rally_no_leak() -> None:
    assert leak([], EVEN) is None
    assert swings([], EVEN) == ()


def test_a_whole_match_leaks_what_separates_its_start_from_its_end() -> None:
    """Three games, in chances of the match: from the start's to 0 or 1."""
    random = np.random.default_rng(7)
    rallies, won, first = [], [0, 0], True
    while max(won) < 2:
        state = start(COMMON, we_serve=first)
        while not state.is_over:
            one = PlayedRally(
                before=state, won_by_us=bool(random.random() < 0.5), games=(won[0], won[1])
            )
            rallies.append(one)
            state = one.next
        won[0 if state.we_won else 1] += 1
        first = not first
    found = leak(rallies, EVEN, of_match=True)
    assert found is not None
    opening = MatchState(game=rallies[0].before)
    at_start = match_chance(opening, EVEN.serving, EVEN.receiving)
    assert found.start == pytest.approx(at_start, abs=CLOSE)
    assert found.end == (won[0] == 2)
    assert sum(part.swing for part in found.parts) == pytest.approx(found.total, abs=CLOSE)
    assert found.unlogged == pytest.approx(0, abs=CLOSE)


@settings(max_examples=40, deadline=None)
@given(games)
def test_each_swing_is_the_weight_times_the_surprise(rallies: list[PlayedRally]) -> None:
    for one in swings(rallies, EVEN):
        surprise = one.rally.won_by_us - one.expected
        assert one.swing == pytest.approx(one.weight * surprise, abs=CLOSE)
        assert one.swing == pytest.approx(one.after - one.before, abs=CLOSE)
        assert one.match_swing == pytest.approx(one.match_weight * surprise, abs=CLOSE)
