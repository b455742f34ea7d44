"""Whose call a score is that says nothing of who serves: by the points that stood before it."""

from __future__ import annotations

from bot.chat.said import SaidScore
from knowledge.game import GameState, Scoring


def serving_side_of(score: SaidScore, known: GameState | None) -> bool | None:
    """Whether we serve at such a score; None where nothing was known before it."""
    if known is None:
        return None
    if score.ours is not None and score.theirs is not None:
        return _who_scored(score.ours, score.theirs, known)
    return _nearer_reading(score, known)


def _nearer_reading(score: SaidScore, known: GameState) -> bool:
    """A bare call is the serving side's own: whichever reading is nearer to what we had."""
    if score.call is None:
        return known.we_serve
    first, second = score.call.serving, score.call.receiving
    if_ours = abs(first - known.ours) + abs(second - known.theirs)
    if_theirs = abs(second - known.ours) + abs(first - known.theirs)
    if first == second and score.call.server is not None:
        return _serves_at_level(first, score.call.server, known)
    if if_ours == if_theirs:
        return known.we_serve or _stands(known, ours=first, theirs=second)
    return if_ours < if_theirs


def _serves_at_level(points: int, server: int, known: GameState) -> bool:
    """Whose a level call is: "1-1-1" after their 0-1-1, they scored and serve on.

    Who served before serves still, unless only the others' points rose, or the server's number
    went back: a second server is followed by the other side's first (2025 rulebook, side-out
    scoring). Points of both sides tell nothing.
    """
    scored = _who_scored(points, points, known)
    went_back = known.server is not None and server < known.server
    is_side_out = known.format.scoring is Scoring.SIDE_OUT and scored is known.we_serve
    both_rose = points > known.ours and points > known.theirs
    return not scored if is_side_out and went_back and not both_rose else scored


def _stands(known: GameState, *, ours: int, theirs: int) -> bool:
    """Whether our points would stand where they served: they scored, and lost the serve then.

    "5-7-2" after their 2-5-1: the other way round both sides would have scored, and they serve
    anew (2025 rulebook, side-out scoring).
    """
    is_side_out = known.format.scoring is Scoring.SIDE_OUT
    return is_side_out and ours == known.ours and theirs > known.theirs


def _who_scored(ours: int, theirs: int, known: GameState) -> bool:
    """Where only one side's points rose it is their serve, in either scoring.

    Only the serving side scores, or whoever scores serves next. In rally scoring a side without
    a point cannot be serving at all.
    """
    we_rose, they_rose = ours > known.ours, theirs > known.theirs
    if known.format.scoring is Scoring.RALLY and 0 in (ours, theirs) and ours != theirs:
        return ours > theirs
    return we_rose if we_rose is not they_rose else known.we_serve
