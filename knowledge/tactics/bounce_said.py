"""What words and facts say of a soft ball: reach, height, and where it would land."""

from __future__ import annotations

import re
from enum import StrEnum

from knowledge.ball_facts import Spin
from knowledge.court import KITCHEN_DEPTH_M, NET_HEIGHT_CENTRE_M
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.tactics.bounce_time import DINK_FORWARD_MPS, FEET_FROM_NET_M, bounce_of
from knowledge.tactics.told_ball import is_balanced, plain_words
from knowledge.vocabulary import BallKind, BallQuality

_LUNGE = regex(
    r"\blung\w*\b|\breach(?:ing)?\b|\blean(?:ing)?\b|\bstretch\w*\b|\bout of reach\b|"
    r"\boff balance\b|\blose my balance\b|\bpopping (?:it|them) up\b|\btoo far\b"
)
_STILL = regex(
    r"\b(?:feet|stand) still\b|\bin balance\b|\bin front of me\b|\beasy reach\b|\blong arms\b"
)
_DEAD = regex(r"\bdead\b|\bshort over the net\b|\bshort (?:ball|dink|one)\b|\bland\w* short\b")
_FEET = regex(
    r"\b(?:at|on|near) (?:my|the|our) (?:feet|toes|shoelaces)\b|\bhalf volley\b|\bshort hop\b|"
    r"\b(?:behind|at|near) the (?:kitchen )?line\b|\bdeep dinks?\b|\bgive up the line\b|"
    r"\bpush dink\b|\bback up\b|\bbacking off\b"
)
_HIGH = regex(r"\bfloat\w*\b|\bsits? up\b|\bpop ?up\b|\babove the net\b|\bhigh (?:ball|dink)\b")
_TOPSPIN = regex(r"\btop ?spin\b|\bspinny\b|\bheavy spin\b|\brolls?\b|\bwith spin\b")
_MUST = regex(
    r"\b(?:take|volley|hit) (?:\w+ )?(?:their|the|his|her|a) (?:serve|return)\b|"
    r"\b(?:their|the|his|her) (?:serve|return)\b.*\b(?:air|volley|before|bounce)\b"
)
_AFTER_IT = regex(r"\bafter (?:\w+ ){0,2}(?:serve|return)\b")


class Landing(StrEnum):
    """Where it would bounce, from the feet of who could take it."""

    IN_FRONT = "in front"
    AT_FEET = "at the feet"


@dataclass(frozen=True, slots=True, kw_only=True)
class BounceSaid:
    """The ball as told; None is not said. `must_bounce`: it is a serve or a return."""

    balanced: bool | None
    landing: Landing | None
    high: bool | None
    topspin: bool | None
    is_lob: bool
    must_bounce: bool


def bounce_said(situation: Situation) -> BounceSaid:
    words = plain_words(situation.asked.words)
    facts = situation.asked.facts
    return BounceSaid(
        balanced=_balanced(words, situation),
        landing=_landing(words, situation),
        high=_high(words, facts.height_m),
        topspin=_topspin(words, facts.spin),
        is_lob=situation.asked.ball_kind is BallKind.LOB or bool(re.search(r"\blob", words)),
        must_bounce=bool(_MUST.search(words)) and not _AFTER_IT.search(words),
    )


def _balanced(words: str, situation: Situation) -> bool | None:
    asked = situation.asked
    is_low = asked.facts.height_m is not None or bool(_FEET.search(words))
    is_only_low = is_low and asked.ball is BallQuality.STRETCHED
    told = is_balanced(situation)
    if told is not None and (asked.facts.footing is not None or not is_only_low):
        return told
    if _STILL.search(words):
        return True
    return False if _LUNGE.search(words) else None


def _landing(words: str, situation: Situation) -> Landing | None:
    if _FEET.search(words):
        return Landing.AT_FEET
    if _DEAD.search(words):
        return Landing.IN_FRONT
    facts = situation.asked.facts
    if facts.from_net_m is None or facts.height_m is None:
        return None
    pace_mps = facts.pace_mps or DINK_FORWARD_MPS
    lands_m = (
        facts.from_net_m + bounce_of(height_m=facts.height_m, forward_mps=pace_mps).lands_after_m
    )
    feet_m = max(FEET_FROM_NET_M, facts.from_net_m)
    return Landing.AT_FEET if lands_m >= min(feet_m, KITCHEN_DEPTH_M) else Landing.IN_FRONT


def _high(words: str, height_m: float | None) -> bool | None:
    if height_m is not None:
        return height_m > NET_HEIGHT_CENTRE_M
    return True if _HIGH.search(words) else None


def _topspin(words: str, spin: Spin | None) -> bool | None:
    if spin is not None:
        return spin is Spin.TOPSPIN
    return True if _TOPSPIN.search(words) else None
