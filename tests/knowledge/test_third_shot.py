"""The third: the return, our balance and shots, their pair, the wind, the line, the fifth ball.

Judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from aim_cases import Case, cases
from court_pictures import court_of
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import match, often_noted, player
from told_ball_cases import acting, idle, names, said_of, told_situation

from knowledge.advice import CALL_LIMIT, Confidence, MatchFact
from knowledge.ball_facts import BallFacts, Depth, Footing
from knowledge.ball_places import HeightName, height_m
from knowledge.court import HALF_LENGTH_M, HALF_WIDTH_M
from knowledge.effects import OptionId
from knowledge.planning.plan_lines import plan_lines
from knowledge.planning.thirds import Third, third_line, thirds_of
from knowledge.side_flights import flown
from knowledge.side_view import SideView
from knowledge.situation import Asked, Situation, Wind
from knowledge.tactics import advise
from knowledge.tactics.third_effects import WIND_CARRIES_DROP_FT, WIND_STOPS_DROP_FT
from knowledge.tactics.third_shot import third_asked
from knowledge.vocabulary import TRAITS, BallQuality, Side, Topic, TraitKind
from knowledge.wind import Stroke, shift

CASES = cases("third_shot.toml")


def _third(case: Case) -> Third | None:
    situation = told_situation(case, Topic.THIRD_SHOT)
    thirds = thirds_of(situation)
    return third_asked(thirds, situation) if thirds else None


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    advice, third = advise(told_situation(case, Topic.THIRD_SHOT)), _third(case)
    assert advice.call == case.get("call", advice.call)
    said = said_of(advice)
    assert [text for text in case.get("says", ()) if text not in said] == []
    assert [text for text in case.get("never", ()) if text in said] == []
    assert (advice.confidence is Confidence.GENERAL_RULE) >= case.get("general", False)
    if third is not None:
        assert third.shot == case.get("shot", third.shot)
        assert third.where == case.get("where", third.where)
        acts = acting(third.weighed.ranking)
        assert set(case.get("acts", ())) - acts == set()
        assert set(case.get("idle", ())) & acts == set()


def test_every_effect_has_a_case_that_calls_for_it_and_one_that_does_not() -> None:
    rankings = [third.weighed.ranking for case in CASES if (third := _third(case)) is not None]
    declared = set().union(*(names(one.decision.effects) for one in rankings))
    called = set().union(*(set(case.get("acts", ())) for case in CASES))
    assert declared - called == set()
    spared = set().union(
        *(idle(one) | (declared - names(one.decision.effects)) for one in rankings)
    )
    assert declared - spared == set()


def test_plan_and_topic_have_one_decision() -> None:
    """What the plan says of thirds before the rally is the topic's own call and estimate."""
    hale = player(5, "Hale", Side.LEFT, *often_noted("forward_speed weakness", 3))
    brandt = player(6, "Brandt", Side.RIGHT, "hand right")
    for wind in (None, *Wind):
        situation = replace(match(Topic.GAME_PLAN, hale, brandt), wind=wind)
        line = third_line(situation)
        assert line is not None
        advice = advise(replace(situation, topic=Topic.THIRD_SHOT))
        assert advice.call == f"{line.do}."
        assert advice.numbers["third_per_100"] == line.per_100
        assert line in plan_lines(situation)


def test_what_is_told_of_one_ball_does_not_move_the_plan() -> None:
    hale = player(5, "Hale", Side.LEFT, *often_noted("forward_speed weakness", 3))
    plain = match(Topic.GAME_PLAN, hale)
    told = replace(plain, asked=Asked(words="short return sits up", ball=BallQuality.EASY))
    assert third_line(plain) == third_line(told)


def test_the_winds_feet_are_those_of_the_coach() -> None:
    """Computed separately beforehand: 10 mph moves a drop +3.5 or -4.4 ft."""
    assert shift(Stroke.DROP, along_mph=10).along_ft == pytest.approx(3.5, abs=0.1)
    assert shift(Stroke.DROP, along_mph=-10).along_ft == pytest.approx(-4.4, abs=0.1)
    for mph, said in ((10, WIND_CARRIES_DROP_FT), (-10, -WIND_STOPS_DROP_FT)):
        assert shift(Stroke.DROP, along_mph=mph).along_ft == pytest.approx(said, abs=0.02)


ROW_POINTS, ROW_DOUBT = 4.0, 3.0
"""Common practice, no source: 4 points, with a doubt of 3."""


