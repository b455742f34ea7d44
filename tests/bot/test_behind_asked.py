"""Going behind one of theirs is a question of a shot, and a poacher met is no change of plans."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from topic_examples import VIEW

from bot.chat.behind_asked import behind_asked
from bot.chat.message import read_message
from bot.chat.plan_words import plan_said
from bot.chat.said import PlanSaid, Question
from knowledge.vocabulary import Topic


@pytest.mark.parametrize("said", ["should i go behind okafor", "so hit behind lindqvist?"])
def test_behind_somebody_is_the_third_or_the_shot_before(said: str) -> None:
    for last, topic in ((None, Topic.THIRD_SHOT), (Topic.AIM_DINK, Topic.AIM_DINK)):
        chat = replace(VIEW, last_topic=last)
        found = behind_asked(read_message(said, chat), chat)
        assert found is not None
        assert found.topic is topic


@pytest.mark.parametrize(
    "said",
    [
        "the ball went behind okafor",
        "okafor stands behind lindqvist",
        "hit behind okafor",
        "should i lob behind okafor",
        "should i go behind tom",
    ],
)
def test_what_tells_or_names_another_shot_is_not(said: str) -> None:
    assert behind_asked(read_message(said, VIEW), VIEW) is None


@pytest.mark.parametrize(
    "said",
    [
        "what do i do vs okafor poaching when hes in the middle",
        "what do we do when okafor poaches",
        "how do i handle okafor poaching",
    ],
)
def test_a_poacher_met_is_answered_as_a_habit(said: str) -> None:
    found = plan_said(read_message(said, VIEW), VIEW)
    assert isinstance(found, Question)
    assert found.topic is Topic.ANSWER_PATTERN


@pytest.mark.parametrize("said", ["what if okafor starts poaching", "plan if okafor poaches"])
def test_what_they_may_start_to_do_is_still_a_change_of_plans(said: str) -> None:
    assert isinstance(plan_said(read_message(said, VIEW), VIEW), PlanSaid)


def test_one_note_within_another_is_quoted_once_and_what_is_even_takes_a_line(fresh: Talk) -> None:
    for text in ("next: soll and quist", "yes"):
        fresh.say(text)
    for text in ("soll lefty hits hard", "soll tall lefty hits hard"):
        fresh.say(text)
    fresh.say("who do we target")
    why = fresh.say("why").splitlines()
    assert len([line for line in why if "“" in line]) == 1
    assert not any("more" in line for line in why[-1:])
    assert len([line for line in why if "even" in line.lower()]) == 1
