"""What is told of a ball sped up at us: its height and pace, how we stand, who hit it."""

from __future__ import annotations

from knowledge.ball_facts import BallFacts, Depth, Footing
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics import reset_sizes as sizes
from knowledge.tactics.attack_question import leans
from knowledge.tactics.conditions import other_of
from knowledge.tactics.reset_flight import AT_OUR_LINE_M, Passing, flat_share
from knowledge.tactics.wind_along import wind_along_mps
from knowledge.vocabulary import BallKind, BallQuality, Trait, Wing

_ASLEEP = regex(
    r"\b(?:asleep|sleeping|watching|ball watching|not (?:looking|ready|set|paying attention)|"
    r"unready|paddle (?:is )?down)\b"
)
_PARTNER = regex(r"(?<!my )\bpartners?\b|\bthe other (?:one|guy|girl|player)\b")


@dataclass(frozen=True, slots=True, kw_only=True)
class Attacked:
    """A ball sped up at us; None and False where nothing is said.

    `attacker` is who hit it, `sleeper` the partner of whom it is said that he isn't ready.
    `is_drive`: they are both back, or it is called a drive and they aren't said to be at the line.
    """

    facts: BallFacts
    ball: BallQuality | None
    is_drive: bool
    wing: Wing | None
    striker: OnCourt | None
    attacker: OnCourt | None
    asleep: bool
    sleeper: OnCourt | None
    leaning: bool
    wind_mps: float

    @property
    def is_waist_up(self) -> bool | None:
        if self.facts.height_m is not None:
            return self.facts.height_m >= sizes.WAIST_M
        return {BallQuality.EASY: True, BallQuality.STRETCHED: False}.get(
            self.ball or BallQuality.NEUTRAL
        )

    @property
    def is_moving(self) -> bool:
        return self.facts.footing not in (None, Footing.STILL)

    @property
    def is_in_mid_court(self) -> bool:
        deep = self.facts.ours in (Depth.COMING_IN, Depth.BOTH_BACK)
        return deep or (self.facts.from_net_m or 0.0) > sizes.MID_COURT_FROM_M

    @property
    def is_ball_said(self) -> bool:
        """Whether anything that decides is said of the ball or of how we stand."""
        return self.is_waist_up is not None or self.is_moving or self.is_in_mid_court

    @property
    def topspin_habit(self) -> float:
        """How much the hitter spins, -1 to 1; 0 where nobody is named."""
        return 0.0 if self.attacker is None else self.attacker.profile.habit(Trait.TOPSPIN).level

    @property
    def passing(self) -> Passing | None:
        """The ball as it passes us; None while its height isn't said."""
        height = self.facts.height_m
        if height is None:
            return None
        return Passing(
            height_m=height,
            met_from_net_m=self.facts.from_net_m or AT_OUR_LINE_M,
            pace_mps=self.facts.pace_mps,
            is_drive=self.is_drive,
            is_volleyed=self.is_in_mid_court,
            flat_share=flat_share(self.facts.spin, self.topspin_habit),
            wind_mps=self.wind_mps,
        )


def attacked(situation: Situation) -> Attacked:
    asked = situation.asked
    words = asked.words.casefold().replace("-", " ")
    about = [one for one in situation.theirs if one.player in asked.about]
    attacker = about[0] if len(about) == 1 else None
    partner_said = bool(_PARTNER.search(words))
    asleep = partner_said and bool(_ASLEEP.search(words))
    return Attacked(
        facts=asked.facts,
        ball=asked.ball,
        is_drive=_is_drive(asked),
        wing=asked.wing,
        striker=_striker(situation),
        attacker=attacker,
        asleep=asleep,
        sleeper=other_of(attacker, situation.theirs) if asleep and attacker else None,
        leaning=leans(asked.words),
        wind_mps=-wind_along_mps(situation.wind, asked.facts.wind_mps),  # their ball flies at us
    )


def _is_drive(asked: Asked) -> bool:
    """Where they stand decides, what it is called only where that is open."""
    theirs = asked.facts.theirs
    called = asked.ball_kind is BallKind.DRIVE and theirs is not Depth.AT_LINE
    return called or theirs is Depth.BOTH_BACK


def _striker(situation: Situation) -> OnCourt | None:
    found = None if situation.striker is None else situation.find(situation.striker)
    return found if found in situation.ours else None
