"""Where labels go: the first place near their thing that covers no player and no other label."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from operator import itemgetter

from bot.chat.pictures.frame import FIELD, Box
from knowledge.dataclass import dataclass

GAP_PX = 10
"""Between a label and what it names."""

TIP_PX = 30
"""Beside an arrow: half a head and a gap."""

_FRACTIONS = (0.5, 0.62, 0.38, 0.74, 0.26)
"""Where along an arrow its label may sit, the middle first."""

_GRID = (0.5, 0.3, 0.7, 0.15, 0.85)
"""Where in a zone its label may sit, the middle first."""

COVERS_PLAYER = 100.0
COVERS_LABEL = 100.0
COVERS_ARROW = 1.0
"""Weights of a square pixel covered: a label may cross an arrow if need be, never a player."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What is on the picture already."""

    players: tuple[Box, ...] = ()
    labels: tuple[Box, ...] = ()
    arrows: tuple[Box, ...] = ()

    def with_label(self, box: Box) -> Taken:
        return Taken(players=self.players, labels=(*self.labels, box), arrows=self.arrows)

    def cost(self, box: Box) -> float:
        """How much a label here would hide."""
        return (
            COVERS_PLAYER * _covered(box, self.players)
            + COVERS_LABEL * _covered(box, self.labels)
            + COVERS_ARROW * _covered(box, self.arrows)
        )


def _covered(box: Box, others: Iterable[Box]) -> float:
    return sum(box.overlap(other) for other in others)


def best_place(candidates: Iterable[Box], taken: Taken) -> Box:
    """The first candidate that hides nothing, else the one that hides least; always in FIELD."""
    costs: list[tuple[float, Box]] = []
    for candidate in candidates:
        box = _pushed_inside(candidate)
        cost = taken.cost(box)
        if cost == 0:
            return box
        costs.append((cost, box))
    return min(costs, key=itemgetter(0))[1]


def _pushed_inside(box: Box) -> Box:
    dx = max(0.0, FIELD.x0 - box.x0) - max(0.0, box.x1 - FIELD.x1)
    dy = max(0.0, FIELD.y0 - box.y0) - max(0.0, box.y1 - FIELD.y1)
    return Box(x0=box.x0 + dx, y0=box.y0 + dy, x1=box.x1 + dx, y1=box.y1 + dy)


def beside_player(player: Box, width: float, height: float, *, ours: bool) -> Iterator[Box]:
    """Behind the player first, then in front, then at either side, then the corners."""
    x, y = (player.x0 + player.x1) / 2, (player.y0 + player.y1) / 2
    across = (player.x1 - player.x0 + width) / 2 + GAP_PX
    along = (player.y1 - player.y0 + height) / 2 + GAP_PX
    behind = -along if ours else along
    for dx, dy in (
        (0.0, behind),
        (0.0, -behind),
        (across, 0.0),
        (-across, 0.0),
        (across, behind),
        (-across, behind),
        (across, -behind),
        (-across, -behind),
        (0.0, 1.6 * behind),
        (0.0, -1.6 * behind),
    ):
        yield Box.around(x + dx, y + dy, width, height)


def beside_arrow(
    start: tuple[float, float], end: tuple[float, float], width: float, height: float
) -> Iterator[Box]:
    """At the tip, where the ball should go; else along the arrow, beside it, then upon it."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    beyond = (height / 2 + GAP_PX) * (1 if dy > 0 else -1)
    aside_x = width / 2 + TIP_PX
    yield Box.around(end[0], end[1] + beyond, width, height)
    for side in (1, -1):
        yield Box.around(end[0] + side * aside_x, end[1], width, height)
        yield Box.around(end[0] + side * width / 3, end[1] + beyond, width, height)
    for fraction in _FRACTIONS:
        x, y = start[0] + fraction * dx, start[1] + fraction * dy
        for side in (1, -1):
            yield Box.around(x + side * aside_x, y, width, height)
    for fraction in _FRACTIONS:
        yield Box.around(start[0] + fraction * dx, start[1] + fraction * dy, width, height)


def within_zone(zone: Box, width: float, height: float) -> Iterator[Box]:
    """Over the zone's area, its middle first; a narrow zone's label sticks out at both sides."""
    across = [zone.x0 + share * (zone.x1 - zone.x0) for share in _GRID]
    up = [zone.y0 + share * (zone.y1 - zone.y0) for share in _GRID]
    inside = [Box.around(x, y, width, height) for x in across for y in up]
    yield from (box for box in inside if box.is_inside(zone))
    middle = (zone.x0 + zone.x1) / 2
    upon = [Box.around(middle, y, width, height) for y in up]
    yield from (box for box in upon if box.y0 >= zone.y0 and box.y1 <= zone.y1)
    for y in (zone.y0 - height / 2 - GAP_PX, zone.y1 + height / 2 + GAP_PX):
        yield from (Box.around(x, y, width, height) for x in across)
    for x in (zone.x0 - width / 2 - GAP_PX, zone.x1 + width / 2 + GAP_PX):
        yield from (Box.around(x, y, width, height) for y in up)


def along(start: tuple[float, float], end: tuple[float, float], thickness: float) -> Sequence[Box]:
    """Small boxes that stand for a slanting arrow."""
    steps = 14
    return [
        Box.around(
            start[0] + step / steps * (end[0] - start[0]),
            start[1] + step / steps * (end[1] - start[1]),
            thickness,
            thickness,
        )
        for step in range(steps + 1)
    ]
