"""What is told of the ball that a third is hit from: the return, our balance, where they stand."""

from __future__ import annotations

import re
from enum import StrEnum

from knowledge.ball_facts import Depth
from knowledge.ball_places import HeightName, height_m
from knowledge.dataclass import dataclass
from knowledge.game import receiver
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.tactics.third_contact import NOWHERE_SAID, Met
from knowledge.tactics.told_ball import is_balanced, plain_words
from knowledge.vocabulary import BallQuality, PlayerId, Topic, Wing

DEEP_FROM_NET_M = 5.8
SHORT_FROM_NET_M = 4.6
"""A return met at least so far back is deep (three feet inside the baseline or less), met nearer
than that short (7 ft inside). Common practice, no source."""

LOW_M = height_m(HeightName.KNEE)
HIGH_M = height_m(HeightName.HIP)
"""Met below the knee it is low; at the hip or higher one can drive it down."""

_DEEP = regex(
    r"\bdeep (?:\w+ )?returns?\b|\breturns?(?: \w+){0,4} deep\b|\breturned deep\b|"
    r"\bfrom (?:behind )?the baseline\b|\bat the baseline\b|\bfast and deep\b"
)
_LOW = regex(
    r"\blow (?:\w+ )?returns?\b|\bskids?\b|\bstays? low\b|\bat my feet\b|\bshoelaces\b|"
    r"\bbelow (?:my |the )?knees?\b|\bknee high\b|\bankle\w*\b|\bslic\w+\b|"
    r"\b(?:deep|short|fast) and low\b|\blow and (?:deep|short|fast)\b|\bcomes? (?:\w+ )?low\b"
)
_SHORT = regex(
    r"\bshort (?:\w+ )?returns?\b|\breturns?(?: \w+){0,4} short\b|\breturned short\b|"
    r"\bdead short\b|\bslow and short\b|\blands? short\b"
)
_HIGH = regex(
    r"\bsits? up\b|\bhigh (?:\w+ )?returns?\b|\breturns?(?: \w+){0,3} high\b|\bbounces high\b|"
    r"\bhip high\b|\bwaist high\b|\bchest high\b|\bfloat\w*\b"
)
_MOVING = regex(
    r"\bstill (?:running|moving|coming|on (?:the|his|her) way)\b|\brunning in\b|\bcoming in\b|"
    r"\blate to the (?:line|net)\b|\bon the move\b|\bnot (?:there|at the (?:line|net)) yet\b"
)
_SET = regex(
    r"\balready (?:at|up)\b|\bboth (?:at|up)\b|\bat the net already\b|\b(?:set|waiting) at the\b|"
    r"\b(?:hes|shes|theyre|they are|he is|she is) set\b"
)
_OFF_BALANCE = regex(r"\boff balance\b|\bstretched\b|\bjammed\b|\bon my back foot\b|\bbackpedal")
_OUR_BACKHAND = regex(
    r"\b(?:my|from (?:my|the)|off (?:my|the)|on (?:my|the)) backhand\b|\bbackhand third\b|"
    r"\bthird from (?:the )?backhand\b"
)
_LINE_OPEN = regex(
    r"\bline (?:is |looks |stays )?(?:wide )?open\b|\bopen line\b|\bleaves? the line\b|"
    r"\bline player (?:is )?(?:asleep|sleeping)\b"
)
_LINE = regex(r"\bdown the line\b|\bthe line or\b|\bor (?:the |down the )?line\b")
_LOB = regex(r"\blob\w*\b")
_OUR_CRASH = regex(r"\bshak\w+ (?:and|n|an) bak\w+\b|\bwho (?:\w+ ){0,3}crash(?:es)?\b")
_VARY = regex(r"\bmix\b|\bpercent\b|%|\bhow often\b|\bvary\b|\bevery third\b|\bmore often\b")


class Return(StrEnum):
    """How the return came: deep or low, short or high, or plain."""

    GOOD = "good"
    POOR = "poor"
    PLAIN = "plain"


