"""What a speed-up is asked about: who is there, our hitter, the ball, and how they stand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from enum import StrEnum
from types import MappingProxyType

from knowledge.ball_facts import BallFacts, Depth, Footing
from knowledge.ball_places import NET_M
from knowledge.court import KITCHEN_DEPTH_M
from knowledge.dataclass import dataclass
from knowledge.flight import SPEED_UP_MPS, Attackable, FlatFire, attackable
from knowledge.regex import regex
from knowledge.situation import JammedHip, OnCourt, Situation
from knowledge.sources import computed
from knowledge.tactics import attack_sizes as sizes
from knowledge.vocabulary import BallQuality, Level, PlayerId, Side

AT_THE_LINE_M = KITCHEN_DEPTH_M + 0.3
"""Where we meet a ball that nothing is said of: just behind our kitchen line."""

LEAST_WINDOW_DEG = 2.0
"""A ball that must be hit within less than this is not hit down. Common practice, no source."""

FLIGHT = computed("flight with drag at 35 mph")

_LEANS = regex(r"\blean(?:s|ing|ed)?\b")
_OUT_OF_PLACE = regex(
    r"\blate\b(?! in| on)|\boff balance\b|\bout of (?:position|place)\b|\bscrambl\w+|"
    r"\b(?:on the move|moving|wrong footed)\b|\b(?:pulled|dragged|drawn|out) (?:off |out )?wide\b"
)
_CALLED_LOW = regex(r"\b(?:low|below|under|beneath|underneath|shoelaces|laces|ankles?)\b")
_OF_US = regex(r"\b(?:i'?m|i|we'?re|we|my|me|our)\b(?: \w+){0,3}")


def said_of_them(words: str) -> str:
    """What is left of a question without what it says of us: "i'm late" is not about them."""
    return _OF_US.sub(" ", words.casefold().replace("-", " ").replace("\u2019", "'"))


def leans(words: str) -> bool:
    """Whether a question says that one of them leans in."""
    return bool(_LEANS.search(said_of_them(words)))


def _is_called_low(words: str) -> bool:
    return _CALLED_LOW.search(words.casefold()) is not None


class Contact(StrEnum):
    """How high we meet the ball, as far as it matters."""

    ABOVE_NET = "above the net"
    AT_NET = "at the net or a bit below"
    LOW = "below the net"
    BELOW_KNEE = "below the knee"


@dataclass(frozen=True, slots=True, kw_only=True)
class AttackQuestion:
    """A speed-up's setting; None and False where nothing is said of it.

    `striker_side` is the court of ours that it is played from, where the question says it;
    `jammed` are the hips or shoulders at which notes say that they jam.
    """

    pair: tuple[OnCourt, ...]
    striker: OnCourt | None
    striker_side: Side | None
    partner: OnCourt | None
    facts: BallFacts
    ball: BallQuality | None
    is_called_low: bool
    leaning: bool
    out_of_place: bool
    level: Level | None
    jammed: Mapping[PlayerId, JammedHip] = field(default_factory=lambda: MappingProxyType({}))

    @property
    def contact(self) -> Contact | None:
        """None while nothing is said of the height."""
        height = self.facts.height_m
        if height is None and self.is_called_low:
            return Contact.LOW
        if height is None:
            return Contact.ABOVE_NET if self.ball is BallQuality.EASY else None
        if height >= NET_M and self.flat.margin_deg >= LEAST_WINDOW_DEG:
            return Contact.ABOVE_NET
        if height >= NET_M - sizes.BELOW_NET_BAND_M:
            return Contact.AT_NET
        return Contact.LOW if height >= sizes.KNEE_M else Contact.BELOW_KNEE

    @property
    def is_stretched(self) -> bool:
        """By the feet; else by the ball, unless it is only low: a low one is called so too."""
        moving = self.facts.footing in (Footing.SIDEWAYS, Footing.BACKWARD)
        is_only_low = self.facts.height_m is not None or self.is_called_low
        return moving or (self.ball is BallQuality.STRETCHED and not is_only_low)

    @property
    def is_from_mid_court(self) -> bool:
        return (self.facts.from_net_m or 0.0) > sizes.MID_COURT_FROM_M

    @property
    def is_ball_said(self) -> bool:
        """Whether anything is said of how high it is or how we meet it."""
        return self.contact is not None or self.is_stretched

    @property
    def they_are_back(self) -> bool:
        return self.facts.theirs not in (None, Depth.AT_LINE)

    @property
    def height_m(self) -> float:
        """Where nothing is said of it, net high."""
        return NET_M if self.facts.height_m is None else self.facts.height_m

    @property
    def from_net_m(self) -> float:
        return self.facts.from_net_m or AT_THE_LINE_M

    @property
    def flat(self) -> Attackable:
        """What the flat speed-up may do from where we meet it."""
        return attackable(self.height_m, self.from_net_m)

    @property
    def they_have_s(self) -> float:
        """From our hit to a paddle at their line."""
        ball = FlatFire(height_m=self.height_m, speed_mps=SPEED_UP_MPS)
        return ball.time_s(self.from_net_m + KITCHEN_DEPTH_M)


def cross_to(one: OnCourt, question: AttackQuestion) -> bool | None:
    """Whether our ball at this opponent goes cross: our right court faces their left one."""
    if one.side is None or question.striker_side is None:
        return None
    return one.side is question.striker_side


def question_of(situation: Situation) -> AttackQuestion:
    """The setting out of a question. Where nothing says from where, no lane is taken as given."""
    asked = situation.asked
    striker = None if situation.striker is None else situation.find(situation.striker)
    side = asked.striker_side
    if side is None and asked.facts.partner_set is not None and striker is not None:
        side = striker.side
    if asked.striker_side is not None:
        there = next((one for one in situation.ours if one.side is side), None)
        striker = there or (striker if striker and striker.side is None else None)
    them = {one.player for one in situation.theirs}
    return AttackQuestion(
        pair=situation.theirs,
        striker=striker,
        striker_side=side,
        partner=next((one for one in situation.ours if striker and one != striker), None),
        facts=asked.facts,
        ball=asked.ball,
        is_called_low=asked.ball is BallQuality.STRETCHED and _is_called_low(asked.words),
        leaning=leans(asked.words),
        out_of_place=asked.pulled_wide in them
        or bool(_OUT_OF_PLACE.search(said_of_them(asked.words))),
        level=situation.level,
        jammed=MappingProxyType({one.player: one for one in situation.jammed_hips}),
    )
