"""Pictures from the side: within the frame, labelled apart, true to place and height.

Text size: a phone is about 390 points wide (common practice, no source). Colours are told apart
by dashes and shapes too (W3C, WCAG 2.1, 1.4.1 "use of colour").
"""

from __future__ import annotations

import json
import math
import struct
from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from label_boxes import label_boxes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D

from bot.chat.pictures import draw
from bot.chat.pictures.drawing import figure_of
from bot.chat.pictures.frame import FIELD, HEIGHT_PX, WIDTH_PX
from bot.chat.pictures.side_labels import PATH_PX
from bot.chat.pictures.side_layout import AIR, side_frame_of
from bot.post.picture_json import picture_from_json, picture_to_json
from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M
from knowledge.side_flights import flown
from knowledge.side_view import Place, SideFigure, SideFlight, SideLevel, SidePath, SideView


def parabola(from_m: float, to_m: float, low: float, rise: float) -> tuple[Place, ...]:
    """From `low` over a rise down to the ground, in twenty steps."""
    shares = [step / 20 for step in range(21)]
    return tuple(
        (from_m + share * (to_m - from_m), (1 - share) * (low + 4 * rise * share))
        for share in shares
    )


LEAVE = SideView(
    title="Leave it or hit it",
    alt="Flat leaves at the belt, topspin at the chest.",
    net_m=0.88,
    notes=("Flat hitter: above the belt.", "Heavy topspin: above the chest."),
    paths=(
        SidePath(
            places=parabola(2.7, -8.3, 0.8, 0.9), label="flat: out", ours=False, lands_in=False
        ),
        SidePath(
            places=parabola(2.7, -6.2, 0.8, 0.6), label="topspin: in", ours=False, lands_in=True
        ),
    ),
    figures=(
        SideFigure(along_m=-2.4, stature_m=1.75, label="you", ours=True),
        SideFigure(along_m=2.9, stature_m=1.75, label="Okafor", ours=False),
    ),
    levels=(
        SideLevel(along_m=-2.4, height_m=1.0, label="belt"),
        SideLevel(along_m=-2.4, height_m=1.3, label="chest"),
    ),
)
DROP = SideView(
    title="Third-shot drop",
    alt="The room a drop has.",
    net_m=0.86,
    paths=(SidePath(places=parabola(-7, 1.5, 0.6, 1.5), label="drop", ours=True, lands_in=True),),
    window=((-7.0, 0.6, 0.6), (-3.0, 1.7, 2.2), (0.0, 0.9, 1.8), (1.5, 0.0, 1.0)),
)
EMPTY = SideView(title="", alt="", net_m=0.88)
VIEWS = pytest.mark.parametrize("view", [LEAVE, DROP, EMPTY], ids=["leave", "drop", "empty"])


@st.composite
def views(draw_one: st.DrawFn) -> SideView:
    """Anything that may be said of balls on a court, whatever it is called."""
    along, height, words = st.floats(-9, 9), st.floats(0, 6), st.text(max_size=25)
    places = st.lists(st.tuples(along, height), min_size=2, max_size=40).map(tuple)
    paths = st.builds(
        SidePath,
        places=places,
        label=words,
        ours=st.booleans(),
        lands_in=st.none() | st.booleans(),
    )
    people = st.builds(
        SideFigure, along_m=along, stature_m=st.floats(1.2, 2.2), label=words, ours=st.booleans()
    )
    levels = st.builds(SideLevel, along_m=along, height_m=height, label=words)
    return SideView(
        title=draw_one(words),
        alt="",
        net_m=draw_one(st.floats(0.8, 0.95)),
        notes=tuple(draw_one(st.lists(words, max_size=7))),
        paths=tuple(draw_one(st.lists(paths, max_size=4))),
        figures=tuple(draw_one(st.lists(people, max_size=3))),
        levels=tuple(draw_one(st.lists(levels, max_size=3))),
    )


def lines_at(figure: Figure, z: float) -> list[Line2D]:
    return [line for line in figure.axes[0].lines if line.get_zorder() == z]


def drawn_paths(figure: Figure) -> list[Line2D]:
    return lines_at(figure, 6.5)


def pixels_of(line: Line2D) -> list[tuple[float, float]]:
    xs, ys = (np.asarray(each, dtype=float).tolist() for each in line.get_data())
    return list(zip(xs, ys, strict=True))


@VIEWS
def test_a_png_of_a_phones_shape_equal_for_equal_views(view: SideView) -> None:
    png = draw(view)
    assert struct.unpack(">II", png[16:24]) == (WIDTH_PX, HEIGHT_PX)
    draw.cache_clear()
    assert draw(replace(view)) == png


@VIEWS
def test_labels_keep_off_one_another(view: SideView) -> None:
    labels = label_boxes(figure_of(view))
    assert len(labels) == len(view.paths) + len(view.figures) + len(view.levels)
    assert all(label.is_inside(FIELD) for label in labels)
    assert all(one.overlap(other) == 0 for one, other in combinations(labels, 2))


