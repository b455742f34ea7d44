"""What is wrong with a score: every fault of an impossible state, not only the first."""

from __future__ import annotations

from dataclasses import replace

from knowledge.game.formats import GameFormat, Scoring
from knowledge.game.score_call import ScoreCall
from knowledge.game.state import GameState


def faults(state: GameState) -> tuple[str, ...]:
    """Every reason why the state cannot stand, as sentences for a user; empty if it can."""
    found = [*_points_faults(state.format, state.ours, state.theirs), *_server_faults(state)]
    return tuple(found)


def faults_of_call(call: ScoreCall, format: GameFormat) -> tuple[str, ...]:
    """The same for a bare call, whoever serves, and whether that side can be serving at all."""
    state = GameState(
        format=format,
        ours=call.serving,
        theirs=call.receiving,
        we_serve=True,
        server=call.server,
    )
    return (*faults(state), *_serving_faults(call, format))


def _serving_faults(call: ScoreCall, format: GameFormat) -> list[str]:
    """A side that serves has not lost yet, and where every rally scores it has won one."""
    if format.is_won(call.receiving, call.serving):
        return [f"At {call.serving}-{call.receiving} the receiving side had won already."]
    if format.scoring is Scoring.RALLY and call.serving == 0 and call.receiving > 0:
        return ["In rally scoring the side that serves has won a rally, so it isn't at 0."]
    return []


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
    """Whether the game was over before the last point of the score was played."""
    if high < 1 or low < 0:
        return False
    if high == low:
        return format.is_won(high, low - 1)
    return format.is_won(high - 1, low) or (format.win_by == 1 and high > format.target)


def _server_faults(state: GameState) -> list[str]:
    if not state.format.has_two_servers:
        if state.server is None:
            return []
        why = "rally scoring" if state.format.scoring is Scoring.RALLY else "singles"
        return [f"{why} has no server number, but {state.server} was called."]
    if state.server is None:
        return ["The server number, 1 or 2, is missing."]
    if state.server not in (1, 2):
        return [f"The server is 1 or 2, not {state.server}."]
    return _starter_faults(state)


def _starter_faults(state: GameState) -> list[str]:
    """At 0 nobody of the serving side has moved, so the call tells which partner serves."""
    told = replace(state, starter_serves=None).server_is_starter
    if told is None or state.starter_serves in (None, told):
        return []
    who = "the one who started right" if told else "that player's partner"
    return [f"At {state.call} the server is {who}."]
