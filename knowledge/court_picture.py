"""The picture of a court: players, aims, and whose ball is whose, in metres (knowledge.court)."""

from __future__ import annotations

from knowledge.court import Point
from knowledge.dataclass import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrow:
    """An aim on the court picture, in metres (knowledge.court); width 0 to 1 is its share."""

    from_x_m: float
    from_y_m: float
    to_x_m: float
    to_y_m: float
    width: float
    label: str

    @classmethod
    def between(cls, start: Point, end: Point, *, width: float, label: str) -> Arrow:
        """The arrow from one place to another."""
        return cls(
            from_x_m=start.x_m,
            from_y_m=start.y_m,
            to_x_m=end.x_m,
            to_y_m=end.y_m,
            width=width,
            label=label,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Marker:
    """A player on the court picture, in metres."""

    x_m: float
    y_m: float
    label: str
    ours: bool

    @classmethod
    def at(cls, place: Point, label: str, *, ours: bool) -> Marker:
        """The player who stands at this place."""
        return cls(x_m=place.x_m, y_m=place.y_m, label=label, ours=ours)


@dataclass(frozen=True, slots=True, kw_only=True)
class Zone:
    """A shaded rectangle that says who takes what, in metres; `owner` is the label's player."""

    x0_m: float
    y0_m: float
    x1_m: float
    y1_m: float
    label: str
    ours: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Area:
    """A patch of the court of any shape, in metres, and whose it is; one owner, one colour."""

    corners: tuple[tuple[float, float], ...]
    owner: str
    label: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A dashed line through these places, in metres: a seam."""

    points: tuple[tuple[float, float], ...]
    label: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CourtPicture:
    """A court with players, aims, zones and areas; `alt` is the same in words."""

    title: str
    alt: str
    markers: tuple[Marker, ...] = ()
    arrows: tuple[Arrow, ...] = ()
    zones: tuple[Zone, ...] = ()
    areas: tuple[Area, ...] = ()
    lines: tuple[Line, ...] = ()
