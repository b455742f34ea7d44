"""Rates over rings of players. Oracles: the formula of pooled excess, and scipy's beta."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import beta
from scouted import TODAY

from knowledge.evidence import (
    RATE_TRAIT,
    RING_PART,
    USUAL_RATE,
    RateCount,
    RateTally,
    Ring,
    Stance,
    peers_of,
    profile,
    usual_counts,
)
from knowledge.vocabulary import EvidenceId, Hand, PlayerId, Rate, Side

ALIKE_PART, OTHERS_PART = 0.4, 0.15
"""What a rally of others counts beside one of the player's own. Common practice, no source."""

LEFTY: Stance = (Hand.LEFT, Side.RIGHT)
RIGHTY: Stance = (Hand.RIGHT, Side.RIGHT)


def count(
    player: int, made: int, missed: int, *, rate: Rate = Rate.RETURN_IN, age_days: int = 0
) -> RateCount:
    return RateCount(
        player=PlayerId(player), rate=rate, day=TODAY - age_days, made=made, missed=missed
    )


def stances(**more: Stance) -> dict[PlayerId, Stance]:
    return {PlayerId(int(name.removeprefix("p"))): one for name, one in more.items()}


def tally(player: int, rate: Rate, made: int, missed: int) -> RateTally:
    names = [EvidenceId(f"rally:1:{n}") for n in range(made + missed)]
    return RateTally(
        player=PlayerId(player), rate=rate, day=TODAY, made=tuple(names[:made]),
        missed=tuple(names[made:]),
    )  # fmt: skip


def test_the_belief_begins_at_the_pooled_excess_over_what_is_usual() -> None:
    """The closed form: (w m + n m + x) / (w + n), n = sum of part times count, x of excess.

    Two like him returned 20 of 30, one unlike him 28 of 30 a half-life ago; 0.93 are usual.
    """
    counts = [count(1, 5, 5), count(2, 12, 8), count(3, 8, 2), count(4, 28, 2, age_days=180)]
    known = stances(p1=LEFTY, p2=LEFTY, p3=LEFTY, p4=RIGHTY)
    rings = peers_of(counts, known, today=TODAY).around(PlayerId(1))
    assert [(one.ring, one.rallies) for one in rings[Rate.RETURN_IN]] == [
        (Ring.ALIKE, 30), (Ring.OTHERS, 30),
    ]  # fmt: skip
    own = [tally(1, Rate.RETURN_IN, 5, 5)]
    found = profile(PlayerId(1), "Ruiz", [], today=TODAY, tallies=own, others=rings)
    estimate = found.rates[Rate.RETURN_IN]
    weight = sum(usual_counts(Rate.RETURN_IN))
    n = ALIKE_PART * 30 + OTHERS_PART * 15
    x = ALIKE_PART * (20 - 30 * 0.93) + OTHERS_PART * (14 - 15 * 0.93)
    mean = (weight * 0.93 + n * 0.93 + x) / (weight + n)
    assert estimate.mean == pytest.approx((weight * mean + 5) / (weight + 10))
    assert estimate.alpha + estimate.beta == pytest.approx(weight + 10), "no surer for others"
    oracle = beta(weight * mean + 5, weight * (1 - mean) + 5)
    assert estimate.interval(0.8) == pytest.approx(oracle.interval(0.8), abs=1e-9)


def test_others_alone_mark_nobody() -> None:
    """Where everybody's misses are told more readily, who is as good as they are is usual."""
    rings = peers_of([count(2, 60, 40), count(3, 60, 40)], {}, today=TODAY).around(PlayerId(1))
    for made, missed in ((3, 0), (0, 3), (6, 4)):
        own = [tally(1, Rate.RETURN_IN, made, missed)]
        alone = profile(PlayerId(1), "Ruiz", [], today=TODAY, tallies=own)
        among = profile(PlayerId(1), "Ruiz", [], today=TODAY, tallies=own, others=rings)
        trait = RATE_TRAIT[Rate.RETURN_IN]
        assert among.skill(trait).level > alone.skill(trait).level
        assert among.rates[Rate.RETURN_IN].mean < alone.rates[Rate.RETURN_IN].mean
    none = profile(PlayerId(1), "Ruiz", [], today=TODAY, others=rings)
    assert not none.skills
    assert not none.rates


def test_whose_hand_or_side_is_not_known_is_like_nobody() -> None:
    peers = peers_of([count(1, 1, 1), count(2, 1, 1)], stances(p2=LEFTY), today=TODAY)
    (ring,) = peers.around(PlayerId(1))[Rate.RETURN_IN]
    assert ring.ring is Ring.OTHERS
    (ring,) = peers.around(PlayerId(2))[Rate.RETURN_IN]
    assert ring.ring is Ring.OTHERS


def test_on_whose_paddle_errors_end_is_not_pooled() -> None:
    """A lost rally tells of both partners: pooled, it would stand twice behind one estimate."""
    told = [count(player, 5, 7, rate=Rate.STEADY) for player in (1, 2, 3)]
    assert peers_of(told, {}, today=TODAY).around(PlayerId(1)) == {}


some_counts = st.lists(
    st.builds(
        count,
        st.integers(1, 6),
        st.integers(0, 9),
        st.integers(0, 9),
        rate=st.sampled_from(list(Rate)),
        age_days=st.integers(-3, 400),
    ),
    max_size=25,
)
some_stances = st.dictionaries(
    st.integers(1, 6).map(PlayerId), st.tuples(st.sampled_from(Hand), st.sampled_from(Side))
)


@given(some_counts, some_stances)
def test_rings_are_disjoint_and_leave_out_nobody_else(
    counts: list[RateCount], known: dict[PlayerId, Stance]
) -> None:
    """Nothing counts twice: another's rally stands in one ring, one's own in none."""
    peers = peers_of(counts, known, today=TODAY)
    for player in map(PlayerId, range(1, 7)):
        rings = peers.around(player)
        wanted: Counter[tuple[Rate, Ring]] = Counter()
        for one in counts:
            if one.player != player and one.rate in RATE_TRAIT:
                is_alike = player in known and known[player] == known.get(one.player)
                ring = Ring.ALIKE if is_alike else Ring.OTHERS
                wanted[one.rate, ring] += one.made + one.missed
        found = {(rate, one.ring): one.rallies for rate, told in rings.items() for one in told}
        assert found == {key: many for key, many in wanted.items() if many}
        for rate, told in rings.items():
            assert len({each.ring for each in told}) == len(told)
            for each in told:
                assert each.count.expected == USUAL_RATE[rate]
                assert each.count.part == RING_PART[each.ring]
                assert each.count.of <= each.rallies + 1e-9


@given(some_counts)
def test_the_order_of_matches_does_not_matter(counts: list[RateCount]) -> None:
    there = peers_of(counts, {}, today=TODAY).around(PlayerId(1))
    back = peers_of(counts[::-1], {}, today=TODAY).around(PlayerId(1))
    assert there.keys() == back.keys()
    for rate, told in there.items():
        for one, other in zip(told, back[rate], strict=True):
            assert one.count.made == pytest.approx(other.count.made)


def test_one_or_two_rallies_mark_nobody() -> None:
    for missed in (1, 2):
        lost = tally(1, Rate.RETURN_IN, 0, missed)
        one = profile(PlayerId(1), "Ruiz", [], today=TODAY, tallies=[lost])
        assert not one.skills
