"""The sheet of bars of a report: true to the estimates, within the frame, readable on a phone.

Text size: a phone is about 390 points wide (common practice, no source). Contrast: W3C, WCAG
2.1, 1.4.3 and 1.4.11. Intervals: scipy's beta distribution.
"""

from __future__ import annotations

import struct
from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from matplotlib.colors import to_hex
from matplotlib.figure import Figure
from matplotlib.patches import Circle, Rectangle
from noted_players import match, often_noted, player
from PIL import ImageFont
from scipy.stats import beta

from bot.chat.pictures import draw, palette
from bot.chat.pictures.bars import MARK_PX, figure_of
from bot.chat.pictures.bars_layout import (
    EVEN_PX,
    TRACK_PX,
    TRACK_X0_PX,
    TRACK_X1_PX,
    layout_of,
    level_px,
    pieces,
)
from bot.chat.pictures.frame import HEIGHT_PX, WIDTH_PX, Box
from bot.chat.pictures.lettering import font_file
from bot.chat.pictures.palette import OUR_SIDE, THEIR_SIDE
from bot.chat.pictures.quick_text import QuickText
from bot.post.picture_json import picture_from_json, picture_to_json
from knowledge.evidence import HALF_LIFE_DAYS
from knowledge.planning import report
from knowledge.situation import OnCourt
from knowledge.trait_bars import BarGroup, SheetFact, TraitBar, TraitBars
from knowledge.vocabulary import Topic

WHOLE = Box(x0=0, y0=0, x1=WIDTH_PX, y1=HEIGHT_PX)

OKAFOR = player(
    3, "Okafor", None,
    "hand right", "side_played right", *often_noted("backhand_dink weakness"),
    "body_jam weakness", "forward_speed weakness", "nerves weakness", "serve strength",
    "speed_up strength by a", "speed_up strength by b", "foot_speed strength by a",
    "foot_speed strength by b", "foot_speed weakness by c", "footwork_kitchen_faults often",
)  # fmt: skip
LINDQVIST = player(
    4, "Lindqvist", None,
    "hand left by a", "hand right by b", "poaching often by a", "poaching often by b",
    "crash often", "third_shot_drop weakness", "lob_defense weakness", "stacks often",
)  # fmt: skip
TORN = player(
    5, "Anneliese Szymanski-Castellano", None,
    "backhand_dink weakness by a", "backhand_dink strength by b", "squeezes_middle often",
)  # fmt: skip
FEW = player(6, "Hale", None, "backhand_dink weakness")


def sheet_of(*people: OnCourt, ours: tuple[OnCourt, ...] = ()) -> TraitBars:
    picture = report.advise(match(Topic.OPPONENT_REPORT, *people, ours=ours)).picture
    assert isinstance(picture, TraitBars)
    return picture


SHEETS = pytest.mark.parametrize(
    "sheet",
    [sheet_of(OKAFOR, LINDQVIST), sheet_of(OKAFOR), sheet_of(FEW), sheet_of(TORN, OKAFOR)],
    ids=["pair", "one", "few", "long name"],
)


@st.composite
def sheets(draw_one: st.DrawFn) -> TraitBars:
    """Any sheet of so many bars as a report has, whatever the names and words say."""
    words = st.text("abcdefgjpqyAJWÅéß0 :,'-🥒", max_size=40)
    levels = st.lists(st.floats(-1, 1), min_size=3, max_size=3).map(sorted)
    bars = []
    for group, most in zip(BarGroup, (4, 3, 3), strict=True):  # as many as a report shows
        for low, level, high in draw_one(st.lists(levels, max_size=most)):
            bars.append(
                TraitBar(
                    words=draw_one(words),
                    who=draw_one(words),
                    group=group,
                    low=low,
                    level=level,
                    high=high,
                    counts=tuple(draw_one(st.lists(words, max_size=2))),
                    contradicted=draw_one(st.booleans()),
                    settles=draw_one(st.booleans()),
                )
            )
    facts = st.builds(SheetFact, words=words, contradicted=st.booleans())
    return TraitBars(
        title=draw_one(words),
        alt="",
        facts=tuple(draw_one(st.lists(facts, max_size=2))),
        bars=tuple(bars),
        range_words=draw_one(words),
    )


