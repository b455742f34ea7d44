"""The rulebook as a state machine: formats, score, calls, server, receiver and sides.

Rules of the national rulebook, 2025 edition, in our own words; undo is a state, not a guess.
"""

from knowledge.game.faults import faults, faults_of_call
from knowledge.game.formats import Discipline, FormatError, GameFormat, RallyRotation, Scoring
from knowledge.game.match import MatchState
from knowledge.game.match_faults import match_faults
from knowledge.game.outcomes import Outcome, Outcomes, outcomes
from knowledge.game.played import PlayedRally, lost_in_a_row, up_to_now
from knowledge.game.positions import (
    PairPlaces,
    Places,
    StackedPlaces,
    courts,
    places,
    receiver,
    server,
    stacked,
)
from knowledge.game.reached import if_reached
from knowledge.game.said import after_saying, is_opening, state_at, with_server
from knowledge.game.score_call import ScoreCall
from knowledge.game.state import (
    GameOverError,
    GameState,
    Lineup,
    after,
    court_of_parity,
    side_out,
    start,
)

__all__ = [
    "Discipline",
    "FormatError",
    "GameFormat",
    "GameOverError",
    "GameState",
    "Lineup",
    "MatchState",
    "Outcome",
    "Outcomes",
    "PairPlaces",
    "Places",
    "PlayedRally",
    "RallyRotation",
    "ScoreCall",
    "Scoring",
    "StackedPlaces",
    "after",
    "after_saying",
    "court_of_parity",
    "courts",
    "faults",
    "faults_of_call",
    "if_reached",
    "is_opening",
    "lost_in_a_row",
    "match_faults",
    "outcomes",
    "places",
    "receiver",
    "server",
    "side_out",
    "stacked",
    "start",
    "state_at",
    "up_to_now",
    "with_server",
]
