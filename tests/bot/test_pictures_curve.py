"""Pictures of our win chance: true to the numbers, within the frame, readable on a phone.

Text size: a phone is about 390 points wide (common practice, no source). Contrast: W3C, WCAG
2.1, 1.4.3 and 1.4.11.
"""

from __future__ import annotations

import struct
from dataclasses import replace
from itertools import combinations, pairwise
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from label_boxes import label_boxes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.colors import to_hex
from matplotlib.figure import Figure
from matplotlib.patches import Circle, FancyBboxPatch, Polygon, Rectangle
from scipy.optimize import isotonic_regression

from bot.channels.console import open_console, shown
from bot.channels.telegram_bot.form import html_of
from bot.chat.pictures import draw, palette
from bot.chat.pictures.curve import MARK_PX
from bot.chat.pictures.curve_layout import CHART, MARGIN, notes_that_fit, row_edges_px, spread
from bot.chat.pictures.drawing import figure_of
from bot.chat.pictures.frame import FIELD, HEIGHT_PX, WIDTH_PX, Box
from bot.chat.pictures.palette import OUR_SIDE, THEIR_SIDE
from bot.post import Outgoing
from knowledge.advice import ChanceCurve, CurveMark, GameBreak
from knowledge.chance_curve import chance_curve
from scouting_db.session import open_store

WHOLE = Box(x0=0, y0=0, x1=WIDTH_PX, y1=HEIGHT_PX)


def zigzag(rallies: int, *, low: float = 0.3, high: float = 0.7) -> tuple[float, ...]:
    """A start at even, then up and down in turn, wider and wider."""
    return 0.5, *(
        0.5 + ((high if n % 2 else low) - 0.5) * (n + 1) / rallies for n in range(rallies)
    )


def mark(point: int, label: str, otherwise: float = 0.5, *, won: bool = False) -> CurveMark:
    return CurveMark(point=point, label=label, won_by_us=won, otherwise=otherwise)


EMPTY = chance_curve([])
ONE = ChanceCurve(
    title="t", alt="", points=(0.5, 0.52), marks=(mark(1, "0-0-2 won", 0.48, won=True),), now="even"
)
LONG = ChanceCurve(
    title="Our win chance, rally by rally",
    alt="Started even; lost.",
    points=(*zigzag(150), 0.0),
    marks=(
        mark(149, "10-10-1 lost", 0.9),
        mark(150, "10-10-2 won", 0.1, won=True),
        mark(151, "15-14-2 lost", 0.6),
    ),
    games=(
        GameBreak(point=52, label="game 1: 11-7", won_by_us=True),
        GameBreak(point=98, label="game 2: 13-15", won_by_us=False),
        GameBreak(point=151, label="game 3: 14-16", won_by_us=False),
    ),
    now="lost",
)
BLOWN_OUT = ChanceCurve(
    title="t",
    alt="",
    points=tuple(0.5 * 0.6**n for n in range(18)),
    marks=(mark(1, "0-0-2 lost"), mark(2, "0-0-1 lost"), mark(3, "1-0-1 lost")),
    now="now under 1 in 10",
)
CURVES = pytest.mark.parametrize(
    "curve", [EMPTY, ONE, LONG, BLOWN_OUT], ids=["empty", "one", "long", "blown out"]
)


@st.composite
def curves(draw_one: st.DrawFn) -> ChanceCurve:
    """Any curve: up to 200 points, marks and games anywhere, whatever the labels say."""
    chances = st.floats(0, 1)
    words = st.text(max_size=30)
    points = tuple(draw_one(st.lists(chances, max_size=200)))
    places = st.integers(0, max(0, len(points) - 1))
    marks = st.builds(
        CurveMark, point=places, label=words, won_by_us=st.booleans(), otherwise=chances
    )
    games = st.builds(GameBreak, point=places, label=words, won_by_us=st.none() | st.booleans())
    most = 5 if points else 0
    return ChanceCurve(
        title=draw_one(words),
        alt="",
        points=points,
        marks=tuple(draw_one(st.lists(marks, max_size=most))),
        games=tuple(draw_one(st.lists(games, max_size=most))),
        now=draw_one(words),
    )


