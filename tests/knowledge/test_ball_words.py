"""Heights and places by name, what is taken of a ball said back, and its buttons.

Shares of stature: Drillis and Contini 1966 as printed in Winter, Biomechanics and Motor Control of
Human Movement, figure 4.1 (ankle .039, knee .285, hip .530, shoulder .818, eyes .936). The court:
national rulebook, 2025 edition, 2.A to 2.C (kitchen 7 ft, baseline 22 ft, net 34 to 36 in).
"""

from __future__ import annotations

import pytest

from knowledge.advice import MatchFact
from knowledge.ball_facts import NOTHING_SAID, BallFacts, Depth, Footing, Spin
from knowledge.ball_places import FROM_NET_M, HeightName, PlaceName, height_m
from knowledge.tactics.ball_words import (
    FIELDS,
    OFFERS,
    ball_choices,
    height_words,
    place_words,
    settled,
    taken_as,
    with_fact,
)
from knowledge.vocabulary import Topic

FOOT_M = 0.3048
INCH_M = 0.0254

PUBLISHED_SHARES = {
    HeightName.ANKLE: 0.039,
    HeightName.KNEE: 0.285,
    HeightName.HIP: 0.530,
    HeightName.SHOULDER: 0.818,
    HeightName.HEAD: 0.936,
}


@pytest.mark.parametrize("stature_m", [1.55, 1.75, 1.95])
@pytest.mark.parametrize("name", PUBLISHED_SHARES)
def test_body_heights_are_the_published_shares(name: HeightName, stature_m: float) -> None:
    assert height_m(name, stature_m=stature_m) == pytest.approx(PUBLISHED_SHARES[name] * stature_m)


def test_body_heights_rise_from_the_feet_to_over_the_head() -> None:
    body = [one for one in HeightName if "net" not in one]
    heights = [height_m(one) for one in body]
    assert heights == sorted(heights)
    assert len(set(heights)) == len(heights)


def test_net_height_is_between_the_ruled_ones() -> None:
    assert 34 * INCH_M < height_m(HeightName.NET) < 36 * INCH_M
    assert height_m(HeightName.BELOW_NET) < 34 * INCH_M
    assert height_m(HeightName.ABOVE_NET) > 36 * INCH_M


def test_places_lie_by_the_rulebook_lines() -> None:
    assert FROM_NET_M[PlaceName.AT_LINE] == pytest.approx(7 * FOOT_M)
    assert FROM_NET_M[PlaceName.BASELINE] == pytest.approx(22 * FOOT_M)
    assert FROM_NET_M[PlaceName.IN_KITCHEN] < 7 * FOOT_M < FROM_NET_M[PlaceName.MID_COURT]
    assert FROM_NET_M[PlaceName.MID_COURT] < 22 * FOOT_M < FROM_NET_M[PlaceName.BEHIND_BASELINE]


@pytest.mark.parametrize("name", HeightName)
def test_a_named_height_is_said_by_name(name: HeightName) -> None:
    words = height_words(height_m(name))
    assert name.split("_")[0] in words
    assert "ft" not in words


@pytest.mark.parametrize("name", PlaceName)
def test_a_named_place_is_said_by_name(name: PlaceName) -> None:
    assert name.split("_")[-1].removesuffix("court") in place_words(FROM_NET_M[name])


@pytest.mark.parametrize(
    ("from_net_ft", "words"),
    [
        (9, "2 ft behind the line"),
        (8.5, "1.5 ft behind the line"),
        (25, "3 ft behind the baseline"),
        (5, "5 ft from the net"),
    ],
)
def test_other_places_are_said_in_feet(from_net_ft: float, words: str) -> None:
    assert place_words(from_net_ft * FOOT_M) == words


def test_other_heights_are_said_in_feet() -> None:
    assert height_words(2 * FOOT_M) == "2 ft up"


KNEE_HIGH = BallFacts(
    height_m=height_m(HeightName.KNEE), from_net_m=9 * FOOT_M, theirs=Depth.AT_LINE
)


def test_what_is_taken_is_one_line() -> None:
    line = taken_as(KNEE_HIGH)
    assert line == "Taken as: knee high, 2 ft behind the line, they're at the line."


