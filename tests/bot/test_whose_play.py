"""A play of ours is planned, one of theirs answered: shake and bake, the Erne, round the post.

Common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk
from voices import IN_TALK

from bot.chat.said import Question
from bot.chat.understand import understand
from knowledge.vocabulary import Topic


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("should we shake n bake", Topic.THIRD_SHOT),
        ("can tom and me shake and bake them", Topic.THIRD_SHOT),
        ("when do we go shake and bake", Topic.THIRD_SHOT),
        ("who drives who crashes for us", Topic.THIRD_SHOT),
        ("who crashes", Topic.THIRD_SHOT),
        ("shake and bake here?", Topic.THIRD_SHOT),
        ("they shake and bake us", Topic.ANSWER_PATTERN),
        ("how do we stop shake and bake", Topic.ANSWER_PATTERN),
        ("how do we beat their shake and bake", Topic.ANSWER_PATTERN),
        ("we cant handle shake and bake", Topic.ANSWER_PATTERN),
    ],
)
def test_who_does_it_decides_what_is_asked(text: str, topic: Topic) -> None:
    (question,) = understand(text, chat=IN_TALK)
    assert isinstance(question, Question)
    assert question.topic is topic


def test_ours_is_answered_with_the_return_and_who_runs(demo: Talk) -> None:
    told = demo.say("should we shake n bake")
    assert "short or high return" in told.splitlines()[0]
    assert "Mira drives low, Tom runs in behind" in told or "partner runs in" in told


def test_the_weak_drive_runs_in_and_the_other_drives(demo: Talk) -> None:
    demo.say("mira has a weak forehand drive")
    told = demo.say("who drives who crashes")
    assert "Tom drives low, Mira runs in behind" in told


def test_neither_drives_well(demo: Talk) -> None:
    demo.say("mira has a weak forehand drive")
    demo.say("tom has a weak forehand drive")
    assert demo.say("should we shake and bake").startswith("No: drop.")


def test_a_return_that_was_told_is_weighed_like_any_third(demo: Talk) -> None:
    assert demo.say("do we shake and bake off a short return").startswith("Drive ")


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("how do we punish the erne", "dink middle for three balls"),
        ("what do i do about the atp", "no wide bouncing ball"),
        ("how do we beat their atp", "no wide bouncing ball"),
        ("how do we cover the atp", "no wide bouncing ball"),
    ],
)
def test_what_they_do_at_the_post_is_answered(demo: Talk, text: str, first: str) -> None:
    assert first in demo.say(text).splitlines()[0].lower()


@pytest.mark.parametrize("text", ["how do i erne", "should i go atp"])
def test_our_own_is_weighed(text: str) -> None:
    (question,) = understand(text, chat=IN_TALK)
    assert isinstance(question, Question)
    assert question.topic is Topic.ERNIE_OR_POST
