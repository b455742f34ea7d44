"""Formats, ends, time-outs, caps, and the faults of scores that cannot be.

Sources: the national rulebook, 2025 edition (read); numbers beside tests.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.game import (
    Discipline,
    FormatError,
    GameFormat,
    GameState,
    MatchState,
    RallyRotation,
    ScoreCall,
    Scoring,
    after,
    faults,
    faults_of_call,
    start,
)

RALLY_21 = GameFormat(scoring=Scoring.RALLY, target=21)


@pytest.mark.parametrize(
    "fields",
    [
        {"target": 0},
        {"win_by": 3},
        {"target": 15, "cap": 11},
        {"best_of": 2},
        {"freeze_on_serve": True},
    ],
)
def test_formats_that_cannot_be_played(fields: dict[str, int]) -> None:
    with pytest.raises(FormatError):
        GameFormat(**fields)  # type: ignore[arg-type]


@pytest.mark.parametrize(("target", "at"), [(11, 6), (15, 8), (21, 11)])
def test_ends_change_in_a_deciding_game(target: int, at: int) -> None:
    """5.B: at 6 in a game to 11, 8 to 15, 11 to 21, when the first side gets there."""
    before = replace(
        start(GameFormat(target=target, best_of=1), we_serve=True), ours=at - 1, theirs=at - 3
    )
    now = after(before, won_by_us=True)
    assert MatchState(game=now).changes_ends_after(before)
    trailing = replace(now, we_serve=False, theirs=at - 1)
    assert not MatchState(game=after(trailing, won_by_us=False)).changes_ends_after(trailing)


def test_ends_do_not_change_within_a_game_that_decides_nothing() -> None:
    """5.B: only a deciding or single game changes ends half way."""
    before = replace(start(GameFormat(), we_serve=True), ours=5)
    now = after(before, won_by_us=True)
    assert not MatchState(game=now).changes_ends_after(before)
    assert MatchState(game=now, games_ours=1, games_theirs=1).changes_ends_after(before)


def test_ends_change_after_a_game_but_not_after_the_match() -> None:
    """5.B."""
    before = replace(start(GameFormat(), we_serve=True), ours=10)
    now = after(before, won_by_us=True)
    assert MatchState(game=now).changes_ends_after(before)
    assert not MatchState(game=now, games_ours=1).changes_ends_after(before)


@pytest.mark.parametrize(("target", "allowed"), [(11, 2), (15, 2), (21, 3)])
def test_time_outs(target: int, allowed: int) -> None:
    """10.A: two in a game to 11 or 15, three to 21."""
    match = MatchState(game=start(GameFormat(target=target), we_serve=True), timeouts_used_ours=1)
    assert match.timeouts_left == (allowed - 1, allowed)


def test_a_match_goes_on_with_fresh_time_outs_until_it_is_won() -> None:
    """10.A, 12.B: best two of three."""
    won = replace(start(GameFormat(), we_serve=True), ours=11, theirs=7)
    first = MatchState(game=won, timeouts_used_ours=2)
    second = first.next_game(we_serve=False)
    assert (second.games_ours, second.timeouts_left, second.game.ours) == (1, (2, 2), 0)
    with pytest.raises(ValueError, match="still on"):
        second.next_game(we_serve=True)
    with pytest.raises(ValueError, match="over"):
        replace(second, game=won).next_game(we_serve=True)


def test_a_cap_ends_the_game_by_one() -> None:
    """A format parameter, common in events (common practice, no source)."""
    format = GameFormat(target=11, cap=15)
    level = replace(start(format, we_serve=True), ours=14, theirs=14)
    assert after(level, won_by_us=True).we_won is True


def test_win_by_one() -> None:
    level = replace(start(GameFormat(win_by=1), we_serve=True), ours=10, theirs=10)
    assert after(level, won_by_us=True).is_over


def test_frozen_game_point_counts_only_on_serve() -> None:
    """Rally scoring, provisional in 2025: the game point is won on serve; dropped in 2026."""
    frozen = replace(RALLY_21, freeze_on_serve=True)
    receiving = replace(start(frozen, we_serve=False), ours=20, theirs=12)
    held = after(receiving, won_by_us=True)
    assert (held.ours, held.we_serve, held.is_over) == (20, True, False)
    assert after(held, won_by_us=True).we_won is True
    plain = replace(receiving, format=RALLY_21)
    assert after(plain, won_by_us=True).we_won is True


FROZEN_5 = GameFormat(scoring=Scoring.RALLY, target=5, freeze_on_serve=True)


@given(st.lists(st.booleans(), max_size=80), st.sampled_from([GameFormat(), RALLY_21, FROZEN_5]))
def test_no_state_that_rallies_reach_has_a_fault(outcomes: list[bool], format: GameFormat) -> None:
    state = start(format, we_serve=True)
    for won in outcomes:
        assert faults(state) == ()
        assert faults_of_call(state.call, format) == ()
        if state.is_over:
            return
        state = after(state, won_by_us=won)


DOUBLES_RALLY = GameFormat(target=4, scoring=Scoring.RALLY)
FORMATS = (
    GameFormat(target=4),
    GameFormat(target=4, win_by=1),
    GameFormat(target=4, cap=5),
    GameFormat(target=4, cap=6),
    GameFormat(target=4, cap=4),
    GameFormat(target=1),
    GameFormat(target=4, discipline=Discipline.SINGLES),
    replace(DOUBLES_RALLY, discipline=Discipline.SINGLES),
    DOUBLES_RALLY,
    replace(DOUBLES_RALLY, win_by=1),
    replace(DOUBLES_RALLY, rally_rotation=RallyRotation.NEVER_SWAP),
)
HIGHEST = 6
"""Points up to which states are compared; far enough past 4 to see games go on and end."""


@pytest.mark.parametrize("format", FORMATS, ids=repr)
def test_a_state_is_faulty_exactly_where_no_rallies_lead(format: GameFormat) -> None:
    """Against every state that play can reach from either first serve, walked rally by rally."""
    reached = set(_reachable(format))
    wrong = [one for one in _thinkable(format) if bool(faults(one)) is (one in reached)]
    assert wrong == []
    assert {*_thinkable(format)} >= reached


def _reachable(format: GameFormat) -> Iterator[GameState]:
    todo = [start(format, we_serve=one) for one in (True, False)]
    seen = {*todo}
    while todo:
        state = todo.pop()
        yield state
        if state.is_over:
            continue
        following = {after(state, won_by_us=won) for won in (True, False)} - seen
        todo += [one for one in following if max(one.ours, one.theirs) <= HIGHEST]
        seen |= following


def _thinkable(format: GameFormat) -> Iterator[GameState]:
    """Every combination of the fields that the format uses, reached or not."""
    yes_no = (True, False)
    moves = format.scoring is Scoring.RALLY and format.discipline is Discipline.DOUBLES
    for ours, theirs in product(range(HIGHEST + 1), repeat=2):
        for we_serve, we_started, starter in product(yes_no, repeat=3):
            for right in product(yes_no if moves else (True,), repeat=2):
                for server in (1, 2) if format.has_two_servers else (None,):
                    yield GameState(
                        format=format,
                        ours=ours,
                        theirs=theirs,
                        we_serve=we_serve,
                        server=server,
                        starter_serves=starter,
                        we_started=we_started,
                        our_starter_right=right[0],
                        their_starter_right=right[1],
                    )


def test_every_fault_is_listed() -> None:
    state = GameState(format=GameFormat(), ours=99, theirs=3, server=7)
    assert len(faults(state)) == 2
    assert faults(replace(state, server=None))[1] == "The server number, 1 or 2, is missing."
    assert "below zero" in faults(GameState(format=GameFormat(), ours=-1, theirs=3))[0]


def test_a_server_number_has_no_place_in_rally_scoring() -> None:
    assert faults_of_call(ScoreCall(serving=3, receiving=2, server=1), RALLY_21)
    assert not faults_of_call(ScoreCall(serving=3, receiving=2), RALLY_21)


def test_a_side_that_has_lost_or_won_no_rally_cannot_be_serving() -> None:
    """Side-out: only the serving side scores. Rally scoring: the winner of a rally serves."""
    lost = ScoreCall(serving=7, receiving=11, server=1)
    assert "won already" in faults_of_call(lost, GameFormat())[0]
    assert "isn't at 0" in faults_of_call(ScoreCall(serving=0, receiving=4), RALLY_21)[0]


def test_at_zero_the_call_tells_the_server() -> None:
    """4.B.6: at 0-5-1 the one who started right serves; another claim is a fault."""
    state = GameState(format=GameFormat(), ours=0, theirs=5, server=1, starter_serves=False)
    assert "started right" in faults(state)[0]
    assert faults(replace(state, starter_serves=True)) == ()


LOCK_SCREEN = 60
"""Characters that a first line may have, so that a locked phone shows it whole."""


@pytest.mark.parametrize("format", FORMATS, ids=repr)
def test_every_fault_is_a_short_sentence(format: GameFormat) -> None:
    told = {fault for state in _thinkable(format) for fault in faults(state)}
    assert told
    for fault in told:
        assert fault[0].isupper() or fault[0].isdigit()
        assert fault.endswith(".")
        assert len(fault) <= LOCK_SCREEN, fault


def test_an_event_may_have_its_own_timeouts() -> None:
    """10.A of the 2025 edition where nothing is said; else as the event has it."""
    assert GameFormat(target=21).timeouts == 3
    assert GameFormat(target=21, timeouts_each=1).timeouts == 1
    with pytest.raises(FormatError, match="time-outs"):
        GameFormat(timeouts_each=4)
