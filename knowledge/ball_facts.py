"""What is said of one ball: how high and where we meet it, how, and where they stand."""

from __future__ import annotations

from enum import StrEnum

from knowledge.dataclass import dataclass


class Depth(StrEnum):
    """Where a pair stands, front to back."""

    AT_LINE = "at_line"
    ONE_BACK = "one_back"
    COMING_IN = "coming_in"
    BOTH_BACK = "both_back"


class Footing(StrEnum):
    """How whoever of us meets the ball is moving."""

    STILL = "still"
    FORWARD = "forward"
    SIDEWAYS = "sideways"
    BACKWARD = "backward"


class Spin(StrEnum):
    """What a ball does in the air, as players say it."""

    FLAT = "flat"
    TOPSPIN = "topspin"
    SLICE = "slice"


@dataclass(frozen=True, slots=True, kw_only=True)
class BallFacts:
    """One ball as described; None is not said, and whoever needs it assumes and says so.

    `height_m` is above the ground where we meet it, `from_net_m` how far from the net that is,
    on our side. `bounced`: it bounced first. `theirs` and `ours` tell how deep each pair stands,
    `ours` of the partner too. `pace_mps` is the speed it comes with, `wind_mps` the wind's;
    `spin` is its own. `past_sideline`: it is wide of the court where we meet it. `partner_set`:
    our other player is ready. `fault` says what was said and cannot be, kindly; the rest is kept.
    """

    height_m: float | None = None
    from_net_m: float | None = None
    bounced: bool | None = None
    footing: Footing | None = None
    theirs: Depth | None = None
    ours: Depth | None = None
    pace_mps: float | None = None
    wind_mps: float | None = None
    spin: Spin | None = None
    past_sideline: bool | None = None
    partner_set: bool | None = None
    fault: str | None = None


NOTHING_SAID = BallFacts()
