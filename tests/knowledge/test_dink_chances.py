"""How often a dink comes off by lane: against closed forms, the formula written out, and the trade.

Outside checks: the rulebook's net and court, the parabola without drag, and the formula
x = w + (1 - w - e) v. Sizes of the trade: common practice, no source.
"""

from __future__ import annotations

import math
import sys
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.special import logit
from scouted import Noted, player

from knowledge import court
from knowledge.advice import Advice
from knowledge.ball_facts import BallFacts, Footing
from knowledge.flight import MPS_PER_MPH, OUTDOOR, Shot, times_wider_across, usual_aim
from knowledge.situation import Asked, OnCourt, Situation, Wind
from knowledge.tactics import advise
from knowledge.tactics.dink_answer import answer_dink
from knowledge.tactics.dink_ball import DinkBall, ball_of, quality
from knowledge.tactics.dink_chances import gain_over_line, lane_chance, our_dinks
from knowledge.tactics.dink_lanes import Lane, Spot, lane_net_height_m
from knowledge.tactics.dink_sizes import LINE_IS_JUMPED
from knowledge.tactics.dink_words import against
from knowledge.tactics.shot_success import OurScatter
from knowledge.vocabulary import BallQuality, Hand, Level, PlayerId, Side, Topic, Trait, Value

GRAVITY_MPS2 = 9.81
NEUTRAL = DinkBall(height_m=0.59, from_net_m=2.13)
LOW = DinkBall(height_m=0.25, from_net_m=2.13)
HIGH = DinkBall(height_m=1.0, from_net_m=2.13)
USUAL = OurScatter()
REASON_LIMIT = 50


def them(
    *, hands: tuple[Hand, Hand] = (Hand.RIGHT, Hand.RIGHT), mirrored: bool = False
) -> tuple[OnCourt, OnCourt]:
    sides = (Side.RIGHT, Side.LEFT) if mirrored else (Side.LEFT, Side.RIGHT)
    return (
        player(
            3, "Okafor", hand=hands[0], side=sides[0], noted=[(Trait.NERVES, Value.WEAKNESS, 1)]
        ),
        player(4, "Lindqvist", hand=hands[1], side=sides[1]),
    )


def mira(*noted: Noted, side: Side = Side.RIGHT) -> OnCourt:
    return player(1, "Mira", hand=Hand.RIGHT, side=side, noted=noted)


def asking(
    *theirs: OnCourt, us: OnCourt | None = None, wind: Wind | None = None, **said: object
) -> Situation:
    striker = us or mira()
    return Situation(
        topic=Topic.AIM_DINK,
        theirs=theirs or them(),
        ours=(striker,),
        striker=striker.player,
        wind=wind,
        asked=Asked(**said),  # type: ignore[arg-type]
    )


# The geometry and the flight


def parabola_wins(across_m: float, far_m: float) -> float:
    """Share of a fan of launches that clear the net and land short, without drag.

    From 0.5 m up, 1.5 m behind the net and 2 m beside its centre; the lane goes `across_m` over to
    the other side by the time it has gone `far_m` forward.
    """
    height, back, aside = 0.5, 1.5, 2.0
    slant = math.hypot(across_m, far_m) / far_m
    crossing = aside - across_m * back / far_m
    net = (34 + 2 * abs(crossing) / court.HALF_WIDTH_M) * court.METRES_PER_INCH
    speeds, angles = np.meshgrid(np.linspace(2.5, 9.0, 300), np.radians(np.linspace(0, 55, 300)))

    def up(along: float) -> np.ndarray:
        return np.asarray(
            height
            + along * np.tan(angles)
            - GRAVITY_MPS2 * along**2 / (2 * (speeds * np.cos(angles)) ** 2)
        )

    clears = up(back * slant) >= net + OUTDOOR.radius_m
    short = up((back + court.KITCHEN_DEPTH_M) * slant) <= OUTDOOR.radius_m
    return float(np.mean(clears & short))


