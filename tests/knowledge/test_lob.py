"""Lobs: ours off a dead dink, a desperate one, and theirs; one decision with the plan.

Sizes and judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

from dataclasses import replace

import nashpy
import pytest
from aim_cases import Case, cases
from court_pictures import court_of
from high_ball_cases import check, everything_said, high_ball
from noted_players import MIRA, TOM, match, often_noted, player

from knowledge.advice import CALL_LIMIT, Confidence
from knowledge.ball_facts import BallFacts
from knowledge.court import METRES_PER_FOOT, at_kitchen_line, lane_in_court_m
from knowledge.effects import OptionId
from knowledge.mixing.guessing import guessables, payoffs
from knowledge.planning.lobbing import lob_line
from knowledge.situation import Agreement, Asked, Situation, Wind
from knowledge.tactics import advise
from knowledge.tactics import lob_sizes as sizes
from knowledge.tactics.aim_words import REASON_LIMIT
from knowledge.tactics.lob_answer import answer_lob
from knowledge.tactics.lob_effects import NO_LOB, question_of
from knowledge.tactics.lob_lanes import (
    HIGH_LOB,
    SOFT_BLOCK,
    LobLane,
    aloft_s,
    landing_over,
    misses,
    straight_costs,
    wind_feet,
)
from knowledge.tactics.lob_meaning import LobMeaning, meaning
from knowledge.tactics.lob_mix import lob_mix, lobs_a_game, solved
from knowledge.tactics.lob_race import THEIR_LOB, crossing_run, own_run
from knowledge.tactics.lob_runner import forehand_overhead
from knowledge.vocabulary import AgreementKey, PlayerId, Side, Topic
from knowledge.wind import landing

CASES = cases("lobs.toml")
WEAK_UNDER = player(3, "Okafor", Side.LEFT, "hand right", *often_noted("lob_defense weakness", 4))
PARTNER = player(4, "Lindqvist", Side.RIGHT)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    advice = check(case, Topic.LOB)
    assert len(advice.call) <= CALL_LIMIT
    assert all(len(reason.text) <= REASON_LIMIT for reason in advice.reasons), advice.reasons


def test_a_note_that_does_not_decide_it_still_says_over_whom() -> None:
    """One note makes no lob better than a dink, but it answers "over whom"."""
    noted = player(3, "Okafor", Side.LEFT, "lob_defense weakness")
    advice = advise(match(Topic.LOB, noted, PARTNER))
    assert advice.confidence is Confidence.GENERAL_RULE
    assert advice.reasons[0].text == "If at all, Okafor: weak under lobs"
    quick = player(3, "Okafor", Side.LEFT, "lob_defense weakness", "foot_speed strength")
    for one in (quick, player(3, "Okafor", Side.LEFT)):
        told = advise(match(Topic.LOB, one, PARTNER)).reasons
        assert not [reason for reason in told if "If at all" in reason.text]


@pytest.mark.parametrize(
    ("words", "weighs"),
    [
        ("should we lob or keep it low", True),
        ("tom reckons we should lob and i prefer a low ball", True),
        ("should we lob or drive", False),
        ("lob when they lean in", False),
    ],
)
def test_a_lob_held_against_a_low_ball_is_the_exception(words: str, *, weighs: bool) -> None:
    advice = advise(replace(match(Topic.LOB, PARTNER), asked=Asked(words=words)))
    assert advice.call.startswith("Low as the rule") is weighs


@pytest.mark.parametrize(("said", "mph"), [("20 mph", 20.0), ("200 mph", 10.0), ("", 10.0)])
def test_a_wind_in_which_nobody_plays_is_left_out(said: str, mph: float) -> None:
    """The reply says that it is left out, so no feet are told of it; 75 mph is a hurricane
    (Beaufort scale, from memory)."""
    asked = Asked(words=f"lob with {said} wind behind us")
    situation = replace(match(Topic.LOB, PARTNER), wind=Wind.BEHIND_US, asked=asked)
    question = question_of(situation, situation.theirs)
    assert question.wind_mph == mph


def test_a_small_gain_is_told_once() -> None:
    """ "Little between them" beside a toss-up's "little in it" said it twice."""
    found = [advise(high_ball(case, Topic.LOB)) for case in CASES]
    close = [one for one in found if one.confidence is Confidence.TOSS_UP]
    assert not [one for one in close if "Little between them" in (one.number or "")]
    assert [one for one in close if one.number]


def test_there_are_enough_cases() -> None:
    assert len(CASES) >= 40


