"""What is said of one ball: sentences with their facts, follow-ups, taps, and what cannot be.

The sentences are data (tests/cases/ball_facts.toml). Metres in a foot and an inch, and metres a
second in a mile an hour, are exact by definition; the kitchen is 7 ft deep and the baseline 22 ft
from the net (national rulebook, 2025 edition, 2.A and 2.B).
"""

from __future__ import annotations

import re
from dataclasses import fields
from typing import Any

import pytest
from ball_cases import CASES, expected, facts_in, wrong_fields
from hypothesis import given
from hypothesis import strategies as st
from talk import Talk

from bot.chat.asked import Asked, facts_from_json, facts_to_json
from bot.chat.ball_forms import BallFormsError, check_ball_words, form, names_in
from bot.chat.ball_line import mended
from bot.chat.ball_said import find_ball
from bot.chat.measures_said import amount
from bot.chat.words import words
from bot.contract import to_json
from knowledge.ball_facts import NOTHING_SAID, BallFacts, Depth, Footing, Spin
from knowledge.ball_places import HeightName, height_m
from knowledge.tactics.ball_words import OFFERS, ball_choices
from knowledge.vocabulary import BallQuality, Topic

FOOT_M = 0.3048
KITCHEN_M = 7 * FOOT_M
BASELINE_M = 22 * FOOT_M


@pytest.mark.parametrize("half", ["held", "own"])
def test_sentences_give_their_facts_and_no_others(half: str) -> None:
    wrong = {case["said"]: found for case in CASES[half] if (found := wrong_fields(case))}
    assert not wrong


def test_the_set_is_large_and_a_fifth_of_it_says_nothing() -> None:
    cases = [*CASES["held"], *CASES["own"]]
    assert len(cases) >= 120
    assert sum(not expected(case) for case in cases) >= 30
    assert len({case["said"] for case in cases}) == len(cases)


def test_the_set_says_every_field_and_every_value() -> None:
    wanted = [expected(case) for half in CASES.values() for case in half]
    assert {key for one in wanted for key in one} == {one.name for one in fields(BallFacts)}
    for name, kind in (("theirs", Depth), ("ours", Depth), ("footing", Footing), ("spin", Spin)):
        assert {one[name] for one in wanted if name in one} == {*kind}, name
    for name in ("bounced", "past_sideline", "partner_set"):
        assert {one[name] for one in wanted if name in one} == {True, False}, name


@pytest.mark.parametrize(
    ("said", "metres"),
    [
        ("2 ft high", 2 * FOOT_M),
        ("2' high", 2 * FOOT_M),
        ("24 in high", 24 * 0.0254),
        ('24" high', 24 * 0.0254),
        ("it's 24 inches off the ground", 24 * 0.0254),
        ("60 cm high", 0.60),
        ("1.2 m high", 1.2),
        ("1,2 m high", 1.2),
        ("a foot and a half high", 1.5 * FOOT_M),
        ("two feet six inches high", 2.5 * FOOT_M),
        ("half a metre off the floor", 0.5),
        ("2 to 3 feet high", 2.5 * FOOT_M),
        ("3 m high", 3.0),
        ("0 cm off the ground", 0.0),
    ],
)
def test_measured_heights(said: str, metres: float) -> None:
    assert facts_in(said).height_m == pytest.approx(metres)


@pytest.mark.parametrize(
    ("said", "metres"),
    [
        ("i'm 2 ft behind the kitchen line", KITCHEN_M + 2 * FOOT_M),
        ("1 m back from the line", KITCHEN_M + 1),
        ("3 m back", KITCHEN_M + 3),
        ("a foot inside the baseline", BASELINE_M - FOOT_M),
        ("4 ft behind the baseline", BASELINE_M + 4 * FOOT_M),
        ("12 ft from the net", 12 * FOOT_M),
        ("at the kitchen line", KITCHEN_M),
        ("i'm at the net", KITCHEN_M),
        ("from the baseline", BASELINE_M),
    ],
)
def test_places(said: str, metres: float) -> None:
    assert facts_in(f"{said}, knee high").from_net_m == pytest.approx(metres)


@pytest.mark.parametrize(
    ("said", "number"),
    [("two", 2), ("twenty five", 25), ("a", 1), ("half a", 0.5), ("a couple of", 2), ("1.5", 1.5)],
)
def test_amounts(said: str, number: float) -> None:
    assert amount(said) == number


@pytest.mark.parametrize("typed", ["kneee", "sholder", "wasit", "chets", "kitchn", "baselin"])
def test_a_slip_of_one_letter_is_mended(typed: str) -> None:
    assert mended(typed) in {"knee", "shoulder", "waist", "chest", "kitchen", "baseline"}


@pytest.mark.parametrize("typed", ["chin", "spin", "weight", "eight", "count", "lane", "these"])
def test_another_word_is_no_slip(typed: str) -> None:
    assert mended(typed) == typed