def test_the_kitchen_holds_more_dinks_across_than_down_the_line() -> None:
    """The parabola says so without drag, and the flight with it: the net is 34 in in the middle and
    36 in at the posts (rulebook 2025, 2.C), and the kitchen is longer along a slanting lane."""
    line, cross = parabola_wins(0.0, 2.6), parabola_wins(4.0, 2.6)
    assert cross / line > 1.3
    flown = times_wider_across(Shot.DINK, height_m=0.5, from_net_m=1.5)
    assert flown == pytest.approx(cross / line, rel=0.35)


def height_after(along_m: float, height_m: float, speed_mps: float, angle: float) -> float:
    """Height of a ball without spin after so much ground, with quadratic drag, by scipy."""

    def moves(_time: float, at: list[float]) -> list[float]:
        drag = OUTDOOR.drag_per_m * math.hypot(at[2], at[3])
        return [at[2], at[3], -drag * at[2], -drag * at[3] - GRAVITY_MPS2]

    def there(_time: float, at: list[float]) -> float:
        return at[0] - along_m

    there.terminal = True  # type: ignore[attr-defined]
    start = [0.0, height_m, speed_mps * math.cos(angle), speed_mps * math.sin(angle)]
    found = solve_ivp(moves, (0, 3), start, events=there, rtol=1e-8)
    return float(found.y_events[0][0][1])


@pytest.mark.parametrize("lane", [court.Lane.LINE, court.Lane.MIDDLE, court.Lane.CROSS])
def test_the_air_of_an_aim_is_what_scipy_flies_and_less_than_the_parabolas(
    lane: court.Lane,
) -> None:
    """Shipped cells, launched again: within 3 cm of scipy's solver (a cell is stored to a
    thousandth), and drag only takes from the parabola z = h + x tan a - g x^2 / (2 v^2 cos^2 a)."""
    for height, back in ((0.3, 1.8), (0.5, 2.5), (0.8, 1.2)):
        aim = usual_aim(Shot.DINK, height_m=height, from_net_m=back, lane=lane)
        start, end = court.lane_ends(lane, from_net_m=back, depth_m=court.KITCHEN_DEPTH_M / 2)
        along = back * start.distance_m(end) / (end.y_m - start.y_m)
        angle = math.radians(aim.elevation_deg)
        top = court.net_height_m(court.net_crossing_x_m(start, end)) + OUTDOOR.radius_m
        flown = height_after(along, height, aim.speed_mps, angle)
        fallen = GRAVITY_MPS2 * (along / (aim.speed_mps * math.cos(angle))) ** 2 / 2
        assert flown - top == pytest.approx(aim.clearance_m, abs=0.03)
        assert aim.clearance_m < height + along * math.tan(angle) - fallen - top


def test_the_middle_is_never_worse_than_the_line_and_low_balls_need_it_most() -> None:
    """More room at the same net: the gain falls as the ball comes up, and is next to nothing for a
    ball above the net."""
    gains = [gain_over_line(Lane.CENTRE, ball, USUAL).mean for ball in (LOW, NEUTRAL, HIGH)]
    assert gains == sorted(gains, reverse=True)
    assert gains[0] > 2
    assert abs(gains[-1]) < 0.3


@given(
    st.sampled_from([lane for lane in Lane if lane is not Lane.LINE]),
    st.floats(0.3, 1.1),
    st.floats(1.5, 3.2),
    st.floats(0.7, 1.6),
)
def test_a_gain_is_the_formula_of_a_shot_that_errs_written_out(
    lane: Lane, height: float, back: float, factor: float
) -> None:
    """x = w + (1 - w - e) v with w = 0 and two kinds of rally left, short (.5) and sitting up (.3);
    points are log-odds over .04 (scipy's logit); the doubt is half of what the scatter's moves."""
    ball = DinkBall(height_m=height, from_net_m=back)

    def points(each: float) -> float:
        x = []
        for one in (lane, Lane.LINE):
            chance = lane_chance(one, ball, each)
            errs, long = 1 - chance.in_play, chance.in_play - chance.short
            left = (chance.short * 0.5 + long * 0.3) / chance.in_play
            x.append((1 - errs) * left)
        return float(logit(x[0]) - logit(x[1])) / 0.04

    found = gain_over_line(lane, ball, OurScatter(factor=factor))
    assert found.mean == pytest.approx(points(factor), abs=1e-6)
    spread = math.exp(USUAL.log_sd)
    doubt = abs(points(factor * spread) - points(factor / spread)) / 2
    assert found.sd == pytest.approx(doubt, abs=1e-6)


