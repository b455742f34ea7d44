"""The ball that is dinked: how good it is, how high and where it is met, in what wind."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from knowledge.advice import MatchFact
from knowledge.ball_facts import BallFacts, Footing
from knowledge.ball_places import FROM_NET_M, HeightName, PlaceName, height_m
from knowledge.court import NET_HEIGHT_CENTRE_M
from knowledge.dataclass import dataclass
from knowledge.flight import FORMS, MPS_PER_MPH, Shot
from knowledge.situation import Situation, Wind
from knowledge.tactics.ball_words import SAME_M, is_assumed, settled, taken_as
from knowledge.tactics.wind_along import wind_along_mps
from knowledge.vocabulary import BallQuality

USUAL: Final[Mapping[BallQuality, BallFacts]] = MappingProxyType(
    {
        quality: BallFacts(height_m=height_m(name), from_net_m=FROM_NET_M[PlaceName.AT_LINE])
        for quality, name in (
            (BallQuality.STRETCHED, HeightName.KNEE),
            (BallQuality.NEUTRAL, HeightName.BELOW_NET),
            (BallQuality.EASY, HeightName.NET),
        )
    }
)
"""Where such a ball is met if nobody says. Common practice, no source."""

STRETCHED_SCATTERS: Final = 1.5
"""The usual scatter is that of a ball that suits us; off balance it is so much wider. Common
practice, no source."""

TAKEN: Final = "Taken as"
NEUTRAL: Final = "Neutral ball"
"""How the line begins: where nobody said anything of the ball, it is the usual one."""

USES: Final = (MatchFact.HEIGHT, MatchFact.PLACE)


@dataclass(frozen=True, slots=True, kw_only=True)
class DinkBall:
    """One ball to dink; `wind_mps` blows along the court, from behind us if positive.

    `scatters` multiplies our usual scatter.
    """

    height_m: float
    from_net_m: float
    wind_mps: float = 0.0
    scatters: float = 1.0

    @property
    def shot(self) -> Shot:
        """A dink; from farther back than its table goes the same soft ball is a reset."""
        return Shot.DINK if self.from_net_m <= FORMS[Shot.DINK].from_net_m[-1] else Shot.RESET


def quality(situation: Situation) -> BallQuality | None:
    """How good the ball is, as said or as height and feet tell; None if nobody says.

    The trade takes a ball at the knee or lower like a stretched one, and one above the net is
    easy to who is in balance.
    """
    asked, facts = situation.asked, situation.asked.facts
    if asked.ball is not None:
        return asked.ball
    if facts.footing in (Footing.SIDEWAYS, Footing.BACKWARD):
        return BallQuality.STRETCHED
    if facts.height_m is None:
        return None
    if facts.height_m < height_m(HeightName.KNEE) + SAME_M:
        return BallQuality.STRETCHED
    return BallQuality.EASY if facts.height_m > NET_HEIGHT_CENTRE_M else BallQuality.NEUTRAL


def ball_of(situation: Situation) -> DinkBall:
    """The ball as said, and as usual for its quality where nobody says."""
    kind = quality(situation) or BallQuality.NEUTRAL
    facts = settled(situation.asked.facts, USUAL[kind])
    assert facts.height_m is not None
    assert facts.from_net_m is not None
    return DinkBall(
        height_m=facts.height_m,
        from_net_m=facts.from_net_m,
        wind_mps=wind_along_mps(situation.wind, facts.wind_mps),
        scatters=STRETCHED_SCATTERS if kind is BallQuality.STRETCHED else 1.0,
    )


def is_told(situation: Situation) -> bool:
    """Whether something was said of this ball that its dink hangs on."""
    return _is_placed(situation) or situation.wind in _ALONG


def _is_placed(situation: Situation) -> bool:
    """Whether it was said how good, how high or how deep the ball is."""
    facts = situation.asked.facts
    return quality(situation) is not None or not is_assumed(facts, MatchFact.PLACE)


def ball_taken(situation: Situation) -> str:
    """The ball that the answer is for, in words: "Neutral ball: below the net, at the line."."""
    facts = situation.asked.facts
    taken = taken_as(facts, USUAL[quality(situation) or BallQuality.NEUTRAL], uses=USES)
    assert taken is not None
    if situation.wind in _ALONG:
        mph = round(abs(ball_of(situation).wind_mps) / MPS_PER_MPH)
        wind = f"{mph} mph {_ALONG[situation.wind]}."
        taken = f"{taken.rstrip('.')}, {wind}" if _is_placed(situation) else wind
    return taken if is_told(situation) else taken.replace(TAKEN, NEUTRAL)


_ALONG: Final[Mapping[Wind | None, str]] = MappingProxyType(
    {Wind.BEHIND_US: "behind you", Wind.AGAINST_US: "in your face"}
)
