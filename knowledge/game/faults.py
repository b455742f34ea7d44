"""What is wrong with a score: every fault of an impossible state, not only the first."""

from __future__ import annotations

from knowledge.game.formats import Discipline, GameFormat, Scoring
from knowledge.game.said import state_at
from knowledge.game.score_call import ScoreCall
from knowledge.game.state import GameState, court_of_parity, with_rally_server
from knowledge.game.swaps import courts_fit, may_be_frozen


def faults(state: GameState) -> tuple[str, ...]:
    """Every reason why the state cannot stand, as sentences for a user; empty if it can."""
    return (
        *_points_faults(state.format, state.ours, state.theirs),
        *_server_faults(state),
        *_serving_faults(state),
        *_standing_faults(state),
    )


def faults_of_call(call: ScoreCall, format: GameFormat) -> tuple[str, ...]:
    """The same for a bare call, whoever serves."""
    return faults(
        state_at(
            format, ours=call.serving, theirs=call.receiving, we_serve=True, server=call.server
        )
    )


def _serving_faults(state: GameState) -> list[str]:
    """A side that serves has not lost yet, and where every rally scores it has won one."""
    serving, receiving = state.serving_points, state.receiving_points
    if state.format.is_won(receiving, serving):
        return [f"At {serving}-{receiving} the receiving side had won already."]
    if state.format.scoring is not Scoring.RALLY:
        return []
    if serving > 0:
        return _last_rally_faults(state.format, serving, receiving)
    if receiving > 0:
        return ["The serving side has won a rally, so it isn't at 0."]
    started = state.we_started in (None, state.we_serve)
    if not started and not may_be_frozen(state):
        return ["At 0-0 whoever serves first is serving."]
    return []


def _last_rally_faults(format: GameFormat, serving: int, receiving: int) -> list[str]:
    if not format.is_won(receiving, serving - 1):
        return []
    before = f"{serving - 1}-{receiving}"
    return [f"The serving side scored last, but {before} had ended it."]


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
    if state.format.discipline is Discipline.SINGLES and state.starter_serves is False:
        return ["In singles a side has one player, who serves.", *_number_faults(state)]
    return _number_faults(state)


def _number_faults(state: GameState) -> list[str]:
    if not state.format.has_two_servers:
        if state.server is None:
            return []
        why = "Rally scoring" if state.format.scoring is Scoring.RALLY else "Singles"
        return [f"{why} has no server number, but {state.server} was called."]
    if state.server is None:
        return ["The server number, 1 or 2, is missing."]
    if state.server not in (1, 2):
        return [f"The server is 1 or 2, not {state.server}."]
    return _starter_faults(state)


def _starter_faults(state: GameState) -> list[str]:
    """Where the serving side has not scored in its turn, the call tells which partner serves."""
    told = state.call_names_starter
    if told is None or state.starter_serves in (None, told):
        return []
    who = "the one who started right" if told else "the partner of who started right"
    return [f"At {state.call} {who} serves."]


def _standing_faults(state: GameState) -> list[str]:
    """Doubles rally scoring: where partners stand and who serves agree with the points."""
    if state.format.scoring is not Scoring.RALLY or state.format.discipline is Discipline.SINGLES:
        return []
    found = []
    is_a_score = not _serving_faults(state) and min(state.ours, state.theirs) >= 0
    if is_a_score and not courts_fit(state):
        found.append(f"No rallies lead to those courts at {state.ours}-{state.theirs}.")
    serves = with_rally_server(state).starter_serves
    if serves is not None and state.starter_serves not in (None, serves):
        court = court_of_parity(state.serving_points)
        found.append(f"At {state.call} whoever stands {court} serves.")
    return found