def text_boxes(figure: Figure) -> list[Box]:
    """What the letters really cover, as the renderer measures it."""
    renderer = FigureCanvasAgg(figure).get_renderer()  # type: ignore[no-untyped-call]
    extents = [text.get_window_extent(renderer) for text in figure.axes[0].texts if text.get_text()]
    return [Box(x0=one.x0, y0=one.y0, x1=one.x1, y1=one.y1) for one in extents]


def symbol_boxes(figure: Figure) -> dict[str, list[Box]]:
    """Circles and squares within the chart's height, by their fill."""
    found: dict[str, list[Box]] = {}
    for patch in figure.axes[0].patches:
        if patch.get_zorder() != 8 or not isinstance(patch, Circle | Rectangle):
            continue
        size = 2 * patch.radius if isinstance(patch, Circle) else patch.get_width()
        x, y = patch.center if isinstance(patch, Circle) else patch.get_center()
        if y <= CHART.y1:
            found.setdefault(to_hex(patch.get_facecolor()).upper(), []).append(
                Box.around(x, y, size, size)
            )
    return found


def steps(figure: Figure) -> list[tuple[float, float]]:
    """The corners of the line through the points."""
    (line,) = [line for line in figure.axes[0].lines if line.get_zorder() == 4]
    xs, ys = (np.asarray(each, dtype=float).tolist() for each in line.get_data())
    return list(zip(xs, ys, strict=True))


def check_layout(figure: Figure) -> None:
    """Everything on the picture, no label on a label, and none of the notes on the chart."""
    labels = label_boxes(figure)
    assert all(label.is_inside(FIELD) for label in labels)
    assert all(one.overlap(other) == 0 for one, other in combinations(labels, 2))
    texts = text_boxes(figure)
    assert all(text.is_inside(WHOLE) for text in texts)
    assert all(one.overlap(other) == 0 for one, other in combinations(texts, 2))
    for text in texts:
        assert text.y0 > CHART.y1 or any(text.is_inside(label) for label in labels)
    notes = [label for label in labels if label.x0 >= MARGIN.x0]
    assert len(labels) - len(notes) <= 1  # only the last chance in words lies on the chart
    for symbols in symbol_boxes(figure).values():
        assert all(symbol.is_inside(WHOLE) for symbol in symbols)


@CURVES
def test_a_png_of_a_phones_shape_equal_for_equal_curves(curve: ChanceCurve) -> None:
    png = draw(curve)
    assert png[:8] == b"\x89PNG\r\n\x1a\n"
    assert struct.unpack(">II", png[16:24]) == (900, 1200)
    draw.cache_clear()
    assert draw(replace(curve)) == png


@CURVES
def test_labels_keep_off_one_another(curve: ChanceCurve) -> None:
    figure = figure_of(curve)
    check_layout(figure)
    expected = len(curve.marks) + len(curve.games) + bool(curve.now)
    assert len(label_boxes(figure)) == expected


@settings(max_examples=30, deadline=None)
@given(curves())
def test_any_curve_stays_on_the_picture(curve: ChanceCurve) -> None:
    figure = figure_of(curve)
    check_layout(figure)
    if curve.points:
        assert all(CHART.x0 <= x <= CHART.x1 for x, _ in steps(figure))
        assert all(CHART.y0 - 1e-6 <= y <= CHART.y1 for _, y in steps(figure))


@settings(max_examples=200)
@given(curves())
def test_time_runs_down_the_page(curve: ChanceCurve) -> None:
    edges = row_edges_px(curve)
    assert len(edges) == len(curve.points) + 1
    assert all(low < high for high, low in pairwise(edges))


