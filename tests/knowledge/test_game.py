"""The rulebook's doubles side-out game, one statement at a time.

Sources: the national rulebook, 2025 edition, (read), by the rule number beside each
test; the sequence counts are our own, computed twice by independent methods.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.game import (
    GameFormat,
    GameOverError,
    GameState,
    Lineup,
    ScoreCall,
    after,
    courts,
    places,
    receiver,
    server,
    side_out,
    stacked,
    start,
)
from knowledge.vocabulary import PlayerId, Side

MIRA, TOM, OKAFOR, LINDQVIST = (PlayerId(n) for n in range(1, 5))
LINEUP = Lineup(our_starter=MIRA, our_partner=TOM, their_starter=OKAFOR, their_partner=LINDQVIST)
OPENING = start(GameFormat(), we_serve=True, lineup=LINEUP)


def played(outcomes: str, opening: GameState = OPENING) -> GameState:
    """The state after rallies written as w (ours) and l (theirs)."""
    state = opening
    for outcome in outcomes:
        state = after(state, won_by_us=outcome == "w")
    return state


def test_the_game_starts_0_0_2_from_the_right() -> None:
    """4.B.6: the side that serves first has one server, and calls 0-0-2."""
    assert str(OPENING.call) == "0-0-2"
    assert (server(OPENING), OPENING.serving_court) == (MIRA, Side.RIGHT)
    assert receiver(OPENING) == OKAFOR


def test_the_first_side_loses_its_serve_with_its_first_lost_rally() -> None:
    """4.B.6: the first pair has one server only."""
    assert str(played("l").call) == "0-0-1"
    assert played("l").we_serve is False
    assert server(played("l")) == OKAFOR


def test_both_partners_serve_before_a_side_out() -> None:
    """4.B.6: server 1 hands to the partner, server 2 to the other side."""
    assert [str(played("l" + wins).call) for wins in ("", "w", "ww")] == ["0-0-1", "0-0-2", "0-0-1"]
    assert [server(played("l" + wins)) for wins in ("", "w", "ww")] == [OKAFOR, LINDQVIST, MIRA]


def test_the_second_server_serves_from_where_they_stand() -> None:
    """4.B.6: partners do not swap when the serve passes between them."""
    before, handed = played("l"), played("lw")
    assert courts(before, ours=False) == courts(handed, ours=False)
    assert handed.serving_court is Side.LEFT


def test_partners_swap_after_a_point_of_theirs_and_the_server_goes_on() -> None:
    """4.B.6: the same server serves from the other court; the receivers stay."""
    point = played("w")
    assert (server(point), point.serving_court) == (MIRA, Side.LEFT)
    assert courts(point, ours=True) == {Side.LEFT: MIRA, Side.RIGHT: TOM}
    assert courts(point, ours=False) == courts(OPENING, ours=False)
    assert receiver(point) == LINDQVIST


def test_after_a_side_out_the_player_on_the_right_serves_first() -> None:
    """4.B.6: we hold one point, so our starter is left and the partner serves as number 1."""
    state = played("w" + "l" + "ww")
    assert str(state.call) == "1-0-1"
    assert (server(state), state.serving_court) == (TOM, Side.RIGHT)


@given(st.text(alphabet="wl", max_size=60))
def test_the_starter_is_right_exactly_at_an_even_score(outcomes: str) -> None:
    """4.B.6: the starting server's court follows the parity of their own side's score."""
    state = OPENING
    for outcome in outcomes:
        if state.is_over:
            break
        state = after(state, won_by_us=outcome == "w")
    for ours, points, starter in ((True, state.ours, MIRA), (False, state.theirs, OKAFOR)):
        where = courts(state, ours=ours)
        assert where is not None
        assert where[Side.RIGHT if points % 2 == 0 else Side.LEFT] == starter


def test_a_game_to_11_is_won_by_two() -> None:
    """12.B: to 11, win by 2, no cap."""
    level = replace(OPENING, ours=10, theirs=10)
    assert not played("w", level).is_over
    assert played("ww", level).we_won is True
    assert played("w", replace(OPENING, ours=10, theirs=9)).we_won is True


def test_a_finished_game_takes_no_rally() -> None:
    with pytest.raises(GameOverError, match="11-0"):
        after(played("w" * 11), won_by_us=True)


@given(st.text(alphabet="wl", max_size=80))
def test_only_the_serving_side_scores_and_by_one(outcomes: str) -> None:
    """Side-out scoring, 4.B.6: a receiving side's rally changes no points."""
    state = OPENING
    for outcome in outcomes:
        if state.is_over:
            return
        won = outcome == "w"
        following = after(state, won_by_us=won)
        gained = (following.ours - state.ours, following.theirs - state.theirs)
        scores = won is state.we_serve
        assert gained == ((won, not won) if scores else (0, 0))
        state = following


