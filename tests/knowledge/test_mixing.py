"""The guessing game against textbooks, two general solvers and the definition itself.

Sources: the closed form of a two by two game and the textbook case [[90, 20], [30, 60]] (any text
on zero-sum games; numbers from memory); nashpy's support enumeration; scipy's linear programme;
and the definition: no pure deviation of either side gains.
"""

from __future__ import annotations

import random
from collections import Counter
from itertools import pairwise

import nashpy
import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import linprog

from knowledge.effects import OptionId
from knowledge.mixing import (
    Guessable,
    Mix,
    drawn,
    expected_shares,
    mix_of,
    of_ten,
    pattern_loss_of,
    payoffs,
)
from knowledge.vocabulary import RallyChance

GAMES = 1500
EXACT = 1e-9


def option(place: int, chance: float, cost: float, *counts: float) -> Guessable:
    """Numbered, with a count of recent choices."""
    recent, *_ = (*counts, 0)
    return Guessable(
        option=OptionId(f"o{place}"),
        chance=RallyChance(chance),
        cost=cost,
        recent=int(recent),
    )


def options_of(*rows: tuple[float, ...]) -> tuple[Guessable, ...]:
    return tuple(option(place, *row) for place, row in enumerate(rows))


def ours(mix: Mix) -> list[float]:
    return [mix.shares[one.option] for one in mix.options]


def theirs(mix: Mix) -> list[float]:
    return [mix.guesses[one.option] for one in mix.options]


def assert_no_deviation_gains(mix: Mix) -> None:
    """The definition of a solution: each side's best reply to the other's mix is the value."""
    matrix = np.array(payoffs(mix.options))
    assert sum(ours(mix)) == pytest.approx(1, abs=EXACT)
    assert sum(theirs(mix)) == pytest.approx(1, abs=EXACT)
    assert min(*ours(mix), *theirs(mix)) >= 0
    assert (matrix @ theirs(mix)).max() <= mix.value + EXACT
    assert (ours(mix) @ matrix).min() >= mix.value - EXACT


def two_by_two(game: list[list[float]]) -> tuple[float, float]:
    """Row 1's share and the value of a two by two game without a saddle, in closed form."""
    (a, b), (c, d) = game
    return (d - c) / (a - b - c + d), (a * d - b * c) / (a - b - c + d)


def random_options(chance: random.Random, most: int) -> tuple[Guessable, ...]:
    """Chances and costs as they come between good players, and far beyond; no two alike."""
    return options_of(
        *(
            (
                chance.uniform(0.3, 0.7),
                chance.choice([0.02, 0.1, 0.5, 1.0]) * chance.uniform(0.5, 1.5) / 1.5,
                chance.choice([0, chance.randrange(20)]),
            )
            for _ in range(chance.randint(2, most))
        )
    )


def test_the_textbook_case() -> None:
    """[[90, 20], [30, 60]]: the first row 3 times in 10, value 48."""
    assert two_by_two([[90, 20], [30, 60]]) == pytest.approx((0.3, 48))
    # In our form: unguessed .90 and .60, guessed .20 and .30, each guessed half the time so far.
    mix = mix_of(options_of((0.55, 0.70), (0.45, 0.30)))
    assert np.array(payoffs(mix.options)) == pytest.approx(np.array([[0.20, 0.90], [0.60, 0.30]]))
    assert mix.value == pytest.approx(0.48)
    assert ours(mix) == pytest.approx([0.3, 0.7])


def test_matching_pennies() -> None:
    """Guessed is lost, not guessed is won: half and half, value a half (textbook)."""
    mix = mix_of(options_of((0.5, 1.0), (0.5, 1.0)))
    assert payoffs(mix.options) == ((0, 1), (1, 0))
    assert mix.value == 0.5
    assert ours(mix) == theirs(mix) == [0.5, 0.5]


def test_two_options_against_the_closed_form() -> None:
    chance = random.Random(1)
    mixed = 0
    for _ in range(GAMES):
        mix = mix_of(random_options(chance, 2))
        if mix.is_every_ball:
            continue
        mixed += 1
        share, value = two_by_two([list(row) for row in payoffs(mix.options)])
        assert ours(mix)[0] == pytest.approx(share, abs=EXACT)
        assert mix.value == pytest.approx(value, abs=EXACT)
    assert mixed > GAMES / 4


