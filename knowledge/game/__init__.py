"""The rulebook as a state machine: formats, score, calls, server, receiver and sides.

Rules of the national rulebook, 2025 edition, in our own words; undo is a state, not a guess.
"""

from knowledge.game.faults import faults, faults_of_call
from knowledge.game.formats import Discipline, FormatError, GameFormat, RallyRotation, Scoring
from knowledge.game.match import MatchState
from knowledge.game.played import PlayedRally, lost_in_a_row
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
from knowledge.game.score_call import ScoreCall
from knowledge.game.state import GameOverError, GameState, Lineup, after, side_out, start

__all__ = [
    "Discipline",
    "FormatError",
    "GameFormat",
    "GameOverError",
    "GameState",
    "Lineup",
    "MatchState",
    "PairPlaces",
    "Places",
    "PlayedRally",
    "RallyRotation",
    "ScoreCall",
    "Scoring",
    "StackedPlaces",
    "after",
    "courts",
    "faults",
    "faults_of_call",
    "lost_in_a_row",
    "places",
    "receiver",
    "server",
    "side_out",
    "stacked",
    "start",
]
