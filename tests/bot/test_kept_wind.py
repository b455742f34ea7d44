"""A wind told once blows for the questions after it, within its game, until another is told."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.asked import Asked
from bot.chat.context import Context
from bot.chat.kept_wind import KeptWind, told_wind, with_kept_wind
from knowledge.ball_facts import BallFacts
from knowledge.situation import Wind
from knowledge.vocabulary import Topic
from knowledge.wind import MPH_MPS

GAME = (7, 1)
NEXT_GAME = (7, 2)
AGAINST = KeptWind(wind=Wind.AGAINST_US, speed_mps=15 * MPH_MPS, game=GAME)


def asked(text: str, topic: Topic = Topic.LOB, wind: Wind | None = None) -> Asked:
    return Asked(topic=topic, text=text, wind=wind)


def test_a_wind_told_of_the_weather_is_kept_with_its_way_and_speed() -> None:
    told = asked("windy today, 15 mph in my face", Topic.WEATHER_OR_BODY, Wind.SOME)
    kept = told_wind(told, None, GAME)
    assert kept is not None
    assert (kept.wind, kept.game) == (Wind.AGAINST_US, GAME)
    assert kept.speed_mps == pytest.approx(15 * MPH_MPS)


def test_the_next_question_is_asked_in_it() -> None:
    question = with_kept_wind(asked("should we lob okafor"), AGAINST, GAME)
    assert question.wind is Wind.AGAINST_US
    assert question.facts == BallFacts(wind_mps=AGAINST.speed_mps)


def test_after_a_game_the_ends_have_changed_and_only_its_strength_is_known() -> None:
    question = with_kept_wind(asked("should we lob okafor"), AGAINST, NEXT_GAME)
    assert question.wind is Wind.SOME
    assert question.facts == BallFacts(wind_mps=AGAINST.speed_mps)


def test_still_air_is_still_after_a_game() -> None:
    calm = KeptWind(wind=Wind.NONE, game=GAME)
    assert with_kept_wind(asked("lob?"), calm, NEXT_GAME).wind is Wind.NONE


def test_a_question_with_a_wind_of_its_own_keeps_to_it() -> None:
    question = with_kept_wind(asked("lob with the wind?", wind=Wind.BEHIND_US), AGAINST, GAME)
    assert question.wind is Wind.BEHIND_US
    assert question.facts is None


@pytest.mark.parametrize(
    "text",
    [
        "what if the wind is behind us",
        "do we lob when the wind is at our backs",
        "forecast says wind behind us",
        "last match the wind was behind us, lob?",
    ],
)
def test_a_wind_that_does_not_blow_now_is_not_kept(text: str) -> None:
    assert told_wind(asked(text, wind=Wind.BEHIND_US), AGAINST, GAME) is AGAINST


def test_rules_name_a_wind_that_need_not_blow() -> None:
    ruled = asked("the wind took the ball, let?", Topic.RULES_QUESTION, Wind.SOME)
    assert told_wind(ruled, None, GAME) is None
    assert with_kept_wind(ruled, AGAINST, GAME) is ruled


def test_that_there_is_some_takes_nothing_from_what_is_known() -> None:
    assert told_wind(asked("windy, lob?", wind=Wind.SOME), AGAINST, GAME) is AGAINST


def test_a_context_keeps_it_through_its_json() -> None:
    context = Context(wind=AGAINST)
    assert Context.from_json(context.to_json()) == context


def test_a_result_ends_it() -> None:
    assert Context(wind=AGAINST).after_result().wind is None


@pytest.mark.parametrize("said", ["what if its windy", "and if it's windy?", "and in the wind?"])
def test_a_wind_asked_of_again_is_the_one_told(demo: Talk, said: str) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("its super windy blowing in our faces what changes")
    told = demo.say("where do i serve")
    assert "10 mph against" in told
    assert demo.say(said) == told


def test_a_wind_from_elsewhere_is_another(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("its super windy blowing in our faces what changes")
    demo.say("where do i serve")
    assert "behind" in demo.say("what if the wind is behind us")
