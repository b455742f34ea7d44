"""Balls to leave: heights against the trade's computed table, and what moves the call.

Table: heights in feet at the receivers' kitchen line above which a ball lands out, straight lane,
drag coefficient 0.33, topspin of 1,200 rpm with a low and a fourfold lift (computed by a coach's
own program, agreed design). Leaving pays from 55 to 60 of 100 on: common practice, no source.
"""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from noted_players import often_noted, player

from knowledge.advice import CALL_LIMIT, Advice
from knowledge.ball_facts import BallFacts, Depth, Spin
from knowledge.court import HALF_LENGTH_M, METRES_PER_FOOT
from knowledge.flight import MPS_PER_MPH
from knowledge.general_rule import LINE_LIMIT
from knowledge.side_view import SideView
from knowledge.situation import Asked, OnCourt, Situation, Wind
from knowledge.tactics import advise
from knowledge.tactics.leave_line import body_word, leave_lines, usual_hit
from knowledge.vocabulary import BallKind, Topic

BELT_M, CHEST_M, KNEE_M = 1.054, 1.264, 0.5
"""Of somebody 1.75 m tall."""


def ask(
    *facing: OnCourt,
    wind: Wind | None = None,
    kind: BallKind | None = None,
    **facts: object,
) -> Advice:
    return advise(
        Situation(
            topic=Topic.LET_IT_GO,
            theirs=facing,
            wind=wind,
            asked=Asked(
                about=tuple(one.player for one in facing),
                ball_kind=kind,
                facts=BallFacts(**facts),  # type: ignore[arg-type]
            ),
        )
    )


def _view(advice: Advice) -> SideView:
    assert isinstance(advice.picture, SideView)
    return advice.picture


OKAFOR = player(3, "Okafor", None)
SPINS = player(3, "Okafor", None, *often_noted("topspin often"))
FLAT = player(3, "Okafor", None, *often_noted("topspin rarely"))


@pytest.mark.parametrize(
    ("is_drive", "mph", "flat", "low", "high"),
    [
        (False, 35, 3.4, 3.7, 4.7),
        (False, 40, 2.9, 3.1, 3.9),
        (True, 45, 4.1, 4.5, 6.2),
        (True, 50, 3.4, 3.8, 5.3),
        (True, 55, 3.0, 3.3, 4.6),
    ],
)
def test_heights_are_those_of_the_trades_table(
    is_drive: bool, mph: int, flat: float, low: float, high: float
) -> None:
    """To a fifth of a foot: what moves is where the baseline's contact stands."""
    lines = leave_lines(usual_hit(is_drive=is_drive, pace_mps=mph * MPS_PER_MPH))
    found = [one / METRES_PER_FOOT for one in (lines.flat_m, lines.spun_low_m, lines.spun_high_m)]
    assert found == pytest.approx([flat, low, high], abs=0.25)


def test_wind_behind_them_lowers_the_line() -> None:
    """The same table: 10 mph behind a 35 mph speed-up, 3.0 instead of 3.4 ft."""
    behind = usual_hit(is_drive=False, wind_mps=10 * MPS_PER_MPH)
    assert leave_lines(behind).flat_m / METRES_PER_FOOT == pytest.approx(3.0, abs=0.2)


def test_a_faster_ball_is_left_lower() -> None:
    heights = [
        leave_lines(usual_hit(is_drive=True, pace_mps=mph * MPS_PER_MPH)).flat_m
        for mph in range(40, 61, 2)
    ]
    assert all(faster <= slower for slower, faster in pairwise(heights))


def test_no_height_is_no_part_of_the_body() -> None:
    assert body_word(math.inf) is None
    assert body_word(BELT_M) == "belt"
    assert body_word(CHEST_M) == "chest"


def test_asked_in_advance_both_spins_are_answered() -> None:
    advice = ask()
    assert advice.call == "Flat: leave above the belt. Topspin: above the chest."
    assert {"leave_flat_m", "leave_topspin_low_m", "leave_topspin_high_m"} <= set(advice.numbers)
    assert advice.caution is not None
    assert "eye" in advice.caution


@pytest.mark.parametrize(("who", "height"), [(SPINS, "chest"), (FLAT, "belt")])
def test_the_hitters_spin_decides_the_height(who: OnCourt, height: str) -> None:
    advice = ask(who)
    assert advice.call == f"Okafor: leave above the {height}."
    assert advice.reasons[0].source.evidence


def test_a_spin_that_is_said_is_no_reason_out_of_notes_that_tell_the_other() -> None:
    assert not any(one.source.evidence for one in ask(FLAT, spin=Spin.TOPSPIN).reasons)
    assert any(one.source.evidence for one in ask(SPINS, spin=Spin.TOPSPIN).reasons)


