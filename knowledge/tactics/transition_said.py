"""What is asked on the way in: move or stop, the fifth, or the fourth; and how the ball comes."""

from __future__ import annotations

from enum import StrEnum

from knowledge.ball_facts import Depth
from knowledge.ball_places import FROM_NET_M, NET_M, PlaceName
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.tactics.their_thirds import GOOD, tells_their_thirds
from knowledge.tactics.told_ball import is_balanced, plain_words
from knowledge.vocabulary import BallQuality

LOW_M = 0.55
FOURTH_LOW_M = NET_M - 0.15
HIGH_M = NET_M + 0.15
"""Below the knee a ball is lifted, a volley a hand below the tape already; a hand above the tape it
can be hit down. Common practice, no source."""

_FOURTH = regex(r"\b(?:fourth|4th)\b|\bour volley after their third\b|\bwhen they drop\b")
_FIFTH = regex(
    r"\b(?:fifth|5th)\b|\bnext ball\b|\bball after\b|\bwhat next\b|\b(?:second|another) drop\b|"
    r"\breset\b|\bat (?:my|our) (?:feet|shoelaces)\b|\bshoelaces\b|\bfeet are getting\b|"
    r"\bpicked on\b"
)
_THEY_HIT_UP = regex(
    r"\b(?:hit|hitting) up\b|\bbelow the (?:net|tape)\b|\bgood (?:third|drop)\b|"
    r"\b(?:third|drop) (?:is |was )?(?:good|low)\b|\blow (?:third|drop)\b|\bin the kitchen\b"
)
_THEY_HIT_DOWN = regex(
    r"\b(?:hit|hitting) down\b|\babove the (?:net|tape)\b|\b(?:bad|high|short) (?:third|drop)\b|"
    r"\b(?:third|drop|it) (?:is |was |s )?(?:bad|high|too high)\b|\bpop(?:ped|s)? ?up\b|"
    r"\bsits? up\b|\bso so drop\b"
)
_ONE_BACK = regex(
    r"\bone up one back\b|\bpartner (?:goes|runs|is) (?:in|up|at the net)\b|\btogether\b|"
    r"\bruns in and im\b|\bi stay back\b"
)
_PUSHED_BACK = regex(r"\bthey (?:are|re) (?:both )?back\b|\btheyre (?:both )?back\b")
_MID_COURT = regex(
    r"\bmid ?court\b|\bno mans? land\b|\btransition zone\b|\bhalf ?way in\b|\bmiddle of the court\b"
)
_LINE = regex(r"\bdown the line\b|\bor (?:the )?line\b")


class Stage(StrEnum):
    """Which of the three questions it is."""

    MOVE = "move"
    FIFTH = "fifth"
    FOURTH = "fourth"


@dataclass(frozen=True, slots=True, kw_only=True)
class TransitionSaid:
    """The question as told; None is not said.

    `low` and `high` are of the ball in question: for MOVE where they meet it, else where we do.
    """

    stage: Stage
    low: bool | None = None
    high: bool | None = None
    balanced: bool | None = None
    theirs: Depth | None = None
    one_back: bool = False
    from_net_m: float | None = None
    asks_line: bool = False

    @property
    def is_told(self) -> bool:
        return self.low is not None or self.theirs is not None


def transition_said(situation: Situation) -> TransitionSaid:
    words = plain_words(situation.asked.words)
    facts = situation.asked.facts
    stage = Stage.FOURTH if tells_their_thirds(situation) else _stage(words)
    low, high = _height(words, stage, situation)
    theirs = facts.theirs or (Depth.BOTH_BACK if _PUSHED_BACK.search(words) else None)
    return TransitionSaid(
        stage=stage,
        low=low,
        high=high,
        balanced=is_balanced(situation),
        theirs=theirs,
        one_back=facts.ours is Depth.ONE_BACK or bool(_ONE_BACK.search(words)),
        from_net_m=_place_m(words, facts.from_net_m),
        asks_line=bool(_LINE.search(words)),
    )


def _place_m(words: str, told_m: float | None) -> float | None:
    """Where we are: as told, or mid-court by its names."""
    if told_m is None and _MID_COURT.search(words):
        return FROM_NET_M[PlaceName.MID_COURT]
    return told_m


def _stage(words: str) -> Stage:
    if _FOURTH.search(words):
        return Stage.FOURTH
    if _FIFTH.search(words):
        return Stage.FIFTH
    return Stage.MOVE


_LOW_BELOW_M = {Stage.MOVE: NET_M, Stage.FIFTH: LOW_M, Stage.FOURTH: FOURTH_LOW_M}


def _height(words: str, stage: Stage, situation: Situation) -> tuple[bool | None, bool | None]:
    """Low and high, both None where nothing is said."""
    height_m, ball = situation.asked.facts.height_m, situation.asked.ball
    if height_m is not None:
        tape_m = _LOW_BELOW_M[stage]
        above_m = NET_M if stage is Stage.MOVE else HIGH_M
        return height_m < tape_m, height_m >= above_m
    if stage is Stage.MOVE:
        low, high = bool(_THEY_HIT_UP.search(words)), bool(_THEY_HIT_DOWN.search(words))
    else:
        low = ball is BallQuality.STRETCHED or bool(_AT_FEET.search(words))
        low |= stage is Stage.FOURTH and bool(GOOD.search(words))
        high = ball is BallQuality.EASY or bool(_HIGH.search(words))
    return (None, None) if low == high else (low, high)


_AT_FEET = regex(
    r"\bat (?:my|our) (?:feet|shoelaces)\b|\bshoelaces\b|\bfeet are getting\b|"
    r"\bbelow the (?:net|tape|knee)\b|\blow\b"
)
_HIGH = regex(r"\bsits? up\b|\bhigh\b|\bfloat\w*\b|\babove the (?:net|tape)\b|\bpop ?up\b")
