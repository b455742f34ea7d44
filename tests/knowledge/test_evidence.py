"""Evidence: from notes to beliefs. Oracle: scipy's beta distribution; method: engineering notes."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import beta
from scouted import TODAY, observation

from knowledge.evidence import (
    HALF_LIFE_DAYS,
    HEARSAY_WEIGHT,
    NOTHING_KNOWN,
    Observation,
    estimate_fact,
    estimate_trait,
    profile,
)
from knowledge.vocabulary import PlayerId, Seen, Trait, Value

STRENGTH, WEAKNESS = Value.STRENGTH, Value.WEAKNESS
DINK = Trait.BACKHAND_DINK


def dinks(*values: Value, **how: object) -> list[Observation]:
    """Notes of different days on a backhand dink, oldest last."""
    return [
        observation(DINK, value, number=number, age_days=number, **how)  # type: ignore[arg-type]
        for number, value in enumerate(values)
    ]


observations = st.builds(
    observation,
    st.just(DINK),
    st.sampled_from([STRENGTH, WEAKNESS]),
    number=st.integers(1, 10_000),
    age_days=st.integers(-5, 900),
    weight=st.sampled_from([0.45, 0.5, 1.0, 1.5]),
    seen=st.sampled_from(list(Seen)),
    author=st.sampled_from(["mira", "tom", "a friend"]),
    denied=st.booleans(),
)


@given(st.lists(observations, max_size=12, unique_by=lambda one: one.evidence), st.randoms())
def test_the_order_of_the_notes_does_not_matter(notes: list[Observation], random: object) -> None:
    shuffled = list(notes)
    random.shuffle(shuffled)  # type: ignore[attr-defined]
    first, second = (estimate_trait(each, today=TODAY) for each in (notes, shuffled))
    assert first.level == pytest.approx(second.level, abs=1e-12)
    assert first.variance == pytest.approx(second.variance, abs=1e-12)
    assert first.evidence == second.evidence


@given(st.lists(observations, max_size=12, unique_by=lambda one: one.evidence))
def test_level_and_variance_stay_inside_what_a_belief_on_minus_1_to_1_can_be(
    notes: list[Observation],
) -> None:
    estimate = estimate_trait(notes, today=TODAY)
    assert -1 < estimate.level < 1
    assert 0 < estimate.variance <= 1 - estimate.level**2


@pytest.mark.parametrize(("strong", "weak"), [(0, 0), (1, 0), (0, 3), (2, 1), (7, 4)])
def test_moments_are_those_of_the_beta_distribution_stretched(strong: int, weak: int) -> None:
    notes = [
        observation(DINK, value, number=number, author=f"writer {number}")
        for number, value in enumerate([STRENGTH] * strong + [WEAKNESS] * weak)
    ]
    estimate = estimate_trait(notes, today=TODAY)
    oracle = beta(1 + strong, 1 + weak)
    assert estimate.level == pytest.approx(2 * oracle.mean() - 1, abs=1e-12)
    assert estimate.variance == pytest.approx(4 * oracle.var(), abs=1e-12)


def test_no_notes_give_the_prior() -> None:
    estimate = estimate_trait([], today=TODAY)
    assert (estimate.level, estimate.variance) == (NOTHING_KNOWN.level, NOTHING_KNOWN.variance)
    assert estimate.notes == 0
    assert estimate.newest_day is None
    someone = profile(PlayerId(9), "Hale", [], today=TODAY)
    assert someone.skill(DINK) == NOTHING_KNOWN
    assert someone.fact(Trait.HAND) is None
    assert someone.notes == 0


def test_a_note_of_one_half_life_ago_counts_half() -> None:
    old = estimate_trait([observation(DINK, STRENGTH, age_days=round(HALF_LIFE_DAYS))], today=TODAY)
    assert old.level == pytest.approx((1.5 - 1) / 2.5)


def test_a_note_of_tomorrow_counts_as_todays() -> None:
    tomorrow = estimate_trait([observation(DINK, STRENGTH, age_days=-1)], today=TODAY)
    assert tomorrow.level == pytest.approx(1 / 3)


def test_hearsay_counts_less_than_our_own_eyes() -> None:
    heard = estimate_trait([observation(DINK, STRENGTH, seen=Seen.HEARSAY)], today=TODAY)
    assert heard.level == pytest.approx(HEARSAY_WEIGHT / (2 + HEARSAY_WEIGHT))


def test_one_author_repeating_it_on_one_day_counts_once_at_the_weightiest() -> None:
    notes = [
        observation(DINK, WEAKNESS, number=1, weight=0.5),
        observation(DINK, WEAKNESS, number=2, weight=1.5),
        observation(DINK, WEAKNESS, number=3),
    ]
    estimate = estimate_trait(notes, today=TODAY)
    assert estimate.level == pytest.approx(-1.5 / 3.5)
    assert estimate.notes == 1
    other_day = [*notes, observation(DINK, WEAKNESS, number=4, age_days=1)]
    assert estimate_trait(other_day, today=TODAY).notes == 2


def test_contradicting_notes_are_both_counted_and_shown() -> None:
    estimate = estimate_trait(dinks(STRENGTH, STRENGTH, WEAKNESS), today=TODAY)
    assert (estimate.says_yes, estimate.says_no) == (2, 1)
    assert 0 < estimate.level < estimate_trait(dinks(STRENGTH, STRENGTH), today=TODAY).level


def test_a_newer_note_of_the_same_author_weighs_more_than_their_older_one() -> None:
    notes = dinks(WEAKNESS, STRENGTH, STRENGTH)  # today, yesterday, the day before
    estimate = estimate_trait(notes, today=TODAY)
    assert estimate.level < 0
    assert (estimate.says_yes, estimate.says_no) == (2, 1)
    assert (estimate.agreeing, estimate.disagreeing) == (1, 2)
    others = estimate_trait(
        [
            notes[0],
            *(observation(DINK, STRENGTH, number=n, age_days=n, author="tom") for n in (5, 6)),
        ],
        today=TODAY,
    )
    assert others.level > 0


def test_said_and_taken_back_on_one_day_the_last_word_counts() -> None:
    """ "poaches a lot", and an hour later "used to poach but doesn't now"."""
    before = observation(DINK, STRENGTH, number=9, weight=1.5)
    after = observation(DINK, STRENGTH, number=10, denied=True)
    assert estimate_trait([before, after], today=TODAY).level < 0
    assert estimate_trait([after, before], today=TODAY).says_yes == 0


def test_one_for_and_one_against_leave_it_open() -> None:
    both = [observation(DINK, STRENGTH), observation(DINK, WEAKNESS, number=2, author="tom")]
    assert estimate_trait(both, today=TODAY).is_open
    assert not estimate_trait(both[:1], today=TODAY).is_open


def test_not_a_lefty_agrees_with_a_right_hander() -> None:
    right = observation(Trait.HAND, Value.RIGHT)
    not_left = observation(Trait.HAND, Value.LEFT, number=2, author="tom", denied=True)
    fact = estimate_fact([right, not_left], today=TODAY)
    assert fact is not None
    assert fact.known is Value.RIGHT
    assert not fact.contradicted
    left = observation(Trait.HAND, Value.LEFT, number=3, author="lena")
    disputed = estimate_fact([right, not_left, left], today=TODAY)
    assert disputed is not None
    assert disputed.contradicted
    assert disputed.disagreeing == 1


def test_a_denial_counts_half_against_what_it_denies() -> None:
    not_weak = estimate_trait([observation(DINK, WEAKNESS, denied=True)], today=TODAY)
    assert not_weak.level == pytest.approx(0.5 / 2.5)
    assert (not_weak.says_yes, not_weak.says_no) == (1, 0)


def test_habit_and_skill_of_one_trait_stay_apart() -> None:
    lobber = profile(
        PlayerId(1),
        "Ruiz",
        [
            observation(Trait.LOB, Value.OFTEN, number=1),
            observation(Trait.LOB, WEAKNESS, number=2),
        ],
        today=TODAY,
    )
    assert lobber.habit(Trait.LOB).level > 0 > lobber.skill(Trait.LOB).level


def hand_of(*notes: Observation) -> Value | None:
    fact = estimate_fact(notes, today=TODAY)
    return None if fact is None else fact.known


def test_a_friends_word_is_enough_for_a_hand() -> None:
    assert hand_of(observation(Trait.HAND, Value.LEFT, seen=Seen.HEARSAY)) is Value.LEFT


def test_a_hand_does_not_fade() -> None:
    assert hand_of(observation(Trait.HAND, Value.LEFT, age_days=1500)) is Value.LEFT


def test_the_side_somebody_plays_does_fade() -> None:
    assert hand_of(observation(Trait.SIDE_PLAYED, Value.LEFT, age_days=1500)) is None


def test_two_who_contradict_each_other_leave_the_hand_open() -> None:
    left = observation(Trait.HAND, Value.LEFT, number=1)
    right = observation(Trait.HAND, Value.RIGHT, number=2, author="tom")
    fact = estimate_fact([left, right], today=TODAY)
    assert fact is not None
    assert fact.contradicted
    assert fact.known is None
    again = observation(Trait.HAND, Value.LEFT, number=3, age_days=1)
    assert hand_of(left, right, again) is Value.LEFT


def test_the_chance_of_a_hand_adds_log_odds() -> None:
    fact = estimate_fact([observation(Trait.HAND, Value.RIGHT)], today=TODAY)
    assert fact is not None
    rare_both = 0.02  # common practice, no source: two forehands
    assert fact.chance == pytest.approx(20 / (20 + 1 + rare_both))
    assert math.log(20) == pytest.approx(2.9957, abs=1e-4)


def test_denying_a_lefty_makes_a_right_hander_likelier_but_a_hedge_is_not_enough() -> None:
    assert hand_of(observation(Trait.HAND, Value.LEFT, denied=True)) is Value.RIGHT
    unsure = observation(Trait.HAND, Value.LEFT, seen=Seen.HEARSAY, weight=0.45)
    assert hand_of(unsure) is None


def test_a_value_that_the_trait_does_not_take_is_refused() -> None:
    with pytest.raises(ValueError, match="takes"):
        observation(Trait.HAND, WEAKNESS)
    with pytest.raises(ValueError, match="weight"):
        observation(DINK, WEAKNESS, weight=0)
