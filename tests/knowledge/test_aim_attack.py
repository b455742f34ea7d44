"""Where to speed up and whether: hand, ready position, side; the ball; where it comes back.

Sizes and judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import math
import re
import tomllib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from aim_cases import Case, cases
from attack_cases import ball_situation, facts_of, said
from court_pictures import court_of
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import TODAY, match, often_noted, player

from knowledge.advice import CALL_LIMIT, Advice
from knowledge.evidence import RateTally, profile
from knowledge.general_rule import LINE_LIMIT
from knowledge.planning.hands import hands_aim
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics import advise
from knowledge.tactics.attack_answer import aimed
from knowledge.tactics.attack_question import question_of
from knowledge.tactics.attack_spots import Spot, place_of, spots_of
from knowledge.tactics.attack_whether import ATTACK, gain_over_dink, whether
from knowledge.vocabulary import EvidenceId, Level, PlayerId, Rate, Side, Topic

CASES = cases("aim_attack.toml")
CELLS: list[dict[str, str]] = tomllib.loads(
    (Path(__file__).parents[1] / "cases" / "aim_attack_cells.toml").read_text(encoding="utf-8")
)["cell"]

OKAFOR = player(3, "Okafor", Side.LEFT, "hand right", *often_noted("body_jam weakness", 3))
LINDQVIST = player(4, "Lindqvist", Side.RIGHT, "hand right")


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    situation = ball_situation(case, Topic.AIM_ATTACK)
    advice = advise(situation)
    if "call" in case:
        assert advice.call == case["call"]
    assert all(text in said(advice) for text in case.get("says", ()))
    assert not any(text in said(advice) for text in case.get("never", ()))
    if "attacks" in case:
        assert bool(ATTACKS.search(advice.call)) is case["attacks"]
    if "never_in_mix" in case:
        assert advice.mix is not None
        shares = {one.label: one.share for one in advice.mix.shares}
        assert not shares.keys() & set(case["never_in_mix"])


@pytest.mark.parametrize("cell", CELLS, ids=lambda cell: " ".join(cell.values()))
def test_body_spots_by_hand_side_and_ready_position(cell: dict[str, str]) -> None:
    """Row 16 and 2.6: eight cells and more, both hands, both sides, three ready positions."""
    target = _cell_player(cell)
    found = hands_aim(match(Topic.AIM_ATTACK, target))
    assert found.spot is not None
    assert found.spot.at == cell["at"]
    assert found.spot.faces_middle is (cell["miss"] == "seam")
    assert advise(match(Topic.AIM_ATTACK, target)).call == f"Speed up at {cell['at']}."


def test_left_handers_are_the_mirror_image() -> None:
    """Hand and side swapped, the other hip and the same miss: geometry, no source needed."""
    swapped = {"left": "right", "right": "left"}
    by_cell = {(c["hand"], c["side"], c["ready"]): (c["at"], c["miss"]) for c in CELLS}
    assert len(by_cell) == len(CELLS) == 12
    for (hand, side, ready), (at, miss) in by_cell.items():
        mirrored = by_cell[swapped[hand], swapped[side], ready]
        assert mirrored == (re.sub("left|right", lambda m: swapped[m.group()], at), miss)


def _cell_player(cell: dict[str, str]) -> OnCourt:
    notes = (f"hand {cell['hand']}", f"ready_position {cell['ready']}")
    return player(3, "Okafor", Side(cell["side"]), *notes)


ATTACKS = re.compile(r"(?i)speed up at|speed up the ball above|roll it at")
NAMED = re.compile(r"(\w+)'s (left hip|right hip|paddle hip|off-hand hip)")
NOTES = (
    "hand right",
    "hand left",
    "ready_position backhand",
    "ready_position neutral",
    "body_jam weakness",
    "counter weakness",
    "counter strength",
    "counter_backhand weakness",
    "handles_pace weakness",
    "third_shot_drop weakness",
    "squeezes_middle often",
)


def _hips(advice: Advice) -> Iterator[tuple[str, str]]:
    for text in (advice.call, *(line.text for line in (*advice.lines, *advice.reasons))):
        yield from NAMED.findall(text)


def _everyone_says(theirs: tuple[OnCourt, ...]) -> dict[str, set[tuple[str, str]]]:
    """The hips that each answer names; the speed-up's own by its call alone."""
    hands = replace(match(Topic.WHOM_TO_TARGET, *theirs), asked=Asked(words="hands"))
    answers = {
        "speed-up": advise(match(Topic.AIM_ATTACK, *theirs)),
        "plan": advise(match(Topic.GAME_PLAN, *theirs)),
        "cue": advise(match(Topic.CUE, *theirs)),
        "targets": advise(match(Topic.WHOM_TO_TARGET, *theirs)),
        "targets, hands": advise(hands),
    }
    found = {name: set(_hips(advice)) for name, advice in answers.items()}
    found["speed-up"] = set(NAMED.findall(answers["speed-up"].call))
    return found