def text_boxes(figure: Figure) -> list[Box]:
    """What the letters cover, measured by Pillow, which draws them."""
    found = []
    for text in figure.axes[0].texts:
        if not isinstance(text, QuickText) or not text.get_text():
            continue
        face = ImageFont.truetype(str(font_file()), float(text.get_fontsize()) * 100 / 72)
        left, top, right, foot = face.getbbox(text.get_text(), anchor="lm")
        x, y = text.get_position()
        found.append(Box(x0=x + left, y0=y - foot, x1=x + right, y1=y - top))
    return found


@SHEETS
def test_a_png_of_a_phones_shape_equal_for_equal_sheets(sheet: TraitBars) -> None:
    png = draw(sheet)
    assert struct.unpack(">II", png[16:24]) == (900, 1200)
    draw.cache_clear()
    assert draw(replace(sheet)) == png


@SHEETS
def test_it_is_stored_and_read_back(sheet: TraitBars) -> None:
    assert picture_from_json(picture_to_json(sheet)) == sheet


def _bare(who: str, *counts: str) -> TraitBar:
    return TraitBar(
        words="",
        who=who,
        group=BarGroup.HELPS,
        level=0.0,
        low=0.0,
        high=0.0,
        counts=counts,
        sure="",
        contradicted=False,
        settles=False,
    )


UNDER_A_LONG_NAME = TraitBars(
    title="", alt="", facts=(), bars=(_bare(""), _bare(24 * "g", "0Å")), range_words=""
)


@settings(max_examples=20, deadline=None)
@given(sheets())
@example(UNDER_A_LONG_NAME)
def test_any_sheet_stays_on_the_picture_and_no_word_lies_on_another(sheet: TraitBars) -> None:
    figure = figure_of(sheet)
    texts = text_boxes(figure)
    assert all(text.is_inside(WHOLE) for text in texts)
    assert all(one.overlap(other) <= 120 for one, other in combinations(texts, 2))
    draw(sheet)
    for row in layout_of(sheet).rows:
        assert row.track.is_inside(WHOLE)


@SHEETS
def test_a_bar_lies_where_its_estimate_does(sheet: TraitBars) -> None:
    """From the edges of a track: -1 to the left, even in the middle, 1 to the right."""
    for bar in sheet.bars:
        ends = [(x - EVEN_PX) / (TRACK_X1_PX - EVEN_PX) for x, *_ in pieces(bar)]
        assert min(ends) == pytest.approx(bar.low if bar.low < 0 else max(0.0, bar.low))
    assert (level_px(-1), level_px(0), level_px(1)) == (TRACK_X0_PX, EVEN_PX, TRACK_X1_PX)


def test_the_range_is_the_betas_middle_eight_tenths() -> None:
    """One live note of yesterday beside the prior of one and one, stretched to -1 to 1."""
    (bar, *_) = sheet_of(FEW).bars
    weight = 2 ** (-1 / HALF_LIFE_DAYS)
    belief = beta(1 + weight, 1)
    low, high = (2 * belief.ppf(tail) - 1 for tail in (0.1, 0.9))
    assert (bar.low, bar.high) == pytest.approx((low, high), abs=1e-6)
    assert bar.level == pytest.approx(2 * belief.mean() - 1)


def test_their_weakness_helps_us_and_so_does_our_strength() -> None:
    groups = {one.words: one.group for one in sheet_of(OKAFOR).bars}
    assert groups["weak backhand dink"] is BarGroup.HELPS
    assert groups["strong speed-up"] is BarGroup.HURTS
    mira = player(1, "Mira", None, "third_shot_drop strength", "counter weakness")
    situation = replace(match(Topic.OPPONENT_REPORT, mira, ours=(mira,)), theirs=(mira,))
    picture = report.advise(situation).picture
    assert isinstance(picture, TraitBars)
    ours = {one.words: one.group for one in picture.bars}
    assert ours["strong third shot"] is BarGroup.HELPS
    assert ours["weak counter"] is BarGroup.HURTS


def test_kitchen_faults_help_us_where_they_are_frequent() -> None:
    faulty = player(3, "Okafor", None, "footwork_kitchen_faults often")
    assert sheet_of(faulty).bars[0].group is BarGroup.HELPS


