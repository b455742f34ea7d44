"""Where to dink: the eight cells, the ball, the people next to it, and what is not known.

Sizes and judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import tomllib
from dataclasses import replace
from itertools import product
from pathlib import Path

import pytest
from court_pictures import court_of
from hypothesis import given, settings
from hypothesis import strategies as st
from scouted import Noted, player

from knowledge.advice import CALL_LIMIT, Advice, Confidence, MatchFact
from knowledge.court import HALF_WIDTH_M, net_height_m
from knowledge.game import GameFormat, PlayedRally, start
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics import advise
from knowledge.tactics.dink_aims import aims_at
from knowledge.tactics.dink_answer import answer_dink
from knowledge.tactics.dink_lanes import Lane, Spot, lane_net_height_m, lane_points
from knowledge.vocabulary import (
    BallQuality,
    Hand,
    Level,
    PlayerId,
    Side,
    Topic,
    Trait,
    Value,
    Wing,
)

CELLS = tomllib.loads(
    (Path(__file__).parents[1] / "cases" / "aim_dink_cells.toml").read_text(encoding="utf-8")
)["cell"]

OKAFOR, LINDQVIST, MIRA = PlayerId(3), PlayerId(4), PlayerId(1)
WEAK_BACKHAND: Noted = (Trait.BACKHAND_DINK, Value.WEAKNESS, 4)


def okafor(*noted: Noted, side: Side | None = Side.LEFT, hand: Hand | None = Hand.RIGHT) -> OnCourt:
    return player(OKAFOR, "Okafor", hand=hand, side=side, noted=noted)


def lindqvist(
    *noted: Noted, side: Side | None = Side.RIGHT, hand: Hand | None = Hand.RIGHT
) -> OnCourt:
    return player(LINDQVIST, "Lindqvist", hand=hand, side=side, noted=noted)


def mira(*noted: Noted, side: Side | None = Side.RIGHT) -> OnCourt:
    return player(MIRA, "Mira", hand=Hand.RIGHT, side=side, noted=noted)


def asked(
    *theirs: OnCourt, striker: OnCourt | None = None, level: Level | None = None, **asking: object
) -> Situation:
    return Situation(
        topic=Topic.AIM_DINK,
        theirs=theirs,
        ours=() if striker is None else (striker,),
        striker=None if striker is None else striker.player,
        level=level,
        asked=Asked(**asking),  # type: ignore[arg-type]
    )


def dink(*theirs: OnCourt, **asking: object) -> Advice:
    return advise(asked(*theirs, **asking))  # type: ignore[arg-type]


@pytest.mark.parametrize("cell", CELLS, ids=lambda c: f"{c['hand']}-{c['plays']}-{c['from']}")
def test_the_eight_cells(cell: dict[str, str]) -> None:
    target = okafor(hand=Hand(cell["hand"]), side=Side(cell["plays"]))
    backhand = [aim for aim in aims_at(target, Side(cell["from"])) if aim.wing is Wing.BACKHAND]
    assert [(aim.spot, aim.lane) for aim in backhand] == [
        (Spot(cell["backhand"]), Lane(cell["lane"]))
    ]
    partner = lindqvist(side=target.side.other if target.side else None)
    advice = dink(
        target,
        partner,
        about=(OKAFOR,),
        wing=Wing.BACKHAND,
        striker_side=Side(cell["from"]),
    )
    assert advice.call == f"Dink Okafor's backhand: {cell['says']}."


@pytest.mark.parametrize("cell", CELLS, ids=lambda c: f"{c['hand']}-{c['plays']}-{c['from']}")
def test_the_picture_lands_on_the_right_side_of_the_target(cell: dict[str, str]) -> None:
    target = okafor(hand=Hand(cell["hand"]), side=Side(cell["plays"]))
    advice = dink(target, wing=Wing.BACKHAND, striker_side=Side(cell["from"]))
    assert advice.picture is not None
    arrow = court_of(advice).arrows[0]
    theirs_left = cell["plays"] == "left"
    assert (arrow.to_x_m > 0) is theirs_left  # their left court is on our right
    assert (arrow.from_x_m > 0) is (cell["from"] == "right")
    is_wide = abs(arrow.to_x_m) > HALF_WIDTH_M / 2
    assert is_wide is (cell["backhand"] == "sideline")


def test_two_right_handers_with_nothing_else_noted_get_it_at_the_backhand_in_the_middle() -> None:
    for side, how in ((Side.RIGHT, "across to the middle"), (Side.LEFT, "straight, inside foot")):
        advice = dink(okafor(), lindqvist(), striker_side=side)
        assert advice.call == f"Dink Lindqvist's backhand: {how}."


def test_a_left_hander_there_is_not_given_the_mirrored_call() -> None:
    lefty = dink(okafor(), lindqvist(hand=Hand.LEFT), striker_side=Side.RIGHT)
    assert "Lindqvist's backhand: across" not in lefty.call
    switched = dink(okafor(side=Side.RIGHT), lindqvist(side=Side.LEFT), striker_side=Side.RIGHT)
    assert switched.call == "Dink Okafor's backhand: across to the middle."


def test_a_weak_backhand_draws_the_ball_by_a_safe_lane() -> None:
    advice = dink(okafor(WEAK_BACKHAND), lindqvist(), striker_side=Side.LEFT)
    assert advice.call == "Dink Okafor's backhand: wide across."
    assert str(advice.reasons[0].source) == "book: 4 notes"
    assert advice.reasons[0].text == "Okafor's backhand dink is weak"


def test_a_weak_backhand_down_the_line_is_the_change_up_with_its_sign() -> None:
    advice = dink(okafor(WEAK_BACKHAND), lindqvist(), striker_side=Side.RIGHT, about=(OKAFOR,))
    said = " ".join(reason.text for reason in advice.reasons)
    assert "line" not in advice.call
    assert "line when Okafor leans in, 1-2 a game" in said
    assert "weak backhand is down the line" in said


def test_a_strong_backhand_is_left_alone() -> None:
    strong = lindqvist((Trait.BACKHAND_DINK, Value.STRENGTH, 5))
    assert "Lindqvist's backhand" not in dink(okafor(), strong, striker_side=Side.RIGHT).call


@pytest.mark.parametrize("side", [Side.LEFT, Side.RIGHT, None])
def test_a_stretched_ball_has_no_target(side: Side | None) -> None:
    advice = dink(
        okafor(WEAK_BACKHAND),
        lindqvist(),
        striker_side=side,
        about=(OKAFOR,),
        ball=BallQuality.STRETCHED,
    )
    assert advice.call == "Play it soft, cross to the middle. No target."
    assert advice.unless is None


def test_an_easy_ball_is_sped_up_unless_they_counter_or_we_cannot() -> None:
    easy = BallQuality.EASY
    plain = dink(okafor(), lindqvist(), striker_side=Side.RIGHT, ball=easy)
    assert plain.call.startswith("Speed it up at")
    assert plain.unless is not None
    assert plain.unless.startswith("Below the net? Dink")
    wall: Noted = (Trait.COUNTER, Value.STRENGTH, 12)
    walls = dink(okafor(wall), lindqvist(wall), striker_side=Side.RIGHT, ball=easy)
    assert walls.call.startswith("Dink")
    one_wall = dink(okafor(wall), lindqvist(), striker_side=Side.RIGHT, ball=easy)
    assert "Lindqvist" in one_wall.call
    cannot = mira((Trait.SPEED_UP, Value.WEAKNESS, 1))
    assert advise(asked(okafor(), lindqvist(), striker=cannot, ball=easy)).call.startswith("Dink")


def test_an_easy_ball_gets_the_speed_ups_own_answer_where_notes_aim_it() -> None:
    """One decision for one ball, whichever page is asked."""
    theirs = (okafor((Trait.BODY_JAM, Value.WEAKNESS, 6)), lindqvist())
    situation = asked(*theirs, striker=mira(), ball=BallQuality.EASY)
    speed_up = advise(replace(situation, topic=Topic.AIM_ATTACK))
    found = advise(situation)
    assert (found.call, found.reasons, found.number) == (
        speed_up.call,
        speed_up.reasons,
        speed_up.number,
    )
    assert "Okafor" in found.call
    assert found.topic is Topic.AIM_DINK


def test_our_own_shaky_dink_stays_in_the_middle() -> None:
    theirs = (okafor(WEAK_BACKHAND), lindqvist())
    sure = advise(asked(*theirs, striker=mira(side=Side.LEFT)))
    assert "wide" in sure.call
    shaky = mira((Trait.BACKHAND_DINK, Value.WEAKNESS, 1), side=Side.LEFT)
    advice = advise(asked(*theirs, striker=shaky))
    assert "wide" not in advice.call
    assert "line" not in advice.call
    said = " ".join(reason.text for reason in advice.reasons)
    assert "line when" not in said
    assert "wide when" not in said


def chance(situation: Situation, who: PlayerId, spot: Spot) -> float:
    answer = answer_dink(situation)
    aim = next(a for a in answer.aims if a.target.player == who and a.spot is spot)
    return answer.ranking.of(aim.id).chance


TRAITS_THAT_MOVE = [
    # whose, trait, value, our court, target, spot, better or worse for us
    (OKAFOR, Trait.ERNIE, Value.OFTEN, Side.RIGHT, OKAFOR, Spot.SIDELINE, -1),
    (OKAFOR, Trait.ERNIE, Value.OFTEN, Side.LEFT, OKAFOR, Spot.SIDELINE, 0),
    (OKAFOR, Trait.AROUND_POST, Value.OFTEN, Side.LEFT, OKAFOR, Spot.SIDELINE, -1),
    (LINDQVIST, Trait.POACHING, Value.OFTEN, Side.RIGHT, OKAFOR, Spot.MIDDLE, -1),
    (LINDQVIST, Trait.POACHING, Value.OFTEN, Side.RIGHT, OKAFOR, Spot.SIDELINE, 0),
    (LINDQVIST, Trait.SQUEEZES_MIDDLE, Value.OFTEN, Side.RIGHT, OKAFOR, Spot.MIDDLE, -1),
    (LINDQVIST, Trait.SQUEEZES_MIDDLE, Value.OFTEN, Side.LEFT, LINDQVIST, Spot.SIDELINE, 1),
    (OKAFOR, Trait.GETS_LOW, Value.WEAKNESS, Side.RIGHT, OKAFOR, Spot.MIDDLE, 1),
    (OKAFOR, Trait.MOVES_LEFT, Value.WEAKNESS, Side.LEFT, OKAFOR, Spot.SIDELINE, 1),
    (OKAFOR, Trait.MOVES_LEFT, Value.WEAKNESS, Side.LEFT, OKAFOR, Spot.MIDDLE, 0),
    (OKAFOR, Trait.MOVES_RIGHT, Value.WEAKNESS, Side.LEFT, OKAFOR, Spot.MIDDLE, 1),
    (LINDQVIST, Trait.MOVES_RIGHT, Value.WEAKNESS, Side.LEFT, LINDQVIST, Spot.SIDELINE, 1),
    (OKAFOR, Trait.MOVES_LEFT, Value.STRENGTH, Side.LEFT, OKAFOR, Spot.SIDELINE, -1),
    (OKAFOR, Trait.FOOTWORK_KITCHEN_FAULTS, Value.OFTEN, Side.LEFT, OKAFOR, Spot.MIDDLE, 1),
    (OKAFOR, Trait.PATIENCE, Value.WEAKNESS, Side.LEFT, OKAFOR, Spot.MIDDLE, 1),
    (OKAFOR, Trait.PATIENCE, Value.STRENGTH, Side.LEFT, OKAFOR, Spot.MIDDLE, -1),
    (OKAFOR, Trait.REACH, Value.STRENGTH, Side.LEFT, OKAFOR, Spot.MIDDLE, -1),
    (OKAFOR, Trait.COMMUNICATION, Value.WEAKNESS, Side.LEFT, LINDQVIST, Spot.MIDDLE, 1),
    (OKAFOR, Trait.TWO_HANDED_BACKHAND, Value.YES, Side.LEFT, OKAFOR, Spot.SIDELINE, 1),
    (LINDQVIST, Trait.TWO_HANDED_BACKHAND, Value.YES, Side.LEFT, LINDQVIST, Spot.MIDDLE, -1),
    (OKAFOR, Trait.FOREHAND_DINK, Value.WEAKNESS, Side.LEFT, OKAFOR, Spot.MIDDLE, 1),
    (OKAFOR, Trait.FOREHAND_DINK, Value.WEAKNESS, Side.LEFT, OKAFOR, Spot.SIDELINE, 0),
    (OKAFOR, Trait.BACKHAND_DINK, Value.STRENGTH, Side.LEFT, OKAFOR, Spot.SIDELINE, -1),
]


@pytest.mark.parametrize(
    ("whose", "trait", "value", "side", "who", "spot", "sign"), TRAITS_THAT_MOVE
)
def test_each_trait_moves_the_spot_it_should_and_no_other(
    whose: PlayerId, trait: Trait, value: Value, side: Side, who: PlayerId, spot: Spot, sign: int
) -> None:
    noted: Noted = (trait, value, 3)
    them = (
        okafor(*([noted] if whose == OKAFOR else [])),
        lindqvist(*([noted] if whose == LINDQVIST else [])),
    )
    before = chance(asked(okafor(), lindqvist(), striker_side=side), who, spot)
    after = chance(asked(*them, striker_side=side), who, spot)
    moved = after - before
    assert (moved > 1e-4) - (moved < -1e-4) == sign


def test_an_unknown_hand_names_no_wing_and_says_what_a_lefty_would_change() -> None:
    noted = lindqvist(WEAK_BACKHAND, hand=None)
    advice = dink(okafor(), noted, striker_side=Side.RIGHT, about=(LINDQVIST,))
    assert "backhand" not in advice.call
    assert advice.assumed is not None
    assert "hand" in advice.assumed
    assert advice.unless is not None
    assert advice.unless.startswith("Lindqvist left-handed? Dink")
    values = {(choice.fact, choice.value) for choice in advice.choices if choice.about == LINDQVIST}
    assert {("hand", "left"), ("hand", "right")} <= values


def test_what_a_button_promises_is_what_is_then_said() -> None:
    noted = lindqvist(WEAK_BACKHAND, hand=None)
    asking = {"striker_side": Side.RIGHT, "about": (LINDQVIST,)}
    before = dink(okafor(), noted, **asking)
    lefty = dink(okafor(), lindqvist(WEAK_BACKHAND, hand=Hand.LEFT), **asking)
    assert before.unless == f"Lindqvist left-handed? {lefty.call}"


def test_an_unknown_side_offers_both_and_a_noted_weak_wing_is_still_named() -> None:
    advice = dink(okafor(WEAK_BACKHAND, side=None), lindqvist(side=None), about=(OKAFOR,))
    assert advice.call == "Dink Okafor's backhand, low; not down the line."
    sides = [choice.value for choice in advice.choices if choice.fact == MatchFact.SIDE]
    assert sides == ["left", "right"]
    assert advice.picture is None


def test_an_unknown_striker_gets_a_call_that_holds_from_both_courts() -> None:
    advice = dink(okafor(WEAK_BACKHAND), lindqvist(), about=(OKAFOR,))
    assert advice.call == "Dink Okafor's backhand: across; not down the line."
    assert {c.value for c in advice.choices if c.fact == MatchFact.STRIKER} == {"left", "right"}


def test_nobody_known_is_the_general_rule_and_says_so() -> None:
    advice = dink()
    assert advice.confidence is Confidence.GENERAL_RULE
    assert advice.call == "Dink across to the middle, low at the feet."
    assert advice.assumed == "No notes on them: general rule."
    assert Topic.PROBE in {choice.topic for choice in advice.choices}


def test_two_named_players_without_notes_are_not_told_apart() -> None:
    advice = dink(player(5, "Hale"), player(6, "Brandt"))
    assert advice.confidence is Confidence.GENERAL_RULE
    assert "Hale" not in advice.call
    assert "Brandt" not in advice.call


def test_the_net_is_lowest_on_the_way_across() -> None:
    """Published heights of the net: 34 in at the centre, 36 in at the sidelines (2025, 2.C)."""
    heights = {lane: lane_net_height_m(lane) for lane in Lane}
    assert min(heights, key=lambda lane: heights[lane]) is Lane.CENTRE
    assert max(heights, key=lambda lane: heights[lane]) is Lane.LINE
    start, end = lane_points(Lane.LINE)
    middle_of_lane = (start.x_m + end.x_m) / 2
    assert heights[Lane.LINE] == pytest.approx(net_height_m(middle_of_lane), abs=0.01)


def test_below_4_0_the_rules_of_thumb_count_half() -> None:
    situation = asked(okafor(WEAK_BACKHAND), lindqvist(), striker_side=Side.LEFT)
    full = advise(situation).numbers["points_gained"]
    half = advise(replace(situation, level=Level.L3_5)).numbers["points_gained"]
    assert half < full


def test_the_same_question_after_three_lost_rallies_gets_the_same_call() -> None:
    situation = asked(okafor(WEAK_BACKHAND), lindqvist(), striker_side=Side.LEFT)
    game = start(GameFormat(), we_serve=False)
    lost = []
    for _ in range(3):
        lost.append(PlayedRally(before=game, won_by_us=False))
        game = lost[-1].next
    assert advise(replace(situation, played=tuple(lost))) == advise(situation)


def test_numbers_have_names_and_agree() -> None:
    numbers = dink(okafor(WEAK_BACKHAND), lindqvist(), striker_side=Side.LEFT).numbers
    assert 0 < numbers["p_best"] < 1
    assert numbers["rallies_in_100"] == pytest.approx(
        numbers["points_gained"] * numbers["share"] / 100
    )


NAMES = ["Okafor", "Vandenberghe-Castellanos", "Maria Fernanda de la Torre-Villanueva y Quesada"]
HANDS = [None, Hand.LEFT, Hand.RIGHT, Hand.AMBIDEXTROUS]
noted = st.lists(
    st.tuples(
        st.sampled_from(
            [Trait.BACKHAND_DINK, Trait.FOREHAND_DINK, Trait.MOVES_LEFT, Trait.PATIENCE]
        ),
        st.sampled_from([Value.STRENGTH, Value.WEAKNESS]),
        st.integers(1, 4),
    ),
    max_size=3,
    unique_by=lambda one: one[0],
)


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(NAMES),
    noted,
    noted,
    st.sampled_from(list(product(HANDS, HANDS))),
    st.sampled_from([None, Side.LEFT, Side.RIGHT]),
    st.sampled_from([None, Side.LEFT, Side.RIGHT]),
    st.sampled_from([None, *BallQuality]),
    st.sampled_from([None, *Wing]),
    st.booleans(),
)
def test_every_call_fits_and_never_names_a_wing_that_is_not_there(
    name: str,
    first: list[Noted],
    second: list[Noted],
    hands: tuple[Hand | None, Hand | None],
    their_side: Side | None,
    our_side: Side | None,
    ball: BallQuality | None,
    wing: Wing | None,
    is_about: bool,
) -> None:
    one = player(3, name, hand=hands[0], side=their_side, noted=first)
    other_side = their_side.other if their_side else None
    two = player(4, "Lindqvist", hand=hands[1], side=other_side, noted=second)
    about = (PlayerId(3),) if is_about else ()
    situation = asked(one, two, about=about, striker_side=our_side, ball=ball, wing=wing)
    advice = advise(situation)
    assert len(advice.call) <= CALL_LIMIT
    assert len(advice.choices) <= 6
    best = answer_dink(situation).best
    if best is not None and best.lane is not None:
        for each in Wing:
            if f"{best.target.name}'s {each}:" in advice.call:
                assert best.wing is each