@dataclass(frozen=True, slots=True, kw_only=True)
class ThirdSaid:
    """The third as told; None is not said. `late` is whoever still comes in, if that is known.

    `met` is where and how high, as far as that is said; `wind_mps` the wind's speed.
    """

    came: Return | None = None
    met: Met = NOWHERE_SAID
    wind_mps: float | None = None
    balanced: bool | None = None
    moving: bool | None = None
    both_back: bool = False
    late: PlayerId | None = None
    wing: Wing | None = None
    partner_crashes: bool = False
    asks_to_crash: bool = False
    line_open: bool = False
    asks_line: bool = False
    asks_lob: bool = False
    asks_to_vary: bool = False

    @property
    def is_told(self) -> bool:
        """Whether it is about one ball, and not about thirds before the rally."""
        known = (self.came, self.balanced, self.moving, self.wing)
        theirs_or_partner = self.both_back or self.line_open or self.partner_crashes
        asked = theirs_or_partner or self.asks_line or self.asks_lob
        return asked or any(one is not None for one in known)


NOTHING_TOLD = ThirdSaid()


def third_said(situation: Situation) -> ThirdSaid:
    """What the question tells of this third; nothing where another topic weighs thirds."""
    if situation.topic is not Topic.THIRD_SHOT:
        return NOTHING_TOLD
    words = plain_words(situation.asked.words)
    facts, moving = situation.asked.facts, _moving(words, situation)
    met = _met(words, situation)
    return ThirdSaid(
        came=_came(met, situation),
        met=met,
        wind_mps=facts.wind_mps,
        balanced=False if _OFF_BALANCE.search(words) else is_balanced(situation),
        moving=moving,
        both_back=facts.theirs is Depth.BOTH_BACK,
        late=_late(situation) if moving else None,
        wing=Wing.BACKHAND if _OUR_BACKHAND.search(words) else None,
        partner_crashes=_partner_crashes(words, situation),
        asks_to_crash=bool(_OUR_CRASH.search(words)),
        line_open=bool(_LINE_OPEN.search(words)),
        asks_line=bool(_LINE.search(words)),
        asks_lob=bool(_LOB.search(words)),
        asks_to_vary=bool(_VARY.search(situation.asked.words.casefold())),
    )


def _partner_crashes(words: str, situation: Situation) -> bool:
    """Whether one of us is said to run in behind the other's drive: the trade's shake and bake."""
    if _OUR_CRASH.search(words):
        return True
    names = [plain_words(one.name) for one in situation.ours if one.name]
    who = "|".join(["partner", *names])
    return re.search(rf"\b(?:{who}) (?:\w+ ){{0,2}}crash(?:es|ing)?\b", words) is not None


def _met(words: str, situation: Situation) -> Met:
    """Where and how high we meet it: in numbers, else in the trade's words or by its quality."""
    facts, ball = situation.asked.facts, situation.asked.ball
    return Met(
        height_m=facts.height_m,
        from_net_m=facts.from_net_m,
        deep=bool(_DEEP.search(words)),
        low=bool(_LOW.search(words)),
        short=bool(_SHORT.search(words)),
        high=bool(_HIGH.search(words)),
        quality=None if ball is BallQuality.NEUTRAL else ball,
    )


def _came(met: Met, situation: Situation) -> Return | None:
    ball = situation.asked.ball
    depth, height = met.from_net_m, met.height_m
    is_stretched = ball is BallQuality.STRETCHED and not (met.short or met.high)
    is_good = met.deep or met.low or is_stretched
    is_poor = met.short or met.high or ball is BallQuality.EASY
    if depth is not None:
        is_good |= depth >= DEEP_FROM_NET_M
        is_poor |= depth <= SHORT_FROM_NET_M
    if height is not None:
        is_good |= height <= LOW_M
        is_poor |= height >= HIGH_M
    if is_good == is_poor:
        is_plain = is_good or depth is not None or height is not None or ball is not None
        return Return.PLAIN if is_plain else None
    return Return.GOOD if is_good else Return.POOR


def _moving(words: str, situation: Situation) -> bool | None:
    theirs = situation.asked.facts.theirs
    if theirs in (Depth.COMING_IN, Depth.ONE_BACK):
        return True
    if theirs is Depth.AT_LINE:
        return False
    if _MOVING.search(words):
        return True
    return False if _SET.search(words) else None


def _late(situation: Situation) -> PlayerId | None:
    """Whoever returned: named alone in the question, or bound to receive by the score."""
    named = [one.player for one in situation.theirs if one.player in situation.asked.about]
    if len(named) == 1:
        return named[0]
    game = situation.game
    if game is None or game.we_serve is not True:
        return None
    returner = receiver(game)
    return returner if any(one.player == returner for one in situation.theirs) else None
