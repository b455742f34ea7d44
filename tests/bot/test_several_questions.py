"""Several questions in one message: cut surely or not at all, two answered, the rest a tap away."""

from __future__ import annotations

import pytest
from sqlalchemy import select
from talk import Talk
from topic_examples import VIEW

from bot.chat.message import read_message
from bot.chat.payload import Tap, Verb
from bot.chat.several_questions import several_questions
from knowledge.vocabulary import Topic
from scouting_db import tables

MIDDLE, DINK, SERVE = Topic.COVER_MIDDLE, Topic.AIM_DINK, Topic.AIM_SERVE
THREE = [MIDDLE, SERVE, DINK]

LONGEST_ANSWERS = 10
"""Lines of two short answers, the empty one between them and whom they are about."""


def topics(text: str) -> list[Topic]:
    """The topics that a message is cut into; none where it stays one question."""
    return [one.topic for one in several_questions(read_message(text, VIEW), VIEW)]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("who covers the middle? and where do I serve okafor", [MIDDLE, SERVE]),
        ("who has middle? and where do I serve okafor?", [MIDDLE, SERVE]),
        ("where do i dink okafor and who covers the middle", [DINK, MIDDLE]),
        ("where do i dink okafor also where do i serve brandt", [DINK, SERVE]),
        ("who covers the middle\nwhere do i serve okafor", [MIDDLE, SERVE]),
        ("who covers the middle where do i serve okafor", [MIDDLE, SERVE]),
        ("where do i dink okafor who covers the middle", [DINK, MIDDLE]),
        ("who covers the middle, where do i serve okafor, where do i dink ruiz", THREE),
        ("should we call a timeout at 4-8 and where do i serve okafor", [Topic.TIMEOUT_NOW, SERVE]),
        ("where do i dink ruiz and where do i dink okafor", [DINK, DINK]),
        ("should i lob ruiz or hale and who covers lobs", [Topic.LOB, Topic.LOB]),
        ("where to serve okafor and who covers the middle", [SERVE, MIDDLE]),
        ("how long is a timeout and do we have to win by two", [Topic.RULES_QUESTION] * 2),
    ],
)  # fmt: skip
def test_each_part_that_is_surely_a_question_stands_alone(text: str, wanted: list[Topic]) -> None:
    assert topics(text) == wanted


@pytest.mark.parametrize(
    "text",
    [
        "drop or drive and where?",
        "lefty and righty, stack?",
        "who covers the middle, me or tom?",
        "where do i dink okafor and ruiz",
        "where do i dink okafor and why",
        "should i lob ruiz and when should i lob",
        "who covers the middle and when he lobs who takes it",
        "who covers the middle when they drive and when they lob",
        "should we lob or should we drive okafor",
        "where do i serve okafor? backhand or body?",
        "i dont know where to serve okafor and where he stands",
        "where do i dink okafor and where do i dink him when hes pulled wide",
        "next to me okafor dinks and i dont know who covers the middle",
        "who covers the middle? right?",
        "okafor knows where to serve and how to attack",
        "is it a fault if he touches the net and do we get the point",
    ],
)
def test_one_question_stays_one(text: str) -> None:
    assert topics(text) == []


def test_two_are_answered_in_order_in_one_message(demo: Talk) -> None:
    said = demo.say("who covers the middle? and where do I serve okafor?")
    assert len(demo.last) == 1
    first, second = said.split("\n\n")
    assert "Mira" in first
    assert second.startswith("Serve Okafor")
    assert len(said.splitlines()) <= LONGEST_ANSWERS
    assert all(len(block.splitlines()[0]) <= 60 for block in (first, second))


def test_one_message_is_one_row_of_the_outbox(demo: Talk) -> None:
    def sent() -> int:
        with demo.store.reading() as connection:
            return len(connection.execute(select(tables.outbox)).all())

    before = sent()
    demo.say("who covers the middle? and where do I serve okafor? where do i dink lindqvist?")
    assert sent() == before + 1


def test_the_rest_are_buttons_with_their_own_words(demo: Talk) -> None:
    demo.say("who covers the middle? where do I serve okafor? where do i dink lindqvist?")
    label = "where do i dink lindqvist?"
    assert demo.button(label).topic is DINK
    said = demo.tap(label)
    assert "Lindqvist" in said.splitlines()[0]
    assert demo.context.asked is not None
    assert demo.context.asked.about == (demo.player("Lindqvist"),)


