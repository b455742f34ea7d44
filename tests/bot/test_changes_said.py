"""A short message that changes one thing of the question before it, and leaves the rest."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from topic_examples import VIEW

from bot.chat.asked import Asked
from bot.chat.changes_said import change_said
from bot.chat.message import read_message
from bot.chat.said import Unclear
from knowledge.situation import Wind
from knowledge.vocabulary import BallKind, BallQuality, Hand, Side, Topic, Wing

NO_CHANGE = "That doesn't change the call."


def asked(demo: Talk) -> Asked:
    found = demo.context.asked
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("said", "field", "value"),
    [
        ("and on the backhand?", "wing", Wing.BACKHAND),
        ("what about his forehand", "wing", Wing.FOREHAND),
        ("and if i'm stretched?", "ball", BallQuality.STRETCHED),
        ("what if it's windy", "wind", Wind.SOME),
        ("and with the wind at my back?", "wind", Wind.BEHIND_US),
        ("and in the sun?", "sun", True),
        ("ok and if they're serving?", "we_serve", False),
        ("sorry i meant the forehand", "wing", Wing.FOREHAND),
        ("no, on the backhand", "wing", Wing.BACKHAND),
    ],
)
def test_one_thing_changes_and_the_rest_stays(
    demo: Talk, said: str, field: str, value: object
) -> None:
    demo.say("where do I dink okafor")
    before = asked(demo)
    demo.say(said)
    assert getattr(asked(demo), field) == value
    assert asked(demo).topic is Topic.AIM_DINK
    assert asked(demo).about == before.about == (demo.player("Okafor"),)


def test_another_name_keeps_what_else_was_asked(demo: Talk) -> None:
    demo.say("where do I dink okafor on the backhand")
    said = demo.say("what about lindqvist")
    assert "Lindqvist" in said.splitlines()[0]
    assert asked(demo).wing is Wing.BACKHAND


def test_changes_add_up(demo: Talk) -> None:
    demo.say("who covers the middle")
    lob = demo.say("and if it's a lob?")
    assert "lob" in lob.splitlines()[0]
    assert asked(demo).ball_kind is BallKind.LOB
    demo.say("what if tom is pulled wide")
    assert (asked(demo).ball_kind, asked(demo).pulled_wide) == (BallKind.LOB, demo.player("Tom"))


def test_a_hand_is_supposed_and_never_noted(demo: Talk) -> None:
    plain = demo.say("who covers the middle")
    stored = demo.stored()
    supposed = demo.say("if tom's a righty?")
    assert asked(demo).hands == ((demo.player("Tom"), Hand.RIGHT),)
    assert supposed != plain, "Tom is left-handed in the demo book: two forehands no longer meet"
    assert demo.stored() == stored
    assert demo.say("who covers the middle") == plain


def test_he_is_whom_the_question_was_about(demo: Talk) -> None:
    demo.say("where do I serve okafor")
    demo.say("if he's lefty?")
    assert asked(demo).hands == ((demo.player("Okafor"), Hand.LEFT),)


@pytest.mark.parametrize("said", ["if he isn't lefty?", "if i was lefty?"])
def test_a_denied_hand_and_one_of_nobody_change_nothing(demo: Talk, said: str) -> None:
    demo.say("where do I serve okafor")
    demo.say(said)
    assert asked(demo).hands == ()


def test_a_statement_after_a_question_is_a_note(demo: Talk) -> None:
    demo.say("where do I serve okafor")
    assert demo.say("and he's lefty").startswith("Noted. Okafor: left-handed")


def test_where_nothing_changes_the_call_says_so(demo: Talk) -> None:
    first = demo.say("where do I dink okafor").splitlines()[0]
    assert demo.say("what if it's windy").splitlines() == [first, NO_CHANGE]
    assert demo.button("weather, body").topic is Topic.WEATHER_OR_BODY
    assert len(demo.say("more").splitlines()) > 2


def test_a_score_changes_and_who_serves_stays(demo: Talk) -> None:
    demo.say("what are our chances at 7-9 they serve")
    assert asked(demo).score == (7, 9, None, False)
    demo.say("and at 8-9?")
    assert asked(demo).score == (8, 9, None, False)
    served = demo.say("what if we serve?")
    assert asked(demo).score == (8, 9, None, True)
    assert "we serve" in served


def test_in_a_match_who_serves_is_told_and_not_supposed(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist, to 11")
    demo.say("where do I dink okafor")
    demo.say("no, they serve")
    assert asked(demo).we_serve is None


@pytest.mark.parametrize(
    "said",
    [
        "and where do I serve lindqvist?",
        "what about stacking?",
        "and the third shot?",
        "who covers the middle",
        "and if they lob do we stack?",
        "okafor has a weak backhand",
    ],
)
def test_a_message_with_more_in_it_is_read_anew(said: str) -> None:
    chat = replace(VIEW, last_topic=Topic.AIM_DINK)
    assert change_said(read_message(said, chat), chat) is None


def test_with_nothing_asked_before_nothing_is_changed() -> None:
    assert change_said(read_message("and on the backhand?", VIEW), VIEW) is None


def test_a_side_can_be_changed() -> None:
    chat = replace(VIEW, last_topic=Topic.WHERE_TO_STAND)
    found = change_said(read_message("and on the left side?", chat), chat)
    assert found is not None
    assert found.slots.side is Side.LEFT


@pytest.mark.parametrize("said", ["sun is behind them", "and the suns in their eyes now"])
def test_the_sun_alone_goes_on_from_a_lob_or_a_serve(said: str) -> None:
    message = read_message(said, VIEW)
    for last in (Topic.LOB, Topic.AIM_SERVE):
        found = change_said(message, replace(VIEW, last_topic=last))
        assert found is not None
        assert (found.topic, found.changes, found.slots.sun) == (last, True, True)
    habit = change_said(message, replace(VIEW, last_topic=Topic.ANSWER_PATTERN))
    assert habit is not None
    assert (habit.topic, habit.changes) == (Topic.WEATHER_OR_BODY, False)
    assert change_said(message, VIEW) is None


@pytest.mark.parametrize("said", ["and", "what about", "if", "and then what about it"])
def test_a_change_of_nothing_is_asked_back(demo: Talk, said: str) -> None:
    demo.say("who covers the middle")
    demo.say(said)
    assert demo.heard is not None
    assert isinstance(demo.heard.understood, Unclear)
    assert demo.buttons[0].topic is not None


def test_what_wind_does_beside_the_call_that_stands_is_told(demo: Talk) -> None:
    demo.say("who runs for the lobs")
    told = demo.say("and if its windy")
    assert NO_CHANGE in told
    assert "who runs stays" in told.splitlines()[-1]


def test_what_was_not_understood_is_not_said_to_change_nothing(demo: Talk) -> None:
    demo.say("who covers the middle")
    assert NO_CHANGE not in demo.say("what if the moon is full?")