def test_random_games_against_a_linear_programme() -> None:
    """max v with sum f = 1, f >= 0 and f A >= v in every column (scipy's HiGHS)."""
    chance = random.Random(2)
    for _ in range(GAMES):
        mix = mix_of(random_options(chance, 6))
        matrix = np.array(payoffs(mix.options))
        n = len(matrix)
        found = linprog(
            c=[*[0] * n, -1],
            A_ub=np.hstack([-matrix.T, np.ones((n, 1))]),
            b_ub=np.zeros(n),
            A_eq=[[*[1] * n, 0]],
            b_eq=[1],
            bounds=[*[(0, None)] * n, (None, None)],
        )
        assert found.success
        assert mix.value == pytest.approx(-found.fun, abs=EXACT)
        assert_no_deviation_gains(mix)


def test_random_games_against_support_enumeration() -> None:
    """nashpy finds the one equilibrium of a game without ties: the same shares and guesses."""
    chance = random.Random(3)
    for _ in range(GAMES):
        mix = mix_of(random_options(chance, 3))
        found = list(nashpy.Game(np.array(payoffs(mix.options))).support_enumeration())
        assert len(found) == 1
        assert ours(mix) == pytest.approx(list(found[0][0]), abs=EXACT)
        assert theirs(mix) == pytest.approx(list(found[0][1]), abs=EXACT)


OPTIONS = st.lists(
    st.tuples(
        st.floats(0, 1),
        st.one_of(st.sampled_from([0.0, 0.03, 0.1]), st.floats(1e-3, 1)),
        st.integers(0, 20),
    ),
    min_size=1,
    max_size=6,
).map(lambda rows: options_of(*rows))
"""With ties, free options, single ones and all."""


@given(options=OPTIONS)
def test_whatever_comes_no_deviation_gains(options: tuple[Guessable, ...]) -> None:
    mix = mix_of(options)
    assert_no_deviation_gains(mix)
    assert pattern_loss_of(mix, mix.shares) == pytest.approx(0, abs=EXACT)
    assert mix.worth >= 0
    assert mix.pattern_loss >= 0


@given(options=OPTIONS)
def test_the_average_over_what_they_expect_is_the_estimate(
    options: tuple[Guessable, ...],
) -> None:
    """The payoffs are consistent with the estimates that they come from (engineering 1.6)."""
    expected = np.array(expected_shares(options))
    assert np.array(payoffs(options)) @ expected == pytest.approx([one.chance for one in options])


@given(options=OPTIONS)
def test_todays_best_is_always_in(options: tuple[Guessable, ...]) -> None:
    """v = min over guesses of the best reply <= the best estimate, at what they expect now."""
    best = max(options, key=lambda one: one.chance)
    assume(all(one.cost > 0 for one in options))
    mix = mix_of(options)
    assert mix.value <= best.chance + EXACT
    assert mix.shares[best.option] > 0


def test_equal_costs_are_uniform_over_what_is_in_not_a_softmax() -> None:
    """engineering 1.6: [.56, .52, .50] at 6 points gives 5/5/0, however much better the first."""
    mix = mix_of(options_of((0.56, 0.06), (0.52, 0.06), (0.50, 0.06)))
    assert ours(mix) == pytest.approx([0.5, 0.5, 0])
    assert list(of_ten(mix.shares).values()) == [5, 5, 0]
    assert theirs(mix)[0] > theirs(mix)[1] > theirs(mix)[2] == 0


def test_a_wing_that_punishes_less_gets_more_of_the_balls() -> None:
    mix = mix_of(options_of((0.5, 0.05), (0.5, 0.10)))
    assert ours(mix) == pytest.approx([2 / 3, 1 / 3])
    assert mix.by_share == ("o0", "o1")


def test_an_option_far_ahead_is_every_ball_until_they_move() -> None:
    mix = mix_of(options_of((0.60, 0.03), (0.45, 0.03)))
    assert mix.is_every_ball
    assert mix.by_share == ("o0",)
    assert ours(mix) == [1, 0]
    assert mix.worth == 0


def test_one_option_is_its_own_estimate() -> None:
    """They can only ever have expected it, so what it wins already has that in."""
    mix = mix_of(options_of((0.53, 0.1, 7)))
    assert mix.value == pytest.approx(0.53)
    assert ours(mix) == theirs(mix) == [1]
    assert mix.is_every_ball
    assert (mix.pattern_loss, mix.worth) == pytest.approx((0, 0))


@pytest.mark.parametrize("count", [2, 3, 5])
def test_identical_options_share_alike(count: int) -> None:
    """By symmetry: 1/n each, and worth what a guess then hits, c (1 - 1/n)."""
    mix = mix_of(options_of(*[(0.5, 0.06)] * count))
    assert ours(mix) == pytest.approx([1 / count] * count)
    assert mix.value == pytest.approx(0.5)
    assert mix.worth == pytest.approx(0.06 * (1 - 1 / count))