def test_a_waiting_question_keeps_its_score_and_its_people(demo: Talk) -> None:
    demo.say(
        "who covers the middle, where do i dink him if okafor crowds, where do i serve lindqvist,"
        " what are our chances at 9-7"
    )
    demo.tap("what are our chances at 9-7")
    assert demo.context.asked is not None
    assert demo.context.asked.topic is Topic.WIN_CHANCE
    assert demo.context.asked.score is not None
    assert demo.context.asked.score[:2] == (9, 7)


def test_him_is_whom_the_question_before_named(demo: Talk) -> None:
    demo.say("where do i serve okafor? who covers the middle? where do i dink him?")
    demo.tap("where do i dink him?")
    assert demo.context.asked is not None
    assert demo.context.asked.about == (demo.player("Okafor"),)


def test_what_was_answered_in_short_is_a_tap_away_in_full(demo: Talk) -> None:
    short = demo.say("who covers the middle? and where do I serve okafor?").split("\n\n")[0]
    full = demo.tap("more: the middle")
    assert full.splitlines()[0] == short.splitlines()[0]
    assert len(full.splitlines()) > len(short.splitlines())


def test_why_and_more_are_of_the_last_answered(demo: Talk) -> None:
    demo.say("who covers the middle? and where do i dink okafor?")
    assert demo.say("why?").splitlines()[0].startswith("Dink Okafor")
    demo.say("where do i dink okafor? and who covers the middle?")
    assert "Mira" in demo.say("more").splitlines()[0]


def test_an_alike_name_is_asked_about_beside_the_other_answer(demo: Talk) -> None:
    said = demo.say("where do I dink ruiz? and where do I serve okafor?")
    assert said.startswith("Which ruiz?")
    assert "Serve Okafor" in said
    assert "Dink Ana Ruiz" in demo.tap("Ana Ruiz")


def test_an_alike_name_may_wait_too(demo: Talk) -> None:
    demo.say("who covers the middle? where do I serve okafor? where do I dink ruiz?")
    assert demo.tap("where do I dink ruiz?").startswith("Which ruiz?")
    assert "Dink Ana Ruiz" in demo.tap("Ana Ruiz")


def test_a_note_may_stand_before_two_questions(demo: Talk) -> None:
    said = demo.say("lindqvist is a lefty. where do i dink him and who covers the middle?")
    assert said.startswith("Noted. Lindqvist: left-handed.")
    assert len(demo.last) == 2
    assert ("hand", "left", False) in demo.claims("Lindqvist")


def test_the_same_answer_is_given_once(demo: Talk) -> None:
    said = demo.say("how do i return to okafor and how do i return to lindqvist")
    lines = said.splitlines()
    assert len(lines) == len(set(lines))


def test_an_emergency_is_answered_alone(demo: Talk) -> None:
    said = demo.say("my chest hurts and who covers the middle? where do i serve okafor?")
    assert said.startswith("Stop. Call emergency help")
    assert "Serve" not in said


def test_in_a_match_the_answers_are_no_longer(demo: Talk) -> None:
    asked = "who covers the middle? and where do I serve okafor?"
    before = demo.say(asked)
    demo.say("/mode match")
    assert demo.say(asked) == before


def test_a_stranger_s_tap_on_a_waiting_name_is_no_answer(demo: Talk) -> None:
    demo.say("who covers the middle? where do I serve okafor? where do i dink lindqvist?")
    number = Tap.parse(demo.button("where do i dink lindqvist?").payload).args[0]
    before = demo.stored()
    reply = demo.press(str(Tap(verb=Verb.WHO, args=(number, str(demo.player("Okafor"))))))
    assert reply == "That button is from an earlier time. Ask me again."
    demo.say("note zorblatt: lefty")
    number = Tap.parse(demo.button("add zorblatt").payload).args[0]
    assert demo.press(f"1:later:{number}") == reply
    assert demo.stored()["player"] == before["player"]


def test_the_contract_reports_the_first_question(demo: Talk) -> None:
    demo.say("where do i serve okafor at 4-2? and who covers the middle?")
    assert demo.heard is not None
    assert demo.heard.trace["topic"] is SERVE
    assert demo.heard.trace["advice"].topic is SERVE