@settings(max_examples=12)
@given(views())
def test_anything_stays_on_the_picture(view: SideView) -> None:
    figure = figure_of(view)
    assert all(label.is_inside(FIELD) for label in label_boxes(figure))
    for line in drawn_paths(figure):
        for x, y in pixels_of(line):
            assert FIELD.x0 <= x <= FIELD.x1
            assert AIR.y0 <= y <= AIR.y1 + 1e-6


@settings(max_examples=40)
@given(views(), st.floats(-7, 7), st.floats(0, 2))
def test_lengths_are_true_and_heights_larger_by_what_is_said(
    view: SideView, along: float, height: float
) -> None:
    frame = side_frame_of(view)
    x0, y0 = frame.px(0.0, 0.0)
    x, y = frame.px(along, height)
    assert math.isclose(x - x0, along * frame.px_per_m, abs_tol=1e-6)
    assert math.isclose(y - y0, height * frame.px_per_m * frame.stretch, abs_tol=1e-6)
    assert y0 == AIR.y0


def test_what_is_out_lies_beyond_the_baseline_and_is_crossed() -> None:
    figure = figure_of(LEAVE)
    frame = side_frame_of(LEAVE)
    baseline, _ = frame.px(-HALF_LENGTH_M, 0)
    flat, topspin = (pixels_of(line)[-1][0] for line in drawn_paths(figure))
    assert flat < baseline < topspin
    crosses = [pixels_of(line) for line in lines_at(figure, 7.5)]
    assert [sum(x for x, _ in ends) / 2 for ends in crosses] == pytest.approx([flat, flat])


def test_paths_are_told_apart_without_colour() -> None:
    flat, topspin = drawn_paths(figure_of(LEAVE))
    assert flat.get_color() == topspin.get_color()
    assert not flat.is_dashed()
    assert topspin.is_dashed()
    assert PATH_PX >= 6


def test_lines_are_named_where_they_are() -> None:
    texts = {text.get_text(): text.get_position()[0] for text in figure_of(LEAVE).axes[0].texts}
    frame = side_frame_of(LEAVE)
    assert texts["net"] == pytest.approx(frame.px(0, 0)[0])
    assert texts["our line"] == pytest.approx(frame.px(-KITCHEN_DEPTH_M, 0)[0])
    assert f"heights drawn {frame.stretch:.1f} times" in texts
    assert {*LEAVE.notes} <= set(texts)


@VIEWS
def test_a_view_comes_back_from_the_outbox(view: SideView) -> None:
    assert picture_from_json(json.loads(json.dumps(picture_to_json(view)))) == view


@pytest.mark.parametrize("places", [(), ((0.0, 1.0),), ((0.0, 1.0), (math.nan, 0.0))])
def test_no_path_of_one_place_or_of_none(places: tuple[Place, ...]) -> None:
    with pytest.raises(ValueError, match="path"):
        SidePath(places=places, label="", ours=True)


FLOWN = SideView(
    title="The drop, from the side",
    alt="8 of 10 drops work.",
    net_m=0.89,
    notes=("In the band: drops that work, 8 of 10.",),
    figures=(
        SideFigure(along_m=-7.1, stature_m=1.75, label="you", ours=True),
        SideFigure(along_m=2.4, stature_m=1.75, label="them", ours=False),
    ),
    levels=(SideLevel(along_m=2.13, height_m=0.8, label="hit up"),),
    window_label="works",
    flights=(
        SideFlight(
            shot="drop",
            height_m=0.5,
            from_net_m=6.7,
            speed_mps=11.0,
            elevation_deg=31.0,
            label="drop",
            has_window=True,
        ),
    ),
)


def test_flights_come_back_from_the_outbox() -> None:
    stored = json.loads(json.dumps(picture_to_json(FLOWN)))
    assert picture_from_json(stored) == FLOWN


def test_flights_are_worked_out_when_drawn_and_the_band_is_named() -> None:
    """The drawn path runs inside the band at every distance, and both are inside the frame."""
    drawn = flown(FLOWN)
    (path,) = drawn.paths
    along, low, high = np.array(drawn.window).T
    places = np.array(path.places)
    heights = np.interp(along, places[:, 0], places[:, 1], right=0.0)
    assert np.all(heights >= low - 0.03)
    assert np.all(heights <= high + 0.03)
    assert draw(FLOWN) == draw(drawn)
    words = [one.get_text() for one in figure_of(FLOWN).axes[0].texts]
    assert "works" in words
    assert "hit up" in words


def test_the_name_of_a_height_stands_beyond_its_player() -> None:
    """Away from the net, where no ball of ours flies."""
    frame = side_frame_of(flown(FLOWN))
    texts = {one.get_text(): one.get_position() for one in figure_of(FLOWN).axes[0].texts}
    assert texts["hit up"][0] > frame.px(2.4, 0.8)[0]