def test_what_costs_nothing_when_guessed_needs_no_hiding() -> None:
    """The best guess-proof option bounds the value from below; above it the others mix on."""
    free = mix_of(options_of((0.55, 0.0), (0.56, 0.1), (0.40, 0.1)))
    assert ours(free) == [1, 0, 0]
    assert free.value == 0.55
    poor = mix_of(options_of((0.40, 0.0), (0.56, 0.1), (0.55, 0.1)))
    assert ours(poor) == pytest.approx([0, 0.5, 0.5])
    assert mix_of(options_of((0.5, 0.0), (0.5, 0.0))).is_every_ball


def test_a_dominated_option_is_out() -> None:
    mix = mix_of(options_of((0.55, 0.05), (0.54, 0.05), (0.30, 0.05)))
    assert mix.shares[OptionId("o2")] == mix.guesses[OptionId("o2")] == 0
    assert pattern_loss_of(mix, {OptionId("o2"): 1.0}) > 0.2


@pytest.mark.parametrize(("first", "second"), [(20, 0), (15, 5), (12, 8), (10, 10), (0, 20)])
def test_what_the_pattern_gives_away(first: int, second: int) -> None:
    """By hand for two alike at cost c: a guess at the commoner one loses c (f - 1/2)."""
    mix = mix_of(options_of((0.5, 0.1, 10), (0.5, 0.1, 10)))
    shares = {OptionId("o0"): first / 20, OptionId("o1"): second / 20}
    by_hand = 0.1 * (max(first, second) / 20 - 0.5)
    assert pattern_loss_of(mix, shares) == pytest.approx(by_hand)
    assert mix.pattern_loss == pytest.approx(0)
    recent = mix_of(options_of((0.5, 0.1, first), (0.5, 0.1, second)))
    assert recent.pattern_loss == pytest.approx(by_hand)


@pytest.mark.parametrize(
    ("row", "says"),
    [
        ((0.5, -0.01), "costs 0 to 1"),
        ((0.5, 1.01), "costs 0 to 1"),
        ((0.5, float("nan")), "costs 0 to 1"),
        ((1.5, 0.1), "between 0 and 1"),
        ((float("nan"), 0.1), "between 0 and 1"),
        ((0.5, 0.1, -1), "0 or more, not -1"),
    ],
)
def test_what_cannot_be_is_refused_by_name(row: tuple[float, ...], says: str) -> None:
    with pytest.raises(ValueError, match=f"o0: .*{says}"):
        options_of(row)


def test_no_option_and_two_of_one_name_are_refused() -> None:
    with pytest.raises(ValueError, match="needs an option"):
        mix_of(())
    with pytest.raises(ValueError, match="share a name"):
        mix_of((option(1, 0.5, 0.1), option(1, 0.6, 0.1)))


@given(parts=st.lists(st.integers(0, 50), min_size=1, max_size=8).filter(any))
def test_of_ten_adds_up_and_is_less_than_one_off(parts: list[int]) -> None:
    """Largest remainder (Hamilton): each count is the exact share rounded down or up."""
    shares = {OptionId(str(place)): part / sum(parts) for place, part in enumerate(parts)}
    counts = of_ten(shares)
    assert sum(counts.values()) == 10
    assert all(abs(counts[one] - 10 * share) < 1 for one, share in shares.items())
    ordered = sorted(shares, key=lambda one: shares[one])
    assert all(counts[a] <= counts[b] for a, b in pairwise(ordered) if shares[a] < shares[b])


def test_draws_follow_the_mix() -> None:
    """10,000 seeded draws: within four standard deviations of each share, nothing that is out."""
    mix = mix_of(options_of((0.56, 0.04), (0.55, 0.08), (0.30, 0.08)))
    source = random.Random(7)
    n = 10_000
    counts = Counter(drawn(mix.shares, source.random()) for _ in range(n))
    for one, share in mix.shares.items():
        assert abs(counts[one] - n * share) <= 4 * (n * share * (1 - share)) ** 0.5
    assert 0 in mix.shares.values()


def test_the_same_number_draws_the_same_and_the_ends_are_in_the_mix() -> None:
    shares = {OptionId("out"): 0.0, OptionId("a"): 0.25, OptionId("b"): 0.75, OptionId("c"): 0.0}
    assert [drawn(shares, at) for at in (0.0, 0.2499, 0.25, 1 - 2**-53)] == ["a", "a", "b", "b"]
    for outside in (-0.1, 1.0, float("nan")):
        with pytest.raises(ValueError, match="draw lies in"):
            drawn(shares, outside)