def test_the_speed_up_and_the_targets_name_the_same_hip() -> None:
    """The demo's own pair: opposite hips were named while two decisions weighed them.

    The plan let rules alone outweigh the one note and fell back on "the paddle hip"; whom to
    target weighed Okafor alone, where both hips tied, and took the first by the alphabet.
    """
    okafor = player(3, "Okafor", Side.RIGHT, "hand right", "body_jam weakness")
    lindqvist = player(4, "Lindqvist", Side.LEFT, "hand right")
    found = _everyone_says((okafor, lindqvist))
    assert found["speed-up"] == {("Okafor", "right hip")}
    assert found["targets"] == found["targets, hands"] == found["speed-up"]


@settings(max_examples=20, deadline=None)
@given(
    st.lists(st.sampled_from(NOTES), max_size=4, unique=True),
    st.lists(st.sampled_from(NOTES), max_size=4, unique=True),
    st.booleans(),
)
def test_no_two_answers_ever_name_different_hips(
    first: list[str], second: list[str], swapped: bool
) -> None:
    sides = (Side.RIGHT, Side.LEFT) if swapped else (Side.LEFT, Side.RIGHT)
    theirs = (player(3, "Okafor", sides[0], *first), player(4, "Lindqvist", sides[1], *second))
    found = _everyone_says(theirs)
    named = set().union(*found.values())
    assert len(named) <= 1, found


def test_the_counter_is_straight_ahead_of_whoever_hits_it() -> None:
    """Cross goes to the same-named court: our right faces their left (knowledge.court)."""
    for side in Side:
        asked = Asked(striker_side=side)
        theirs = (player(3, "Okafor", side, "body_jam weakness"),)
        call = advise(replace(match(Topic.AIM_ATTACK, *theirs), asked=asked)).call
        assert call.endswith("cross.")
        straight = (player(3, "Okafor", side.other, "body_jam weakness"),)
        call = advise(replace(match(Topic.AIM_ATTACK, *straight), asked=asked)).call
        assert call.endswith("straight.")


def test_a_partner_not_ready_makes_cross_worse_by_the_size_of_row_17() -> None:
    """Row 17: 4 points, so with one who is set the same spot is worth about 5 more."""

    def chance(ready: bool) -> float:
        asked = Asked(striker_side=Side.LEFT, facts=facts_of({"partner_set": ready}))
        found = aimed(replace(match(Topic.AIM_ATTACK, OKAFOR), asked=asked))
        spot = next(one for one in found.spots if one.spot is Spot.PADDLE_HIP)
        return 100 * found.weighed.ranking.of(spot.id).chance

    assert chance(ready=True) - chance(ready=False) == pytest.approx(5, abs=0.5)


def test_off_balance_a_straight_ball_is_back_at_once() -> None:
    def chance(footing: str) -> float:
        asked = Asked(striker_side=Side.RIGHT, facts=facts_of({"footing": footing}))
        found = aimed(replace(match(Topic.AIM_ATTACK, OKAFOR), asked=asked))
        return float(found.weighed.ranking.best.chance)

    assert chance("still") > chance("forward")


