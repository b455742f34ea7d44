"""They are back: keep them there, drop it, or put it away.

Sizes and judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import math

import pytest
from aim_cases import Case, cases
from high_ball_cases import check, high_ball
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.advice import CALL_LIMIT, Confidence
from knowledge.ball_facts import BallFacts, Depth
from knowledge.court import METRES_PER_FOOT
from knowledge.normal import logit
from knowledge.situation import Asked, Situation
from knowledge.tactics import advise
from knowledge.tactics.aim_words import REASON_LIMIT
from knowledge.tactics.deep_answer import answer_deep, question_of
from knowledge.tactics.deep_outcomes import (
    BASELINE_M,
    DEEP_ENOUGH_M,
    Runner,
    dead_drop,
    deep,
    drop,
    drop_slack_s,
    put_away,
)
from knowledge.tactics.deep_words import told
from knowledge.vocabulary import LOGIT_PER_POINT, Topic

CASES = cases("drop_on_deep_opponents.toml")
TOPIC = Topic.DROP_ON_DEEP_OPPONENTS
SLOW = -0.6
NET_HIGH, AT_LINE = 0.85, 2.4


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    check(case, TOPIC)
    if "shot" in case:
        assert answer_deep(high_ball(case, TOPIC)).best.shot == case["shot"]


def test_there_are_enough_cases() -> None:
    assert len(CASES) >= 20


def _drop_points(runner: Runner) -> float:
    worth = drop(runner, NET_HIGH, AT_LINE).worth
    return (logit(worth) - logit(deep().worth)) / LOGIT_PER_POINT


def test_keeping_them_back_gains_what_the_review_says() -> None:
    """Common practice, no source: +3 with a doubt of 4 against a drop volley; slow forward and
    behind 18 ft the drop is worth +4."""
    assert -_drop_points(Runner(from_net_m=BASELINE_M)) == pytest.approx(3, abs=4)
    assert _drop_points(Runner(from_net_m=BASELINE_M, level=SLOW)) == pytest.approx(4, abs=4)
    assert _drop_points(Runner(from_net_m=BASELINE_M, level=SLOW)) > 0


@pytest.mark.parametrize("level", [SLOW, 0.0, 0.6])
def test_nearer_than_eighteen_feet_a_drop_is_a_gift(level: float) -> None:
    """Row 22's 18 ft comes out of the race."""
    near = Runner(from_net_m=DEEP_ENOUGH_M - METRES_PER_FOOT, level=level)
    assert _drop_points(near) < 0


@given(height_m=st.floats(0.4, 1.8), from_net_m=st.floats(1.5, 4))
def test_the_drop_falls_and_rebounds_as_the_drop_test_says(
    height_m: float, from_net_m: float
) -> None:
    """Fall from the top: t = sqrt(2 z / g). From 78 in the ball comes up 30 to 34 in (2025
    edition, equipment standards): 0.62 to 0.66 of its speed."""
    ball = dead_drop(height_m, from_net_m)
    top = max(height_m, 34 * 0.0254 + 0.20)
    rise = math.sqrt(2 * (top - height_m) / 9.81)
    assert ball.start_s == pytest.approx(rise + math.sqrt(2 * top / 9.81))
    share = (ball.end_s - ball.start_s) * 9.81 / 2 / math.sqrt(2 * 9.81 * top)
    assert math.sqrt(30 / 78) < share < math.sqrt(34 / 78)
    assert ball.place.y_m < 2.13  # dead means in the kitchen


@settings(max_examples=60, deadline=None)
@given(
    feet=st.floats(10, 26),
    level=st.floats(-1, 0.8),
    quicker=st.floats(0.05, 0.2),
    delay=st.floats(0, 0.4),
)
def test_quicker_or_nearer_runners_make_a_drop_worth_less(
    feet: float, level: float, quicker: float, delay: float
) -> None:
    runner = Runner(from_net_m=feet * METRES_PER_FOOT, level=level, delay_s=delay)
    worth = drop(runner, NET_HIGH, AT_LINE).worth
    for better in (
        Runner(from_net_m=runner.from_net_m, level=level + quicker, delay_s=delay),
        Runner(from_net_m=runner.from_net_m - 0.3, level=level, delay_s=delay),
    ):
        assert drop_slack_s(better, NET_HIGH, AT_LINE) >= drop_slack_s(runner, NET_HIGH, AT_LINE)
        assert drop(better, NET_HIGH, AT_LINE).worth <= worth + 1e-9


def test_a_put_away_needs_height() -> None:
    worths = [put_away(height, AT_LINE, BASELINE_M).worth for height in (0.5, 0.8, 1.1, 1.5, 2.0)]
    assert worths == sorted(worths)
    assert worths[1] < deep().worth < worths[-1]


def test_no_gain_stands_beside_a_toss_up() -> None:
    """At whom is the smaller question: it was called close while the shot was worth a lot."""
    found = [advise(high_ball(case, TOPIC)) for case in CASES]
    assert not [one for one in found if one.number and one.confidence is Confidence.TOSS_UP]
    assert [one for one in found if one.number and one.confidence is Confidence.LEAN]


def test_lines_fit_a_phone() -> None:
    for case in CASES:
        advice = advise(high_ball(case, TOPIC))
        assert len(advice.call) <= CALL_LIMIT
        assert all(len(reason.text) <= REASON_LIMIT for reason in advice.reasons)


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("they camp on the baseline", {"baseline"}),
        ("both back at the fence", {"fence"}),
        ("he's backed off 3 meters, drop it in front of him", {"fence"}),
        ("they're 5 feet back", {"midcourt"}),
        ("they're 10 feet back, drop it?", {"midcourt"}),
        ("they're 15 feet back, drop it?", {"fence"}),
        ("stuck in mid court", {"midcourt"}),
        ("they are retreating", {"moving_back"}),
        ("caught leaning", {"wrong_footed"}),
        ("the slow guy", {"slow"}),
        ("he is not slow", set()),
        ("both are very quick", {"quick"}),
        ("i have a slow volley", set()),
        ("deep or short", set()),
    ],
)
def test_what_words_tell_of_them(words: str, found: set[str]) -> None:
    assert told(words) == found


def test_only_what_is_taken_is_said_to_be_taken() -> None:
    def assumed(words: str) -> str | None:
        asked = Asked(words=words)
        return advise(Situation(topic=Topic.DROP_ON_DEEP_OPPONENTS, asked=asked)).assumed

    assert "near the baseline" in (assumed("they're back, drop it?") or "")
    assert "near the baseline" not in (assumed("they're stuck in mid court, drop it?") or "")


def test_our_own_place_says_nothing_of_theirs() -> None:
    """Two feet of ours moved them to the fence, and the call from deep to a drop."""
    facts = BallFacts(height_m=0.5, from_net_m=2.74, theirs=Depth.BOTH_BACK)
    plain, worded = (
        question_of(
            Situation(topic=Topic.DROP_ON_DEEP_OPPONENTS, asked=Asked(facts=facts, words=words))
        )
        for words in ("they're both back", "two feet behind the line, they're both back")
    )
    assert worded.their_depth_m == plain.their_depth_m == BASELINE_M