@CURVES
def test_a_step_lies_where_its_chance_does(curve: ChanceCurve) -> None:
    """Halves, quarters and ends of the chart, measured from its edges."""
    if not curve.points:
        assert not [line for line in figure_of(curve).axes[0].lines if line.get_zorder() == 4]
        return
    across = [(x - CHART.x0) / (CHART.x1 - CHART.x0) for x, _ in steps(figure_of(curve))]
    assert across[::2] == pytest.approx(curve.points)
    assert across[1::2] == pytest.approx(curve.points)


@pytest.mark.parametrize("curve", [ONE, LONG, BLOWN_OUT])
def test_a_heavy_rally_shows_who_won_it_and_what_might_have_been(curve: ChanceCurve) -> None:
    symbols = symbol_boxes(figure_of(curve))

    def chances(colour: str) -> list[float]:
        middles = [(box.x0 + box.x1) / 2 for box in symbols.get(colour, [])]
        return sorted((x - CHART.x0) / (CHART.x1 - CHART.x0) for x in middles)

    ours = sorted(curve.points[one.point] for one in curve.marks if one.won_by_us)
    theirs = sorted(curve.points[one.point] for one in curve.marks if not one.won_by_us)
    assert chances(palette.OURS) == pytest.approx(ours)
    assert chances(palette.THEIRS) == pytest.approx(theirs)
    assert chances(palette.PAPER) == pytest.approx(sorted(one.otherwise for one in curve.marks))


def test_ours_is_round_and_theirs_is_square() -> None:
    """What happened in full, what did not hollow and in the other side's shape."""
    for won, full, hollow in ((True, Circle, Rectangle), (False, Rectangle, Circle)):
        curve = replace(ONE, marks=(mark(1, "", 0.9, won=won),))
        on_line = [
            patch
            for patch in figure_of(curve).axes[0].patches
            if patch.get_zorder() == 8 and patch.get_window_extent().y1 <= CHART.y1
        ]
        hollows = [each for each in on_line if same_colour(each.get_facecolor(), palette.PAPER)]
        assert [type(each) for each in on_line if each not in hollows] == [full]
        assert [type(each) for each in hollows] == [hollow]


def same_colour(drawn: object, colour: str) -> bool:
    return to_hex(drawn).upper() == colour  # type: ignore[arg-type]


def test_each_side_is_filled_in_its_own_colour() -> None:
    fills = [
        patch
        for patch in figure_of(LONG).axes[0].patches
        if isinstance(patch, Polygon) and patch.get_zorder() == 2
    ]
    middle = (CHART.x0 + CHART.x1) / 2
    reach = {
        to_hex(fill.get_facecolor()).upper(): (
            min(x - middle for x, _ in fill.get_xy()),
            max(x - middle for x, _ in fill.get_xy()),
        )
        for fill in fills
    }
    assert reach.keys() == {palette.OURS, palette.THEIRS}
    assert reach[palette.OURS] == pytest.approx((0, 0.2 * (CHART.x1 - CHART.x0)))
    assert reach[palette.THEIRS] == pytest.approx((-0.5 * (CHART.x1 - CHART.x0), 0))


@pytest.mark.parametrize("place", [1, 2, 3])
def test_a_rally_is_marked_where_the_line_steps_and_a_game_ends_under_its_last(place: int) -> None:
    figure = figure_of(
        ChanceCurve(
            title="",
            alt="",
            points=(0.5, 0.7, 0.9, 0.4),
            marks=(mark(place, ""),),
            games=(GameBreak(point=place, label=""),),
        )
    )
    corners = steps(figure)
    (_, head), (_, foot) = corners[2 * place : 2 * place + 2]
    (line,) = [line for line in figure.axes[0].lines if line.get_zorder() == 4.5]
    assert np.asarray(line.get_ydata(), dtype=float).tolist() == [foot, foot]
    middles = [(box.y0 + box.y1) / 2 for boxes in symbol_boxes(figure).values() for box in boxes]
    assert middles == pytest.approx([head, head])


