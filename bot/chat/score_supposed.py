"""A score that a question only supposes: "win chance at 3-9", "and at 9-3".

Whoever supposes one says their own points first; who serves changes nothing of that.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.said import SaidScore
from knowledge.game import GameState


def ours_first(score: SaidScore, known: GameState) -> SaidScore:
    """The score with the first number ours, and a call of three numbers as our own.

    One that says whose is whose stays as it is, and so does the very call that stands.
    """
    call = score.call
    if call is None or score.ours is not None or score.we_serve is not None or call == known.call:
        return score
    ours, theirs = call.serving, call.receiving
    if call.server is None:
        return replace(score, call=None, ours=ours, theirs=theirs)
    return replace(score, ours=ours, theirs=theirs, server=call.server, we_serve=True)


def cannot_follow(score: SaidScore, known: GameState) -> bool:
    """Whether nobody can have come to it since the score that stands, whosever the numbers are."""
    call = score.call
    if call is None or score.ours is not None:
        return False
    first, second = call.serving, call.receiving
    as_ours = first >= known.ours and second >= known.theirs
    as_theirs = second >= known.ours and first >= known.theirs
    return not (as_ours or as_theirs)