@settings(max_examples=60)
@given(st.sampled_from(Lane), st.floats(0.2, 1.1), st.floats(0.6, 5.5), st.floats(-4.5, 4.5))
def test_chances_are_chances(lane: Lane, height: float, back: float, wind: float) -> None:
    chance = lane_chance(lane, DinkBall(height_m=height, from_net_m=back, wind_mps=wind))
    assert 0 <= chance.short <= chance.in_play <= 1
    assert 0 < chance.worth <= 0.5


def test_the_inside_foot_lies_between_the_line_and_the_middle() -> None:
    line, foot, middle = (
        lane_chance(lane, NEUTRAL) for lane in (Lane.LINE, Lane.STRAIGHT, Lane.CENTRE)
    )
    assert line.short < foot.short < middle.short
    assert line.clearance_m < foot.clearance_m < middle.clearance_m


def test_in_a_wind_a_wide_dink_is_turned_in() -> None:
    """The table's fixed direction would carry a held-up ball out beside the court: 20 of 100 more.
    Aimed less across, the flight itself says, next to none of that is lost."""
    against = replace(NEUTRAL, wind_mps=-4.5)
    fixed = usual_aim(
        Shot.DINK, height_m=0.59, from_net_m=2.13, lane=court.Lane.CROSS, wind_mps=-4.5
    )
    still = lane_chance(Lane.WIDE, NEUTRAL)
    assert still.in_play - fixed.legal > 0.15
    assert lane_chance(Lane.WIDE, against).in_play == pytest.approx(still.in_play, abs=0.05)
    behind = replace(NEUTRAL, wind_mps=4.5)
    for lane in (Lane.LINE, Lane.CENTRE):
        assert lane_chance(lane, behind).short < lane_chance(lane, NEUTRAL).short


def test_a_ball_from_mid_court_is_read_from_the_resets_table() -> None:
    """The same soft ball; the dink's table ends at 3.2 m."""
    back = DinkBall(height_m=0.6, from_net_m=4.5)
    aim = usual_aim(Shot.RESET, height_m=0.6, from_net_m=4.5, lane=court.Lane.MIDDLE)
    assert lane_chance(Lane.CENTRE, back).short == aim.meant
    assert lane_chance(Lane.CENTRE, back).short < lane_chance(Lane.CENTRE, NEUTRAL).short


# Against the trade


def test_row_12_is_what_comes_off_more_often_and_the_corner_together() -> None:
    """Row 12 of the trade's table: across or middle against down the line, +2 +- 1.5."""
    for lane in (Lane.CENTRE, Lane.STRAIGHT, Lane.WIDE):
        whole = gain_over_line(lane, NEUTRAL, USUAL).mean - LINE_IS_JUMPED.mean
        assert whole == pytest.approx(2, abs=1.5)
    assert gain_over_line(Lane.LINE, NEUTRAL, USUAL).mean == 0
    middle, foot = (gain_over_line(lane, NEUTRAL, USUAL) for lane in (Lane.CENTRE, Lane.STRAIGHT))
    assert middle.mean > foot.mean > 0


def test_a_shaky_hand_is_kept_out_of_the_wide_lane() -> None:
    """Nothing else says it: the wide lane's own misses do."""
    theirs = them()
    trait = Trait.BACKHAND_DINK
    shaky, sure = mira((trait, Value.WEAKNESS, 3)), mira((trait, Value.STRENGTH, 3))
    factors = [our_dinks(us, None).factor for us in (shaky, None, sure)]
    assert factors == sorted(factors, reverse=True)
    wide = [gain_over_line(Lane.WIDE, NEUTRAL, our_dinks(us, None)).mean for us in (shaky, sure)]
    assert wide[0] < wide[1] - 0.5
    calls = [answer_dink(asking(*theirs, us=us)) for us in (shaky, sure)]
    assert all(aim.spot is Spot.MIDDLE for aim in calls[0].aims)
    assert {aim.spot for aim in calls[1].aims} == set(Spot)


