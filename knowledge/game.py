"""The rulebook as a state machine: formats, score, calls, server, receiver and sides."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from knowledge.vocabulary import PlayerId


class Scoring(StrEnum):
    SIDE_OUT = "side_out"
    RALLY = "rally"


class Discipline(StrEnum):
    DOUBLES = "doubles"
    SINGLES = "singles"


@dataclass(frozen=True, slots=True, kw_only=True)
class GameFormat:
    """How a game is played. The common one is doubles side-out to 11, win by 2, best of three."""

    target: int = 11
    win_by: int = 2
    cap: int | None = None
    scoring: Scoring = Scoring.SIDE_OUT
    discipline: Discipline = Discipline.DOUBLES
    best_of: int = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoreCall:
    """A score as called: serving side's points, receiving side's, and in doubles the server."""

    serving: int
    receiving: int
    server: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Lineup:
    """Who started where: each pair's starting server (right court at 0) and their partner."""

    our_starter: PlayerId
    our_partner: PlayerId
    their_starter: PlayerId
    their_partner: PlayerId


@dataclass(frozen=True, slots=True, kw_only=True)
class GameState:
    """One game between two rallies. `server` is 1 or 2 in doubles side-out, else None."""

    format: GameFormat
    ours: int = 0
    theirs: int = 0
    we_serve: bool = True
    server: int | None = 2
    lineup: Lineup | None = None
