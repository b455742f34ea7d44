"""Where and how high we meet the third's ball: as told, else as such a return usually is met."""

from __future__ import annotations

from typing import Final

from knowledge.ball_places import FROM_NET_M, HeightName, PlaceName, height_m
from knowledge.court import HALF_LENGTH_M, METRES_PER_FOOT
from knowledge.dataclass import dataclass
from knowledge.vocabulary import BallQuality

PLAIN_HEIGHT_M: Final = height_m(HeightName.THIGH)
PLAIN_FROM_NET_M: Final = 6.0
"""A return that nobody describes: met between knee and hip, two feet inside the baseline."""

DEEP_HEIGHT_M: Final = height_m(HeightName.KNEE)
DEEP_FROM_NET_M: Final = HALF_LENGTH_M
LOW_HEIGHT_M: Final = 0.35
SHORT_HEIGHT_M: Final = height_m(HeightName.WAIST)
SHORT_FROM_NET_M: Final = 4.4
HIGH_HEIGHT_M: Final = 1.1
HIGH_FROM_NET_M: Final = 4.8
"""Deep: at the baseline, on its way up still. Short: it sits up at the waist. High: there is time
to step in to it. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Met:
    """What is said of where we meet it; `quality` is the ball's, where it is not a plain one."""

    height_m: float | None = None
    from_net_m: float | None = None
    deep: bool = False
    low: bool = False
    short: bool = False
    high: bool = False
    quality: BallQuality | None = None

    @property
    def is_all_said(self) -> bool:
        return self.height_m is not None and self.from_net_m is not None


NOWHERE_SAID: Final = Met()


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """Where we meet it: height over the ground, and distance behind the net."""

    height_m: float
    from_net_m: float


def contact_of(met: Met) -> Contact:
    """As told, and what is not told as that kind of return usually comes."""
    height = _usual_height_m(met) if met.height_m is None else met.height_m
    away = _usual_from_net_m(met) if met.from_net_m is None else met.from_net_m
    return Contact(height_m=height, from_net_m=away)


def _usual_height_m(met: Met) -> float:
    if met.low:
        return LOW_HEIGHT_M
    if met.high:
        return HIGH_HEIGHT_M
    if met.deep:
        return DEEP_HEIGHT_M
    if met.short or met.quality is BallQuality.EASY:
        return SHORT_HEIGHT_M
    if met.quality is BallQuality.STRETCHED:
        return DEEP_HEIGHT_M
    return PLAIN_HEIGHT_M


def _usual_from_net_m(met: Met) -> float:
    if met.deep or (met.quality is BallQuality.STRETCHED and not met.short):
        return DEEP_FROM_NET_M
    if met.short or met.quality is BallQuality.EASY:
        return SHORT_FROM_NET_M
    return HIGH_FROM_NET_M if met.high else PLAIN_FROM_NET_M


NAMED: Final = (
    *(
        (height_m(name), f"{name.value} high")
        for name in (
            HeightName.ANKLE,
            HeightName.SHIN,
            HeightName.KNEE,
            HeightName.THIGH,
            HeightName.HIP,
            HeightName.WAIST,
            HeightName.CHEST,
            HeightName.SHOULDER,
            HeightName.HEAD,
        )
    ),
    (height_m(HeightName.OVERHEAD), "overhead"),
)
"""Heights by the part of the body that is nearest."""

AT_BASELINE_M: Final = FROM_NET_M[PlaceName.BASELINE] - METRES_PER_FOOT
BEHIND_BASELINE_M: Final = FROM_NET_M[PlaceName.BASELINE] + METRES_PER_FOOT


def height_words(height_m: float) -> str:
    """ "knee high": the nearest part of the body."""
    return min(NAMED, key=lambda row: abs(row[0] - height_m))[1]


def place_words(contact: Contact) -> str:
    """ "at the baseline", or how far inside or behind it."""
    away = contact.from_net_m
    if AT_BASELINE_M <= away <= BEHIND_BASELINE_M:
        return "at the baseline"
    feet = round(abs(away - HALF_LENGTH_M) / METRES_PER_FOOT)
    return f"{feet} ft {'behind' if away > HALF_LENGTH_M else 'inside'}"


def contact_words(contact: Contact) -> str:
    """ "knee high at the baseline"."""
    return f"{height_words(contact.height_m)} {place_words(contact)}"


def met_words(met: Met) -> str:
    """The ball as it was told: in numbers where they were, else by its name."""
    contact = contact_of(met)
    if met.is_all_said:
        said = contact_words(contact)
    elif met.height_m is not None:
        said = height_words(contact.height_m)
    elif met.from_net_m is not None:
        said = place_words(contact)
    else:
        said = _named(met)
    return said[:1].upper() + said[1:]


def _named(met: Met) -> str:
    if met.deep and met.low:
        return "deep and low"
    for name, holds in (
        ("deep", met.deep),
        ("low", met.low),
        ("short", met.short),
        ("high", met.high),
        ("stretched", met.quality is BallQuality.STRETCHED),
        ("short", met.quality is BallQuality.EASY),
    ):
        if holds:
            return name
    return "plain return"
