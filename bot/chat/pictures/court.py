"""Draws one court picture, from the ground up: court, zones, net, arrows, players, labels."""

from __future__ import annotations

from collections.abc import Sequence

from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Circle, Polygon, Rectangle

from bot.chat.pictures import placement
from bot.chat.pictures.arrows import ends, polygons, width_px
from bot.chat.pictures.frame import HEIGHT_PX, TITLE_PX, WIDTH_PX, Box, Frame, frame_of
from bot.chat.pictures.palette import INK, OURS, PAPER, SKY_BLUE, THEIRS, ZONES, Colour, mixed
from bot.chat.pictures.placement import Taken, best_place
from bot.chat.pictures.sheet import (
    PT_PER_PX,
    blank,
    measured,
    rectangle,
    write_label,
    write_title,
)
from knowledge.court import HALF_LENGTH_M, HALF_WIDTH_M, KITCHEN_DEPTH_M, METRES_PER_FOOT
from knowledge.court_picture import Area, Arrow, CourtPicture, Line, Marker, Zone
from knowledge.dataclass import dataclass

POST_M = 11 * METRES_PER_FOOT
"""Posts stand 22 ft apart (2025 edition, 2.C)."""

PLAYER_PX = 58
LINE_PX = 6
NET_PX = 14
SEAM_PX = 7
WIDEST_LABEL_PX = 400

GROUND = mixed(INK, 0.06)
KITCHEN = mixed(SKY_BLUE, 0.30)
ZONE_SHARE = 0.55


@dataclass(slots=True, kw_only=True)
class _Sheet:
    """The picture being drawn: axes in pixels, the frame, and what labels must keep off."""

    axes: Axes
    frame: Frame
    taken: Taken


def figure_of(picture: CourtPicture) -> Figure:
    """The picture as a figure whose data coordinates are pixels."""
    figure, axes = blank()
    frame = frame_of(picture)
    sheet = _Sheet(axes=axes, frame=frame, taken=_taken(picture, frame))
    _court(sheet)
    owners = _area_colours(picture.areas)
    for area in picture.areas:
        _area(sheet, area, owners)
    colours = _zone_colours(picture.zones)
    for zone in picture.zones:
        _zone(sheet, zone, colours)
    _net(sheet)
    for line in picture.lines:
        _seam(sheet, line)
    for place, arrow in enumerate(_widest_first(picture)):
        _arrow(sheet, arrow, 6 + place / 100)
    for marker in picture.markers:
        _player(sheet, marker)
    _labels(sheet, picture)
    write_title(axes, picture.title)
    return figure


def _widest_first(picture: CourtPicture) -> list[Arrow]:
    """A thin arrow is drawn over a thick one, and the thick one's label is placed first."""
    return sorted(picture.arrows, key=lambda one: -one.width)


def _taken(picture: CourtPicture, frame: Frame) -> Taken:
    return Taken(
        players=tuple(_player_box(frame, marker) for marker in picture.markers),
        arrows=tuple(
            box
            for arrow in picture.arrows
            for box in placement.along(*ends(frame, arrow), width_px(arrow))
        ),
    )


def _player_box(frame: Frame, marker: Marker) -> Box:
    return Box.around(*frame.px(marker.x_m, marker.y_m), PLAYER_PX, PLAYER_PX)


def _metres(sheet: _Sheet, x0: float, y0: float, x1: float, y1: float) -> Box:
    """A rectangle of the court in pixels, cut off at the field's edge."""
    left, low = sheet.frame.px(min(x0, x1), min(y0, y1))
    right, high = sheet.frame.px(max(x0, x1), max(y0, y1))
    return Box(
        x0=max(left, 0.0),
        y0=max(low, 0.0),
        x1=min(right, float(WIDTH_PX)),
        y1=min(high, float(HEIGHT_PX - TITLE_PX)),
    )


def _court(sheet: _Sheet) -> None:
    half, length, kitchen = HALF_WIDTH_M, HALF_LENGTH_M, KITCHEN_DEPTH_M
    field = Box(x0=0, y0=0, x1=WIDTH_PX, y1=HEIGHT_PX - TITLE_PX)
    rectangle(sheet.axes, field, GROUND, 0)
    rectangle(sheet.axes, _metres(sheet, -half, -length, half, length), PAPER, 1)
    rectangle(sheet.axes, _metres(sheet, -half, -kitchen, half, kitchen), KITCHEN, 2)
    for x in (-half, half):
        _line(sheet, x, -length, x, length)
    for y in (-length, -kitchen, kitchen, length):
        _line(sheet, -half, y, half, y)
    _line(sheet, 0, -length, 0, -kitchen)
    _line(sheet, 0, kitchen, 0, length)


def _line(sheet: _Sheet, x0: float, y0: float, x1: float, y1: float) -> None:
    box = _metres(sheet, x0, y0, x1, y1)
    if box.y1 < box.y0:
        return
    half = LINE_PX / 2
    wide = Box(x0=box.x0 - half, y0=box.y0 - half, x1=box.x1 + half, y1=box.y1 + half)
    field_top = HEIGHT_PX - TITLE_PX
    rectangle(
        sheet.axes, Box(x0=wide.x0, y0=wide.y0, x1=wide.x1, y1=min(wide.y1, field_top)), INK, 4
    )


def _net(sheet: _Sheet) -> None:
    left, y = sheet.frame.px(-POST_M, 0)
    right, _ = sheet.frame.px(POST_M, 0)
    rectangle(sheet.axes, Box(x0=left, y0=y - NET_PX / 2, x1=right, y1=y + NET_PX / 2), INK, 5)
    mesh = Box(x0=left + 8, y0=y - 1.5, x1=right - 8, y1=y + 1.5)
    rectangle(sheet.axes, mesh, PAPER, 5.5)
    for x in (left, right):
        rectangle(sheet.axes, Box.around(x, y, NET_PX, 2 * NET_PX), INK, 5)