def test_neighbours_among_150_rallies_hide_nothing_of_one_another() -> None:
    full = [
        box
        for colour, boxes in symbol_boxes(figure_of(LONG)).items()
        if colour != palette.PAPER
        for box in boxes
    ]
    assert len(full) == 3
    assert all(one.overlap(other) == 0 for one, other in combinations(full, 2))
    edges = row_edges_px(LONG)
    assert all(edges[n] - edges[n + 1] >= MARK_PX for n in (148, 149, 150, 151))


def test_more_notes_than_the_margin_holds_keep_the_heavy_rallies() -> None:
    games = tuple(GameBreak(point=n, label=f"game {n}") for n in range(40))
    figure = figure_of(replace(LONG, games=games))
    check_layout(figure)
    written = {text.get_text() for text in figure.axes[0].texts}
    assert {one.label for one in LONG.marks} <= written
    assert len([word for word in written if word.startswith("game ")]) == notes_that_fit() - 3


@CURVES
def test_labels_are_at_least_14_points_on_a_phone(curve: ChanceCurve) -> None:
    points = [text.get_fontsize() for text in figure_of(curve).axes[0].texts]
    assert min(float(size) * 100 / 72 * 390 / WIDTH_PX for size in points) >= 14


@CURVES
def test_both_sides_are_named_in_words_and_no_number_has_a_decimal(curve: ChanceCurve) -> None:
    written = [text.get_text() for text in figure_of(curve).axes[0].texts]
    assert {"ours", "theirs", "even", "1 in 10", "9 in 10"} <= set(written)
    assert not any("." in text or "%" in text for text in written)


@CURVES
def test_colours_are_of_the_palette_and_text_is_ink_on_paper(curve: ChanceCurve) -> None:
    axes = figure_of(curve).axes[0]
    allowed = {*palette.PALETTE, OUR_SIDE, THEIR_SIDE}
    assert {to_hex(patch.get_facecolor()).upper() for patch in axes.patches} <= allowed
    assert {to_hex(text.get_color()).upper() for text in axes.texts} == {palette.INK}
    boxes = [patch for patch in axes.patches if isinstance(patch, FancyBboxPatch)]
    assert {to_hex(box.get_facecolor()).upper() for box in boxes} <= {palette.PAPER}


def test_the_sides_stand_out_from_their_ground() -> None:
    for full, ground in ((palette.OURS, OUR_SIDE), (palette.THEIRS, THEIR_SIDE)):
        assert palette.contrast(full, ground) >= palette.SHAPE_CONTRAST
        assert palette.contrast(palette.INK, ground) >= palette.TEXT_CONTRAST


@settings(max_examples=300)
@given(st.lists(st.floats(-50, 1150), max_size=15))
def test_notes_are_spread_as_near_as_can_be(wanted: list[float]) -> None:
    """Oracle: scipy's isotonic regression, clamped, which is optimal under bounds as well."""
    wanted.sort()
    places = spread(wanted, step=58, low=40, high=940)
    assert all(high - low >= 58 - 1e-9 for low, high in pairwise(places))
    assert all(40 - 1e-9 <= place <= 940 + 1e-9 for place in places)
    if wanted:
        shifted = [value - 58 * n for n, value in enumerate(wanted)]
        best = isotonic_regression(shifted).x.clip(40, 940 - 58 * (len(wanted) - 1))
        assert places == pytest.approx([level + 58 * n for n, level in enumerate(best)])


def test_its_words_go_with_it_under_a_photo() -> None:
    shown = html_of(Outgoing(text="Level so far", picture=LONG))
    assert shown.endswith("<blockquote expandable>Picture: Started even; lost.</blockquote>")


def test_the_console_prints_its_words_or_its_file(tmp_path: Path) -> None:
    replies = [Outgoing(text="Level so far", picture=LONG)]
    store = open_store("sqlite://")
    try:
        words = open_console(store, user_name="Mira")
        drawing = open_console(store, user_name="Mira", pictures=tmp_path)
    finally:
        store.close()
    assert shown(words, replies) == "Level so far\n[picture: Started even; lost.]"
    path = tmp_path / "000.png"
    assert shown(drawing, replies) == f"Level so far\n[picture: {path}]"
    assert path.read_bytes() == draw(LONG)