def test_a_level_scatters_too() -> None:
    assert our_dinks(None, Level.L3_0).factor > our_dinks(None, None).factor == 1


# The ball that was said


def test_how_good_a_ball_is_follows_from_height_and_feet() -> None:
    """The trade: at the knee or lower plays like a stretched ball; above the net is easy."""

    def of(**facts: object) -> BallQuality | None:
        return quality(asking(facts=BallFacts(**facts)))  # type: ignore[arg-type]

    assert of() is None
    assert of(height_m=0.3) is BallQuality.STRETCHED
    assert of(height_m=0.65) is BallQuality.NEUTRAL
    assert of(height_m=1.2) is BallQuality.EASY
    assert of(footing=Footing.SIDEWAYS) is BallQuality.STRETCHED
    assert of(height_m=1.2, footing=Footing.BACKWARD) is BallQuality.STRETCHED
    said = asking(facts=BallFacts(height_m=0.3), ball=BallQuality.NEUTRAL)
    assert quality(said) is BallQuality.NEUTRAL


def test_what_is_said_is_taken_and_what_is_not_is_assumed() -> None:
    said = ball_of(asking(facts=BallFacts(height_m=0.65, from_net_m=1.5)))
    assert (said.height_m, said.from_net_m, said.scatters) == (0.65, 1.5, 1.0)
    assert ball_of(asking(ball=BallQuality.STRETCHED)).scatters > 1
    assert ball_of(asking()).wind_mps == 0
    assert ball_of(asking(wind=Wind.AGAINST_US)).wind_mps == pytest.approx(-10 * MPS_PER_MPH)
    told = asking(wind=Wind.BEHIND_US, facts=BallFacts(wind_mps=3.0))
    assert ball_of(told).wind_mps == 3.0


@pytest.mark.parametrize(
    ("said", "assumed"),
    [
        ({}, "For a neutral ball."),
        ({"ball": BallQuality.STRETCHED}, "Taken as: knee high, at the line."),
        ({"facts": BallFacts(from_net_m=2.74)}, "Taken as: below the net, 2 ft behind the line."),
    ],
)
def test_the_reply_says_which_ball_it_took(said: dict[str, object], assumed: str) -> None:
    assert advise(asking(**said)).assumed == assumed  # type: ignore[arg-type]


def test_the_wind_is_said() -> None:
    assert advise(asking(wind=Wind.AGAINST_US)).assumed == "10 mph in your face."
    assert "mph" not in (advise(asking(wind=Wind.ACROSS)).assumed or "")


def test_a_low_ball_is_played_to_the_middle_and_one_above_the_net_is_not() -> None:
    low = advise(asking(facts=BallFacts(height_m=0.25)))
    assert low.call == "Play it soft, cross to the middle. No target."
    high = advise(asking(facts=BallFacts(height_m=1.2)))
    assert high.call.startswith("Speed")


# What the reply shows


def maths(advice: Advice) -> list[str]:
    return [one.text for one in advice.reasons if str(one.source).startswith("maths")]


def test_the_lane_has_its_number() -> None:
    advice = advise(asking())
    assert maths(advice) == ["4 in 100 go wrong, 8 down the line"]
    assert round(100 * (1 - advice.numbers["stays_short"])) == 4
    assert round(100 * (1 - advice.numbers["line_stays_short"])) == 8


def test_fewer_gone_wrong_is_never_the_word_for_a_worse_lane() -> None:
    """A wide dink stays short more often than one down the line, but it misses more and that costs
    more: the misses are what is said of it."""
    wide, line = (lane_chance(lane, NEUTRAL) for lane in (Lane.WIDE, Lane.LINE))
    assert wide.short > line.short
    assert wide.worth < line.worth
    assert against(Lane.WIDE, wide, Lane.LINE, line) == "5 in 100 miss, 1 down the line"
    middle = lane_chance(Lane.CENTRE, NEUTRAL)
    assert against(Lane.CENTRE, middle, Lane.LINE, line) == "4 in 100 go wrong, 8 down the line"
    assert against(Lane.CENTRE, line, Lane.LINE, line) == "Lower net than at the line"


