"""Rates from logged rallies. Oracles: scipy's beta, beta-binomial and quadrature by a fine grid."""

from __future__ import annotations

from math import comb, log

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import beta, betabinom, norm
from scouted import TODAY, observation

from knowledge.evidence import (
    CONDITION_PART,
    HALF_LIFE_DAYS,
    NOTHING_KNOWN,
    PLAYERS_DIFFER,
    RATE_TRAIT,
    USUAL_RATE,
    Observation,
    RateEstimate,
    RateTally,
    beta_cdf,
    beta_interval,
    beta_quantile,
    estimate_rate,
    estimate_trait,
    profile,
    usual_counts,
)
from knowledge.vocabulary import EvidenceId, PlayerId, Rate, Seen, Tag, Trait, Value

STRENGTH, WEAKNESS = Value.STRENGTH, Value.WEAKNESS
counts = st.floats(0.2, 3000)


@given(st.floats(0.001, 0.999), counts, counts)
def test_quantiles_are_those_of_scipy(part: float, a: float, b: float) -> None:
    found = beta_quantile(part, a, b)
    assert found == pytest.approx(beta.ppf(part, a, b), abs=1e-9)


@given(st.floats(0.0, 1.0), counts, counts)
def test_the_distribution_is_that_of_scipy(x: float, a: float, b: float) -> None:
    assert beta_cdf(x, a, b) == pytest.approx(beta.cdf(x, a, b), abs=1e-9)


def test_an_interval_is_the_middle_of_it() -> None:
    assert beta_interval(0.8, 3, 9) == pytest.approx(beta.interval(0.8, 3, 9), abs=1e-9)
    with pytest.raises(ValueError, match="quantile"):
        beta_interval(1.0, 3, 9)


def tally(
    rate: Rate,
    made: int,
    missed: int,
    *,
    match: int = 1,
    age_days: int = 0,
    is_settled: bool = True,
) -> RateTally:
    names = [EvidenceId(f"rally:{match}:{n}") for n in range(made + missed)]
    return RateTally(
        player=PlayerId(1),
        rate=rate,
        day=TODAY - age_days,
        made=tuple(names[:made]),
        missed=tuple(names[made:]),
        is_settled=is_settled,
    )


def rate_of(rate: Rate, made: int, missed: int) -> RateEstimate:
    return estimate_rate(rate, [tally(rate, made, missed)], today=TODAY)


@pytest.mark.parametrize("rate", Rate)
@pytest.mark.parametrize(("made", "of"), [(0, 0), (3, 3), (0, 3), (17, 20), (160, 200)])
def test_a_rate_is_the_chance_of_the_next_one_under_a_beta_binomial(
    rate: Rate, made: int, of: int
) -> None:
    """scipy's beta-binomial: the chance of one more made, given those, by two of its terms."""
    prior = usual_counts(rate)
    with_next = betabinom.pmf(made + 1, of + 1, *prior) / comb(of + 1, made + 1)
    without = betabinom.pmf(made, of, *prior) / comb(of, made)
    estimate = rate_of(rate, made, of - made)
    assert estimate.mean == pytest.approx(with_next / without, rel=1e-9)
    assert (estimate.made, estimate.of) == (made, of)
    low, high = estimate.interval(0.9)
    oracle = beta(prior[0] + made, prior[1] + of - made)
    assert (low, high) == pytest.approx(oracle.interval(0.9), abs=1e-9)


@pytest.mark.parametrize("rate", Rate)
def test_no_rallies_give_what_is_usual_and_how_players_differ(rate: Rate) -> None:
    nothing = estimate_rate(rate, [], today=TODAY)
    assert nothing.mean == pytest.approx(USUAL_RATE[rate])
    assert nothing.place == pytest.approx((1.0, 1.0))
    draws = beta.rvs(nothing.alpha, nothing.beta, size=20_000, random_state=7)
    spread = float(np.std(np.log(draws / (1 - draws))))
    assert spread == pytest.approx(PLAYERS_DIFFER, rel=0.1)


