"""Matches: their faults, what the next rally brings, ends, and that everything ends once.

Sources: the national rulebook, 2025 edition (read); rule numbers beside tests.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.game import (
    Discipline,
    GameFormat,
    GameOverError,
    GameState,
    MatchState,
    Outcome,
    PlayedRally,
    RallyRotation,
    Scoring,
    after,
    lost_in_a_row,
    match_faults,
    outcomes,
    start,
    up_to_now,
)

FORMATS = st.builds(
    GameFormat,
    target=st.sampled_from([1, 3, 11, 15, 21]),
    win_by=st.sampled_from([1, 2]),
    scoring=st.sampled_from(Scoring),
    discipline=st.sampled_from(Discipline),
    best_of=st.sampled_from([1, 3, 5]),
    rally_rotation=st.sampled_from(RallyRotation),
)
RALLIES = st.lists(st.booleans(), max_size=250)


def opening(**fields: int) -> MatchState:
    return MatchState(game=start(GameFormat(), we_serve=True), **fields)


def test_every_fault_of_a_match_is_listed() -> None:
    """12.B: two of three; 10.A: two time-outs to 11; and the game's own faults with them."""
    game = replace(start(GameFormat(), we_serve=True), ours=40, theirs=3, server=7)
    found = match_faults(
        MatchState(
            game=game, games_ours=3, games_theirs=2, timeouts_used_ours=3, timeouts_used_theirs=-1
        )
    )
    assert found == (
        "3 games can't be won in a best of 3: 2 end it.",
        "At 3-2 in games both sides had won the match.",
        "A best of 3 has no game 6.",
        "Our time-outs: 3, but a game has 2.",
        "Their time-outs: -1 is below zero.",
        "40-3 can't happen in a game to 11.",
        "The server is 1 or 2, not 7.",
    )


@pytest.mark.parametrize(
    ("games", "said"),
    [
        ((2, 0), "the match was over"),
        ((0, 2), "the match was over"),
        ((2, 1), "no game 4"),
        ((-1, 0), "below zero"),
    ],
)
def test_games_that_cannot_stand(games: tuple[int, int], said: str) -> None:
    """12.B: best two of three."""
    found = match_faults(opening(games_ours=games[0], games_theirs=games[1]))
    assert any(said in one for one in found), found


@given(FORMATS, RALLIES, st.booleans())
def test_a_match_that_is_played_has_no_fault_and_ends_once(
    format: GameFormat, rallies: list[bool], we_serve: bool
) -> None:
    """12.B: nothing follows the game that decides, and no game goes on after its last point."""
    match = MatchState(game=start(format, we_serve=we_serve))
    ends = 0
    for won in rallies:
        assert match_faults(match) == ()
        if match.we_won is not None:
            break
        if match.game.is_over:
            match = match.next_game(we_serve=match.we_serve_next_game is True)
        match = replace(match, game=after(match.game, won_by_us=won))
        ends += match.game.is_over
    assert ends <= format.best_of
    if match.we_won is not None:
        with pytest.raises(GameOverError):
            after(match.game, won_by_us=True)
        with pytest.raises(ValueError, match="over"):
            match.next_game(we_serve=True)
        won_ours = match.games_ours + (match.game.we_won is True)
        won_theirs = match.games_theirs + (match.game.we_won is False)
        assert max(won_ours, won_theirs) == format.best_of // 2 + 1
        assert match.we_won is (won_ours > won_theirs)


def test_the_next_game_is_served_first_by_the_other_side() -> None:
    """5.B, from memory: initial service changes sides with the ends after each game."""
    first = start(GameFormat(), we_serve=True)
    assert MatchState(game=first).we_serve_next_game is False
    assert MatchState(game=replace(first, we_started=False)).we_serve_next_game is True
    assert MatchState(game=replace(first, we_started=None)).we_serve_next_game is None


@pytest.mark.parametrize(
    ("calls", "won", "lost"),
    [
        # 4.B.6: the serving side scores and goes on; server 1 hands to the partner, server 2 to
        # the other side.
        ("0-0-2", "1-0-2 point", "0-0-1 side out"),
        ("0-0-1", "1-0-1 point", "0-0-2 second server"),
    ],
)
def test_what_each_outcome_brings_when_we_serve(calls: str, won: str, lost: str) -> None:
    state = start(GameFormat(), we_serve=True)
    if calls.endswith("1"):
        state = replace(state, server=1, we_started=False)
    both = outcomes(state)
    assert (_told(both.if_won), _told(both.if_lost)) == (won, lost)
    assert both.if_won.ends_change is None, "a game alone does not tell about ends"


def _told(outcome: Outcome) -> str:
    what = [
        name
        for name, is_so in (
            ("point", outcome.scores),
            ("side out", outcome.is_side_out),
            ("second server", outcome.is_second_server),
            ("game", outcome.game_over),
            ("ends", outcome.ends_change),
        )
        if is_so
    ]
    return " ".join([str(outcome.next.call), *what])


