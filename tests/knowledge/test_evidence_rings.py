"""Pooling over disjoint rings. Oracles: closed forms, and a published example of shrinking."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.chances import (
    Beta,
    RallyTally,
    RateBelief,
    RingTally,
    learned_rates,
    pooled_prior,
    prior_rates,
    ring_sums,
)
from knowledge.evidence import RING_PART, Ring, RingCount, moved_mean

HITS = (18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7)
AT_BATS = 45
"""Efron and Morris, "Stein's paradox in statistics" (Scientific American, May 1977), table of 18
players' first 45 at bats of 1970; numbers from memory, their mean .265 and factor .212 agree."""


def test_shrinking_is_that_of_efron_and_morris() -> None:
    """Published there: factor .212, the best hitter's .400 becomes .294, the worst's .156 .242."""
    mean = sum(HITS) / (len(HITS) * AT_BATS)
    assert mean == pytest.approx(0.265, abs=5e-4)
    noise = mean * (1 - mean) / AT_BATS
    spread = sum((hits / AT_BATS - mean) ** 2 for hits in HITS)
    factor = 1 - (len(HITS) - 3) * noise / spread
    assert factor == pytest.approx(0.212, abs=0.01)
    weight = AT_BATS * (1 - factor) / factor  # credibility n / (n + weight) is the factor
    for hits, published in ((18, 0.294), (7, 0.242)):
        others = sum(HITS) - hits
        of = (len(HITS) - 1) * AT_BATS
        start = moved_mean(
            mean, weight, [RingCount(made=others, of=of, expected=others / of, part=1.0)]
        )
        belief = RateBelief(serving=Beta(wins=start * weight, losses=(1 - start) * weight),
                            receiving=0.5)  # fmt: skip
        tally = RallyTally(served_won=hits, served_lost=AT_BATS - hits)
        assert learned_rates(belief, [tally]).rates.serving == pytest.approx(published, abs=2e-3)


rings = st.lists(
    st.builds(
        RingTally,
        ring=st.sampled_from(list(Ring)),
        tally=st.builds(
            RallyTally,
            served_won=st.integers(0, 40),
            served_lost=st.integers(0, 40),
            received_won=st.integers(0, 40),
            received_lost=st.integers(0, 40),
            weight=st.floats(0.0, 1.0),
        ),
    ),
    max_size=8,
)


@given(rings)
def test_where_the_same_is_expected_it_is_a_beta_after_weighted_counts(
    told: list[RingTally],
) -> None:
    prior = prior_rates()
    assert isinstance(prior.serving, Beta)
    won = sum(RING_PART[one.ring] * one.tally.weight * one.tally.served_won for one in told)
    lost = sum(RING_PART[one.ring] * one.tally.weight * one.tally.served_lost for one in told)
    after = Beta(wins=prior.serving.wins + won, losses=prior.serving.losses + lost)
    moved = pooled_prior(prior, told).serving
    assert isinstance(moved, Beta)
    assert moved.mean == pytest.approx(after.mean, abs=1e-12)
    assert moved.rallies == pytest.approx(prior.serving.rallies), "as sure as before, no surer"


@given(rings, st.randoms())
def test_the_order_of_others_does_not_matter(told: list[RingTally], random: object) -> None:
    shuffled = list(told)
    random.shuffle(shuffled)  # type: ignore[attr-defined]
    first, second = (pooled_prior(prior_rates(), each).rates for each in (told, shuffled))
    assert first.serving == pytest.approx(second.serving, abs=1e-12)
    assert first.receiving == pytest.approx(second.receiving, abs=1e-12)


def test_what_was_expected_there_moves_nothing_here() -> None:
    """Excess counts, not success: 90 of 100 against a pair where 90 were expected."""
    easy = RingCount(made=90, of=100, expected=0.9, part=0.4)
    assert moved_mean(0.44, 100, [easy]) == pytest.approx(0.44)
    better = RingCount(made=95, of=100, expected=0.9, part=0.4)
    assert moved_mean(0.44, 100, [better]) == pytest.approx(0.44 + 0.4 * 5 / (100 + 40))


def test_no_others_leave_the_prior_and_stated_chances_stay() -> None:
    assert pooled_prior(prior_rates(), []) == prior_rates()
    stated = RateBelief(serving=0.42, receiving=0.6)
    some = RingTally(ring=Ring.OTHERS, tally=RallyTally(served_won=10))
    assert pooled_prior(stated, [some]) == stated


def test_each_ring_is_told_with_its_excess() -> None:
    told = [
        RingTally(ring=Ring.ALIKE, tally=RallyTally(served_won=16, served_lost=14)),
        RingTally(ring=Ring.OTHERS, tally=RallyTally(received_won=5, received_lost=5)),
    ]
    alike, others = ring_sums(prior_rates(), told)
    assert (alike.ring, alike.rallies, alike.part) == (Ring.ALIKE, 30, 0.4)
    assert alike.excess == pytest.approx(16 - 30 * 0.44)
    assert others.excess == pytest.approx(5 - 10 * 0.56)