def test_of_near_equals_the_one_that_notes_speak_for() -> None:
    """Geometry alone is a point better for Lindqvist; a note within the doubt goes first."""
    okafor = player(3, "Okafor", Side.RIGHT, "hand right", "body_jam weakness")
    lindqvist = player(4, "Lindqvist", Side.LEFT, "hand right")
    assert hands_aim(match(Topic.AIM_ATTACK, okafor, lindqvist)).is_settled
    waits = player(4, "Lindqvist", Side.LEFT, "hand right", "ready_position backhand")
    found = hands_aim(match(Topic.AIM_ATTACK, okafor, waits))
    assert found.spot is not None
    assert found.spot.target == waits


def test_a_two_hander_is_cramped_at_the_body() -> None:
    def chance(claim: str) -> float:
        one = player(3, "Okafor", Side.LEFT, "hand right", claim)
        found = hands_aim(match(Topic.AIM_ATTACK, one))
        return float(found.weighed.ranking.of(found.spots[0].id).chance)

    assert chance("two_handed_backhand yes") > chance("two_handed_backhand no")


def test_slow_getting_down_makes_the_feet_better() -> None:
    def chance(*claims: str) -> float:
        found = hands_aim(match(Topic.AIM_ATTACK, player(3, "Okafor", Side.LEFT, *claims)))
        feet = next(one for one in found.spots if one.spot is Spot.FEET)
        return float(found.weighed.ranking.of(feet.id).chance)

    slow = chance(*often_noted("gets_low weakness"))
    assert slow > chance()
    assert chance(*often_noted("gets_low strength")) == pytest.approx(chance())


def _gain(**facts: Any) -> float:
    situation = match(Topic.AIM_ATTACK, OKAFOR, LINDQVIST)
    situation = replace(situation, asked=Asked(facts=facts_of(facts)))
    one = whether(situation, aimed(situation))
    return 100 * float(one.ranking.of(ATTACK).chance)


def test_the_nearer_to_the_net_the_less_time_they_have() -> None:
    gains = [_gain(height_m=1.1, from_net_m=each) for each in (2.2, 2.7, 3.2, 3.7)]
    assert gains == sorted(gains, reverse=True)


def test_the_bounce_buys_back_what_the_longer_way_gives_away() -> None:
    """2.6: the air takes 70 ms, the bounce buys disguise: about even between the two."""
    at_line = _gain(height_m=1.1, from_net_m=2.13, bounced=False)
    back = _gain(height_m=1.1, from_net_m=3.05, bounced=False)
    bounced = _gain(height_m=1.1, from_net_m=3.05, bounced=True)
    assert at_line - back > 1
    assert bounced == pytest.approx(at_line, abs=1)


def test_what_is_attackable_goes_by_height_and_distance() -> None:
    """The tables' margin; against the integrator and our coach's table: test_flight_leave."""

    def window(height_m: float, from_net_m: float) -> float:
        facts = facts_of({"height_m": height_m, "from_net_m": from_net_m})
        situation = replace(match(Topic.AIM_ATTACK, OKAFOR), asked=Asked(facts=facts))
        return question_of(situation).flat.margin_deg

    assert window(0.95, 1.0) < window(0.95, 3.0)
    assert window(0.6, 2.4) < 0 < window(0.9, 2.4) < window(1.2, 2.4)


def test_the_mix_is_over_hips_and_its_default_is_the_call() -> None:
    advice = advise(match(Topic.AIM_ATTACK, OKAFOR, LINDQVIST))
    assert advice.mix is not None
    assert advice.mix.default.call == advice.call
    assert advice.mix.change_up is not None
    assert "hip" in advice.mix.change_up.label
    assert sum(one.share for one in advice.mix.shares) == pytest.approx(1)


def test_every_answer_that_attacks_says_never_the_head_and_eyes_once() -> None:
    """Facts of the trade, 6: of eye injuries the ball does 43%; eyewear to ASTM F3164."""
    for case in CASES:
        advice = advise(ball_situation(case, Topic.AIM_ATTACK))
        spots = advice.call.lower()
        assert "head" not in spots
        attacks = bool(ATTACKS.search(advice.call))
        assert (advice.caution is not None) is attacks
        if attacks:
            assert advice.caution is not None
            assert "never the head" in advice.caution
            assert "eye" in advice.caution


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_answers_fit_a_phone(case: Case) -> None:
    advice = advise(ball_situation(case, Topic.AIM_ATTACK))
    assert len(advice.call) <= CALL_LIMIT
    assert all(len(one.text) <= LINE_LIMIT for one in advice.reasons)
    for line in (advice.number, advice.unless, advice.assumed, advice.caution):
        assert line is None or len(line) <= LINE_LIMIT


