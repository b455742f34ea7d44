"""What no question of a voice may be taken for: every second one, read once for all of these."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache

from topic_examples import OPEN_VOICES, VIEW, Example, voice_examples

from bot.chat.changes_said import change_said
from bot.chat.message import Message, read_message
from bot.chat.several_questions import several_questions
from bot.chat.view import ChatView
from knowledge.vocabulary import Topic

MOST_SPLIT = 0.01
"""Share of the open voices' questions, each labelled with one topic, that may be cut in two."""


@cache
def asked() -> tuple[tuple[Example, Message, ChatView], ...]:
    """Questions of every open voice, as read in the chat that they were asked in."""
    return tuple(_asked())


def _asked() -> Iterator[tuple[Example, Message, ChatView]]:
    for voice in OPEN_VOICES:
        for example in voice_examples(voice)[::2]:
            chat = replace(VIEW, last_topic=example.after)
            yield example, read_message(example.text, chat), chat


def test_a_message_of_one_topic_is_hardly_ever_cut() -> None:
    cut = [
        example.text
        for example, message, chat in asked()
        if len({one.topic for one in several_questions(message, chat)}) > 1
    ]
    assert len(asked()) > 800
    assert len(cut) <= MOST_SPLIT * len(asked()), cut


def test_the_voices_follow_ups_keep_their_topic() -> None:
    followed = 0
    for example, message, chat in asked():
        found = change_said(message, chat)
        if found is not None:
            followed += 1
            assert found.topic in example.right, example.text
    assert followed >= 5


def test_no_question_that_stands_alone_is_a_change() -> None:
    for example, message, _ in asked():
        if example.after is None:  # the topic before is looked at after the message was read
            for last in (Topic.AIM_DINK, Topic.COVER_MIDDLE):
                chat = replace(VIEW, last_topic=last)
                assert change_said(message, chat) is None, example
