"""The corner and the post: the four questions, our own shots, the rulebook, the way round the post.

Judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from aim_cases import Case, cases
from court_pictures import court_of
from hypothesis import given
from hypothesis import strategies as st
from told_ball_cases import acting, idle, names, said_of, told_situation

from knowledge.advice import CALL_LIMIT, Confidence
from knowledge.ball_facts import BallFacts
from knowledge.court import HALF_LENGTH_M, HALF_WIDTH_M, METRES_PER_FOOT
from knowledge.situation import Asked, Situation
from knowledge.sources import SourceKind
from knowledge.tactics import advise
from knowledge.tactics import ernie_sizes as sizes
from knowledge.tactics.ernie_answer import answer_ernie
from knowledge.tactics.ernie_geometry import (
    BALL_RADIUS_M,
    POST_X_M,
    least_past_sideline_m,
    nearest_landing_m,
)
from knowledge.tactics.ernie_said import Kind, ernie_said
from knowledge.vocabulary import Side, Topic

CASES = cases("ernie_or_post.toml")


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    situation = told_situation(case, Topic.ERNIE_OR_POST)
    advice, answer = advise(situation), answer_ernie(situation)
    assert advice.call == case.get("call", advice.call)
    said = said_of(advice)
    assert [text for text in case.get("says", ()) if text not in said] == []
    assert [text for text in case.get("never", ()) if text in said] == []
    assert answer.best.startswith(case.get("best", ""))
    assert set(case.get("acts", ())) <= acting(answer.ranking)
    assert not set(case.get("idle", ())) & acting(answer.ranking)
    assert (advice.confidence is Confidence.GENERAL_RULE) >= case.get("general", False)


def test_every_effect_has_a_case_that_calls_for_it_and_one_that_does_not() -> None:
    rankings = [answer_ernie(told_situation(case, Topic.ERNIE_OR_POST)).ranking for case in CASES]
    declared = set().union(*(names(one.decision.effects) for one in rankings))
    called = set().union(*(set(case.get("acts", ())) for case in CASES))
    assert declared <= called
    spared = set().union(
        *(idle(one) | (declared - names(one.decision.effects)) for one in rankings)
    )
    assert declared <= spared


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("should i ernie", Kind.OUR_ERNIE),
        ("when do i jump the corner", Kind.OUR_ERNIE),
        ("can i erne her when she dinks down the line", Kind.OUR_ERNIE),
        ("bluff an erne to make her go middle", Kind.OUR_ERNIE),
        ("can i go for it", Kind.OUR_ERNIE),
        ("he ernies me all the time", Kind.THEIR_ERNIE),
        ("he jumps the corner when i dink line", Kind.THEIR_ERNIE),
        ("okafor jumps the corner", Kind.THEIR_ERNIE),
        ("opponent ernies every dink", Kind.THEIR_ERNIE),
        ("protect against ernies", Kind.THEIR_ERNIE),
        ("and if they do it to us?", Kind.THEIR_ERNIE),
        ("how do we stop the ernie", Kind.THEIR_ERNIE),
        ("atp", Kind.OUR_POST),
        ("go round the post?", Kind.OUR_POST),
        ("ball passes outside the net pole, what do I do", Kind.OUR_POST),
        ("they go round the post on us, defend how", Kind.THEIR_POST),
        ("he went around the post again", Kind.THEIR_POST),
        ("she keeps going round the post", Kind.THEIR_POST),
        ("wide angle dink and he ATPs it low", Kind.THEIR_POST),
        ("how do i defend an atp", Kind.THEIR_POST),
        ("they hit around the post, where do i stand", Kind.THEIR_POST),
        ("what do i do if they atp", Kind.THEIR_POST),
        ("lindq atp threat when i dink wide", Kind.THEIR_POST),
        ("worried about his atp", Kind.THEIR_POST),
        ("round the post on me when i go wide", Kind.THEIR_POST),
        ("when do i atp", Kind.OUR_POST),
    ],
)
def test_whose_and_which(words: str, kind: Kind) -> None:
    case = {"words": words, "them": [{"name": "Okafor", "side": "left"}]}
    assert ernie_said(told_situation(case, Topic.ERNIE_OR_POST)).kind is kind


def test_the_rulebook_stands_beside_both_shots_with_its_edition() -> None:
    for words in ("should i ernie", "around the post?"):
        advice = advise(Situation(topic=Topic.ERNIE_OR_POST, asked=Asked(words=words)))
        ruled = [one for one in advice.reasons if one.source.kind is SourceKind.RULEBOOK]
        assert [one.source.citation[:4] for one in ruled] == ["2025"]


def test_the_aim_at_the_corner_itself_by_hand() -> None:
    """From the court's own numbers: 22 ft behind the net the way is as long as beyond it.

    The post's outside edge plus half a ball is 1 ft + 1.46 in past the sideline, so from 22 ft a
    lane to the corner itself starts twice that wide, from the net's line exactly that.
    """
    outside = METRES_PER_FOOT + BALL_RADIUS_M
    wide = least_past_sideline_m(HALF_LENGTH_M, inside_m=0, short_m=0)
    assert wide == pytest.approx(2 * outside)
    assert least_past_sideline_m(1e-9, inside_m=0, short_m=0) == pytest.approx(outside)
    assert pytest.approx(22 * METRES_PER_FOOT) == 2 * POST_X_M  # 2025 edition, 2.C


@given(back=st.floats(0.05, 8), inside=st.floats(0, 2), short=st.floats(0, 3))
def test_the_lane_just_passes_the_post(back: float, inside: float, short: float) -> None:
    """Against numpy's interpolation along the straight lane."""
    past = least_past_sideline_m(back, inside_m=inside, short_m=short)
    start, end = HALF_WIDTH_M + past, HALF_WIDTH_M - inside
    at_net = np.interp(0.0, [-back, HALF_LENGTH_M - short], [start, end])
    assert at_net == pytest.approx(POST_X_M + BALL_RADIUS_M)