def test_plan_and_topic_lob_the_same_player() -> None:
    lobbed = 0
    for case in CASES:
        situation = high_ball(case, Topic.LOB)
        bare = replace(situation, asked=Asked(), striker=None)
        line, advice = lob_line(bare), advise(bare)
        assert (line is not None) == ("Lob " in advice.call and "Lob cross" not in advice.call) or (
            line is not None and ": lob " in advice.call
        )
        if line is not None:
            lobbed += 1
            assert advice.call.startswith(line.do)
            assert advice.numbers["lob_per_100"] == pytest.approx(line.per_100)
    assert lobbed >= 10


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("should we lob", LobMeaning.ATTACK),
        ("lob over whom", LobMeaning.ATTACK),
        ("when do i lob", LobMeaning.ATTACK),
        ("", LobMeaning.ATTACK),
        ("i'm scrambling, lob it?", LobMeaning.DESPERATE),
        ("stretched wide, should i lob", LobMeaning.DESPERATE),
        ("they lob every ball", LobMeaning.THEIRS),
        ("okafor lobs a lot", LobMeaning.THEIRS),
        ("how do we handle the lob", LobMeaning.THEIRS),
        ("whose lob is it", LobMeaning.WHO_RUNS),
        ("lob over my head who takes it", LobMeaning.WHO_RUNS),
        ("i ran down the lob, drive it or drop it", LobMeaning.WHAT_BACK),
        ("what do i hit off their lob", LobMeaning.WHAT_BACK),
        ("lob over my left shoulder", LobMeaning.THEIRS),
        ("lob over my head and partner's", LobMeaning.THEIRS),
        ("lob over okafor's left shoulder", LobMeaning.ATTACK),
        ("lob over mira, do i cross behind her to get it", LobMeaning.WHO_RUNS),
        ("shallow lob, bounce or smash", LobMeaning.BOUNCE),
        ("they lob us, do i let it bounce or smash", LobMeaning.BOUNCE),
        ("high lob, smash or let it bounce", LobMeaning.BOUNCE),
        ("short lob, smash it?", LobMeaning.BOUNCE),
        ("do we lob or let it bounce", LobMeaning.ATTACK),
        ("sun behind us, should we lob more", LobMeaning.ATTACK),
        ("how many lobs per game is too many", LobMeaning.ATTACK),
        ("my lobs get smashed", LobMeaning.ATTACK),
        ("is lobbing worth it against good overheads", LobMeaning.ATTACK),
        ("he poaches so lob behind him?", LobMeaning.ATTACK),
        ("who is worse at going back for lobs", LobMeaning.ATTACK),
        ("should i run down lobs or let partner", LobMeaning.THEIRS),
    ],
)
def test_which_question_it_is(words: str, expected: LobMeaning) -> None:
    situation = match(Topic.LOB, WEAK_UNDER, PARTNER, ours=(MIRA, TOM))
    assert meaning(replace(situation, asked=Asked(words=words))) is expected


def test_wind_moves_a_lob_as_the_review_computed() -> None:
    """Computed separately beforehand: with 10 mph along the court a lob goes +8 / -11 ft."""
    assert wind_feet(10) == pytest.approx(8, abs=0.5)
    assert wind_feet(-10) == pytest.approx(-11, abs=0.5)


def _gain(wind: Wind | None, mph: float) -> float:
    """What a lob over Okafor is worth against a dink."""
    situation = replace(match(Topic.LOB, WEAK_UNDER, PARTNER), wind=wind)
    facts = BallFacts(wind_mps=mph * 0.44704)
    answer = answer_lob(replace(situation, asked=Asked(facts=facts)))
    assert answer is not None
    ranking = answer.weighed.ranking
    return 100 * (ranking.of(OptionId("over:3")).chance - ranking.of(OptionId(NO_LOB)).chance)


def test_wind_behind_costs_five_and_into_it_a_lob_holds() -> None:
    """Row 23: wind behind of 10 mph and more -5; into it (2.25) lobs hold."""
    still = _gain(None, 0)
    assert _gain(Wind.BEHIND_US, 10) - still == pytest.approx(-5, abs=1)
    assert _gain(Wind.BEHIND_US, 5) - still == pytest.approx(-2.5, abs=0.7)
    assert _gain(Wind.AGAINST_US, 10) >= still


def test_the_diagonal_is_the_longer_court() -> None:
    """By hand: straight 22 ft beyond the net; the diagonal one slants by 10 ft over 27 ft."""
    start = at_kitchen_line(Side.RIGHT, ours=True)
    straight, cross = (
        lane_in_court_m(start, landing_over(side, None)) / METRES_PER_FOOT
        for side in (Side.LEFT, Side.RIGHT)
    )
    assert straight == pytest.approx(22)
    assert cross == pytest.approx(22 * (27**2 + 10**2) ** 0.5 / 27, abs=0.05)
    assert misses(LobLane.CROSS) < misses(LobLane.STRAIGHT)
    assert straight_costs().mean < 0


def test_a_high_lob_buys_more_time_than_a_soft_ball() -> None:
    """A ball thrown up and caught takes 2 sqrt(2 h / g) without drag: here up to some 8 m."""
    assert 2.0 < aloft_s(HIGH_LOB) < 2.8
    assert aloft_s(SOFT_BLOCK) < 1.2
    along = landing(HIGH_LOB).along_m - HIGH_LOB.from_net_m
    assert 4.5 < along < 6.71  # deep, and in


def test_the_partner_gets_there_sooner_unless_slow() -> None:
    """Facts section 7 and the review: the one not under it runs; feet turn it round."""
    slow = player(2, "Tom", Side.LEFT, *often_noted("foot_speed weakness"))
    quick = player(1, "Mira", Side.RIGHT, *often_noted("foot_speed strength"))
    assert crossing_run(None).spare_s > own_run(None).spare_s
    assert own_run(quick).spare_s > crossing_run(slow).spare_s
    assert 1.2 < landing(THEIR_LOB).time_s < 2.2


