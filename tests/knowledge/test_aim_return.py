"""Where to return: the third, the crash, the stack, the ball, our own feet, and what isn't known.

Sizes and judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from aim_cases import Case, cases, situation_of
from court_pictures import court_of
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import match, often_noted, player
from winds_offered import winds_offered

from knowledge.advice import CALL_LIMIT, Advice, Confidence, MatchFact
from knowledge.ball_facts import BallFacts, Footing
from knowledge.court import HALF_LENGTH_M, METRES_PER_FOOT
from knowledge.effects import OptionId
from knowledge.planning import cue
from knowledge.planning.line import Phase
from knowledge.planning.plan_lines import plan_lines
from knowledge.situation import Asked, Situation, Wind
from knowledge.tactics import advise
from knowledge.tactics.aim_words import REASON_LIMIT
from knowledge.tactics.return_answer import answer_return
from knowledge.tactics.return_time import Style
from knowledge.vocabulary import TRAITS, BallQuality, Side, Topic, TraitKind

CASES = cases("aim_return.toml")
CASES_THEIRS = (player(3, "Okafor", None), player(4, "Lindqvist", None))


def _said(advice: Advice) -> str:
    lines = [advice.call, *(one.text for one in advice.reasons), advice.number, advice.unless]
    return "\n".join(line for line in lines if line)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    situation = situation_of(case, Topic.AIM_RETURN)
    advice, answer = advise(situation), answer_return(situation)
    assert answer.option == case.get("option", answer.option)
    assert answer.option != case.get("not_option")
    assert answer.style is Style(case.get("style", answer.style))
    assert answer.is_deep is case.get("deep", answer.is_deep)
    assert advice.call == case.get("call", advice.call)
    said = _said(advice)
    assert [text for text in case.get("says", ()) if text not in said] == []
    assert not any(text in said for text in case.get("never", ()))
    if "general" in case:
        assert (advice.confidence is Confidence.GENERAL_RULE) is case["general"]


def test_there_are_enough_cases() -> None:
    assert len(CASES) >= 25


def test_plan_cue_and_topic_return_at_the_same_one() -> None:
    for case in CASES:
        situation = situation_of(case, Topic.AIM_RETURN)
        if set(case) & {"ball", "words", "from", "asker"} or len(situation.theirs) < 2:
            continue
        answer = answer_return(replace(situation, game=None))
        lines = plan_lines(replace(situation, topic=Topic.GAME_PLAN))
        found = next(line for line in lines if line.phase is Phase.RETURN)
        if answer.target is not None:
            assert answer.target.name in found.do
        else:
            assert not found.is_specific
        asked = replace(situation, topic=Topic.CUE, asked=Asked(we_serve=False))
        said = cue.advise(asked).call
        if answer.target is not None and found.is_specific and found.who is None:
            assert answer.target.name in said


def test_the_picture_goes_deep_from_the_court_asked_about() -> None:
    theirs = (
        player(3, "Okafor", Side.RIGHT),
        player(4, "Lindqvist", Side.LEFT, *often_noted("third_shot_drop weakness")),
    )
    situation = match(Topic.AIM_RETURN, *theirs)
    asked = replace(situation, asked=Asked(striker_side=Side.LEFT))
    advice = advise(asked)
    arrow = court_of(advice).arrows[0]
    assert arrow.from_x_m < 0 < arrow.to_x_m  # from our left, across, to their left on our right
    inside_ft = (HALF_LENGTH_M - arrow.to_y_m) / METRES_PER_FOOT
    assert inside_ft == pytest.approx(advice.numbers["aim_inside_ft"])
    assert 3 <= inside_ft <= 8
    assert advise(situation).picture is None


@pytest.mark.parametrize(
    ("words", "ball"),
    [
        ("where do I return when the serve jams me", BallQuality.STRETCHED),
        ("I'm jammed, where do I return", BallQuality.STRETCHED),
        ("Okafor jams at the body, where do I return", BallQuality.NEUTRAL),
        ("they serve short, where do I return", BallQuality.EASY),
        ("where do I return a knee high serve", BallQuality.NEUTRAL),
    ],
)
def test_the_serve_as_the_words_have_it(words: str, ball: BallQuality) -> None:
    situation = Situation(topic=Topic.AIM_RETURN, asked=Asked(words=words))
    assert answer_return(situation).question.ball is ball


def test_a_part_of_the_body_is_a_height_and_no_jam() -> None:
    """The knee at .285 of stature (Drillis and Contini 1966 as in Winter): about 0.5 m."""
    asked = Asked(words="knee high, where do I return", ball=BallQuality.STRETCHED)
    knee = answer_return(Situation(topic=Topic.AIM_RETURN, asked=asked)).question
    assert knee.ball is BallQuality.NEUTRAL
    assert knee.contact.height_m == pytest.approx(0.285 * 1.75, abs=0.03)
    told = Asked(facts=BallFacts(height_m=1.1, from_net_m=6.0, footing=Footing.FORWARD))
    contact = answer_return(Situation(topic=Topic.AIM_RETURN, asked=told)).question.contact
    assert (contact.height_m, contact.from_net_m) == (1.1, 6.0)
    assert contact.head_start_s > 0


def test_what_is_asked_comes_first() -> None:
    for words, first in (
        ("how deep should I return", "Aim 7 ft in: 1 in 100 long; at 3 ft 16"),
        ("return hard or high", "High buys 0.5 s more to run"),
        ("where do I return", "Lindqvist's third shot is weak"),
    ):
        weak = player(4, "Lindqvist", None, *often_noted("third_shot_drop weakness", 3))
        situation = match(Topic.AIM_RETURN, player(3, "Okafor", None), weak)
        advice = advise(replace(situation, asked=Asked(words=words)))
        assert advice.reasons[0].text == first


def test_numbers_are_in_full_and_agree_with_the_words() -> None:
    numbers = advise(Situation(topic=Topic.AIM_RETURN)).numbers
    assert numbers["time_bought_s"] == pytest.approx(
        numbers["high_slack_s"] - numbers["hard_slack_s"]
    )
    assert round(numbers["time_bought_s"], 1) == 0.5
    assert numbers["time_bought_s"] != round(numbers["time_bought_s"], 3)
    assert 0 < numbers["deep_chance"] < 1 - numbers["long_in_100"] / 100
    assert numbers["high_set_chance"] > numbers["hard_set_chance"]
    assert numbers["deep_wins_points"] > numbers["deep_costs_points"] > 0
    assert numbers["high_slack_s"] > numbers["short_slack_s"]


def test_a_hard_one_costs_misses_and_only_a_hard_one() -> None:
    parts = {
        str(ranked.option.id): [part.effect.because for part in ranked.parts]
        for ranked in answer_return(Situation(topic=Topic.AIM_RETURN)).styles.ranked
    }
    assert any("more misses" in because for because in parts["hard"])
    assert not any("more misses" in because for because in parts["high"] + parts["slice"])
    assert any("more to run" in because for because in parts["high"])
    assert not any("to run" in because for because in parts["hard"])


def test_depth_has_its_effects_and_mid_court_has_none() -> None:
    answer = answer_return(Situation(topic=Topic.AIM_RETURN))
    deep, mid_court = (answer.depth.of(OptionId(one)) for one in ("deep", "mid-court"))
    assert len(deep.parts) == 3
    assert mid_court.parts == ()


def test_still_air_is_said_and_the_wind_is_a_button() -> None:
    weak = player(4, "Lindqvist", None, *often_noted("third_shot_drop weakness", 3))
    situation = match(Topic.AIM_RETURN, player(3, "Okafor", None), weak)
    still, blown = advise(situation), advise(replace(situation, wind=Wind.BEHIND_US))
    assert still.assumed == "Taken: no wind."
    assert blown.assumed is None
    assert winds_offered(still) == [Wind.BEHIND_US, Wind.AGAINST_US]
    assert winds_offered(blown) == []


def test_plan_and_cue_say_mid_court_where_the_topic_does() -> None:
    case = next(case for case in CASES if case.get("deep") is False and "us" in case)
    situation = replace(situation_of(case, Topic.AIM_RETURN), theirs=CASES_THEIRS)
    assert not answer_return(situation).is_deep
    lines = plan_lines(replace(situation, topic=Topic.GAME_PLAN, ours=situation.ours[:1]))
    found = next(line for line in lines if line.phase is Phase.RETURN)
    assert "deep" not in found.do


def test_the_ball_is_offered_until_it_is_said() -> None:
    situation = match(Topic.AIM_RETURN, player(3, "Okafor", None), player(4, "Lindqvist", None))
    offered = {
        choice.value for choice in advise(situation).choices if choice.fact == MatchFact.BALL
    }
    assert offered == {BallQuality.STRETCHED, BallQuality.EASY}
    said = replace(situation, asked=Asked(ball=BallQuality.EASY))
    assert not any(choice.fact == MatchFact.BALL for choice in advise(said).choices)


def test_nothing_noted_offers_what_to_look_for_and_the_hands() -> None:
    situation = match(Topic.AIM_RETURN, player(3, "Okafor", None), player(4, "Lindqvist", None))
    choices = advise(situation).choices
    assert any(choice.topic is Topic.PROBE for choice in choices)
    assert {choice.about for choice in choices if choice.fact == "hand"} == {3, 4}


def test_a_mix_against_a_stack_or_a_poacher_and_not_else() -> None:
    weak = often_noted("third_shot_drop weakness", 1)
    plain = match(Topic.AIM_RETURN, player(3, "Okafor", None, *weak), player(4, "Lindqvist", None))
    poacher = player(4, "Lindqvist", None, *often_noted("poaching often", 2))
    assert advise(plain).mix is None
    mix = advise(replace(plain, theirs=(plain.theirs[0], poacher))).mix
    assert mix is not None
    assert {share.option for share in mix.shares} == {"middle", "at:3", "at:4"}
    recent = replace(
        plain,
        theirs=(plain.theirs[0], poacher),
        recent_aims={Topic.AIM_RETURN: ("at:3",) * 10},
        aims_won={Topic.AIM_RETURN: (None,) * 10},
    )
    logged = advise(recent).mix
    assert logged is not None
    assert logged.logged_aims == 10
    safe = replace(recent, asked=Asked(ball=BallQuality.STRETCHED))
    assert advise(safe).mix is None


_CLAIMS = [
    f"{trait} {value}"
    for trait, row in TRAITS.items()
    if row.kind is not TraitKind.FACT
    for value in row.values
]


@settings(max_examples=40)
@given(
    names=st.tuples(*[st.sampled_from(["Ruiz", "Ana Ruiz-Peña", "Nguyen-Brandt"])] * 2),
    claims=st.tuples(*[st.lists(st.sampled_from(_CLAIMS), max_size=6)] * 4),
    court=st.sampled_from([Side.LEFT, Side.RIGHT, None]),
    ball=st.sampled_from([*BallQuality, None]),
)
def test_any_notes_fit_a_phone_and_no_weak_return_aims(
    names: tuple[str, str],
    claims: tuple[list[str], ...],
    court: Side | None,
    ball: BallQuality | None,
) -> None:
    situation = Situation(
        topic=Topic.AIM_RETURN,
        ours=tuple(player(1 + n, ("Mira", "Tom")[n], None, *claims[n]) for n in (0, 1)),
        theirs=tuple(
            player(3 + n, names[n], (Side.LEFT, Side.RIGHT)[n], *claims[2 + n]) for n in (0, 1)
        ),
        asked=Asked(striker_side=court, ball=ball),
    )
    advice = advise(situation)
    assert len(advice.call) <= CALL_LIMIT
    assert all(len(reason.text) <= REASON_LIMIT for reason in advice.reasons)
    if all("return weakness" in each and "return strength" not in each for each in claims[:2]):
        assert answer_return(situation).target is None