@pytest.mark.parametrize(
    ("rate", "made", "missed"),
    [
        (Rate.RETURN_IN, 3, 0),
        (Rate.RETURN_IN, 37, 3),
        (Rate.RETURN_IN, 60, 12),
        (Rate.RETURN_DEEP, 3, 0),
        (Rate.RETURN_DEEP, 5, 15),
        (Rate.RETURN_DEEP, 60, 40),
        (Rate.THIRD_FORWARD, 30, 10),
        (Rate.SERVE_IN, 190, 10),
    ],
)  # fmt: skip
def test_the_place_among_players_is_that_of_the_logistic_normal_model(
    rate: Rate, made: int, missed: int
) -> None:
    """Second method: the posterior of normal log-odds after binomial counts, on a fine grid."""
    usual = USUAL_RATE[rate]
    shift = np.linspace(-6, 6, 20_001) * PLAYERS_DIFFER
    logit = log(usual / (1 - usual)) + shift
    density = norm.logpdf(shift, 0, PLAYERS_DIFFER)
    density -= made * np.log1p(np.exp(-logit)) + missed * np.log1p(np.exp(logit))
    weight = np.exp(density - density.max())
    weight /= weight.sum()
    place = norm.cdf(shift / PLAYERS_DIFFER)
    mean = float((weight * place).sum())
    sd = float(np.sqrt((weight * (place - mean) ** 2).sum()))
    a, b = rate_of(rate, made, missed).place
    assert a / (a + b) == pytest.approx(mean, abs=0.04)
    assert beta.std(a, b) == pytest.approx(sd, abs=0.05)


@given(st.permutations([(3, 1, 0), (0, 2, 40), (10, 0, 200), (1, 1, -3)]))
def test_the_order_of_matches_does_not_matter(order: list[tuple[int, int, int]]) -> None:
    tallies = [
        tally(Rate.RETURN_IN, made, missed, match=age + 10, age_days=age)
        for made, missed, age in order
    ]
    found = estimate_rate(Rate.RETURN_IN, tallies, today=TODAY)
    assert found.alpha == pytest.approx(usual_counts(Rate.RETURN_IN)[0] + 3 + _aged(10, 200) + 1)
    assert found.beta == pytest.approx(usual_counts(Rate.RETURN_IN)[1] + 1 + _aged(2, 40) + 1)


def _aged(count: int, days: int) -> float:
    """Half after 180 days (common practice, no source); one of tomorrow counts as today's."""
    assert HALF_LIFE_DAYS == 180
    return float(count * 0.5 ** (days / 180) if days else count)


def test_the_usual_rate_leaves_the_level_in_the_middle_and_more_moves_it_up() -> None:
    usual = estimate_trait([], today=TODAY, rate=rate_of(Rate.RETURN_DEEP, 50, 50))
    assert usual.level == pytest.approx(0.0, abs=0.01)
    levels = [
        estimate_trait([], today=TODAY, rate=rate_of(Rate.RETURN_DEEP, made, 20 - made)).level
        for made in range(21)
    ]
    assert levels == sorted(levels)
    assert levels[0] < -0.8
    assert levels[-1] > 0.8


def test_notes_and_rallies_add_up_and_are_counted_apart() -> None:
    notes = [observation(Trait.RETURN_DEPTH, STRENGTH)]
    rate = rate_of(Rate.RETURN_DEEP, 14, 6)
    both = estimate_trait(notes, today=TODAY, rate=rate)
    alone = estimate_trait(notes, today=TODAY)
    rallies = estimate_trait([], today=TODAY, rate=rate)
    assert both.level > max(alone.level, rallies.level)
    assert both.variance < min(alone.variance, rallies.variance)
    assert (both.notes, both.rallies) == (1, 20)
    assert str(both.source) == "book: 1 note, 20 rallies"
    assert str(rallies.source) == "book: 20 rallies"


def test_three_missed_returns_are_no_weak_return_while_the_game_is_on() -> None:
    lost = tally(Rate.RETURN_IN, 0, 3, is_settled=False)
    one = profile(PlayerId(1), "Ruiz", [], today=TODAY, tallies=[lost])
    assert one.skill(Trait.RETURN) == NOTHING_KNOWN
    assert (one.rates[Rate.RETURN_IN].made, one.rates[Rate.RETURN_IN].of) == (0, 3)
    after = profile(PlayerId(1), "Ruiz", [], today=TODAY, tallies=[tally(Rate.RETURN_IN, 0, 3)])
    assert after.skill(Trait.RETURN).level < 0


def test_a_trifle_below_the_usual_marks_no_weakness() -> None:
    rate = rate_of(Rate.RETURN_IN, 92, 8)
    estimate = estimate_trait([], today=TODAY, rate=rate)
    assert -0.15 < estimate.level < 0
    assert not estimate.is_weak
    assert estimate_trait([observation(Trait.RETURN, WEAKNESS)], today=TODAY).is_weak


def test_one_rate_speaks_of_one_skill() -> None:
    assert len(set(RATE_TRAIT.values())) == len(RATE_TRAIT)
    assert set(Rate) - set(RATE_TRAIT) == {Rate.STEADY}