def test_a_call_down_the_line_says_what_it_costs() -> None:
    """The backhand that was asked for is down the line: its price stands beside it."""
    advice = advise(
        asking(
            *them(),
            about=(PlayerId(3),),
            wing=them()[0].middle_wing().other,  # type: ignore[union-attr]
        )
    )
    assert "down the line" in advice.call
    assert maths(advice) == ["8 in 100 go wrong, 6 straight"]


@pytest.mark.parametrize("ball", [None, *BallQuality])
@pytest.mark.parametrize("side", Side)
def test_numbers_are_there_by_lane_and_lines_are_short(
    ball: BallQuality | None, side: Side
) -> None:
    advice = advise(asking(ball=ball, striker_side=side))
    assert all(len(reason.text) <= REASON_LIMIT for reason in advice.reasons)
    if ball is BallQuality.EASY:
        return
    for lane in ("line", "middle", "across"):
        assert 0 < advice.numbers[f"{lane}_stays_short"] <= advice.numbers[f"{lane}_in_play"] <= 1
        assert advice.numbers[f"{lane}_clearance_m"] > 0
        assert advice.numbers[f"{lane}_window"] > 0
    assert advice.numbers["line_over_line_points"] == 0
    assert any(line.startswith("Net: line 35 in, middle 34, wide 35.") for line in advice.more)


def test_the_net_by_lane_is_the_rulebooks() -> None:
    """34 in at the centre, 36 at the sidelines (2025, 2.C), straight between: by hand."""
    for lane, from_centre_m in ((Lane.LINE, 2.084), (Lane.CENTRE, 0.363)):
        inches = 34 + 2 * from_centre_m / court.HALF_WIDTH_M
        assert lane_net_height_m(lane) / court.METRES_PER_INCH == pytest.approx(inches, abs=0.01)


@pytest.mark.parametrize("hands", [(Hand.RIGHT, Hand.RIGHT), (Hand.LEFT, Hand.RIGHT)])
@pytest.mark.parametrize("ball", [None, BallQuality.STRETCHED])
def test_the_mirror_image_has_the_same_answer(
    hands: tuple[Hand, Hand], ball: BallQuality | None
) -> None:
    """Everybody on the other side of the court and with the other hand: same aims, same figures."""
    other = {Hand.LEFT: Hand.RIGHT, Hand.RIGHT: Hand.LEFT}
    plain = answer_dink(asking(*them(hands=hands), us=mira(side=Side.RIGHT), ball=ball))
    turned = them(hands=(other[hands[0]], other[hands[1]]), mirrored=True)
    mirrored = answer_dink(asking(*turned, us=mira(side=Side.LEFT), ball=ball))
    assert [(aim.id, aim.lane, aim.wing) for aim in plain.aims] == [
        (aim.id, aim.lane, aim.wing) for aim in mirrored.aims
    ]
    for one in plain.ranking.ranked:
        chance = mirrored.ranking.of(one.option.id).chance
        # A hand that is known from one note is as sure either way.
        assert chance == pytest.approx(one.chance, abs=1e-9)


@pytest.fixture
def nothing_flies(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever integrates a flight fails."""

    def fly(*_args: object, **_options: object) -> None:
        raise AssertionError("a turn integrated a flight")

    for name, module in list(sys.modules.items()):
        if name.startswith("knowledge.") and hasattr(module, "fly"):
            monkeypatch.setattr(module, "fly", fly)
    lane_chance.cache_clear()


@pytest.mark.usefixtures("nothing_flies")
def test_a_turn_integrates_nothing() -> None:
    for facts in (BallFacts(), BallFacts(height_m=0.47, from_net_m=1.9, wind_mps=2.0)):
        advice = advise(asking(wind=Wind.AGAINST_US, facts=facts))
        assert advice.numbers["middle_in_play"] > 0