@pytest.mark.parametrize(
    ("words", "shot"),
    [
        ("deep return", "drop"),
        ("low return", "drop"),
        ("deep low return", "drop"),
        ("short return", "drive"),
        ("high return", "drive"),
        ("short return sits up", "drive"),
    ],
)
def test_rows_seven_and_eight_come_out_of_the_flight(words: str, shot: str) -> None:
    """Deep or low: drop. Short or high: drive. Each within the row's own doubt of its size."""
    advice = advise(Situation(topic=Topic.THIRD_SHOT, asked=Asked(words=words)))
    assert _asked_third(words).shot == shot
    points = advice.numbers["points_over_the_other_shot"]
    assert points == pytest.approx(ROW_POINTS, abs=ROW_DOUBT)


def _asked_third(words: str, **facts: Any) -> Third:
    asked = Asked(words=words, facts=BallFacts(**facts))
    (third,) = thirds_of(Situation(topic=Topic.THIRD_SHOT, asked=asked))
    return third


def _drive_over_drop(words: str, **facts: Any) -> float:
    ranking = _asked_third(words, **facts).weighed.ranking
    best = {
        shot: max(one.chance for one in ranking.ranked if one.option.id.startswith(f"{shot}:"))
        for shot in ("drop", "drive")
    }
    return 100 * (best["drive"] - best["drop"])


def test_the_better_the_return_the_less_we_drive() -> None:
    for better_and_better in (
        ("short return", "they are set"),
        ("short return", "deep return"),
        ("short return sits up", "short return below the knee"),
        ("short return", "short return off balance"),
        ("they are set", "they are set off balance"),
        ("he is still running in", "they are set"),
    ):
        points = [_drive_over_drop(words) for words in better_and_better]
        assert points == sorted(points, reverse=True)


def test_off_balance_costs_what_coaches_say() -> None:
    """Common practice: about 4 points of a drive, 1 of a drop (the rules that this replaced)."""
    plain, off = (
        _asked_third(words).weighed.ranking
        for words in ("they are set", "they are set off balance")
    )
    for shot, cost in (("drive", 4.0), ("drop", 1.0)):
        option = OptionId(f"{shot}:middle")
        lost = 100 * (plain.of(option).chance - off.of(option).chance)
        assert lost == pytest.approx(cost, abs=1.5)


def test_a_mix_is_drop_against_drive_and_never_a_lob() -> None:
    situation = told_situation(
        {"words": "mix of drives and drops?", "them": _PAIR}, Topic.THIRD_SHOT
    )
    mix = advise(situation).mix
    assert mix is not None
    assert {one.option.partition(":")[0] for one in mix.shares} == {"drop", "drive"}
    words = "he is still running in, off balance"
    told = told_situation({"words": words, "them": _PAIR}, Topic.THIRD_SHOT)
    mix = advise(told).mix
    assert mix is not None
    assert {one.option.partition(":")[0] for one in mix.shares} == {"drop", "drive"}
    assert "return" not in mix.trigger
    decided = told_situation({"words": "short return", "them": _PAIR}, Topic.THIRD_SHOT)
    assert advise(decided).mix is None


_PAIR = [{"name": "Hale", "side": "left"}, {"name": "Brandt", "side": "right"}]


def test_the_other_return_is_a_button() -> None:
    def values(words: str) -> set[str | None]:
        asked = Asked(words=words)
        choices = advise(Situation(topic=Topic.THIRD_SHOT, asked=asked)).choices
        return {one.value for one in choices if one.fact == MatchFact.BALL}

    assert values("") == {"easy", "stretched"}
    assert values("deep return") == {"easy"}
    assert values("short return") == {"stretched"}


def test_the_height_that_was_assumed_has_the_other_one_as_a_button() -> None:
    """And pressing it changes the ball: a short one below the knee is no ball to drive."""

    def heights(words: str, **facts: Any) -> set[str | None]:
        asked = Asked(words=words, facts=BallFacts(**facts))
        choices = advise(Situation(topic=Topic.THIRD_SHOT, asked=asked)).choices
        return {one.value for one in choices if one.fact == MatchFact.HEIGHT}

    assert heights("deep return") == {"hip"}
    assert heights("short return") == {"shin"}
    assert heights("deep return", height_m=0.5) == set()
    assert heights("he is still running in") == set()
    assert _asked_third("short return").shot == "drive"
    assert _asked_third("short return", height_m=height_m(HeightName.SHIN)).shot == "drop"


