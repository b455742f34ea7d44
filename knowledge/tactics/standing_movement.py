"""Whether a question where to stand is one of depth and movement, or of courts and score."""

from __future__ import annotations

from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.tactics.serve_depth_told import serves_short

_MOVING = regex(
    r"\b(deep|deeper|depth|how far|slide|sliding|shift|follow|split|pinch\w*|gap|spac\w+|"
    r"crowd\w*|drift\w*|overcover\w*|paddles?|off the line|down the line|"
    r"(?<!\bthe )(?<!\bin )shad(?:e|es|ed|ing)|squeez\w*|"
    r"(?:cheat|creep|edg|lean)(?:e|s|ing)? (?:\w+ )?(?:over|in|to|towards?|left|right|middle)|"
    r"(?:line|alley)(?: is)?(?: \w+)? (?:open|uncovered)|"
    r"leav\w+ (?:\w+ ){0,4}(?:line|alley|side|sideline)|"
    r"(?:pulled|dragged) (?:\w+ ){0,2}(?:wide|off)|"
    r"bang\w*|driv\w*|lob\w*|swing\w*|speed ?ups?|dink\w*)\b"
)
"""Words that only a question about depth and movement has."""

_PERHAPS_MOVING = regex(r"\b(close|closer|back|step|kitchen|nvz|net|line|mid ?court|up)\b")
"""Words about depth that a question about courts may have as well."""

_COURTS = regex(
    r"\b(score|serves?|serving|server|receiv\w+|even|odd|right|left|correct|rules?|start\w*|"
    r"stack\w*|first|switch\w*|swap\w*|whose|who|\d+ ?[- ] ?\d+)\b"
)


def asks_for_movement(situation: Situation) -> bool:
    """A kind of ball, or words about depth and movement rather than courts and score."""
    if situation.asked.ball_kind is not None or situation.asked.hitter_side is not None:
        return True
    words = situation.asked.words.lower()
    if _MOVING.search(words) or serves_short(words) is not None:
        return True
    return bool(_PERHAPS_MOVING.search(words)) and not _COURTS.search(words)