@pytest.mark.parametrize(
    ("rallies", "sequences"), [(10, 1024), (12, 4094), (15, 32650), (20, 1014466)]
)
def test_count_of_rally_sequences(rallies: int, sequences: int) -> None:
    """Sequences of exactly d rallies from 0-0-2 to 11, win by 2 (computed, two methods)."""

    @cache
    def count(state: GameState, left: int) -> int:
        if left == 0:
            return 1
        if state.is_over:
            return 0
        return sum(count(after(state, won_by_us=won), left - 1) for won in (True, False))

    assert count(replace(OPENING, lineup=None), rallies) == sequences


@given(st.integers(0, 999), st.integers(0, 999), st.one_of(st.none(), st.integers(0, 9)))
def test_calls_round_trip(serving: int, receiving: int, number: int | None) -> None:
    call = ScoreCall(serving=serving, receiving=receiving, server=number)
    assert ScoreCall.parse(str(call)) == call


@pytest.mark.parametrize("text", ["6-4-2", " 6 4 2 ", "6–4–2", "6/4/2", "6, 4, 2"])
def test_calls_as_people_write_them(text: str) -> None:
    assert str(ScoreCall.parse(text)) == "6-4-2"


@pytest.mark.parametrize("text", ["", "6", "six-four", "1000-2-1", "6-4-22", "-1-3"])
def test_what_is_no_call_is_named(text: str) -> None:
    with pytest.raises(ValueError, match="6-4-2"):
        ScoreCall.parse(text)


@pytest.mark.parametrize(
    ("ours", "theirs", "number", "starter"),
    [
        (0, 3, 1, True),  # nobody of ours moved: the one on the right is the starter
        (0, 3, 2, False),  # and server 2 the partner
        (4, 3, 1, None),  # either partner may be serving
        (0, 0, 2, None),  # the game's first serve, or a second server later
    ],
)
def test_what_a_call_alone_tells_about_the_server(
    ours: int, theirs: int, number: int, starter: bool | None
) -> None:
    """Follows from 4.B.6; `None` is not known, not "no"."""
    state = GameState(format=GameFormat(), ours=ours, theirs=theirs, server=number)
    assert state.server_is_starter is starter


@given(st.text(alphabet="wl", max_size=60))
def test_a_call_never_tells_wrong_about_the_server(outcomes: str) -> None:
    state = OPENING
    for outcome in outcomes:
        if state.is_over:
            return
        told = replace(state, starter_serves=None).server_is_starter
        assert told in (None, state.starter_serves)
        state = after(state, won_by_us=outcome == "w")


def test_what_a_side_out_would_bring_keeps_the_score() -> None:
    state = side_out(played("www"))
    assert (str(state.call), state.we_serve, server(state)) == ("0-3-1", False, OKAFOR)


def test_a_stack_that_needs_no_move() -> None:
    """4.B: only server and receiver are bound; here the server already serves where she plays."""
    places_ = stacked(OPENING, ours=True, plays_left=TOM)
    assert places_ is not None
    assert (places_.bound, places_.stands_out) == (MIRA, None)


def test_a_stack_that_sends_the_partner_outside() -> None:
    """4.B: Mira serves from the right but plays left, so Tom waits outside on the right."""
    places_ = stacked(OPENING, ours=True, plays_left=MIRA)
    assert places_ is not None
    assert (places_.bound_court, places_.stands_out) == (Side.RIGHT, TOM)
    assert places_.plays == ((MIRA, Side.LEFT), (TOM, Side.RIGHT))


def test_a_stranger_cannot_be_stacked() -> None:
    with pytest.raises(ValueError, match="not of that pair"):
        stacked(OPENING, ours=True, plays_left=OKAFOR)


def test_places_are_not_guessed_where_the_call_does_not_settle_them() -> None:
    unknown = replace(OPENING, ours=4, theirs=3, server=1, starter_serves=None)
    assert (places(unknown), server(unknown), receiver(unknown)) == (None, None, None)
