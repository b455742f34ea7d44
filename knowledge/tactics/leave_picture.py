"""The picture of what to leave: the highest balls that stay in, against a player at the line."""

from __future__ import annotations

from typing import Final

from knowledge.ball_places import NET_M
from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M
from knowledge.flight import TOPSPIN_RPM, FlatFire
from knowledge.reach.body import DEFAULT_STATURE_M
from knowledge.side_view import Place, SideFigure, SideLevel, SidePath, SideView
from knowledge.tactics.leave_line import Hit, LeaveLines, body_word

STEPS: Final = 24
BEHIND_LINE_M: Final = 0.3
OURS_M: Final = -KITCHEN_DEPTH_M - BEHIND_LINE_M
"""Where a player of ours at the line stands."""


def leave_picture(
    hit: Hit, lines: LeaveLines, *, who: str = "", met_m: float | None = None
) -> SideView:
    """Whatever passes us above a path flies out: a flat one, and one with topspin."""
    paths = [
        _longest_in(hit, rpm, label)
        for label, rpm, line in (
            ("flat", 0.0, lines.flat_m),
            ("topspin", TOPSPIN_RPM, lines.spun_m),
        )
        if line > 0
    ]
    levels = [
        SideLevel(along_m=OURS_M, height_m=line, label=word)
        for line in (lines.flat_m, lines.spun_m)
        if line > 0 and (word := body_word(line)) is not None
    ]
    if met_m is not None:
        levels = [SideLevel(along_m=OURS_M, height_m=met_m, label="this ball")]
    notes = _notes(lines)
    return SideView(
        title="What to let go",
        alt=f"The longest balls that stay in. {' '.join(notes)}",
        net_m=NET_M,
        notes=notes,
        paths=tuple(paths),
        figures=(
            SideFigure(
                along_m=OURS_M,
                stature_m=DEFAULT_STATURE_M,
                label="you",
                ours=True,
            ),
            SideFigure(
                along_m=hit.from_net_m + BEHIND_LINE_M,
                stature_m=DEFAULT_STATURE_M,
                label=who or "them",
                ours=False,
            ),
        ),
        levels=tuple(levels),
    )


def _notes(lines: LeaveLines) -> tuple[str, ...]:
    return (
        "Above a path it flies out.",
        f"Flat: {_above(lines.flat_m)}.",
        f"Heavy topspin: {_above(lines.spun_m)}.",
    )


def _above(line_m: float) -> str:
    word = body_word(line_m)
    if line_m == 0:
        return "leave all of them"
    return f"leave above the {word}" if word else "leave none"


def _longest_in(hit: Hit, topspin_rpm: float, label: str) -> SidePath:
    """The path of a ball that lands on our baseline."""
    ball = FlatFire(
        height_m=hit.height_m,
        speed_mps=hit.speed_mps,
        topspin_rpm=topspin_rpm,
        wind_mps=hit.wind_mps,
    )
    length = hit.from_net_m + HALF_LENGTH_M
    slope = ball.slope_through(length, 0.0)
    ways = [length * step / STEPS for step in range(STEPS + 1)]
    places: tuple[Place, ...] = tuple(
        (hit.from_net_m - way, ball.height_at_m(way, slope)) for way in ways
    )
    return SidePath(places=places, label=label, ours=False, lands_in=True)
