"""A question in a verb that few use for it is read as with the one that most use."""

from __future__ import annotations

import pytest
from voices import EVENING

from bot.chat.asked_plainly import asked_plainly
from bot.chat.said import Question
from bot.chat.understand import understand
from bot.chat.utterance import Mask
from knowledge.vocabulary import Topic


def _topic(text: str) -> Topic | None:
    (*_, last) = understand(text, chat=EVENING)
    return last.topic if isinstance(last, Question) else None


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("where shall we serve", Topic.AIM_SERVE),
        ("where will we serve", Topic.AIM_SERVE),
        ("where are we to serve", Topic.AIM_SERVE),
        ("what shall we do with the third", Topic.THIRD_SHOT),
        ("how does one return a deep serve", Topic.AIM_RETURN),
    ],
)
def test_what_was_not_clear_is(text: str, topic: Topic) -> None:
    assert _topic(text) is topic


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("Where SHALL okafor serve", "Where should okafor serve"),
        ("must we lob okafor", "should we lob okafor"),
        ("am I to take it", "should i take it"),
        ("how does one dink", "how should we dink"),
    ],
)
def test_only_the_verb_is_put_otherwise(text: str, plain: str) -> None:
    start = text.find("okafor")
    masks = [Mask(span=(start, start + 6))] if start >= 0 else []
    put = asked_plainly(text, masks)
    assert put is not None
    assert put[0] == plain
    assert [put[0][one.span[0] : one.span[1]] for one in put[1]] == ["okafor"] * len(masks)


@pytest.mark.parametrize(
    "text", ["where can we serve", "where should we serve", "we shall not", ""]
)
def test_what_may_mean_another_thing_is_left(text: str) -> None:
    assert asked_plainly(text, []) is None


@pytest.mark.parametrize("text", ["shall she drive at okafor", "shall he speed up at lindqvist"])
def test_shall_at_the_start_asks_and_notes_nothing(text: str) -> None:
    (said,) = understand(text, chat=EVENING)
    assert isinstance(said, Question)
