"""Court pictures: valid, equal for equal input, and readable on a phone in the sun.

Contrast: W3C, WCAG 2.1, 1.4.3 and 1.4.11. PNG signature and header: RFC 2083, 3.1 and 11.2.1.
Colours: Okabe and Ito, Color Universal Design (2008).
"""

from __future__ import annotations

import struct
import subprocess
import sys
from io import BytesIO
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from label_boxes import label_boxes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.colors import to_hex
from matplotlib.figure import Figure
from matplotlib.patches import Circle, FancyBboxPatch, Patch, Polygon, Rectangle
from PIL import Image

from bot.chat.pictures import CACHED_PICTURES, draw, palette, warm
from bot.chat.pictures.arrows import width_px
from bot.chat.pictures.court import GROUND, KITCHEN, PLAYER_PX, ZONE_SHARE
from bot.chat.pictures.drawing import figure_of
from bot.chat.pictures.frame import FIELD, HEIGHT_PX, WIDTH_PX, Box, frame_of
from knowledge.court_picture import Area, Arrow, CourtPicture, Line, Marker, Zone

FOUR = (
    Marker(x_m=-1.5, y_m=-2.5, label="Mira", ours=True),
    Marker(x_m=1.5, y_m=-2.5, label="Tom", ours=True),
    Marker(x_m=1.5, y_m=2.5, label="Lindqvist", ours=False),
    Marker(x_m=-1.5, y_m=2.5, label="Okafor", ours=False),
)


def arrow(to_x_m: float, width: float, label: str) -> Arrow:
    return Arrow(from_x_m=1.5, from_y_m=-2.3, to_x_m=to_x_m, to_y_m=1.7, width=width, label=label)


DINK = CourtPicture(
    title="Dink Okafor's backhand, in the middle",
    alt="",
    markers=FOUR,
    arrows=(arrow(-0.4, 0.7, "default"), arrow(-2.4, 0.2, "when she leans in")),
)
MIDDLE = CourtPicture(
    title="Who takes the middle",
    alt="",
    markers=FOUR,
    zones=(
        Zone(x0_m=-3.05, y0_m=-4.2, x1_m=-0.3, y1_m=-2.13, label="Mira"),
        Zone(x0_m=-0.3, y0_m=-4.2, x1_m=3.05, y1_m=-2.13, label="Tom: slow balls"),
        Zone(x0_m=-3.05, y0_m=-2.13, x1_m=-2, y1_m=0, label="give", ours=False),
    ),
)
SERVE = CourtPicture(
    title="4-3-1, we serve",
    alt="",
    markers=(
        Marker(x_m=1.5, y_m=-7.2, label="Mira", ours=True),
        Marker(x_m=3.5, y_m=-7.2, label="Tom", ours=True),
        Marker(x_m=-1.5, y_m=7.2, label="their starter", ours=False),
        Marker(x_m=1.5, y_m=2.4, label="their second", ours=False),
    ),
    arrows=(
        Arrow(from_x_m=1.5, from_y_m=-7.2, to_x_m=-0.8, to_y_m=3.6, width=0.3, label="serve"),
        Arrow(from_x_m=1.5, from_y_m=-7.2, to_x_m=-1.5, to_y_m=-6, width=0.1, label=""),
    ),
)
SHARED = CourtPicture(
    title="Who takes the middle",
    alt="",
    markers=(
        Marker(x_m=-1.22, y_m=-2.43, label="Mira", ours=True),
        Marker(x_m=3.35, y_m=-2.43, label="Tom", ours=True),
    ),
    areas=(
        Area(corners=((-3.05, -0.9), (1, -0.9), (1.2, -6.7), (-3.05, -6.7)), owner="Mira"),
        Area(corners=((3.05, -0.9), (1, -0.9), (1.2, -6.7), (3.05, -6.7)), owner="Tom"),
        Area(
            corners=((0.5, -1.1), (1.6, -1.1), (1.6, -2.1), (0.5, -2.1)),
            owner="diagonal one",
            label="dink: diagonal one",
        ),
        Area(
            corners=((0.7, -3.0), (1.7, -3.0), (1.7, -4.9), (0.7, -4.9)),
            owner="Mira",
            label="fast: Mira",
        ),
    ),
    lines=(Line(points=((1, -0.9), (1.2, -6.7))),),
)
PICTURES = pytest.mark.parametrize(
    "picture", [DINK, MIDDLE, SERVE, SHARED], ids=["dink", "middle", "serve", "shared"]
)