def test_the_lobs_share_is_the_zero_sum_games() -> None:
    """nashpy's vertex enumeration on the two by two game, and the textbook's closed form
    (facts section 3): row 1 with (d - c) / (a - b - c + d)."""
    answer = answer_lob(match(Topic.LOB, WEAK_UNDER, PARTNER))
    assert answer is not None
    mix = solved(answer)
    cost = {OptionId("over:3"): sizes.GUESSED_LOB, OptionId(NO_LOB): sizes.GUESSED_DINK}
    options = guessables(answer.weighed.ranking, cost, {})
    matrix = payoffs(options)
    game = nashpy.Game(matrix)
    ours, _theirs = next(iter(game.vertex_enumeration()))
    for share, option in zip(ours, options, strict=True):
        assert mix.shares[option.option] == pytest.approx(share, abs=1e-9)
    (a, b), (c, d) = matrix
    assert ours[0] == pytest.approx((d - c) / (a - b - c + d))


def test_a_lob_is_a_change_up_once_or_twice_a_game() -> None:
    answer = answer_lob(match(Topic.LOB, WEAK_UNDER, PARTNER))
    assert answer is not None
    mix = lob_mix(answer)
    assert mix is not None
    assert mix.default.option == NO_LOB
    assert mix.change_up is not None
    assert 0 < lobs_a_game(mix.change_up.share) <= sizes.TWICE_A_GAME
    assert mix.how_often in ("once a game", "twice a game at most")
    assert lobs_a_game(1.0) == sizes.TWICE_A_GAME


@pytest.mark.parametrize(("hand", "sign"), [("right", 1), ("left", -1)])
@pytest.mark.parametrize("side", list(Side))
def test_the_picture_lands_deep_beside_the_shoulder(hand: str, sign: int, side: Side) -> None:
    """Geometry: seen from us, the left shoulder of a player who faces us is on our right."""
    one = player(3, "Okafor", side, f"hand {hand}", *often_noted("lob_defense weakness"))
    drawn = court_of(advise(match(Topic.LOB, one, PARTNER, ours=(MIRA, TOM))))
    arrow = drawn.arrows[0]
    stands = next(marker for marker in drawn.markers if marker.label == "Okafor")
    assert sign * (arrow.to_x_m - stands.x_m) > 0
    assert 5.0 < arrow.to_y_m < 6.71
    assert arrow.from_y_m < 0
    assert arrow.from_x_m * stands.x_m < 0  # from the half diagonal to it


def test_the_agreement_on_lobs_goes_first() -> None:
    agreed = Agreement(key=AgreementKey.LOBS, value="", words="lobs: Tom takes all lobs")
    for words in ("who goes for the lob", "they lob a lot"):
        asked = Situation(topic=Topic.LOB, asked=Asked(words=words), ours=(MIRA, TOM))
        advice = advise(replace(asked, agreements={AgreementKey.LOBS: agreed}))
        assert advice.call == "Do as agreed: Tom takes all lobs."
        assert "never backpedal" in (advice.caution or "")


def test_lobbed_over_my_head_is_over_the_asker() -> None:
    situation = match(Topic.LOB, WEAK_UNDER, PARTNER)
    asked = Asked(words="lob over my head who takes it")
    advice = advise(replace(situation, asked=asked, asker=PlayerId(1)))
    assert advice.call == "Let Tom cross and run for it; Mira switches."


def test_a_lob_in_the_middle_is_the_forehand_overheads() -> None:
    """A right-hander on the left has the forehand in the middle, as a left-hander on the right."""
    left = player(2, "Tom", Side.LEFT, "hand right")
    assert forehand_overhead((MIRA, left)) == left
    assert forehand_overhead((MIRA, TOM)) is None  # both backhands


def test_falls_are_told_with_their_source() -> None:
    """Weiss et al. 2021, Injury Epidemiology 8:34: 63.3% of visits of players over 60."""
    for words in ("they lob us", "whose lob is it", "what do i hit off their lob"):
        advice = advise(replace(match(Topic.LOB), asked=Asked(words=words)))
        assert advice.caution == "Turn and run; never backpedal."
        assert any("63.3%" in line and "Weiss" in line for line in advice.more)
        assert any("Medical staff decide" in line for line in advice.more)


def test_no_lob_that_our_notes_mark_weak_is_advised() -> None:
    weak = (
        player(1, "Mira", Side.RIGHT, "lob weakness"),
        player(2, "Tom", Side.LEFT, "lob weakness"),
    )
    for words in ("should we lob", "pulled off the court, should i lob", "what do i hit off a lob"):
        situation = match(Topic.LOB, WEAK_UNDER, PARTNER, ours=weak)
        advice = advise(replace(situation, asked=Asked(words=words), asker=PlayerId(1)))
        assert not advice.call.startswith("Lob ")
        said = everything_said(advice).casefold()
        assert "lob it" not in said