def test_long_names_fit_too() -> None:
    long = player(3, "Wolfeschlegelsteinhausenbergerdorff", Side.LEFT, "body_jam weakness")
    advice = advise(match(Topic.AIM_ATTACK, long, LINDQVIST))
    assert len(advice.call) <= CALL_LIMIT
    assert advice.mix is not None
    assert all(len(one.call) <= CALL_LIMIT for one in advice.mix.shares)


def test_one_who_is_asked_about_is_the_one_answered() -> None:
    situation = match(Topic.AIM_ATTACK, OKAFOR, LINDQVIST)
    asked = replace(situation, asked=Asked(about=(PlayerId(4),)))
    advice = advise(asked)
    assert "Okafor" not in advice.call
    assert advise(situation).call == "Speed up at Okafor's right hip."


def test_the_picture_has_both_arrows_from_the_court_in_front() -> None:
    picture = court_of(advise(match(Topic.AIM_ATTACK, OKAFOR, LINDQVIST)))
    first, second = picture.arrows
    assert first.label == "right hip"
    assert second.label == "change"
    assert first.width == pytest.approx(1.0)
    assert first.from_x_m > 0
    assert {marker.label for marker in picture.markers} == {"Mira", "Tom", "Okafor", "Lindqvist"}
    assert picture.alt.startswith("Speed up at Okafor's right hip. Change: ")


@pytest.mark.parametrize(("side", "towards_middle"), [(Side.LEFT, -1), (Side.RIGHT, -1)])
def test_their_right_hip_is_on_our_left(side: Side, towards_middle: int) -> None:
    """They face us: x grows to our right (knowledge.court)."""
    one = player(3, "Okafor", side, "hand right")
    paddle, other = (place_of(spot) for spot in spots_of([one], leaning=False)[:2])
    assert paddle is not None
    assert other is not None
    assert (paddle.x_m - other.x_m) * towards_middle > 0


def test_no_picture_while_a_side_is_not_known() -> None:
    nowhere = player(3, "Okafor", None, "hand right", "body_jam weakness")
    assert advise(match(Topic.AIM_ATTACK, nowhere)).picture is None


def test_nobody_named_still_gets_the_rule() -> None:
    advice = advise(Situation(topic=Topic.AIM_ATTACK))
    assert advice.call == "Speed up at the paddle hip, ball above the net."
    assert advice.mix is None
    assert advice.unless == "If it is above the net; low or stretched: dink it."


def _ended_on(one: OnCourt, ended: int, of: int) -> OnCourt:
    """The player with `ended` of `of` rallies that the pair lost by an error on their paddle."""
    names = [EvidenceId(f"rally:1:{n}") for n in range(of)]
    tally = RateTally(
        player=one.player,
        rate=Rate.STEADY,
        day=TODAY,
        made=tuple(names[ended:]),
        missed=tuple(names[:ended]),
        is_settled=True,
    )
    found = profile(one.player, one.name, [], today=TODAY, tallies=[tally])
    return replace(one, profile=replace(one.profile, rates=found.rates, settled=found.settled))


def test_on_whose_paddle_their_rallies_ended_counts_here_too() -> None:
    """One decision with whom to target, which counts it (row 25); the steadier one: none."""
    okafor, lindqvist = player(3, "Okafor", Side.LEFT), player(4, "Lindqvist", Side.RIGHT)
    pair = (_ended_on(okafor, 40, 44), _ended_on(lindqvist, 4, 44))
    found = hands_aim(match(Topic.AIM_ATTACK, *pair))
    assert found.spot is not None
    assert found.spot.target.name == "Okafor"
    hands = replace(match(Topic.WHOM_TO_TARGET, *pair), asked=Asked(words="hands"))
    assert "Lindqvist" not in advise(hands).call
    swapped = (_ended_on(okafor, 4, 44), _ended_on(lindqvist, 40, 44))
    other = hands_aim(match(Topic.AIM_ATTACK, *swapped))
    assert other.spot is not None
    assert other.spot.target.name == "Lindqvist"


