"""What is taken of one ball, said back in words, and buttons for what was not said of it.

For pages: `settled` fills what nobody said with the page's own defaults, `taken_as` is the line
for `Advice.assumed`, `ball_choices` offers the other branch of every fact that was not said.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import fields, replace
from types import MappingProxyType
from typing import Any, Final, NamedTuple

from knowledge.advice import Choice, MatchFact
from knowledge.ball_facts import NOTHING_SAID, BallFacts, Depth, Footing, Spin
from knowledge.ball_places import FROM_NET_M, HeightName, PlaceName, height_m
from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M, METRES_PER_FOOT
from knowledge.vocabulary import Topic
from knowledge.wind import MPH_MPS

SAME_M: Final = 0.02
"""Closer than this a height or a place is the named one."""

FASTEST_TAPPED_MPH: Final = 100
"""No button says more; well over the fastest ball in play (Lindsey 2025: about 60)."""

FIELDS: Final[Mapping[MatchFact, str]] = MappingProxyType(
    {
        MatchFact.HEIGHT: "height_m",
        MatchFact.PLACE: "from_net_m",
        MatchFact.BOUNCED: "bounced",
        MatchFact.FOOTING: "footing",
        MatchFact.SPIN: "spin",
        MatchFact.PACE: "pace_mps",
        MatchFact.PAST_SIDELINE: "past_sideline",
        MatchFact.THEIRS: "theirs",
        MatchFact.OURS: "ours",
        MatchFact.PARTNER_SET: "partner_set",
        MatchFact.WIND_SPEED: "wind_mps",
    }
)
"""Which field each fact of the ball is, in the order in which they are said."""


def settled(facts: BallFacts, defaults: BallFacts) -> BallFacts:
    """What was said, and beside it the defaults; the fault stays what it was.

    Where we are said to be back and no place is, the default place is the baseline's.
    """
    if facts.ours is Depth.BOTH_BACK and defaults.from_net_m is not None:
        defaults = replace(defaults, from_net_m=FROM_NET_M[PlaceName.BASELINE])
    said = {
        one.name: value
        for one in fields(BallFacts)
        if (value := getattr(facts, one.name)) is not None
    }
    return replace(defaults, **said)


def taken_as(
    facts: BallFacts,
    defaults: BallFacts = NOTHING_SAID,
    *,
    uses: Collection[MatchFact] = tuple(FIELDS),
) -> str | None:
    """ "Taken as: knee high, 2 ft behind the line, they're at the line."; None for nothing.

    What was said counts before the defaults. `uses` are the facts that the answer hangs on: others
    are not said, for they changed nothing.
    """
    taken = settled(facts, defaults)
    parts = [
        _SAYS[fact](value)
        for fact, name in FIELDS.items()
        if fact in uses and (value := getattr(taken, name)) is not None
    ]
    return f"Taken as: {', '.join(parts)}." if parts else None


def is_assumed(facts: BallFacts, fact: MatchFact) -> bool:
    """Whether nobody said it, so that the answer had to assume."""
    return getattr(facts, FIELDS[fact]) is None


def height_words(metres: float) -> str:
    """ "knee high", "at net height"; "2 ft up" where it is no named height."""
    for name, words in _HEIGHT_WORDS.items():
        if abs(height_m(name) - metres) < SAME_M:
            return words
    return f"{_feet(metres)} up"


_HEIGHT_WORDS: Final = {
    HeightName.NET: "at net height",
    HeightName.ABOVE_NET: "above the net",
    HeightName.BELOW_NET: "below the net",
    HeightName.FEET: "at your feet",
    HeightName.ANKLE: "ankle high",
    HeightName.SHIN: "shin high",
    HeightName.KNEE: "knee high",
    HeightName.THIGH: "thigh high",
    HeightName.HIP: "hip high",
    HeightName.WAIST: "waist high",
    HeightName.CHEST: "chest high",
    HeightName.SHOULDER: "shoulder high",
    HeightName.HEAD: "head high",
    HeightName.OVERHEAD: "overhead",
}


def place_words(from_net_m: float) -> str:
    """ "at the line", "2 ft behind the line", "in the kitchen", "at the baseline"."""
    for name, words in _PLACE_WORDS.items():
        if abs(FROM_NET_M[name] - from_net_m) < SAME_M:
            return words
    if from_net_m < KITCHEN_DEPTH_M:
        return f"{_feet(from_net_m)} from the net"
    if from_net_m > HALF_LENGTH_M:
        return f"{_feet(from_net_m - HALF_LENGTH_M)} behind the baseline"
    return f"{_feet(from_net_m - KITCHEN_DEPTH_M)} behind the line"


_PLACE_WORDS: Final = {
    PlaceName.AT_LINE: "at the line",
    PlaceName.IN_KITCHEN: "in the kitchen",
    PlaceName.MID_COURT: "in mid court",
    PlaceName.BASELINE: "at the baseline",
    PlaceName.BEHIND_BASELINE: "behind the baseline",
}


def _feet(metres: float) -> str:
    """To the half foot: "2 ft", "1.5 ft"."""
    return f"{round(2 * metres / METRES_PER_FOOT) / 2:g} ft"


def _mph(mps: float) -> str:
    return f"{round(mps / MPH_MPS)} mph"


_FOOTING: Final = {
    Footing.STILL: "in balance",
    Footing.FORWARD: "moving in",
    Footing.SIDEWAYS: "on the run",
    Footing.BACKWARD: "moving back",
}
_SPIN: Final = {Spin.FLAT: "flat", Spin.TOPSPIN: "with topspin", Spin.SLICE: "sliced"}
_DEPTH: Final = {
    Depth.AT_LINE: "at the line",
    Depth.ONE_BACK: "one up, one back",
    Depth.COMING_IN: "coming in",
    Depth.BOTH_BACK: "both back",
}

_SAYS: Final[Mapping[MatchFact, Callable[..., str]]] = {
    MatchFact.HEIGHT: height_words,
    MatchFact.PLACE: place_words,
    MatchFact.BOUNCED: lambda said: "off the bounce" if said else "out of the air",
    MatchFact.FOOTING: _FOOTING.__getitem__,
    MatchFact.SPIN: _SPIN.__getitem__,
    MatchFact.PACE: _mph,
    MatchFact.PAST_SIDELINE: lambda said: "past the sideline" if said else "inside the sideline",
    MatchFact.THEIRS: lambda said: f"they're {_DEPTH[said]}",
    MatchFact.OURS: lambda said: f"you're {_DEPTH[said]}",
    MatchFact.PARTNER_SET: lambda said: "partner set" if said else "partner not set",
    MatchFact.WIND_SPEED: lambda said: f"{_mph(said)} wind",
}


class Offer(NamedTuple):
    """A value that a button may settle, and its label."""

    value: str
    label: str


OFFERS: Final[Mapping[MatchFact, tuple[Offer, ...]]] = MappingProxyType(
    {
        MatchFact.HEIGHT: (
            Offer(HeightName.KNEE, "knee high"),
            Offer(HeightName.CHEST, "chest high"),
            Offer(HeightName.WAIST, "waist high"),
        ),
        MatchFact.PLACE: (
            Offer(PlaceName.AT_LINE, "I'm at the line"),
            Offer(PlaceName.MID_COURT, "I'm in mid court"),
            Offer(PlaceName.BASELINE, "I'm back"),
        ),
        MatchFact.BOUNCED: (Offer("yes", "off the bounce"), Offer("no", "out of the air")),
        MatchFact.FOOTING: (
            Offer(Footing.STILL, "in balance"),
            Offer(Footing.BACKWARD, "moving back"),
            Offer(Footing.SIDEWAYS, "on the run"),
        ),
        MatchFact.SPIN: (
            Offer(Spin.TOPSPIN, "heavy topspin"),
            Offer(Spin.FLAT, "flat"),
            Offer(Spin.SLICE, "slice"),
        ),
        MatchFact.PACE: (Offer("50", "50 mph"), Offer("35", "35 mph")),
        MatchFact.PAST_SIDELINE: (Offer("yes", "past the sideline"), Offer("no", "not that wide")),
        MatchFact.THEIRS: (
            Offer(Depth.BOTH_BACK, "they're both back"),
            Offer(Depth.AT_LINE, "they're at the line"),
            Offer(Depth.COMING_IN, "they're coming in"),
        ),
        MatchFact.OURS: (
            Offer(Depth.BOTH_BACK, "we're both back"),
            Offer(Depth.AT_LINE, "we're at the line"),
            Offer(Depth.ONE_BACK, "one of us is back"),
        ),
        MatchFact.PARTNER_SET: (Offer("no", "partner not set"), Offer("yes", "partner set")),
        MatchFact.WIND_SPEED: (Offer("10", "10 mph wind"), Offer("20", "20 mph wind")),
    }
)
"""The buttons of each fact, the likeliest to be pressed first."""


def ball_choices(
    topic: Topic,
    facts: BallFacts,
    asks: Sequence[MatchFact],
    *,
    defaults: BallFacts = NOTHING_SAID,
    each: int = 1,
) -> tuple[Choice, ...]:
    """The other branch, `each` buttons for every fact of `asks` that nobody said.

    What the answer already assumes (`defaults`) is not offered: pressing it would change nothing.
    """
    found: list[Choice] = []
    for fact in (one for one in asks if is_assumed(facts, one)):
        others = [one for one in OFFERS[fact] if with_fact(defaults, fact, one.value) != defaults]
        found += [
            Choice(label=one.label, topic=topic, fact=fact.value, value=one.value)
            for one in others[:each]
        ]
    return tuple(found)


def with_fact(facts: BallFacts, fact: MatchFact, value: str) -> BallFacts:
    """The facts with what a button says; ValueError for a value that none offers."""
    return replace(facts, **{FIELDS[fact]: _READS[fact](value)})


def _yes(value: str) -> bool:
    if value not in ("yes", "no"):
        raise ValueError(f"yes or no, not {value}")
    return value == "yes"


def _speed_mps(value: str) -> float:
    if not (value.isascii() and value.isdigit()) or int(value) > FASTEST_TAPPED_MPH:
        raise ValueError(f"no speed of ours: {value}")
    return int(value) * MPH_MPS


_READS: Final[Mapping[MatchFact, Callable[[str], Any]]] = {
    MatchFact.HEIGHT: lambda value: height_m(HeightName(value)),
    MatchFact.PLACE: lambda value: FROM_NET_M[PlaceName(value)],
    MatchFact.BOUNCED: _yes,
    MatchFact.FOOTING: Footing,
    MatchFact.SPIN: Spin,
    MatchFact.PACE: _speed_mps,
    MatchFact.PAST_SIDELINE: _yes,
    MatchFact.THEIRS: Depth,
    MatchFact.OURS: Depth,
    MatchFact.PARTNER_SET: _yes,
    MatchFact.WIND_SPEED: _speed_mps,
}