@pytest.mark.parametrize("side", list(Side))
def test_the_picture_lands_in_their_half(side: Side) -> None:
    hale = player(5, "Hale", side, *often_noted("forward_speed weakness", 3))
    plan = replace(match(Topic.THIRD_SHOT, hale), asked=Asked(striker_side=side))
    court = court_of(advise(plan))
    assert court.arrows
    for arrow in court.arrows:
        assert arrow.from_y_m < -HALF_LENGTH_M + 1
        assert 0 < arrow.to_y_m <= HALF_LENGTH_M
        assert abs(arrow.to_x_m) <= HALF_WIDTH_M


@pytest.mark.parametrize(
    ("words", "shots", "mark"),
    [
        ("deep return", ["drop"], "hit up"),
        ("short return sits up", ["drive", "drop"], "chest"),
        ("he is still running in", ["drive", "drop"], "chest"),
    ],
)
def test_a_told_ball_is_drawn_from_the_side(words: str, shots: list[str], mark: str) -> None:
    """The shot of the call with its window first, the drop beside it, and the same in words."""
    advice = advise(Situation(topic=Topic.THIRD_SHOT, asked=Asked(words=words)))
    view = advice.picture
    assert isinstance(view, SideView)
    assert [one.shot for one in view.flights] == shots
    assert [one.has_window for one in view.flights] == [True, *[False] * (len(shots) - 1)]
    assert [one.label for one in view.levels] == [mark]
    works = round(10 * advice.numbers[f"{shots[0]}_works"])
    assert f"{works} of 10" in " ".join(view.notes)
    assert f"Of 10, {works}" in view.alt
    drawn = flown(view)
    assert len(drawn.paths) == len(shots)
    assert drawn.window


@pytest.mark.parametrize("side", list(Side))
def test_behind_a_poacher_is_drawn_and_said_behind(side: Side) -> None:
    """Outside of where the poacher stands, as the plan draws it; at a slow one straight there."""
    found = {}
    for note in ("poaching often", "forward_speed weakness"):
        hale = player(5, "Hale", side, *often_noted(note, 3))
        plan = match(Topic.GAME_PLAN, hale, player(6, "Brandt", side.other))
        court = court_of(advise(replace(plan, topic=Topic.THIRD_SHOT)))
        line = third_line(plan)
        assert line is not None
        assert line.arrow is not None
        assert court.arrows[0].to_x_m == pytest.approx(line.arrow.to_x_m)
        found[note] = (court.alt, abs(court.arrows[0].to_x_m))
    assert "behind Hale" in found["poaching often"][0]
    assert "at Hale" in found["forward_speed weakness"][0]
    assert found["poaching often"][1] > found["forward_speed weakness"][1]


_CLAIMS = [
    f"{trait} {value}"
    for trait, row in TRAITS.items()
    if row.kind is not TraitKind.FACT
    for value in row.values
] + ["hand left", "two_handed_backhand yes", "height tall"]


@settings(max_examples=60)
@given(
    names=st.tuples(*[st.sampled_from(["Ruiz", "Ana Ruiz-Peña", "van der Meer"])] * 2),
    claims=st.tuples(*[st.lists(st.sampled_from(_CLAIMS), max_size=6)] * 4),
    words=st.sampled_from(
        ["", "deep return", "short return", "line open", "to my backhand", "mix", "or the line"]
    ),
    theirs=st.none() | st.sampled_from(Depth),
    footing=st.none() | st.sampled_from(Footing),
    wind=st.none() | st.sampled_from(Wind),
)
def test_any_notes_and_any_ball_fit_a_phone(
    names: tuple[str, str],
    claims: tuple[list[str], ...],
    words: str,
    theirs: Depth | None,
    footing: Footing | None,
    wind: Wind | None,
) -> None:
    situation = Situation(
        topic=Topic.THIRD_SHOT,
        ours=tuple(player(1 + n, ("Mira", "Tom")[n], None, *claims[n]) for n in (0, 1)),
        theirs=tuple(player(3 + n, names[n], Side.LEFT, *claims[2 + n]) for n in (0, 1)),
        asked=Asked(words=words, facts=BallFacts(theirs=theirs, footing=footing)),
        wind=wind,
    )
    advice = advise(situation)
    assert len(advice.call) <= CALL_LIMIT
    assert advice.call.endswith(".")
    assert all(len(reason.text) <= 60 for reason in advice.reasons)
    lines = [advice.number, advice.unless, advice.assumed, advice.caution]
    assert all(len(line) <= 60 for line in lines if line)
