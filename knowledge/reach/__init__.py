"""Bodies on a court: how soon a player moves, how far they reach, and who gets to a ball.

Court coordinates are those of knowledge.court; times count from the opponent's contact.
"""

from __future__ import annotations

from knowledge.reach.body import Body
from knowledge.reach.covering import Cover, Seam, Shot, cover, seam
from knowledge.reach.in_time import SPREAD_S, chance_in_time, mean_chance, points_in_time
from knowledge.reach.meeting import (
    Meeting,
    Path,
    Placed,
    meeting,
    move_time_s,
    slack_s,
    slacks_after,
    slacks_s,
)
from knowledge.reach.mover import Mover, mover, mover_of
from knowledge.reach.moving import Feet, run_m
from knowledge.reach.reacting import choice_cost_s, reaction_s

__all__ = [
    "SPREAD_S",
    "Body",
    "Cover",
    "Feet",
    "Meeting",
    "Mover",
    "Path",
    "Placed",
    "Seam",
    "Shot",
    "chance_in_time",
    "choice_cost_s",
    "cover",
    "mean_chance",
    "meeting",
    "move_time_s",
    "mover",
    "mover_of",
    "points_in_time",
    "reaction_s",
    "run_m",
    "seam",
    "slack_s",
    "slacks_after",
    "slacks_s",
]
