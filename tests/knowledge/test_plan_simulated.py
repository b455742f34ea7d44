"""The plan against simple plans over simulated rallies, with opponents who learn where we play.

The simulator is ours and its assumptions stand in tests/support (plan_players, plan_notes,
plan_rallies, plan_reading): common practice, no source, and none of them an effect size of the
engine. This is the short form, with well-scouted pairs who read us twice as well as usual;
`python tests/benchmarks/plans.py` has enough books to tell for the usual ones too.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import pytest
from plan_choices import OPTIONS, Decision, Plan, advised_plan, uniform_plan
from plan_comparison import (
    AT_RANDOM,
    NO_EVIDENCE,
    OURS,
    STRANGERS,
    WEAKEST,
    Learning,
    Opponents,
    opponents,
    plans_for,
    played,
)
from plan_notes import NOTHING, Scouting, scouted_book, unnoted
from plan_players import drawn_pair
from plan_reading import Draws, Reader

BOOKS = 60
RALLIES = 125
MEETINGS = 4
"""So 500 rallies a book, in four matches."""

SEED = 7

EFFECT = 0.5
"""Rallies in 100 that the plan must gain: half of what 1200 books found for readers as good."""

READS_WELL = Learning(strength=2.0)
NEVER_LEARNS = Learning(rate=0.0)


@pytest.fixture(scope="module")
def them() -> Opponents:
    return opponents(Scouting(notes=30), BOOKS, seed=SEED)


@pytest.fixture(scope="module")
def plans(them: Opponents) -> Mapping[str, tuple[Plan, ...]]:
    return plans_for(them)


def test_the_plan_beats_no_evidence_and_the_weakest_wing_against_one_who_learns(
    them: Opponents, plans: Mapping[str, tuple[Plan, ...]]
) -> None:
    """Over 60 books of 500 rallies each, paired: by EFFECT at least, the 95% intervals above 0.

    The plan of another book's notes does not pass the same check: so it can fail.
    """
    shown = {name: plans[name] for name in (OURS, NO_EVIDENCE, WEAKEST, STRANGERS)}
    found = played(them, shown, READS_WELL, rallies=RALLIES, meetings=MEETINGS, seed=SEED)
    for other in (NO_EVIDENCE, WEAKEST, STRANGERS):
        gain = found.gain(other)
        assert gain.low > 0, f"seed {SEED}: {gain} over {other}"
        assert gain.mean > EFFECT, f"seed {SEED}: {gain} over {other}"
    strangers = found.gain(NO_EVIDENCE, of=STRANGERS)
    assert strangers.low < 0, f"seed {SEED}: {strangers}"


def test_against_one_who_never_learns_varying_costs_more_than_it_brings(
    them: Opponents, plans: Mapping[str, tuple[Plan, ...]]
) -> None:
    """Always the weakest wing beats us there: the plan's price, said as it is. And the simulator
    plays like good players: the side that serves wins 42 to 47 in 100 (common practice, no
    source) where nobody knows anything of the other."""
    shown = {name: plans[name] for name in (OURS, AT_RANDOM, WEAKEST, NO_EVIDENCE)}
    found = played(them, shown, NEVER_LEARNS, rallies=RALLIES, meetings=MEETINGS, seed=SEED)
    assert found.gain(WEAKEST).high < 0, found.gain(WEAKEST)
    assert found.gain(AT_RANDOM).low > 0, found.gain(AT_RANDOM)
    assert 42 < found.serving[NO_EVIDENCE] < 47
    assert 48 < found.share(NO_EVIDENCE) < 54
    assert 4 < found.lengths.mean() < 10


def test_equal_plans_have_equal_luck(
    them: Opponents, plans: Mapping[str, tuple[Plan, ...]]
) -> None:
    """The comparison is paired: nothing but the choices tells two plans apart."""
    twice = {OURS: plans[OURS], "again": plans[OURS]}
    found = played(them, twice, READS_WELL, rallies=40, seed=SEED)
    assert found.gain("again").mean == 0
    assert (found.shares[OURS] == found.shares["again"]).all()


def test_notes_tell_more_truth_than_not_unless_they_are_made_wrong() -> None:
    """Of a scout's notes about one in six is wrong; turned round, five in six are."""
    usual = opponents(Scouting(rallies=0), 100, seed=SEED).false_notes
    turned = opponents(Scouting(rallies=0, wrong=1.0), 100, seed=SEED).false_notes
    assert 0.1 < usual < 0.25
    assert turned > 0.8


def test_an_unopened_book_is_no_evidence() -> None:
    rng = np.random.default_rng(SEED)
    pair = drawn_pair(rng)
    book = scouted_book(pair, NOTHING, rng)
    assert not any(one.profile.is_known for one in book.theirs)
    assert advised_plan(book.theirs) == advised_plan(unnoted(pair))


def test_shares_of_every_plan_are_of_options_and_add_up(
    plans: Mapping[str, tuple[Plan, ...]],
) -> None:
    for each in plans.values():
        for plan in each:
            assert set(plan) == set(Decision)
            for decision, shares in plan.items():
                assert set(shares) <= set(OPTIONS[decision])
                assert sum(shares.values()) == pytest.approx(1.0)
    with pytest.raises(ValueError, match="no option"):
        Draws.of([{**uniform_plan(), Decision.RETURN: {"over the fence": 1.0}}], 1)


def test_readiness_is_what_was_seen_and_helps_no_ball_on_the_whole() -> None:
    reader = Reader.fresh(2, rate=0.5)
    rows = np.array([0, 1])
    gained = reader.gained(Decision.RETURN, reader.ready(Decision.RETURN, rows))
    assert gained == pytest.approx(0)
    reader.saw(Decision.RETURN, np.array([0]), np.array([0]))
    ready = reader.ready(Decision.RETURN, rows)
    assert ready.sum(axis=1) == pytest.approx(1)
    assert ready[0, 0] == pytest.approx(0.5 + 0.5 / 3)
    assert ready[1] == pytest.approx(1 / 3)
    gained = reader.gained(Decision.RETURN, ready)
    assert gained[0, 0] > 0 > gained[0, 1]
    assert gained.sum(axis=1) == pytest.approx(0)
