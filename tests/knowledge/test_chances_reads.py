"""What trying an unproven read teaches, against quadrature and difference quotients."""

from __future__ import annotations

import pytest
from chance_formats import COMMON
from scipy.integrate import quad
from scipy.special import expit, logit
from scipy.stats import binom, norm

from knowledge.chances import (
    MOST_TRIES,
    RallyRates,
    Read,
    match_chance,
    weight_to_come,
    worth_of_a_try,
)
from knowledge.game import MatchState, start

COACH = RallyRates(serving=0.44, receiving=0.56)


def exact_worth_of_a_try(read: Read, chance: float) -> float:
    """The same by adaptive quadrature (scipy) instead of nodes, and binomials from scipy."""

    def after(k: int, tries: int) -> float:
        def integrand(z: float) -> float:
            points = read.doubt_points * z - read.behind_points
            x = expit(logit(chance) + 0.04 * points)
            return float(norm.pdf(z) * binom.pmf(k, tries, x) * (x - chance))

        return float(quad(integrand, -8, 8, limit=200)[0])

    tried = range(1, MOST_TRIES + 1)
    each = [sum(max(0.0, after(k, n)) for k in range(n + 1)) / n for n in tried]
    return max(each) * read.share


@pytest.mark.parametrize("chance", [0.44, 0.9])
@pytest.mark.parametrize(("behind", "doubt"), [(1, 7), (0, 4), (3, 7), (1, 2), (-1, 5)])
def test_a_try_teaches_what_quadrature_says(behind: float, doubt: float, chance: float) -> None:
    """The value of sample information (Raiffa and Schlaifer 1961; from memory)."""
    read = Read(behind_points=behind, doubt_points=doubt, share=0.3)
    worth = worth_of_a_try(read, chance=chance, later_weight=1.0)
    assert worth == pytest.approx(exact_worth_of_a_try(read, chance), abs=1e-9)


def test_a_read_nobody_doubts_teaches_nothing() -> None:
    sure = Read(behind_points=2, doubt_points=0, share=0.3)
    assert worth_of_a_try(sure, chance=0.44, later_weight=5.0) == 0


def test_a_read_serves_the_games_that_follow() -> None:
    """The weight to come in a best of three is that of every game that may be played."""
    opening = start(COMMON, we_serve=True)
    match = MatchState(game=opening)
    step = 1e-5
    up, down = (match_chance(match, COACH.serving + d, COACH.receiving + d) for d in (step, -step))
    to_come = weight_to_come(match, COACH, of_match=True)
    assert to_come == pytest.approx((up - down) / (2 * step), rel=1e-6)
    assert to_come > weight_to_come(match, COACH)
