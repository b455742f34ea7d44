"""Where to serve: hand and court, the people, our own server, the day, and what isn't known.

Sizes and judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from aim_cases import Case, cases, situation_of
from court_pictures import court_of
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import often_noted, player
from scipy.stats import norm
from winds_offered import winds_offered

from knowledge.advice import CALL_LIMIT, Advice, Confidence, MatchFact
from knowledge.effects import OptionId
from knowledge.honest_risk import cost_of_misses, misses_paid_for
from knowledge.planning import cue
from knowledge.planning.returning import serve_line
from knowledge.situation import Asked, Situation, Wind
from knowledge.tactics import advise
from knowledge.tactics.aim_words import REASON_LIMIT
from knowledge.tactics.serve_answer import NOBODY, answer_serve, receivers
from knowledge.tactics.serve_answer import court_of as court_at
from knowledge.tactics.serve_lanes import Lane, run_ft, wing_at
from knowledge.tactics.serve_scatter import BODY_AIM_FT, LINE_AIM_FT, Scatter
from knowledge.vocabulary import (
    TRAITS,
    Level,
    RallyChance,
    RallyPoints,
    Side,
    Topic,
    TraitKind,
    Wing,
)

CASES = cases("aim_serve.toml")


def _said(advice: Advice) -> str:
    lines = [advice.call, *(one.text for one in advice.reasons), advice.number, advice.unless]
    return "\n".join(line for line in lines if line)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    situation = situation_of(case, Topic.AIM_SERVE)
    advice = advise(situation)
    if "call" in case:
        assert advice.call == case["call"]
    said = _said(advice)
    assert all(text in said for text in case.get("says", ()))
    assert not any(text in said for text in case.get("never", ()))
    assert (advice.confidence is Confidence.GENERAL_RULE) >= case.get("general", False)
    court = court_at(situation)
    if court is not None:
        answer = answer_serve(situation, receivers(situation)[0], court)
        assert answer.lane == case.get("lane", answer.lane)
        assert answer.lane != case.get("not_lane")
        assert answer.is_deep is case.get("deep", answer.is_deep)


def test_there_are_enough_cases() -> None:
    assert len(CASES) >= 25


def test_the_honest_risk_as_the_review_worked_it_out() -> None:
    """By hand: +1 pays for 2.3 misses serving, 1.8 returning; +2.5 5.7, +5 8.9."""
    serving, receiving = RallyChance(0.44), RallyChance(0.56)
    assert misses_paid_for(RallyPoints(1), serving) == pytest.approx(2.3, abs=0.05)
    assert misses_paid_for(RallyPoints(1), receiving) == pytest.approx(1.8, abs=0.05)
    assert misses_paid_for(RallyPoints(2.5), serving) == pytest.approx(5.7, abs=0.05)
    assert misses_paid_for(RallyPoints(5), receiving) == pytest.approx(8.9, abs=0.05)
    assert cost_of_misses(misses_paid_for(RallyPoints(2.5), serving), serving) == pytest.approx(2.5)


@pytest.mark.parametrize("factor", [0.5, 1.0, 1.5, 2.0])
def test_misses_at_a_line_are_those_of_a_normal_scatter(factor: float) -> None:
    """Against scipy's normal distribution; the middle of the box has two lines 5 ft away."""
    scatter = Scatter().times(factor)
    line = norm.cdf(-LINE_AIM_FT, scale=scatter.across_ft)
    middle = 2 * norm.cdf(-BODY_AIM_FT, scale=scatter.across_ft)
    assert scatter.line_misses == pytest.approx(100 * (line - middle))


@pytest.mark.parametrize("court", list(Side))
@pytest.mark.parametrize("hand", ["left", "right"])
def test_the_two_lanes_meet_different_wings(hand: str, court: Side) -> None:
    one = player(3, "Okafor", None, f"hand {hand}")
    wings = {wing_at(lane, one, court) for lane in (Lane.T, Lane.WIDE)}
    assert wings == {Wing.FOREHAND, Wing.BACKHAND}
    assert wing_at(Lane.BODY, one, court) is None


def test_a_wide_serve_adds_to_the_run_of_who_must_cross() -> None:
    """By hand: 7.5 and 2.5 ft off the centre line, 16.64 ft... to 5 ft beyond it: see geometry.

    From 0.5 m behind the baseline to 0.3 m behind the kitchen line are 15.66 ft; sideways 12.5
    and 7.5 ft: hypotenuses 20.03 and 17.36 ft.
    """
    wide, tee = (run_ft(lane, Side.RIGHT, to=Side.LEFT) for lane in (Lane.WIDE, Lane.T))
    deep = 15 + 0.5 / 0.3048 - 0.3 / 0.3048
    assert wide == pytest.approx(math.hypot(12.5, deep))
    assert tee == pytest.approx(math.hypot(7.5, deep))


def test_the_picture_lands_in_the_receivers_box() -> None:
    one = player(3, "Okafor", None, "hand right", *often_noted("body_jam weakness"))
    for side, sign in ((Side.RIGHT, -1), (Side.LEFT, 1)):
        asked = Asked(striker_side=side)
        advice = advise(Situation(topic=Topic.AIM_SERVE, theirs=(one,), asked=asked))
        for arrow in court_of(advice).arrows:
            assert arrow.to_x_m * sign > 0  # their right court is on our left
            assert arrow.from_x_m * sign < 0  # diagonal
    assert advise(Situation(topic=Topic.AIM_SERVE, theirs=(one,))).picture is None