def _own_gain(*claims: str, level: Level | None = None, **facts: Any) -> float:
    """Points that speeding up gains over one more dink, by what is noted of our hitter."""
    ours = (player(1, "Mira", Side.RIGHT, *claims), player(2, "Tom", Side.LEFT))
    situation = match(Topic.AIM_ATTACK, OKAFOR, LINDQVIST, ours=ours)
    situation = replace(
        situation, striker=PlayerId(1), level=level, asked=Asked(facts=facts_of(facts))
    )
    return gain_over_dink(whether(situation, aimed(situation)))


def test_our_own_speed_up_counts_both_ways() -> None:
    high: dict[str, Any] = {"height_m": 1.1}
    assert _own_gain(*often_noted("speed_up strength"), **high) > _own_gain(**high)
    assert _own_gain("speed_up weakness", **high) == -math.inf
    assert _own_gain(*often_noted("backhand_dink strength"), **high) == _own_gain(**high)


def test_our_own_topspin_counts_at_the_net_only() -> None:
    spins = often_noted("topspin often")
    at_net: dict[str, Any] = {"height_m": 0.8, "bounced": True}
    level = Level.L4_5
    assert _own_gain(*spins, level=level, **at_net) > _own_gain(level=level, **at_net)
    assert _own_gain(*spins, height_m=1.1) == _own_gain(height_m=1.1)


def test_a_partner_who_is_not_ready_counts_against_the_seam() -> None:
    """Row 17: nobody knows at whom a counter from the seam comes; straight ahead it is ours."""
    notes = often_noted("communication weakness", 30)
    pair = (
        player(3, "Okafor", Side.LEFT, *notes, *often_noted("counter strength", 30)),
        player(4, "Lindqvist", Side.RIGHT, *notes, *often_noted("counter strength", 30)),
    )

    def gain(ready: bool | None) -> float:
        facts = facts_of({} if ready is None else {"partner_set": ready})
        situation = replace(match(Topic.AIM_ATTACK, *pair), asked=Asked(facts=facts))
        found = aimed(situation)
        assert found.spot is None
        return gain_over_dink(whether(situation, found))

    assert gain(ready=False) < gain(ready=True) == gain(ready=None)


def test_below_four_rows_14_and_15_count_half() -> None:
    """Section 3: "for 3.0 to 3.5: halve rows 10 to 15"."""
    high: dict[str, Any] = {"height_m": 1.1}
    whole, half = _own_gain(level=Level.L4_0, **high), _own_gain(level=Level.L3_0, **high)
    assert half == pytest.approx(whole / 2, abs=0.2)
    assert _own_gain(level=Level.L3_5, **high) == half


@pytest.mark.parametrize(
    ("words", "leaning", "out_of_place"),
    [
        ("speed up when okafor is leaning in?", True, False),
        ("can i attack, he leans in a lot", True, False),
        ("i'm leaning in, can i speed up", False, False),
        ("speed it up, they're late and off balance", False, True),
        ("i'm late, do i speed up", False, False),
        ("we are moving, speed it up?", False, False),
        ("speed up late in the game?", False, False),
    ],
)
def test_words_about_them_are_not_words_about_us(
    words: str, leaning: bool, out_of_place: bool
) -> None:
    situation = replace(match(Topic.AIM_ATTACK, OKAFOR, LINDQVIST), asked=Asked(words=words))
    question = question_of(situation)
    assert (question.leaning, question.out_of_place) == (leaning, out_of_place)


def test_one_of_them_pulled_wide_is_out_of_place() -> None:
    situation = match(Topic.AIM_ATTACK, OKAFOR, LINDQVIST)
    theirs = replace(situation, asked=Asked(pulled_wide=PlayerId(3)))
    assert question_of(theirs).out_of_place
    ours = replace(situation, asked=Asked(pulled_wide=PlayerId(1)))
    assert not question_of(ours).out_of_place
