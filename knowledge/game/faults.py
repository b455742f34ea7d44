"""What is wrong with a score: every fault of an impossible state, not only the first."""

from __future__ import annotations

from knowledge.game.formats import GameFormat, Scoring
from knowledge.game.score_call import ScoreCall
from knowledge.game.state import GameState


def faults(state: GameState) -> tuple[str, ...]:
    """Every reason why the state cannot stand, as sentences for a user; empty if it can."""
    found = [*_points_faults(state.format, state.ours, state.theirs), *_server_faults(state)]
    return tuple(found)


def faults_of_call(call: ScoreCall, format: GameFormat) -> tuple[str, ...]:
    """The same for a bare call, whoever serves."""
    return faults(
        GameState(
            format=format,
            ours=call.serving,
            theirs=call.receiving,
            we_serve=True,
            server=call.server,
        )
    )


def _points_faults(format: GameFormat, ours: int, theirs: int) -> list[str]:
    found = []
    if min(ours, theirs) < 0:
        found.append(f"{min(ours, theirs)} is below zero.")
    high, low = max(ours, theirs), min(ours, theirs)
    if format.cap is not None and high > format.cap:
        found.append(f"{high} is above the cap of {format.cap}.")
    elif _is_past_the_end(format, high, low):
        found.append(f"{high}-{low} can't happen in a game to {format.target}.")
    return found


def _is_past_the_end(format: GameFormat, high: int, low: int) -> bool:
    """Whether the game was over before the last point of the side ahead was played."""
    return high > 0 and low >= 0 and format.is_won(high - 1, low)


def _server_faults(state: GameState) -> list[str]:
    if not state.format.has_two_servers:
        if state.server is None:
            return []
        why = "rally scoring" if state.format.scoring is Scoring.RALLY else "singles"
        return [f"{why} has no server number, but {state.server} was called."]
    if state.server in (1, 2):
        return []
    if state.server is None:
        return ["The server number, 1 or 2, is missing."]
    return [f"The server is 1 or 2, not {state.server}."]
