"""A state that is told, held against what games reach: no other is ever taken."""

from __future__ import annotations

from knowledge.game.faults import faults
from knowledge.game.said import state_at
from knowledge.game.state import GameState


def if_reached(told: GameState, before: GameState) -> GameState:
    """The state that a line of a log tells, if a game reaches it; else the one before that line.

    A state that no game reaches would be refused by every later sum. None is stored as it is told,
    but lines before it may be taken back, and another program may have written the log. Where only
    who stands where does not fit, that is let go and the score stays.
    """
    if told is before or not faults(told):
        return told
    loose = state_at(
        told.format,
        ours=told.ours,
        theirs=told.theirs,
        we_serve=told.we_serve,
        server=told.server,
        we_started=told.we_started,
        lineup=told.lineup,
    )
    return before if faults(loose) else loose