FAULTS = [
    ("ball 4 m high, do I attack", "3 m", "height_m"),
    ("minus 2 ft high, do I attack", "below the ground", "height_m"),
    ("i'm 80 ft behind the line, do I attack", "off our side", "from_net_m"),
    ("i'm 9 ft in front of the kitchen line, do I attack", "off our side", "from_net_m"),
    ("200 mph wind, do I lob", "200 mph of wind", "wind_mps"),
    ("it comes at 300 mph, do I attack", "300 mph", "pace_mps"),
    ("3 cubits high, do I attack", '"cubits"', "height_m"),
    ("wind of 15 blorps, do I lob", '"blorps"', "wind_mps"),
    ("ball 90 ft past the sideline, do I go round the post", "that wide", "past_sideline"),
    ("50 feet outside, do I go round the post", "that wide", "past_sideline"),
]


@pytest.mark.parametrize(("said", "tells", "field"), FAULTS)
def test_what_cannot_be_is_told_in_a_line_and_the_rest_kept(
    said: str, tells: str, field: str
) -> None:
    facts = facts_in(f"{said}, they're both back")
    assert facts.fault is not None
    assert tells in facts.fault
    assert len(facts.fault) <= 60
    assert getattr(facts, field) is None
    assert facts.theirs is Depth.BOTH_BACK


@pytest.mark.parametrize("said", ["they are 60 feet back", "they stand 70 ft behind the line"])
def test_nobody_stands_far_off_the_court_but_back_is_back(said: str) -> None:
    facts = facts_in(f"{said}, drop volley?")
    assert facts.theirs is Depth.BOTH_BACK
    assert facts.fault is not None
    assert "off the court" in facts.fault
    assert len(facts.fault) <= 60


@pytest.mark.parametrize("said", ["they are 20 feet back", "2 m past the sideline", "6 ft wide"])
def test_what_can_be_is_no_fault(said: str) -> None:
    assert facts_in(said).fault is None


def test_two_faults_are_two_lines() -> None:
    fault = facts_in("ball 5 m high and a 200 mph wind").fault
    assert fault is not None
    assert len(fault.splitlines()) == 2


@pytest.mark.parametrize(("said", "tells"), [(said, tells) for said, tells, _ in FAULTS])
def test_a_reply_shows_the_fault_below_its_call(demo: Talk, said: str, tells: str) -> None:
    reply = demo.say(f"{said} at okafor?").splitlines()
    assert tells in reply[1]
    assert len(reply) > 2, "the rest is answered"


def test_a_follow_up_changes_one_fact_and_keeps_the_others(demo: Talk) -> None:
    demo.say("can i speed this up at okafor, chest high at the line")
    demo.say("and if they're both back?")
    facts = asked(demo).facts
    assert facts is not None
    assert facts.theirs is Depth.BOTH_BACK
    assert facts.height_m == pytest.approx(height_m(HeightName.CHEST))
    demo.say("what if it's knee high")
    facts = asked(demo).facts
    assert facts is not None
    assert facts.height_m == pytest.approx(height_m(HeightName.KNEE))
    assert facts.theirs is Depth.BOTH_BACK
    assert facts.from_net_m == pytest.approx(KITCHEN_M)
    assert asked(demo).topic is Topic.AIM_ATTACK
    assert asked(demo).about == (demo.player("Okafor"),)


def test_the_ball_alone_goes_on_from_a_question_about_one(demo: Talk) -> None:
    demo.say("can i speed this up at okafor")
    demo.say("chest high, they're both back")
    facts = asked(demo).facts
    assert facts is not None
    assert facts.theirs is Depth.BOTH_BACK
    assert asked(demo).topic is Topic.AIM_ATTACK


@pytest.mark.parametrize("said", ["off the dink or from the baseline for a lob", "we were back"])
def test_what_weighs_two_or_asks_after_a_plan_is_read_anew(demo: Talk, said: str) -> None:
    demo.say("game plan for okafor and lindqvist")
    before = asked(demo)
    demo.say(said)
    assert asked(demo).facts is None or asked(demo).topic is not before.topic


def test_a_new_height_unsays_how_good_the_old_one_was(demo: Talk) -> None:
    demo.say("where do I dink okafor, it's knee high")
    assert asked(demo).ball is BallQuality.STRETCHED
    demo.say("and if it's chest high?")
    assert asked(demo).ball is None


def test_a_fault_is_told_once(demo: Talk) -> None:
    demo.say("can i speed this up at okafor, 4 m high")
    assert "3 m" not in demo.say("and if they're both back?")


def test_a_tap_settles_its_fact_and_keeps_what_was_said(demo: Talk) -> None:
    demo.say("can i speed this up at okafor, chest high")
    for fact, offers in OFFERS.items():
        for choice in ball_choices(Topic.AIM_ATTACK, NOTHING_SAID, [fact], each=len(offers)):
            demo.press(f"1:set:aim_attack:{choice.fact}:{choice.value}")
            assert asked(demo).facts is not None
    facts = asked(demo).facts
    assert facts is not None
    values = [getattr(facts, one.name) for one in fields(BallFacts) if one.name != "fault"]
    assert None not in values