def test_what_each_outcome_brings_in_rally_scoring() -> None:
    """Every rally scores and its winner serves; no second server."""
    format = GameFormat(scoring=Scoring.RALLY, target=21, best_of=1)
    state = replace(start(format, we_serve=True), ours=10, theirs=9)
    both = outcomes(MatchState(game=state))
    # 5.B: a single game to 21 changes ends at 11.
    assert _told(both.if_won) == "11-9 point ends"
    assert _told(both.if_lost) == "10-10 point side out"


def test_the_last_point_of_a_game_and_of_a_match() -> None:
    """5.B: ends change after a game, and not after the match."""
    game = replace(start(GameFormat(), we_serve=True), ours=10, theirs=3)
    assert _told(outcomes(MatchState(game=game)).if_won) == "11-3-2 point game ends"
    assert _told(outcomes(MatchState(game=game, games_ours=1)).if_won) == "11-3-2 point game"
    with pytest.raises(GameOverError):
        outcomes(replace(game, ours=11))


@given(FORMATS, RALLIES)
def test_outcomes_are_what_play_leads_to(format: GameFormat, rallies: list[bool]) -> None:
    """Exactly one of point, side-out or second server where only the server scores (4.B.6)."""
    state = start(format, we_serve=True)
    for won in rallies:
        if state.is_over:
            return
        both = outcomes(state)
        assert both.if_won.next == after(state, won_by_us=True)
        assert both.if_lost.next == after(state, won_by_us=False)
        for outcome in (both.if_won, both.if_lost):
            kinds = (outcome.scores, outcome.is_side_out, outcome.is_second_server)
            assert outcome.scores if format.scoring is Scoring.RALLY else sum(kinds) == 1
            assert not (outcome.point_for_us and outcome.point_for_them)
        state = (both.if_won if won else both.if_lost).next


@given(st.lists(st.booleans(), max_size=8), st.integers(1, 5))
def test_ends_change_once_in_a_deciding_game(tail: list[bool], jump: int) -> None:
    """5.B: at 6 in a game to 11, also where a score was said in between."""
    before = replace(start(GameFormat(best_of=1), we_serve=True), ours=6 - jump, theirs=0)
    at_six = MatchState(game=replace(before, ours=6))
    assert at_six.changes_ends_after(before)
    state = at_six.game
    for won in tail:
        following = after(state, won_by_us=won)
        if following.is_over:
            return
        assert not MatchState(game=following).changes_ends_after(state)
        state = following


def test_a_played_rally_leads_on_and_losses_are_counted_from_the_last_we_won() -> None:
    def rallies(results: str) -> list[PlayedRally]:
        state: GameState = start(GameFormat(), we_serve=True)
        found = []
        for one in results:
            found.append(PlayedRally(before=state, won_by_us=one == "w"))
            state = found[-1].next
        return found

    assert [str(one.next.call) for one in rallies("wl")] == ["1-0-2", "0-1-1"]
    counts = {"": 0, "w": 0, "wl": 1, "llwll": 2, "lll": 3}
    assert {text: lost_in_a_row(rallies(text)) for text in counts} == counts


def test_a_run_ends_with_a_new_game_a_time_out_and_told_points() -> None:
    opening = start(GameFormat(), we_serve=False)
    first = PlayedRally(before=opening, won_by_us=False)
    second = PlayedRally(before=first.next, won_by_us=False)
    assert lost_in_a_row([first, second]) == 2
    assert lost_in_a_row([first, replace(second, after_timeout=True)]) == 1
    assert lost_in_a_row([first, replace(second, games=(0, 1))]) == 1
    told = replace(second, before=replace(second.before, ours=5))
    assert lost_in_a_row([first, told]) == 1


def test_a_run_ends_where_points_or_a_game_told_since_leave_rallies_out() -> None:
    first = PlayedRally(before=start(GameFormat(), we_serve=False), won_by_us=False)
    lost = [first, PlayedRally(before=first.next, won_by_us=False)]
    now = MatchState(game=lost[-1].next)
    assert lost_in_a_row(lost, now) == 2
    assert lost_in_a_row(lost, replace(now, game=replace(now.game, theirs=9))) == 0
    assert lost_in_a_row(lost, MatchState(game=first.before, games_theirs=1)) == 0
    told = PlayedRally(before=replace(lost[-1].next, theirs=9), won_by_us=False)
    assert tuple(up_to_now([*lost, told], None)) == (told,)


def test_a_game_just_ended_leaves_no_rally_out() -> None:
    point = replace(start(GameFormat(), we_serve=False), theirs=10)
    last = PlayedRally(before=point, won_by_us=False)
    following = MatchState(game=start(GameFormat(), we_serve=True), games_theirs=1)
    assert tuple(up_to_now([last], following)) == (last,)
