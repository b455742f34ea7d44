"""Pictures as JSON in the outbox, told apart by a kind; one without a kind shows a court."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType
from typing import Any

from knowledge.advice import ChanceCurve, CurveMark, GameBreak, Picture
from knowledge.court_picture import Area, Arrow, CourtPicture, Line, Marker, Zone
from knowledge.side_view import SideFigure, SideFlight, SideLevel, SidePath, SideView
from knowledge.trait_bars import BarGroup, SheetFact, TraitBar, TraitBars

COURT = "court"
CURVE = "curve"
SIDE = "side"
BARS = "bars"

_KINDS: Mapping[type[Picture], str] = MappingProxyType(
    {CourtPicture: COURT, ChanceCurve: CURVE, SideView: SIDE, TraitBars: BARS}
)


def picture_to_json(picture: Picture) -> dict[str, Any]:
    """The picture's fields and its kind."""
    return {"kind": _KINDS[type(picture)], **_plain(picture)}


def _plain(value: Any) -> Any:
    """As `dataclasses.asdict` gives it, without copies of what never changes."""
    if isinstance(value, tuple):
        return [_plain(one) for one in value]
    names = getattr(value, "__dataclass_fields__", None)
    if names is None:
        return value
    return {name: _plain(getattr(value, name)) for name in names}


def picture_from_json(stored: Mapping[str, Any]) -> Picture:
    """The picture that `picture_to_json` wrote; ValueError for a kind it does not write.

    Rows written before there were several kinds have none, and are courts.
    """
    kind = stored.get("kind", COURT)
    if kind == COURT:
        return _court(stored)
    if kind == CURVE:
        return _curve(stored)
    if kind == SIDE:
        return _side(stored)
    if kind == BARS:
        return _bars(stored)
    raise ValueError(f"no picture of kind {kind!r}")


def _court(stored: Mapping[str, Any]) -> CourtPicture:
    return CourtPicture(
        title=stored["title"],
        alt=stored["alt"],
        markers=tuple(Marker(**each) for each in stored["markers"]),
        arrows=tuple(Arrow(**each) for each in stored["arrows"]),
        zones=tuple(Zone(**each) for each in stored["zones"]),
        areas=tuple(
            Area(corners=_places(each["corners"]), owner=each["owner"], label=each["label"])
            for each in stored.get("areas", ())
        ),
        lines=tuple(
            Line(points=_places(each["points"]), label=each["label"])
            for each in stored.get("lines", ())
        ),
    )


def _places(stored: Iterable[Sequence[float]]) -> tuple[tuple[float, float], ...]:
    return tuple((x, y) for x, y in stored)


def _curve(stored: Mapping[str, Any]) -> ChanceCurve:
    return ChanceCurve(
        title=stored["title"],
        alt=stored["alt"],
        points=tuple(stored["points"]),
        marks=tuple(CurveMark(**each) for each in stored["marks"]),
        games=tuple(GameBreak(**each) for each in stored["games"]),
        now=stored["now"],
    )


def _side(stored: Mapping[str, Any]) -> SideView:
    return SideView(
        title=stored["title"],
        alt=stored["alt"],
        net_m=stored["net_m"],
        notes=tuple(stored["notes"]),
        paths=tuple(
            SidePath(**{**each, "places": tuple(tuple(place) for place in each["places"])})
            for each in stored["paths"]
        ),
        figures=tuple(SideFigure(**each) for each in stored["figures"]),
        levels=tuple(SideLevel(**each) for each in stored["levels"]),
        window=tuple(tuple(each) for each in stored["window"]),
        window_label=stored.get("window_label", ""),
        flights=tuple(SideFlight(**each) for each in stored.get("flights", ())),
    )


def _bars(stored: Mapping[str, Any]) -> TraitBars:
    return TraitBars(
        title=stored["title"],
        alt=stored["alt"],
        facts=tuple(SheetFact(**each) for each in stored["facts"]),
        bars=tuple(
            TraitBar(**{**each, "group": BarGroup(each["group"]), "counts": tuple(each["counts"])})
            for each in stored["bars"]
        ),
        range_words=stored["range_words"],
    )