def test_what_was_said_counts_before_the_defaults() -> None:
    said = BallFacts(theirs=Depth.BOTH_BACK, bounced=False)
    assert settled(said, KNEE_HIGH).theirs is Depth.BOTH_BACK
    assert settled(said, KNEE_HIGH).height_m == KNEE_HIGH.height_m
    assert settled(said, KNEE_HIGH).bounced is False
    line = taken_as(said, KNEE_HIGH)
    assert line is not None
    assert "both back" in line
    assert "knee high" in line
    assert "at the line" not in line


def test_who_is_back_meets_it_at_the_baseline_unless_it_says_where() -> None:
    back = BallFacts(ours=Depth.BOTH_BACK)
    assert settled(back, KNEE_HIGH).from_net_m == FROM_NET_M[PlaceName.BASELINE]
    at_nine = BallFacts(ours=Depth.BOTH_BACK, from_net_m=15 * FOOT_M)
    assert settled(at_nine, KNEE_HIGH).from_net_m == 15 * FOOT_M
    assert settled(back, NOTHING_SAID).from_net_m is None


def test_only_what_the_answer_uses_is_said_back() -> None:
    assert taken_as(KNEE_HIGH, uses=[MatchFact.HEIGHT]) == "Taken as: knee high."
    assert taken_as(KNEE_HIGH, uses=[MatchFact.SPIN]) is None
    assert taken_as(NOTHING_SAID) is None


def test_every_field_but_the_fault_can_be_said_and_offered() -> None:
    assert {*FIELDS.values()} == {*BallFacts.__dataclass_fields__} - {"fault"}
    assert {*OFFERS} == {*FIELDS}


@pytest.mark.parametrize(
    ("fact", "value"), [(fact, offer.value) for fact, all in OFFERS.items() for offer in all]
)
def test_every_button_settles_its_own_fact(fact: MatchFact, value: str) -> None:
    facts = with_fact(NOTHING_SAID, fact, value)
    assert getattr(facts, FIELDS[fact]) is not None
    others = {*FIELDS.values()} - {FIELDS[fact]}
    assert all(getattr(facts, one) is None for one in others)


@pytest.mark.parametrize(
    ("fact", "value", "words"),
    [
        (MatchFact.HEIGHT, "chest", "chest high"),
        (MatchFact.PLACE, "mid_court", "in mid court"),
        (MatchFact.BOUNCED, "no", "out of the air"),
        (MatchFact.FOOTING, Footing.BACKWARD, "moving back"),
        (MatchFact.SPIN, Spin.TOPSPIN, "with topspin"),
        (MatchFact.PACE, "50", "50 mph"),
        (MatchFact.PAST_SIDELINE, "yes", "past the sideline"),
        (MatchFact.THEIRS, Depth.BOTH_BACK, "they're both back"),
        (MatchFact.OURS, Depth.ONE_BACK, "you're one up, one back"),
        (MatchFact.PARTNER_SET, "no", "partner not set"),
        (MatchFact.WIND_SPEED, "20", "20 mph wind"),
    ],
)
def test_a_fact_is_said_back_as_pressed(fact: MatchFact, value: str, words: str) -> None:
    assert taken_as(with_fact(NOTHING_SAID, fact, value)) == f"Taken as: {words}."


@pytest.mark.parametrize(
    ("fact", "value"),
    [
        (MatchFact.HEIGHT, "3"),
        (MatchFact.PLACE, "moon"),
        (MatchFact.BOUNCED, "maybe"),
        (MatchFact.PACE, "900"),
        (MatchFact.PACE, "-3"),
    ],
)
def test_a_value_that_no_button_offers_is_refused(fact: MatchFact, value: str) -> None:
    with pytest.raises(ValueError, match=value):
        with_fact(NOTHING_SAID, fact, value)


def test_buttons_offer_what_was_neither_said_nor_assumed() -> None:
    found = ball_choices(
        Topic.AIM_ATTACK,
        BallFacts(bounced=True),
        [MatchFact.HEIGHT, MatchFact.BOUNCED, MatchFact.THEIRS],
        defaults=KNEE_HIGH,
    )
    assert [(one.fact, one.value) for one in found] == [
        ("met_at", "chest"),
        ("theirs", "both_back"),
    ]
    assert all(one.topic is Topic.AIM_ATTACK for one in found)


def test_more_buttons_of_one_fact_on_request() -> None:
    found = ball_choices(Topic.LOB, NOTHING_SAID, [MatchFact.THEIRS], each=3)
    assert [one.value for one in found] == ["both_back", "at_line", "coming_in"]