def test_no_button_offers_what_would_change_nothing() -> None:
    """Both back, whatever they hit hard is a drive; at the line none is."""

    def labels(advice: Advice) -> set[str]:
        return {one.label for one in advice.choices}

    assert "speed-up" in labels(ask(kind=BallKind.DRIVE))
    assert "speed-up" not in labels(ask(theirs=Depth.BOTH_BACK))
    assert "drive" in labels(ask())
    assert "drive" not in labels(ask(theirs=Depth.AT_LINE))


def test_without_notes_on_the_hitter_both_heights_stand() -> None:
    assert "belt" in ask(OKAFOR).call
    assert "chest" in ask(OKAFOR).call


def test_a_drive_is_left_higher_than_a_speed_up() -> None:
    speed_up, drive = ask(), ask(kind=BallKind.DRIVE)
    assert drive.numbers["leave_flat_m"] > speed_up.numbers["leave_flat_m"]
    assert ask(theirs=Depth.BOTH_BACK).numbers == drive.numbers


@pytest.mark.parametrize(
    ("facts", "leaves"),
    [
        ({"height_m": CHEST_M}, True),
        ({"height_m": CHEST_M, "spin": Spin.FLAT}, True),
        ({"height_m": BELT_M, "spin": Spin.TOPSPIN}, False),
        ({"height_m": 0.8}, False),
        ({"height_m": KNEE_M}, False),
    ],
)
def test_one_ball_told_is_left_or_played(facts: dict[str, object], leaves: bool) -> None:
    advice = ask(**facts)  # type: ignore[arg-type]
    assert advice.call.startswith("Leave it" if leaves else "Play it")
    assert (advice.numbers["chance_out"] >= 0.55) is leaves


def test_one_ball_is_never_told_by_one_height_alone() -> None:
    """The height to leave at depends on a spin not known: both, in words, picture or none."""
    assert ask(height_m=CHEST_M).unless == "Flat: above the belt; topspin: chest."
    fast = ask(height_m=CHEST_M, pace_mps=25.0).unless or ""
    assert fast.startswith("Flat: all of them; topspin: ")
    assert "topspin" not in (ask(height_m=CHEST_M, spin=Spin.FLAT).unless or "topspin")


def test_one_ball_called_a_drive_is_weighed_as_one_from_their_baseline() -> None:
    called, deep = ask(kind=BallKind.DRIVE, height_m=1.2), ask(theirs=Depth.BOTH_BACK, height_m=1.2)
    assert called.numbers["chance_out"] == deep.numbers["chance_out"]
    assert called.call == deep.call != ask(height_m=1.2).call


def test_a_higher_ball_flies_out_more_often() -> None:
    chances = [ask(height_m=0.8 + 0.1 * step).numbers["chance_out"] for step in range(9)]
    assert all(low <= high + 1e-9 for low, high in pairwise(chances))


def test_wind_moves_the_one_ball() -> None:
    against, still, behind = (
        ask(wind=wind, height_m=1.1).numbers["chance_out"]
        for wind in (Wind.BEHIND_US, None, Wind.AGAINST_US)
    )
    assert against < still < behind


def test_the_picture_shows_what_is_said() -> None:
    view = _view(ask())
    assert [path.label for path in view.paths] == ["flat", "topspin"]
    for path in view.paths:
        assert path.places[-1] == pytest.approx((-HALF_LENGTH_M, 0.0), abs=1e-6)
    assert [level.label for level in view.levels] == ["belt", "chest"]
    assert "Flat: leave above the belt." in view.alt


@pytest.mark.parametrize(
    ("spin", "path", "never"), [(Spin.FLAT, "flat", "topspin"), (Spin.TOPSPIN, "topspin", "Flat")]
)
def test_the_picture_draws_only_the_spin_that_is_taken(spin: Spin, path: str, never: str) -> None:
    view = _view(ask(spin=spin))
    assert [one.label for one in view.paths] == [path]
    assert len(view.levels) == 1
    assert never not in view.alt


def test_the_picture_of_one_ball_says_how_many_like_it_fly_out() -> None:
    advice = ask(height_m=CHEST_M, spin=Spin.FLAT)
    assert _view(advice).notes[-1] == f"{advice.reasons[0].text}."
    assert [one.label for one in _view(advice).levels] == ["this ball"]
    assert _view(ask(spin=Spin.FLAT)).notes[-1] == "Flat: leave above the belt."


@pytest.mark.parametrize("kind", [None, BallKind.DRIVE])
@pytest.mark.parametrize("height_m", [None, KNEE_M, CHEST_M])
@pytest.mark.parametrize("who", [(), (SPINS,), (FLAT,)])
def test_answers_fit_a_phone(
    who: tuple[OnCourt, ...], height_m: float | None, kind: BallKind | None
) -> None:
    advice = ask(*who, kind=kind, height_m=height_m)
    assert len(advice.call) <= CALL_LIMIT
    assert 1 <= len(advice.reasons) <= 3
    assert all(len(one.text) <= LINE_LIMIT for one in advice.reasons)
    for line in (advice.number, advice.unless, advice.assumed):
        assert line is None or len(line) <= LINE_LIMIT