def _zone_colours(zones: Sequence[Zone]) -> dict[str, Colour]:
    """One colour per owner of ours; zones that we give up are striped instead."""
    owners = list(dict.fromkeys(zone.label for zone in zones if zone.ours))
    return {owner: ZONES[place % len(ZONES)] for place, owner in enumerate(owners)}


def _zone(sheet: _Sheet, zone: Zone, colours: dict[str, Colour]) -> None:
    box = _metres(sheet, zone.x0_m, zone.y0_m, zone.x1_m, zone.y1_m)
    if zone.ours:
        patch = rectangle(sheet.axes, box, mixed(colours[zone.label], ZONE_SHARE), 3)
        patch.set_edgecolor(INK)
        patch.set_linewidth(2.5 * PT_PER_PX)
        return
    patch = rectangle(sheet.axes, box, PAPER, 3)
    patch.set_edgecolor(THEIRS)
    patch.set_hatch("//")
    patch.set_linewidth(2.5 * PT_PER_PX)


def _area_colours(areas: Sequence[Area]) -> dict[str, Colour]:
    """One colour per owner, none of them the kitchen's."""
    colours = [colour for colour in ZONES if colour != SKY_BLUE]
    owners = list(dict.fromkeys(area.owner for area in areas))
    return {owner: colours[place % len(colours)] for place, owner in enumerate(owners)}


def _area(sheet: _Sheet, area: Area, colours: dict[str, Colour]) -> None:
    sheet.axes.add_patch(
        Polygon(
            [sheet.frame.px(x, y) for x, y in area.corners],
            closed=True,
            facecolor=mixed(colours[area.owner], ZONE_SHARE),
            edgecolor=INK,
            linewidth=2.5 * PT_PER_PX,
            joinstyle="round",
            zorder=3,
        )
    )


def _seam(sheet: _Sheet, line: Line) -> None:
    """Dashed ink on paper, so that it shows upon any colour."""
    xs, ys = zip(*(sheet.frame.px(x, y) for x, y in line.points), strict=True)
    wide = SEAM_PX * PT_PER_PX
    sheet.axes.plot(xs, ys, color=PAPER, linewidth=2 * wide, solid_capstyle="butt", zorder=4.5)
    sheet.axes.plot(xs, ys, color=INK, linewidth=wide, dashes=(3, 2), zorder=4.6)


def _arrow(sheet: _Sheet, arrow: Arrow, z: float) -> None:
    colour = OURS if arrow.from_y_m < 0 else THEIRS
    for corners in polygons(sheet.frame, arrow):
        sheet.axes.add_patch(
            Polygon(
                corners,
                closed=True,
                facecolor=colour,
                edgecolor=PAPER,
                linewidth=3 * PT_PER_PX,
                joinstyle="miter",
                zorder=z,
            )
        )


def _player(sheet: _Sheet, marker: Marker) -> None:
    """Ours round, theirs square: shape says it where colour does not."""
    x, y = sheet.frame.px(marker.x_m, marker.y_m)
    size = PLAYER_PX * 0.88
    shape = (
        Circle((x, y), PLAYER_PX / 2)
        if marker.ours
        else Rectangle((x - size / 2, y - size / 2), size, size)
    )
    shape.set(
        facecolor=OURS if marker.ours else THEIRS,
        edgecolor=INK,
        linewidth=4 * PT_PER_PX,
        zorder=8,
    )
    sheet.axes.add_patch(shape)


def _labels(sheet: _Sheet, picture: CourtPicture) -> None:
    """Players first, since their labels can least be moved, then arrows, then zones."""
    for marker in picture.markers:
        text, size = measured(marker.label, WIDEST_LABEL_PX)
        player = _player_box(sheet.frame, marker)
        spots = placement.beside_player(player, *size, ours=marker.ours)
        _write(sheet, text, best_place(spots, sheet.taken), OURS if marker.ours else THEIRS)
    for arrow in _widest_first(picture):
        text, size = measured(arrow.label, WIDEST_LABEL_PX)
        spots = placement.beside_arrow(*ends(sheet.frame, arrow), *size)
        _write(sheet, text, best_place(spots, sheet.taken), INK)
    for area in picture.areas:
        text, size = measured(area.label, WIDEST_LABEL_PX)
        places = [sheet.frame.px(x, y) for x, y in area.corners]
        spots = placement.within_zone(_box_of(places), *size)
        _write(sheet, text, best_place(spots, sheet.taken), INK)
    named = {marker.label for marker in picture.markers}
    for zone in picture.zones:
        if zone.label in named:  # the player's own label, in the zone's colour, says it
            continue
        text, size = measured(zone.label, WIDEST_LABEL_PX)
        box = _metres(sheet, zone.x0_m, zone.y0_m, zone.x1_m, zone.y1_m)
        spots = placement.within_zone(box, *size)
        _write(sheet, text, best_place(spots, sheet.taken), INK)


def _box_of(places: Sequence[tuple[float, float]]) -> Box:
    xs, ys = zip(*places, strict=True)
    return Box(x0=min(xs), y0=min(ys), x1=max(xs), y1=max(ys))


def _write(sheet: _Sheet, text: str, box: Box, edge: Colour) -> None:
    """The label, if there is one; later ones keep off it."""
    if not text:
        return
    write_label(sheet.axes, text, box, edge)
    sheet.taken = sheet.taken.with_label(box)
