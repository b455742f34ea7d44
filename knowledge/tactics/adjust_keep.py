"""Whether to change at all: who leads clearly and names nothing that hurts keeps what works."""

from __future__ import annotations

from knowledge.regex import regex
from knowledge.said_phrases import fold
from knowledge.situation import Situation

CLEAR_LEAD = 3
"""Points ahead from which a change needs a reason. Common practice, no source."""

KEEP = "Keep it: you lead {ours}-{theirs}. Change nothing yet."
IF_IT_TURNS = "If it turns: {change}"

_KEEP_OR = regex(
    r"\b(?:keep|stay|stick|same|continue|carry on)\b.*\b(?:or|change|vary|switch|anything)\b"
    r"|\b(?:or|change|switch)\b.*\b(?:keep|stay|stick|same|continue|carry on)\b"
    r"|\bchange (?:anything|something|a thing)\b|\b(?:keep|stay|stick) (?:it |this |that )?"
    r"(?:going|the course|the same|with (?:it|this|that|the plan)|to the plan)\b"
)
"""`keep it going or change`, `stay the course`: whether, and not what."""


def keeps_it(situation: Situation) -> str | None:
    """The call for a clear lead where it is asked whether to change; None for all else."""
    game = situation.game
    if game is None or game.is_over or game.ours - game.theirs < CLEAR_LEAD:
        return None
    if situation.asked.lost_in_a_row or not _KEEP_OR.search(fold(situation.asked.words)):
        return None
    return KEEP.format(ours=game.ours, theirs=game.theirs)