def text_boxes(figure: Figure) -> list[Box]:
    """What the letters really cover, as the renderer measures it."""
    renderer = FigureCanvasAgg(figure).get_renderer()  # type: ignore[no-untyped-call]
    extents = [text.get_window_extent(renderer) for text in figure.axes[0].texts]
    return [Box(x0=one.x0, y0=one.y0, x1=one.x1, y1=one.y1) for one in extents]


def player_boxes(figure: Figure) -> list[Box]:
    centres = []
    for patch in figure.axes[0].patches:
        if patch.get_zorder() != 8:
            continue
        if isinstance(patch, Circle):
            centres.append(patch.center)
        elif isinstance(patch, Rectangle):
            centres.append(patch.get_center())
    return [Box.around(x, y, PLAYER_PX * 0.85, PLAYER_PX * 0.85) for x, y in centres]


@PICTURES
def test_a_png_of_a_phones_shape(picture: CourtPicture) -> None:
    png = draw(picture)
    assert png[:8] == b"\x89PNG\r\n\x1a\n"
    assert struct.unpack(">II", png[16:24]) == (WIDTH_PX, HEIGHT_PX) == (900, 1200)
    assert b"Software" not in png


def test_equal_pictures_are_equal_bytes_and_others_differ() -> None:
    first = draw(DINK)
    draw.cache_clear()
    assert draw(DINK) == first
    assert len({draw(DINK), draw(MIDDLE), draw(SERVE)}) == 3


@PICTURES
def test_labels_cover_no_player_and_no_label(picture: CourtPicture) -> None:
    figure = figure_of(picture)
    labels, players = label_boxes(figure), player_boxes(figure)
    assert len(players) == len(picture.markers)
    assert len(labels) >= len(picture.markers)
    for label in labels:
        assert label.is_inside(FIELD)
        assert all(label.overlap(player) == 0 for player in players)
    assert all(one.overlap(other) == 0 for one, other in combinations(labels, 2))


@PICTURES
def test_letters_stay_in_their_boxes_and_on_the_picture(picture: CourtPicture) -> None:
    figure = figure_of(picture)
    whole = Box(x0=0, y0=0, x1=WIDTH_PX, y1=HEIGHT_PX)
    labels = label_boxes(figure)
    for text in text_boxes(figure):
        assert text.is_inside(whole)
        in_title = text.y0 > FIELD.y1
        assert in_title or any(text.is_inside(label) for label in labels)


NAME = st.text(min_size=0, max_size=40)


@settings(max_examples=25, deadline=None)
@given(
    st.lists(
        st.builds(
            Marker,
            x_m=st.floats(-3.6, 3.6),
            y_m=st.floats(-7.5, 7.5),
            label=NAME,
            ours=st.booleans(),
        ),
        max_size=4,
    ),
    st.text(max_size=200),
)
def test_any_names_and_title_stay_on_the_picture(markers: list[Marker], title: str) -> None:
    """Whatever people are called: long, empty, dollar signs, letters the font lacks."""
    figure = figure_of(CourtPicture(title=title, alt="", markers=tuple(markers)))
    whole = Box(x0=0, y0=0, x1=WIDTH_PX, y1=HEIGHT_PX)
    assert all(box.is_inside(FIELD) for box in label_boxes(figure))
    assert all(text.is_inside(whole) for text in text_boxes(figure))


@pytest.mark.parametrize("name", ["$x_1$", "\U0001f3d3 Ruiz", "大坂", "a\nb", "\x00"])
def test_odd_names_draw_without_a_warning(name: str) -> None:
    player = Marker(x_m=0, y_m=-2.5, label=name, ours=True)
    assert draw(CourtPicture(title=name, alt="", markers=(player,))).startswith(b"\x89PNG")


@PICTURES
def test_labels_are_at_least_14_points_on_a_phone(picture: CourtPicture) -> None:
    """A phone is about 390 points wide (common practice, no source)."""
    points = [text.get_fontsize() for text in figure_of(picture).axes[0].texts]
    on_phone = [float(size) * 100 / 72 * 390 / WIDTH_PX for size in points]
    assert min(on_phone) >= 14