@given(back=st.floats(0.05, 8), past=st.floats(0.0, 6))
def test_what_is_open_is_beyond_where_the_lane_crosses_the_sideline(
    back: float, past: float
) -> None:
    """Against numpy: the line through the contact and the post's outside meets the sideline."""
    slope, at_net = np.polyfit([-back, 0.0], [HALF_WIDTH_M + past, POST_X_M + BALL_RADIUS_M], 1)
    nearest = nearest_landing_m(back, past)
    if nearest is None:
        assert slope * HALF_LENGTH_M + at_net >= HALF_WIDTH_M - 1e-9
    else:
        assert slope * nearest + at_net == pytest.approx(HALF_WIDTH_M)
        assert 0 < nearest <= HALF_LENGTH_M


def test_further_back_it_must_be_wider_and_wider_opens_more() -> None:
    wide = [least_past_sideline_m(back) for back in (0.5, 1, 2, 4, 6)]
    assert wide == sorted(wide)
    open_from = [nearest_landing_m(2.0, past) for past in (0.6, 1.0, 2.0)]
    assert None not in open_from
    assert open_from == sorted(open_from, key=lambda each: -(each or 0))
    for bad in (0.0, -1.0):
        with pytest.raises(ValueError, match="behind the net"):
            least_past_sideline_m(bad)
        with pytest.raises(ValueError, match="behind the net"):
            nearest_landing_m(bad, 1.0)


def test_a_shots_points_are_its_wins_and_misses() -> None:
    """Engineering notes, 1.3: x = w + (1 - w - e) v; by hand .55 + .25 / 2 = .675."""
    points = sizes.shot_points(sizes.ROUND_WINS, sizes.ROUND_MISSES)
    assert 1 / (1 + math.exp(-0.04 * points)) == pytest.approx(0.675)
    assert sizes.shot_points(0.3, 0.3) == pytest.approx(0.0)


def test_the_share_of_line_balls_that_pays_is_the_break_even() -> None:
    for covered, gap in ((True, sizes.GAP_COVERED), (False, sizes.GAP_OPEN)):
        share = sizes.line_share_that_pays(covered=covered)
        assert share * sizes.BALL_ITSELF.mean + (1 - share) * gap.mean == pytest.approx(0.0)


def test_the_picture_passes_outside_the_post_and_lands_in() -> None:
    for side, out in ((Side.RIGHT, 1), (Side.LEFT, -1)):
        facts = BallFacts(past_sideline=True, from_net_m=2.5)
        asked = Asked(words="atp", facts=facts, striker_side=side)
        arrow = court_of(advise(Situation(topic=Topic.ERNIE_OR_POST, asked=asked))).arrows[0]
        share = -arrow.from_y_m / (arrow.to_y_m - arrow.from_y_m)
        at_net = arrow.from_x_m + share * (arrow.to_x_m - arrow.from_x_m)
        assert out * at_net >= POST_X_M
        assert abs(arrow.to_x_m) <= HALF_WIDTH_M
        assert arrow.to_y_m <= HALF_LENGTH_M


@given(
    words=st.text(max_size=80) | st.sampled_from(["atp", "ernie", "they ernie us", "jump"]),
    past=st.sampled_from([None, True, False]),
    back=st.none() | st.floats(0.1, 9),
)
def test_any_words_fit_a_phone(words: str, past: bool | None, back: float | None) -> None:
    facts = BallFacts(past_sideline=past, from_net_m=back)
    asked = Asked(words=words, facts=facts)
    advice = advise(Situation(topic=Topic.ERNIE_OR_POST, asked=asked))
    assert 0 < len(advice.call) <= CALL_LIMIT
    lines = [advice.number, advice.unless, advice.assumed, advice.caution]
    assert all(len(line) <= 60 for line in lines if line)
    assert all(len(reason.text) <= 50 for reason in advice.reasons)
