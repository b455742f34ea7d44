"""The shipped tables: computed from what the code says now, and true between their cells."""

from __future__ import annotations

from importlib.resources import files

import numpy as np
import pytest

from knowledge.court import Lane
from knowledge.flight.aim import Aim, best_aim, shot_window
from knowledge.flight.build import (
    FACTORS,
    LIMITS,
    LOW_BALL,
    axes_of,
    fingerprint,
    names,
    row_of,
    runs_of,
)
from knowledge.flight.leave import NOBODY_REACHES_M
from knowledge.flight.limits import limits
from knowledge.flight.shots import FORMS, Shot
from knowledge.flight.tables import FILE, Table, read_fingerprint, tables
from knowledge.flight.usual_aim import usual_aim

HALF_PRECISION = 2e-3
"""Numbers are stored with 11 bits, 0.0005 of themselves at most; a little more for rounding."""


def test_the_file_is_of_what_the_code_says() -> None:
    """Stale? python tests/support/flight_tables.py"""
    content = files("knowledge.flight").joinpath(FILE).read_bytes()
    assert read_fingerprint(content) == fingerprint()
    assert set(tables()) == set(names())
    for name in names():
        assert np.allclose(np.concatenate(tables()[name].axes), np.concatenate(axes_of(name)))


@pytest.mark.parametrize("name", names())
def test_random_cells_computed_again(name: str) -> None:
    """Of another platform's mathematics two aims nearly as good may change places: the chances
    must agree, the rest where the aim is the same."""
    places = list(runs_of(name))
    for at in np.random.default_rng().choice(len(places), 6 if name == LIMITS else 1):
        stored = tables()[name].values[places[at]].astype(np.float64)
        again = row_of(name, places[at])
        if name == LIMITS:
            assert stored == pytest.approx(again, rel=HALF_PRECISION, abs=HALF_PRECISION)
            continue
        for one, other in zip(stored, again, strict=True):
            chances = [Aim.__slots__.index(field) for field in ("legal", "meant")]
            assert one[chances].sum() == pytest.approx(other[chances].sum(), abs=3e-3)
            if one[:2] == pytest.approx(other[:2], rel=HALF_PRECISION):
                assert one == pytest.approx(other, rel=HALF_PRECISION, abs=HALF_PRECISION)


def test_limits_between_cells() -> None:
    """Integrated at random places where a call may hang on it, 3 degrees short to 12 to spare:
    most margins within a third of a degree, most heights within 5 cm. Beside the cells from which
    a ball cannot fly out at all a margin may be some degrees off."""
    rng = np.random.default_rng(8)
    off: list[tuple[float, float]] = []
    for _ in range(80):
        height, away, pace = rng.uniform([0.3, 0.6, 12], [2.2, 7.5, 26])
        wind, rpm = rng.uniform([-4, 0], [4, 5000])
        lane = Lane.LINE if rng.random() < 0.5 else Lane.CROSS
        low, high, leave = tables()[LIMITS].at(
            height, away, float(lane is Lane.CROSS), wind, rpm, pace
        )  # fmt: skip
        found = limits(
            height_m=height,
            from_net_m=away,
            speeds_mps=np.array([pace]),
            topspin_rpm=rpm,
            wind_mps=wind,
            lane=lane,
            ball=LOW_BALL,
        )
        margin = float(found.highest_deg[0] - found.lowest_deg[0])
        if -3 < margin < 12 and max(leave, found.leave_m[0]) < NOBODY_REACHES_M:
            off.append((float(high - low) - margin, float(leave - found.leave_m[0])))
    angles, heights = np.abs(np.array(off)).T
    assert len(off) > 25
    assert np.quantile(angles, 0.8) < 0.33
    assert np.quantile(heights, 0.8) < 0.05
    assert np.quantile(angles, 0.9) < 0.7
    assert angles.max() < 4
    assert heights.max() < 0.5


@pytest.mark.parametrize("shot", [Shot.DROP, Shot.DINK, Shot.SPEED_UP, Shot.LOB])
def test_chances_between_cells(shot: Shot) -> None:
    """The window computed at random places: chances within 0.08."""
    form, rng = FORMS[shot], np.random.default_rng(11)
    for _ in range(3):
        height = float(rng.uniform(form.heights_m[0], form.heights_m[-1]))
        away = float(rng.uniform(form.from_net_m[0], form.from_net_m[-1]))
        wind = float(rng.uniform(-4, 4))
        shown = shot_window(shot, height_m=height, from_net_m=away, lane=Lane.CROSS, wind_mps=wind)
        told = best_aim(shot, shown, wind_mps=wind)
        found = usual_aim(
            shot, height_m=height, from_net_m=away, lane=Lane.CROSS, wind_mps=wind
        )  # fmt: skip
        assert found.legal + found.meant == pytest.approx(told.legal + told.meant, abs=0.16)


def test_reading_is_linear_and_stops_at_the_edges() -> None:
    values = np.array([[[0.0], [10.0]], [[20.0], [40.0]]])
    table = Table(axes=((0.0, 1.0), (0.0, 2.0)), values=values)
    assert table.at(0.5, 0.0) == pytest.approx([10.0])
    assert table.at(0.0, 1.0) == pytest.approx([5.0])
    assert table.at(-7.0, 9.0) == pytest.approx([10.0])
    assert table.at(7.0, -9.0) == pytest.approx([20.0])
    assert table.at(0.5, 1.0) == pytest.approx([17.5])
    assert table.at(0.5).shape == (2, 1)


def test_shots_across_the_net_when_the_lane_is_not_played() -> None:
    """A serve goes across, whatever lane is asked for (rulebook 2025: diagonal)."""
    line, cross = (
        usual_aim(Shot.SERVE, height_m=0.7, from_net_m=7.0, lane=lane)
        for lane in (Lane.LINE, Lane.CROSS)
    )
    assert line == cross


@pytest.mark.parametrize("shot", list(Shot))
def test_a_surer_hand_and_a_higher_contact(shot: Shot) -> None:
    form = FORMS[shot]
    low, high = form.heights_m[0], form.heights_m[-1]
    away = form.from_net_m[len(form.from_net_m) // 2]

    def chance(height: float, factor: float) -> float:
        found = usual_aim(
            shot, height_m=height, from_net_m=away, lane=Lane.CROSS, factor=factor
        )  # fmt: skip
        return found.legal + found.meant

    assert chance(low, FACTORS[0]) >= chance(low, 1.0) >= chance(low, FACTORS[-1])
    assert chance(high, 1.0) >= chance(low, 1.0) - 0.05
