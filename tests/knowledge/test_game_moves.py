"""The rotation against a second formulation: four people who walk about on a court.

The state machine derives courts from the parity of scores; here players really swap places,
and the server is a person who keeps serving until the rules take the ball away (facts section
2; rulebook 2025, 4.B.6).
"""

from __future__ import annotations

from dataclasses import dataclass, field

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.game import (
    Discipline,
    GameFormat,
    GameState,
    Lineup,
    RallyRotation,
    Scoring,
    after,
    courts,
    receiver,
    server,
    start,
)
from knowledge.vocabulary import PlayerId, Side

LINEUP = Lineup(
    our_starter=PlayerId(1),
    our_partner=PlayerId(2),
    their_starter=PlayerId(3),
    their_partner=PlayerId(4),
)
OUTCOMES = st.lists(st.booleans(), max_size=90)


@dataclass(kw_only=True)
class Pair:
    """Who stands on the right and who on the left, and the pair's points."""

    right: int
    left: int
    points: int = 0

    def swap(self) -> None:
        self.right, self.left = self.left, self.right

    def partner(self, player: int) -> int:
        return self.left if player == self.right else self.right

    def is_right(self, player: int) -> bool:
        return player == self.right


@dataclass(kw_only=True)
class Court:
    """Two pairs and the person with the ball; pair 0 is ours."""

    pairs: tuple[Pair, Pair] = field(
        default_factory=lambda: (Pair(right=1, left=2), Pair(right=3, left=4))
    )
    serving: int = 0
    ball: int = 1
    turn_used: bool = True

    @property
    def receiver(self) -> int:
        across = self.pairs[1 - self.serving]
        return across.right if self.pairs[self.serving].is_right(self.ball) else across.left

    def side_out_rally(self, winner: int) -> None:
        pair = self.pairs[self.serving]
        if winner == self.serving:
            pair.points += 1
            pair.swap()
        elif not self.turn_used:
            self.ball, self.turn_used = pair.partner(self.ball), True
        else:
            self.serving, self.turn_used = winner, False
            self.ball = self.pairs[winner].right

    def swapping_rally(self, winner: int) -> None:
        """Rally scoring: the server who wins swaps and goes on; else parity picks the server."""
        pair = self.pairs[winner]
        pair.points += 1
        if winner == self.serving:
            pair.swap()
        else:
            self.serving = winner
            self.ball = pair.right if pair.points % 2 == 0 else pair.left

    def standing_rally(self, winner: int) -> None:
        """Rally scoring without swaps: nobody moves, parity picks the server every time."""
        pair = self.pairs[winner]
        pair.points += 1
        self.serving = winner
        self.ball = pair.right if pair.points % 2 == 0 else pair.left


def assert_same(state: GameState, court: Court) -> None:
    ours, theirs = court.pairs
    assert (state.ours, state.theirs) == (ours.points, theirs.points)
    assert state.we_serve is (court.serving == 0)
    assert server(state) == court.ball
    assert receiver(state) == court.receiver
    for ours_, pair in ((True, ours), (False, theirs)):
        assert courts(state, ours=ours_) == {Side.RIGHT: pair.right, Side.LEFT: pair.left}


@given(OUTCOMES, st.booleans())
def test_doubles_side_out(outcomes: list[bool], we_serve: bool) -> None:
    state = start(GameFormat(), we_serve=we_serve, lineup=LINEUP)
    court = Court(serving=0 if we_serve else 1, ball=1 if we_serve else 3)
    for won in outcomes:
        assert_same(state, court)
        assert state.server == (2 if court.turn_used else 1)
        if state.is_over:
            return
        state = after(state, won_by_us=won)
        court.side_out_rally(0 if won else 1)


@pytest.mark.parametrize("rotation", RallyRotation)
@given(outcomes=OUTCOMES)
def test_doubles_rally_scoring(rotation: RallyRotation, outcomes: list[bool]) -> None:
    format = GameFormat(scoring=Scoring.RALLY, rally_rotation=rotation, target=21)
    state, court = start(format, we_serve=True, lineup=LINEUP), Court()
    move = (
        court.swapping_rally
        if rotation is RallyRotation.SWAP_ON_OWN_SERVE
        else court.standing_rally
    )
    for won in outcomes:
        assert_same(state, court)
        assert state.server is None
        if state.is_over:
            return
        state = after(state, won_by_us=won)
        move(0 if won else 1)


@pytest.mark.parametrize("scoring", Scoring)
@given(outcomes=OUTCOMES)
def test_singles(scoring: Scoring, outcomes: list[bool]) -> None:
    """One server; the server's own score picks the court, even right, odd left."""
    format = GameFormat(discipline=Discipline.SINGLES, scoring=scoring)
    state = start(format, we_serve=True, lineup=LINEUP)
    points, serving = [0, 0], 0
    for won in outcomes:
        assert [state.ours, state.theirs] == points
        assert server(state) == (1, 3)[serving]
        assert receiver(state) == (3, 1)[serving]
        right = points[serving] % 2 == 0
        assert courts(state, ours=True) == {Side.RIGHT if right else Side.LEFT: 1}
        if state.is_over:
            return
        state = after(state, won_by_us=won)
        winner = 0 if won else 1
        points[winner] += winner == serving or scoring is Scoring.RALLY
        serving = winner