some_notes = st.lists(
    st.builds(
        observation,
        st.sampled_from([Trait.RETURN, Trait.SERVE, Trait.BACKHAND_DINK]),
        st.sampled_from([STRENGTH, WEAKNESS]),
        number=st.integers(1, 200),
        age_days=st.integers(-5, 500),
        author=st.sampled_from(["mira", "tom"]),
        tag=st.sampled_from([None, *Tag]),
        seen=st.sampled_from(list(Seen)),
    ),
    max_size=20,
    unique_by=lambda one: one.evidence,
)
some_tallies = st.lists(
    st.builds(
        lambda rate, made, missed, match, settled: tally(
            rate, made, missed, match=match, is_settled=settled
        ),
        st.sampled_from(list(Rate)),
        st.integers(0, 9),
        st.integers(0, 9),
        st.integers(1, 50),
        st.booleans(),
    ),
    max_size=8,
    unique_by=lambda one: (one.rate, (one.made + one.missed)[:1]),
)


@given(some_notes, some_tallies)
def test_an_evidence_id_occurs_once_behind_an_estimate(
    notes: list[Observation], tallies: list[RateTally]
) -> None:
    """Nothing counts twice; and no rally feeds a skill but through its one rate."""
    one = profile(PlayerId(1), "Ruiz", notes, today=TODAY, tallies=tallies)
    behind = [estimate.evidence for estimate in one.skills.values()]
    behind += [estimate.evidence for estimate in one.rates.values()]
    for evidence in behind:
        assert len(set(evidence)) == len(evidence)
    for (trait, _), estimate in one.skills.items():
        rallies = {each for each in estimate.evidence if each.startswith("rally:")}
        rated = [rate for rate, skill in RATE_TRAIT.items() if skill is trait]
        told = {
            each
            for rate in rated
            for group in tallies
            if group.rate is rate and group.is_settled
            for each in (*group.made, *group.missed)
        }
        assert rallies == told
        assert estimate.rallies == len(told)
    noted = [each for found in one.skills.values() for each in found.evidence if "note" in each]
    assert len(set(noted)) == len(noted) == one.notes


def wide(value: Value, **how: object) -> Observation:
    return observation(Trait.BACKHAND_DINK, value, tag=Tag.PULLED_WIDE, **how)  # type: ignore[arg-type]


def test_seen_under_a_condition_counts_in_part_in_general() -> None:
    notes = [wide(WEAKNESS)]
    one = profile(PlayerId(1), "Ruiz", notes, today=TODAY)
    part = CONDITION_PART
    assert one.skill(Trait.BACKHAND_DINK).level == pytest.approx(-part / (2 + part))
    assert one.skill(Trait.BACKHAND_DINK).only_when is Tag.PULLED_WIDE


def test_good_in_general_and_weak_when_pulled_wide_is_no_contradiction() -> None:
    """The same author, the same day: both stand."""
    notes = [wide(WEAKNESS, number=2), observation(Trait.BACKHAND_DINK, STRENGTH, number=1)]
    one = profile(PlayerId(1), "Ruiz", notes, today=TODAY)
    assert one.skill(Trait.BACKHAND_DINK).level > 0
    assert (one.skill(Trait.BACKHAND_DINK).says_yes, one.skill(Trait.BACKHAND_DINK).says_no) == (
        1,
        1,
    )
    assert one.skill(Trait.BACKHAND_DINK).only_when is None


def test_a_condition_that_the_trait_means_anyway_takes_nothing_off() -> None:
    slow = observation(Trait.FORWARD_SPEED, WEAKNESS, tag=Tag.MOVING_FORWARD)
    assert estimate_trait([slow], today=TODAY).level == pytest.approx(-1 / 3)


def test_a_note_of_a_day_to_come_is_kept_counted_as_todays_and_told() -> None:
    ahead = observation(Trait.RETURN, STRENGTH, age_days=-30)
    estimate = estimate_trait([ahead], today=TODAY)
    assert estimate.level == pytest.approx(1 / 3)
    assert estimate.ahead == 1
    zone = observation(Trait.RETURN, STRENGTH, age_days=-1)
    assert estimate_trait([zone], today=TODAY).ahead == 0, "it may be tomorrow there already"


def test_a_traits_range_is_that_of_its_beta() -> None:
    notes = [observation(Trait.RETURN, STRENGTH, number=n, author=f"w{n}") for n in range(4)]
    estimate = estimate_trait(notes, today=TODAY)
    low, high = beta(5, 1).interval(0.8)
    assert estimate.interval(0.8) == pytest.approx((2 * low - 1, 2 * high - 1), abs=1e-9)
    assert estimate.chance_above == pytest.approx(beta.sf(0.5, 5, 1), abs=1e-9)