@pytest.mark.parametrize("bad", ["height:3", "theirs:moon", "bounced:maybe", "pace:900"])
def test_a_forged_tap_changes_nothing(demo: Talk, bad: str) -> None:
    demo.say("can i speed this up at okafor, chest high")
    before = asked(demo)
    demo.press(f"1:set:aim_attack:{bad}")
    assert asked(demo) == before


def test_a_tap_to_another_topic_is_about_the_same_ball(demo: Talk) -> None:
    demo.say("can i speed this up at okafor, chest high at the line")
    before = asked(demo).facts
    demo.press("1:ask:reset_or_counter")
    assert asked(demo).topic is Topic.RESET_OR_COUNTER
    assert asked(demo).facts == before


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("can i speed this up, chest high at the line", Topic.AIM_ATTACK),
        ("shoulder high, 50 mph and flat, do i let it go", Topic.LET_IT_GO),
        ("ball at my feet mid court, reset or counter", Topic.RESET_OR_COUNTER),
        ("they're both at the line, can i lob them", Topic.LOB),
        ("overhead, i'm moving back, where do i put it", Topic.AIM_OVERHEAD),
        ("high ball and they're both back, drop it short or deep", Topic.DROP_ON_DEEP_OPPONENTS),
        ("knee high dink, take it out of the air or let it bounce", Topic.TAKE_OR_LET_BOUNCE),
        ("third from the baseline, they're at the kitchen, drop or drive", Topic.THIRD_SHOT),
    ],
)
def test_questions_with_facts_reach_their_topic(demo: Talk, said: str, topic: Topic) -> None:
    demo.say(said)
    assert asked(demo).topic is topic


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("overhead, im backing up", Topic.AIM_OVERHEAD),
        ("chest high, speed up?", Topic.AIM_ATTACK),
        ("what if it's chest high", Topic.ERNIE_OR_POST),
    ],
)
def test_a_shot_of_its_own_is_no_change_of_the_one_before(
    demo: Talk, said: str, topic: Topic
) -> None:
    demo.say("should we erne okafor")
    demo.say(said)
    assert asked(demo).topic is topic


def test_json_shows_the_facts_among_the_slots(demo: Talk) -> None:
    said = "can i speed this up, chest high at the line, they're both back"
    demo.say(said)
    assert demo.heard is not None
    slots = to_json(said, demo.heard, {})["slots"]
    assert slots["facts"] == {
        "height_m": pytest.approx(height_m(HeightName.CHEST)),
        "from_net_m": pytest.approx(KITCHEN_M),
        "theirs": "both_back",
    }
    demo.say("who covers the middle")
    assert "facts" not in (to_json(said, demo.heard, {})["slots"] or {})


FACTS = st.builds(
    BallFacts,
    height_m=st.none() | st.floats(0, 3),
    bounced=st.none() | st.booleans(),
    footing=st.none() | st.sampled_from(Footing),
    theirs=st.none() | st.sampled_from(Depth),
    spin=st.none() | st.sampled_from(Spin),
    fault=st.none() | st.text(max_size=20),
)


@given(FACTS)
def test_facts_are_stored_and_read_back(facts: BallFacts) -> None:
    assert facts_from_json(facts_to_json(facts)) == facts


@given(st.text(max_size=120))
def test_any_text_is_read_without_fail_and_within_bounds(text: str) -> None:
    said = words(text)
    facts = find_ball(said, after="").facts
    assert facts.height_m is None or 0 <= facts.height_m <= 3
    assert facts.from_net_m is None or 0 <= facts.from_net_m <= BASELINE_M + 6


TABLES = (
    "theirs", "ours", "alone", "place", "place_mark", "place_side", "body", "height", "measured",
    "bounced", "footing", "spin", "sideline", "partner", "wind", "unknown", "veto",
)  # fmt: skip


@pytest.mark.parametrize("table", TABLES)
def test_every_form_is_an_expression_of_whole_words(table: str) -> None:
    for name in names_in(table):
        assert form(table, name).search("") is None
        assert "<" not in re.sub(r"\(\?(?:P<\w+>|<[=!])", "", form(table, name).pattern), name


@pytest.mark.parametrize(
    ("table", "named"), [("spin", {"wobble": ["wobbly"]}), ("bounced", {"yes": ["bounced"]})]
)
def test_data_that_nothing_reads_is_refused(table: str, named: dict[str, Any]) -> None:
    with pytest.raises(BallFormsError, match=table):
        check_ball_words({table: named} | _all_but(table))


def _all_but(table: str) -> dict[str, Any]:
    return {one: {name: ["x"] for name in names_in(one)} for one in TABLES if one != table}


def asked(demo: Talk) -> Asked:
    found = demo.context.asked
    assert found is not None
    return found
