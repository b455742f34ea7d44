"""The picture of what to leave: the highest balls that stay in, against a player at the line."""

from __future__ import annotations

from typing import Final

from knowledge.ball_places import NET_M
from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M
from knowledge.dataclass import dataclass
from knowledge.flight import TOPSPIN_RPM, FlatFire
from knowledge.reach.body import DEFAULT_STATURE_M
from knowledge.side_view import Place, SideFigure, SideLevel, SidePath, SideView
from knowledge.tactics.leave_line import Hit, LeaveLines, body_word, leave_words

STEPS: Final = 24
BEHIND_LINE_M: Final = 0.3
OURS_M: Final = -KITCHEN_DEPTH_M - BEHIND_LINE_M
"""Where a player of ours at the line stands."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """The one ball that was told: how high it passes us, and what is said of it."""

    height_m: float
    said: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Spin:
    """A spin that is drawn: the label at its path, its words in a note, the height it leaves at."""

    label: str
    said: str
    rpm: float
    line_m: float


def leave_picture(
    hit: Hit,
    lines: LeaveLines,
    *,
    is_spun: bool | None,
    who: str = "",
    told: Told | None = None,
) -> SideView:
    """Whatever passes us above a path flies out: flat, with topspin, or both where it is open."""
    spins = _spins(lines, is_spun)
    paths = [_longest_in(hit, one.rpm, one.label) for one in spins if one.line_m > 0]
    levels = [
        SideLevel(along_m=OURS_M, height_m=one.line_m, label=word)
        for one in spins
        if one.line_m > 0 and (word := body_word(one.line_m)) is not None
    ]
    if told is not None:
        levels = [SideLevel(along_m=OURS_M, height_m=told.height_m, label="this ball")]
    notes = _notes(spins, told)
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


def _spins(lines: LeaveLines, is_spun: bool | None) -> tuple[_Spin, ...]:
    """What the hitter's ball is taken as: one of the two, or either."""
    flat = _Spin(label="flat", said="Flat", rpm=0.0, line_m=lines.flat_m)
    spun = _Spin(label="topspin", said="Heavy topspin", rpm=TOPSPIN_RPM, line_m=lines.spun_m)
    return {None: (flat, spun), False: (flat,), True: (spun,)}[is_spun]


def _notes(spins: tuple[_Spin, ...], told: Told | None) -> tuple[str, ...]:
    return (
        f"Above {'a' if len(spins) > 1 else 'the'} path it flies out.",
        *(f"{one.said}: leave {leave_words(one.line_m)}." for one in spins),
        *(() if told is None else (f"{told.said}.",)),
    )


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
