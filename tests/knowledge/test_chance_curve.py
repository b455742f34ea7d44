"""The curve of a match: its points, which rallies are the heaviest, and the same in words."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.advice import ChanceCurve, CurveMark, GameBreak
from knowledge.chance_curve import MARKS, CurveRally, chance_curve, heaviest_places
from knowledge.odds_words import in_ten

CHANCES = st.floats(0, 1)
RALLIES = st.lists(
    st.builds(
        CurveRally,
        before=CHANCES,
        after=CHANCES,
        weight=CHANCES,
        won_by_us=st.booleans(),
        we_served=st.booleans(),
        call=st.sampled_from(["0-0-2", "9-8-2", "10-10-1"]),
        game=st.integers(1, 3),
        game_score=st.none() | st.just("11-9"),
    ),
    max_size=80,
)


def rally(before: float, after: float, weight: float, call: str = "4-4-1") -> CurveRally:
    return CurveRally(
        before=before,
        after=after,
        weight=weight,
        won_by_us=after > before,
        we_served=True,
        call=call,
    )


TURNED = (
    rally(0.5, 0.56, 0.12, "3-3-1"),
    rally(0.56, 0.82, 0.3, "7-4-1"),
    rally(0.82, 0.8, 0.04, "8-4-1"),
    rally(0.8, 0.62, 0.2, "8-4-2"),
    rally(0.62, 0.7, 0.2, "6-8-1"),
    rally(0.7, 0.55, 0.3, "8-7-2"),
    rally(0.55, 0.3, 0.5, "9-9-2"),
)


def test_the_curve_of_a_game_that_turned() -> None:
    curve = chance_curve(TURNED)
    assert curve.points == (0.5, 0.56, 0.82, 0.8, 0.62, 0.7, 0.55, 0.3)
    assert [(one.point, one.label, one.won_by_us) for one in curve.marks] == [
        (2, "7-4-1 won", True),
        (6, "8-7-2 lost", False),
        (7, "9-9-2 lost", False),
    ]
    assert [one.otherwise for one in curve.marks] == pytest.approx([0.52, 0.85, 0.8])
    assert (curve.games, curve.now) == ((), "now 3 in 10")
    assert curve.alt == (
        "Started even, best 8 in 10 at 8-4-1; heaviest rallies 7-4-1 won on our serve, "
        "8-7-2 lost on our serve, 9-9-2 lost on our serve; now 3 in 10."
    )


def test_no_rally_yet() -> None:
    curve = chance_curve([])
    assert (curve.points, curve.marks, curve.games, curve.now) == ((), (), (), "no rally yet")
    assert curve.alt == "Our win chance through the match: no rally is logged yet."


def test_games_end_on_the_rally_that_ended_them_and_the_match_with_the_last() -> None:
    curve = chance_curve(
        [
            replace(rally(0.6, 0.75, 0.2, "10-4-1"), game_score="11-4"),
            replace(rally(0.75, 0.5, 0.3, "10-9-2"), game=2, game_score="9-11", we_served=False),
            replace(rally(0.5, 1.0, 0.8, "14-13-1"), game=3, game_score="15-13"),
        ]
    )
    assert curve.games == (
        GameBreak(point=1, label="game 1: 11-4", won_by_us=True),
        GameBreak(point=2, label="game 2: 9-11", won_by_us=False),
        GameBreak(point=3, label="game 3: 15-13", won_by_us=True),
    )
    assert curve.now == "won"
    assert curve.alt == (
        "Started 6 in 10, best 8 in 10 at 10-9-2 in game 2, worst even at 14-13-1 in game 3; "
        "heaviest rally 14-13-1 won on our serve in game 3; "
        "game 1 won 11-4, game 2 lost 9-11, game 3 won 15-13; won."
    )


def test_a_game_whose_end_was_told_still_has_its_line() -> None:
    curve = chance_curve([rally(0.5, 0.6, 0.1), replace(rally(0.7, 0.6, 0.1), game=2)])
    assert curve.games == (GameBreak(point=1, label="game 1"),)
    assert curve.points == (0.5, 0.6, 0.7, 0.6)
    assert [one.point for one in curve.marks] == [3]


def test_a_match_point_not_played_is_not_over() -> None:
    """A chance that rounds to none is said so; only a game's last rally ends anything."""
    assert chance_curve([rally(0.03, 0.0, 0.1)]).now == "now under 1 in 10"
    ended = replace(rally(0.03, 0.0, 0.1), game_score="3-11")
    assert chance_curve([ended]).now == "lost"
    assert chance_curve([replace(ended, after=0.02)]).now == "now under 1 in 10"


@pytest.mark.parametrize(
    ("chance", "words"),
    [
        (0.0, "under 1 in 10"),
        (0.04, "under 1 in 10"),
        (0.06, "1 in 10"),
        (0.44, "4 in 10"),
        (0.46, "even"),
        (0.54, "even"),
        (0.56, "6 in 10"),
        (0.94, "9 in 10"),
        (0.96, "over 9 in 10"),
        (1.0, "over 9 in 10"),
    ],
)
def test_chances_in_words(chance: float, words: str) -> None:
    assert in_ten(chance) == words


@given(st.lists(st.floats(0, 1), max_size=60))
def test_nothing_unmarked_weighs_more_than_anything_marked(weights: list[float]) -> None:
    marked = heaviest_places(weights)
    rest = set(range(len(weights))) - set(marked)
    assert list(marked) == sorted(set(marked))
    assert len(marked) == min(MARKS, (len(weights) + 2) // 3)
    assert all(weights[one] <= weights[each] for one in rest for each in marked)


def test_neighbours_are_marked_if_they_were_the_heaviest_and_of_equal_ones_the_latest() -> None:
    assert heaviest_places([0.1] * 20 + [0.5, 0.6, 0.7]) == (20, 21, 22)
    assert heaviest_places([0.2] * 9) == (6, 7, 8)


@given(RALLIES)
def test_any_rallies_make_a_curve_with_its_words(rallies: list[CurveRally]) -> None:
    curve = chance_curve(rallies)
    assert hash(curve) == hash(chance_curve(list(rallies)))
    assert curve.alt.endswith(f"{curve.now}.") or not rallies
    assert all(one.label in curve.alt for one in curve.marks)
    for one in curve.marks:
        assert 0 <= one.otherwise <= 1
        assert curve.points[one.point] in [each.after for each in rallies]


@pytest.mark.parametrize("chance", [-0.01, 1.01, float("nan")])
def test_a_chance_outside_0_to_1_is_refused(chance: float) -> None:
    with pytest.raises(ValueError, match="between 0 and 1"):
        ChanceCurve(title="", alt="", points=(chance,))
    mark = CurveMark(point=0, label="", won_by_us=True, otherwise=chance)
    with pytest.raises(ValueError, match="between 0 and 1"):
        ChanceCurve(title="", alt="", points=(0.5,), marks=(mark,))


@pytest.mark.parametrize("place", [-1, 1])
def test_a_mark_or_a_games_end_at_no_point_is_refused(place: int) -> None:
    mark = CurveMark(point=place, label="", won_by_us=True, otherwise=0.5)
    with pytest.raises(ValueError, match=f"no point {place} among 1"):
        ChanceCurve(title="", alt="", points=(0.5,), marks=(mark,))
    with pytest.raises(ValueError, match=f"no point {place} among 1"):
        ChanceCurve(title="", alt="", points=(0.5,), games=(GameBreak(point=place, label=""),))
