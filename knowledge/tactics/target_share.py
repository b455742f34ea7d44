"""How many of the balls the weaker player should get: what feeding gains, less what it teaches.

With share s at one player, t = 2s - 1 says how lopsided that is (even 0, all 1). The gain over
even is E t (1 - k t): an edge E per ball, and a part k t of it that is gone because they adjust
and because the one who is fed warms up, both in proportion to t. It is largest at t = 1 / (2k):
s = 75% with k = 1, 67% with a partner who covers (k = 1.5), and nothing is left of it at 100%.
The losses are common practice, no source.
"""

from __future__ import annotations

from knowledge.tactics.target_sizes import (
    ADJUSTED_LOSES,
    COVER_LOSES,
    EVEN_SHARE,
    FED_LOSES,
    FRESH_SHARE,
)


def best_share(cover: float) -> float:
    """Share of the balls for the target; `cover`, 0 to 1, is how much the partner moves over."""
    return EVEN_SHARE + 1 / (4 * _loss(cover))


def kept(points: float, share: float, cover: float) -> float:
    """What stays of a fresh gain, stated at FRESH_SHARE, once they have seen this share."""
    lopsided = _lopsided(share)
    return points * lopsided / _lopsided(FRESH_SHARE) * (1 - _loss(cover) * lopsided)


def _loss(cover: float) -> float:
    return ADJUSTED_LOSES + FED_LOSES + COVER_LOSES * cover


def _lopsided(share: float) -> float:
    return 2 * share - 1