def test_a_group_comes_most_useful_first_and_either_has_its_room() -> None:
    sheet = sheet_of(OKAFOR, LINDQVIST)
    advice = report.advise(match(Topic.OPPONENT_REPORT, OKAFOR, LINDQVIST))
    said = [line.partition(" (")[0] for line in advice.more]
    for group in (BarGroup.HELPS, BarGroup.HURTS):
        shown = [one.in_full for one in sheet.bars if one.group is group]
        places = [said.index(words) for words in shown if words in said]
        assert places == sorted(places)
        assert len(shown) >= 3


def test_contradictions_are_marked_in_yellow_and_open_ones_have_no_full_bar() -> None:
    sheet = sheet_of(TORN, FEW)
    torn = next(one for one in sheet.bars if one.contradicted)
    assert (torn.counts[0], torn.settles, torn.sure) == ("1 for, 1 against", False, "open")
    tags = [each for each in figure_of(sheet).axes[0].patches if _colour(each) == palette.YELLOW]
    marked = [one for one in sheet.bars if one.contradicted]
    marked_facts = [one for one in sheet.facts if one.contradicted]
    assert len(tags) == len(marked) + len(marked_facts) > 0
    assert sheet_of(LINDQVIST).facts[0].contradicted


@SHEETS
def test_what_helps_is_round_and_what_hurts_is_square(sheet: TraitBars) -> None:
    marks = [
        each
        for each in figure_of(sheet).axes[0].patches
        if each.get_zorder() == 8 and _breadth(each) > 0.8 * MARK_PX
    ]
    known = [one.group for one in sheet.bars if one.group is not BarGroup.UNKNOWN]
    shapes = [BarGroup.HELPS if isinstance(each, Circle) else BarGroup.HURTS for each in marks]
    assert shapes == known


def _breadth(patch: object) -> float:
    if isinstance(patch, Circle):
        return 2 * float(patch.radius)
    return float(patch.get_width()) if isinstance(patch, Rectangle) else 0.0


def _colour(patch: object) -> str:
    return to_hex(patch.get_facecolor()).upper()  # type: ignore[attr-defined]


@SHEETS
def test_words_are_at_least_14_points_on_a_phone_ink_on_paper(sheet: TraitBars) -> None:
    axes = figure_of(sheet).axes[0]
    sizes = [float(text.get_fontsize()) for text in axes.texts]
    assert min(size * 100 / 72 * 390 / WIDTH_PX for size in sizes) >= 14
    assert {to_hex(text.get_color()).upper() for text in axes.texts} == {palette.INK}
    allowed = {*palette.PALETTE, OUR_SIDE, THEIR_SIDE}
    assert {_colour(each) for each in axes.patches} <= allowed
    assert palette.contrast(palette.INK, palette.YELLOW) >= palette.TEXT_CONTRAST
    for full, ground in ((palette.OURS, OUR_SIDE), (palette.THEIRS, THEIR_SIDE)):
        assert palette.contrast(full, ground) >= palette.SHAPE_CONTRAST


@SHEETS
def test_the_words_under_it_say_all_that_is_drawn(sheet: TraitBars) -> None:
    for one in sheet.bars:
        assert one.in_full in sheet.alt
        assert not one.counts or one.counts[0] in sheet.alt
    assert all(fact.words in sheet.alt for fact in sheet.facts)
    assert len(sheet.alt) < 800


def test_a_long_name_is_cut_and_what_is_said_is_not() -> None:
    written = [text.get_text() for text in figure_of(sheet_of(TORN, OKAFOR)).axes[0].texts]
    assert any(text.endswith("…: squeezes the middle") for text in written)


def test_hands_alone_are_a_line_and_no_picture() -> None:
    bare = player(3, "Okafor", None, "hand left")
    assert report.advise(match(Topic.OPPONENT_REPORT, bare)).picture is None


def test_a_bar_is_as_high_as_its_track() -> None:
    assert {row.track.y1 - row.track.y0 for row in layout_of(sheet_of(OKAFOR)).rows} == {TRACK_PX}


def test_a_range_lies_around_its_level() -> None:
    with pytest.raises(ValueError, match="range"):
        TraitBar(words="", group=BarGroup.HELPS, level=0.5, low=0.6, high=0.7)
