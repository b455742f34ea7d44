"""Doubles rally scoring: where partners can stand at a score, by how often they swapped."""

from __future__ import annotations

from dataclasses import replace

from knowledge.game.formats import Discipline, RallyRotation, Scoring
from knowledge.game.state import GameState


def courts_fit(state: GameState) -> bool:
    """Whether some rallies lead to where the starters stand; a starter not known fits anywhere.

    Nobody moves without swaps. With them a pair swaps at every point it wins on its own serve,
    so its starter is right while those are even. Of the side that served first (points `s`)
    let `a` points be won receiving, of the other (`t`) `b`: side-outs alternate, so b = a while
    the first side serves, else a + 1. True also where a frozen game point hides side-outs.
    """
    if not _moves(state):
        return False not in (state.our_starter_right, state.their_starter_right)
    if may_be_frozen(state):
        return True
    begun = (True, False) if state.we_started is None else (state.we_started,)
    most = max(state.ours, state.theirs)
    return any(
        _fits(state, we_started=one, won_receiving=a) for one in begun for a in range(most + 1)
    )


def _moves(state: GameState) -> bool:
    format = state.format
    return (
        format.scoring is Scoring.RALLY
        and format.discipline is Discipline.DOUBLES
        and format.rally_rotation is RallyRotation.SWAP_ON_OWN_SERVE
    )


def may_be_frozen(state: GameState) -> bool:
    """At a game point that counts on serve only, side-outs may have scored nothing."""
    return state.format.freeze_on_serve and max(state.ours, state.theirs) >= state.format.target - 1


def _fits(state: GameState, *, we_started: bool, won_receiving: int) -> bool:
    a = won_receiving
    b = a if state.we_serve is we_started else a + 1
    first, second = (state.ours, state.our_starter_right), (state.theirs, state.their_starter_right)
    (s, first_right), (t, second_right) = (first, second) if we_started else (second, first)
    if a > s or b > t or (b == 0 and t > 0):
        return False
    return first_right in (None, (s - a) % 2 == 0) and second_right in (None, (t - b) % 2 == 0)


def with_courts_that_follow(state: GameState) -> GameState:
    """The state with a starter's place told where the score leaves only one, else as it is."""
    if not _moves(state):
        return replace(state, our_starter_right=True, their_starter_right=True)
    known = state
    for ours in (True, False, True):
        known = _told(known, ours=ours)
    return known


def _told(state: GameState, *, ours: bool) -> GameState:
    points, now = (
        (state.ours, state.our_starter_right) if ours else (state.theirs, state.their_starter_right)
    )
    if now is not None:
        return state
    if points == 0:
        return with_starter(state, is_right=True, ours=ours)
    both = [with_starter(state, is_right=one, ours=ours) for one in (True, False)]
    fitting = [one for one in both if courts_fit(one)]
    return fitting[0] if len(fitting) == 1 else state


def with_starter(state: GameState, *, is_right: bool | None, ours: bool) -> GameState:
    """The state with one pair's starter right, left (False) or not known."""
    if ours:
        return replace(state, our_starter_right=is_right)
    return replace(state, their_starter_right=is_right)
