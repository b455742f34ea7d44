"""What a spoken score settles: never more than the rules allow, and never less.

Rules: the national rulebook, 2025 edition, 4.B.6. What a score tells of who stands where is
checked against every state that play reaches at that score.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace

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
    after_saying,
    courts,
    places,
    receiver,
    server,
    start,
    state_at,
    with_server,
)
from knowledge.vocabulary import PlayerId, Side

MIRA, TOM, OKAFOR, LINDQVIST = (PlayerId(n) for n in range(1, 5))
LINEUP = Lineup(our_starter=MIRA, our_partner=TOM, their_starter=OKAFOR, their_partner=LINDQVIST)
RALLY = GameFormat(target=5, scoring=Scoring.RALLY)
FORMATS = (
    GameFormat(target=5),
    GameFormat(target=5, discipline=Discipline.SINGLES),
    RALLY,
    replace(RALLY, rally_rotation=RallyRotation.NEVER_SWAP),
    replace(RALLY, discipline=Discipline.SINGLES),
)
HIGHEST = 7


def saying(game: GameState, said: GameState) -> GameState:
    return after_saying(
        game, ours=said.ours, theirs=said.theirs, we_serve=said.we_serve, server=said.server
    )


@pytest.mark.parametrize("format", FORMATS, ids=str)
def test_a_score_tells_exactly_what_all_games_at_it_agree_on(format: GameFormat) -> None:
    """Who serves and where starters stand: told where every game there agrees, else not known."""
    reached: dict[_Told, set[tuple[bool | None, ...]]] = defaultdict(set)
    for state in _walk(format):
        for begun in (state.we_started, None):
            key = (state.ours, state.theirs, state.we_serve, state.server, begun)
            reached[key].add(_standing(state))
    for (ours, theirs, we_serve, number, begun), seen in reached.items():
        told = state_at(
            format, ours=ours, theirs=theirs, we_serve=we_serve, server=number, we_started=begun
        )
        for place, value in enumerate(_standing(told)):
            agreed = {one[place] for one in seen}
            expected = next(iter(agreed)) if len(agreed) == 1 else None
            assert value is expected, (told.call, we_serve, begun, place)


_Told = tuple[int, int, bool, int | None, bool | None]


def _standing(state: GameState) -> tuple[bool | None, ...]:
    courts_of = [state.starter_court(ours=ours) for ours in (True, False)]
    right = [None if court is None else court is Side.RIGHT for court in courts_of]
    serves = state.server_is_starter if state.format.discipline is Discipline.DOUBLES else True
    return (serves, *right)


def _walk(format: GameFormat) -> set[GameState]:
    todo = [start(format, we_serve=one) for one in (True, False)]
    seen = {*todo}
    while todo:
        state = todo.pop()
        if state.is_over or max(state.ours, state.theirs) >= HIGHEST:
            continue
        following = {after(state, won_by_us=won) for won in (True, False)} - seen
        todo += following
        seen |= following
    return seen


@pytest.mark.parametrize("format", FORMATS, ids=str)
@given(rallies=st.lists(st.booleans(), max_size=30), we_serve=st.booleans())
def test_keeping_score_aloud_is_as_good_as_tapping(
    format: GameFormat, rallies: list[bool], we_serve: bool
) -> None:
    """Every score said one rally on keeps who serves and who stands where.

    A side-out in the first rally of singles is left out: 0-0 from the other side may as well
    correct who serves first.
    """
    state = told = start(format, we_serve=we_serve, lineup=LINEUP)
    for won in rallies:
        if state.is_over:
            return
        state = after(state, won_by_us=won)
        if str(state.call) == "0-0":
            told = state
        told = saying(told, state)
        assert told == state
        assert saying(told, state) == state, "the same score again changes nothing"


def test_a_correction_in_rally_scoring_forgets_who_stands_where() -> None:
    """7-5 can be reached with either partner on either side; the court follows from the 7."""
    format = GameFormat(scoring=Scoring.RALLY, target=21)
    state = start(format, we_serve=True, lineup=LINEUP)
    told = after_saying(state, ours=7, theirs=5, we_serve=True, server=None)
    assert (told.our_starter_right, told.their_starter_right, told.starter_serves) == (None,) * 3
    assert told.serving_court is Side.LEFT
    assert (places(told), server(told), receiver(told)) == (None, None, None)
    assert (courts(told, ours=True), courts(told, ours=False)) == (None, None)
    following = after(told, won_by_us=True)
    assert (following.our_starter_right, following.serving_court) == (None, Side.RIGHT)


def test_without_a_point_nobody_has_moved_in_rally_scoring_either() -> None:
    told = state_at(RALLY, ours=3, theirs=0, we_serve=True, lineup=LINEUP)
    assert courts(told, ours=False) == {Side.RIGHT: OKAFOR, Side.LEFT: LINDQVIST}
    assert receiver(told) == LINDQVIST
    assert server(told) is None


def test_a_correction_in_side_out_scoring_keeps_the_courts() -> None:
    """4.B.6: courts follow from each pair's own score; which partner serves does not."""
    told = after_saying(
        start(GameFormat(), we_serve=True, lineup=LINEUP), ours=6, theirs=3, we_serve=True, server=1
    )
    assert (server(told), told.serving_court) == (None, None)
    assert courts(told, ours=True) == {Side.RIGHT: MIRA, Side.LEFT: TOM}
    assert courts(told, ours=False) == {Side.RIGHT: LINDQVIST, Side.LEFT: OKAFOR}


def test_one_behind_at_game_point_the_call_tells_the_server() -> None:
    """At 10-11 the serving side cannot have scored in this turn: at 9-11 it had lost."""
    told = state_at(GameFormat(), ours=10, theirs=11, we_serve=True, server=1, lineup=LINEUP)
    assert server(told) == MIRA
    assert server(replace(told, server=2)) == TOM
    assert server(replace(told, theirs=10)) is None


@pytest.mark.parametrize("format", [FORMATS[0], FORMATS[2]], ids=str)
@given(rallies=st.lists(st.booleans(), max_size=30), we_serve=st.booleans())
def test_told_who_serves_the_serving_pair_stands_as_it_did(
    format: GameFormat, rallies: list[bool], we_serve: bool
) -> None:
    state = start(format, we_serve=we_serve, lineup=LINEUP)
    for won in rallies:
        if state.is_over:
            break
        state = after(state, won_by_us=won)
    serves = server(state)
    assert serves is not None
    told = state_at(
        format,
        ours=state.ours,
        theirs=state.theirs,
        we_serve=state.we_serve,
        server=state.server,
        lineup=LINEUP,
    )
    named = with_server(told, serves)
    assert (server(named), named.serving_court) == (serves, state.serving_court)
    assert courts(named, ours=state.we_serve) == courts(state, ours=state.we_serve)
    with pytest.raises(ValueError, match="not of the serving pair"):
        with_server(told, OKAFOR if state.we_serve else MIRA)


def test_only_who_is_known_is_named() -> None:
    """One pair's lineup does not wait for the other's."""
    ours_only = Lineup().with_pair(MIRA, TOM, ours=True)
    state = start(GameFormat(), we_serve=True, lineup=ours_only)
    assert (server(state), receiver(state)) == (MIRA, None)
    assert courts(state, ours=False) is None
    theirs_too = replace(state, lineup=ours_only.with_pair(OKAFOR, None, ours=False))
    assert receiver(theirs_too) == OKAFOR
    assert courts(theirs_too, ours=False) == {Side.RIGHT: OKAFOR}