def test_cue_and_topic_say_the_same_serve() -> None:
    for case in CASES:
        if case.get("serving") == "us":
            situation = situation_of(case, Topic.AIM_SERVE)
            line = cue.serve_line_at_score(situation)
            assert line is not None
            assert f"{line.do}." == advise(situation).call


def test_the_branches_are_buttons() -> None:
    pair = (player(3, "Okafor", None), player(4, "Lindqvist", None))
    both = advise(Situation(topic=Topic.AIM_SERVE, theirs=pair))
    facts = [(choice.fact, choice.about) for choice in both.choices[:2]]
    assert facts == [(MatchFact.ABOUT, 3), (MatchFact.ABOUT, 4)]
    one = advise(
        Situation(topic=Topic.AIM_SERVE, theirs=pair, asked=Asked(about=(pair[0].player,)))
    )
    assert {choice.value for choice in one.choices[:2]} == {"left", "right"}
    assert any(choice.topic is Topic.PROBE for choice in one.choices)


def test_still_air_is_said_and_the_wind_is_a_button() -> None:
    noted = player(3, "Okafor", None, "hand right", *often_noted("body_jam weakness"))
    situation = Situation(
        topic=Topic.AIM_SERVE, theirs=(noted,), asked=Asked(striker_side=Side.RIGHT)
    )
    still, blown = advise(situation), advise(replace(situation, wind=Wind.AGAINST_US))
    assert still.assumed == "Taken: no wind."
    assert blown.assumed is None
    assert winds_offered(still) == [Wind.BEHIND_US, Wind.AGAINST_US]
    assert winds_offered(blown) == []


def test_numbers_are_in_full_and_agree_with_the_words() -> None:
    advice = advise(Situation(topic=Topic.AIM_SERVE))
    numbers = advice.numbers
    assert numbers["aim_inside_ft"] == 6.5
    assert f"in: {numbers['long_in_100']:.0f} in 100 long" in str(advice.number)
    assert numbers["deep_extra_misses"] < numbers["long_in_100"]
    assert 0 < numbers["deep_chance"] < 1
    behind = advise(Situation(topic=Topic.AIM_SERVE, wind=Wind.BEHIND_US)).numbers
    assert behind["landing_spread_ft"] > numbers["landing_spread_ft"]
    assert behind["wind_carry_ft"] == pytest.approx(4.9)


def test_depth_has_its_effects_and_mid_box_has_none() -> None:
    answer = answer_serve(Situation(topic=Topic.AIM_SERVE), NOBODY, Side.RIGHT)
    deep, mid_box = (answer.depth.of(OptionId(one)) for one in ("deep", "mid-box"))
    assert len(deep.parts) == 2
    assert mid_box.parts == ()


def test_the_plan_serves_as_deep_as_the_topic() -> None:
    one = player(3, "Okafor", None)
    for level in (Level.L3_0, Level.L5_0):
        situation = Situation(topic=Topic.GAME_PLAN, theirs=(one,), level=level)
        is_deep = answer_serve(situation, one, Side.RIGHT).is_deep
        found = serve_line(situation, one, Side.RIGHT)
        assert ("deep" in found.do, "mid-box" in found.do) == (is_deep, not is_deep)


def test_what_we_served_lately_is_counted() -> None:
    case = next(case for case in CASES if case.get("lane") == "t")
    bare = advise(situation_of(case, Topic.AIM_SERVE)).mix
    situation = situation_of({**case, "recent": ["t"] * 12}, Topic.AIM_SERVE)
    mix = advise(situation).mix
    assert bare is not None
    assert bare.change_up is not None
    assert bare.trigger
    assert mix is not None
    assert (mix.default.option, mix.logged_aims) == ("t", 12)
    assert mix.value == bare.value  # the estimate is of notes: our pattern moves only what it loses
    assert mix.pattern_loss_points is None  # twelve aims are too few to speak of a pattern
    backhand = replace(situation, recent_aims={Topic.AIM_SERVE: ("backhand",) * 12})
    assert advise(backhand).mix == mix  # a right-hander's backhand is the T in the right court


def test_a_server_with_one_target_has_no_mix() -> None:
    case = next(case for case in CASES if "big target" in case.get("call", ""))
    assert advise(situation_of(case, Topic.AIM_SERVE)).mix is None


_CLAIMS = [
    f"{trait} {value}"
    for trait, row in TRAITS.items()
    if row.kind is not TraitKind.FACT
    for value in row.values
] + ["hand left", "hand right", "two_handed_backhand yes"]


@settings(max_examples=40)
@given(
    names=st.tuples(*[st.sampled_from(["Ruiz", "Ana Ruiz-Peña", "van der Meer"])] * 2),
    claims=st.tuples(*[st.lists(st.sampled_from(_CLAIMS), max_size=6)] * 4),
    court=st.sampled_from([Side.LEFT, Side.RIGHT, None]),
    words=st.sampled_from(["", "sun behind us"]),
)
def test_any_notes_fit_a_phone(
    names: tuple[str, str],
    claims: tuple[list[str], ...],
    court: Side | None,
    words: str,
) -> None:
    situation = Situation(
        topic=Topic.AIM_SERVE,
        ours=tuple(player(1 + n, ("Mira", "Tom")[n], None, *claims[n]) for n in (0, 1)),
        theirs=tuple(player(3 + n, names[n], None, *claims[2 + n]) for n in (0, 1)),
        asked=Asked(striker_side=court, words=words, sun=bool(words)),
    )
    advice = advise(situation)
    assert len(advice.call) <= CALL_LIMIT
    assert advice.call.endswith(".")
    assert all(len(reason.text) <= REASON_LIMIT + 10 for reason in advice.reasons)