@PICTURES
def test_every_colour_is_of_the_palette_or_a_tint_of_it(picture: CourtPicture) -> None:
    tints = {palette.mixed(colour, ZONE_SHARE) for colour in palette.ZONES}
    allowed = {*palette.PALETTE, *tints, GROUND, KITCHEN}
    patches: list[Patch] = [*figure_of(picture).axes[0].patches]
    assert {to_hex(patch.get_facecolor()).upper() for patch in patches} <= allowed


def test_each_owners_patches_share_a_colour_that_no_other_has() -> None:
    """Mira's two patches alike; hers, his and the rule's all different; none the kitchen's."""
    patches = figure_of(SHARED).axes[0].patches
    colours = [
        to_hex(patch.get_facecolor()).upper() for patch in patches if isinstance(patch, Polygon)
    ]
    assert colours[0] == colours[3]
    assert len({*colours, KITCHEN}) == 4


def test_a_half_that_is_shared_out_fills_the_picture() -> None:
    """Players a step past the sideline are still on it, and the court is drawn larger."""
    near, far = frame_of(SHARED), frame_of(SERVE)
    assert near.px_per_m > 1.5 * far.px_per_m
    for box in player_boxes(figure_of(SHARED)):
        assert box.is_inside(FIELD)


def test_contrast_formula() -> None:
    """WCAG 2.1: black on white is 21:1; #767676 is the lightest grey that passes on white."""
    assert palette.contrast(palette.BLACK, palette.WHITE) == pytest.approx(21)
    assert palette.contrast(palette.WHITE, palette.WHITE) == 1
    assert palette.contrast(palette.Colour("#767676"), palette.WHITE) >= 4.5
    assert palette.contrast(palette.Colour("#777777"), palette.WHITE) < 4.5


def test_text_and_shapes_stand_out() -> None:
    """WCAG 2.1: 4.5:1 for text (1.4.3), 3:1 for shapes that carry meaning (1.4.11)."""
    assert palette.contrast(palette.INK, palette.PAPER) >= palette.TEXT_CONTRAST
    for ground in (palette.PAPER, KITCHEN):
        assert palette.contrast(palette.INK, ground) >= palette.TEXT_CONTRAST
    for shape in (palette.OURS, palette.THEIRS):
        assert palette.contrast(shape, palette.PAPER) >= palette.SHAPE_CONTRAST


@PICTURES
def test_all_text_is_ink_on_paper(picture: CourtPicture) -> None:
    axes = figure_of(picture).axes[0]
    assert {to_hex(text.get_color()).upper() for text in axes.texts} == {palette.INK}
    boxes = [patch for patch in axes.patches if isinstance(patch, FancyBboxPatch)]
    assert {to_hex(box.get_facecolor()).upper() for box in boxes} == {palette.PAPER}


def test_an_arrows_width_is_its_share() -> None:
    widths = [width_px(arrow(0, share, "")) for share in (0.0, 0.25, 0.5, 1.0)]
    assert widths == sorted(set(widths))
    assert widths[1] - widths[0] == pytest.approx((widths[3] - widths[0]) / 4)
    assert width_px(arrow(0, 7.0, "")) == widths[3]


def test_the_cache_is_bounded_and_keyed_by_content() -> None:
    draw.cache_clear()
    draw(CourtPicture(title="one", alt=""))
    draw(CourtPicture(title="one", alt=""))
    assert (draw.cache_info().hits, draw.cache_info().misses) == (1, 1)
    assert draw.cache_info().maxsize == CACHED_PICTURES


def test_matplotlib_is_loaded_for_the_first_picture_only_and_pyplot_never() -> None:
    code = (
        "import sys; from bot.chat import pictures;"
        "assert 'matplotlib' not in sys.modules; pictures.warm();"
        "assert 'matplotlib' in sys.modules; assert 'matplotlib.pyplot' not in sys.modules"
    )
    done = subprocess.run([sys.executable, "-c", code], check=False, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr


def test_warming_draws_once() -> None:
    draw.cache_clear()
    warm()
    warm()
    assert draw.cache_info().misses == 1


def test_a_second_picture_bears_no_trace_of_the_first() -> None:
    """All are drawn upon one canvas; matplotlib's own way to save takes a new one each time."""
    draw.cache_clear()
    draw(SHARED)
    alone = BytesIO()
    figure_of(SERVE).savefig(alone, format="png")
    with Image.open(alone) as wanted, Image.open(BytesIO(draw(SERVE))) as drawn:
        assert drawn.tobytes() == wanted.convert("RGB").tobytes()
