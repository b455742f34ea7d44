"""Corrections of what was last understood: of the question where one was asked last."""

from __future__ import annotations

import pytest
from talk import Talk

from knowledge.vocabulary import Topic


def about(demo: Talk) -> tuple[int, ...]:
    assert demo.context.asked is not None
    return demo.context.asked.about


@pytest.mark.parametrize(
    "said",
    [
        "i meant lindqvist",
        "no, lindqvist",
        "sorry i mean lindqvist",
        "not okafor, lindqvist",
        "lindqvist, not okafor",
        "no not okafor i meant lindqvist",
        "no, the other one",
    ],
)
def test_the_question_is_answered_about_whom_it_should_have_been(demo: Talk, said: str) -> None:
    demo.say("where do I dink okafor")
    assert "Lindqvist" in demo.say(said).splitlines()[0]
    assert about(demo) == (demo.player("Lindqvist"),)


def test_only_who_was_not_meant_goes(demo: Talk) -> None:
    demo.say("report on okafor and hale")
    demo.say("not hale, lindqvist")
    assert set(about(demo)) == {demo.player("Okafor"), demo.player("Lindqvist")}


def test_our_own_two_are_told_apart(demo: Talk) -> None:
    demo.say("who covers the middle if tom is pulled wide")
    assert "Mira" in demo.say("who covers the middle if tom is pulled wide").splitlines()[0]
    said = demo.say("not tom, mira")
    assert said.splitlines()[0] == "Give Tom all inside while Mira is wide."


def test_who_of_us_plays_it_leaves_whom_it_is_about(demo: Talk) -> None:
    demo.say("where do I dink okafor")
    demo.say("not tom, mira")
    assert about(demo) == (demo.player("Okafor"),)
    assert demo.context.asked is not None
    assert demo.context.asked.asker == demo.player("Mira")


def test_after_a_question_no_note_is_touched(demo: Talk) -> None:
    demo.say("okafor: lefty, pops up backhand dinks")
    before = demo.stored()
    demo.say("where do I serve okafor?")
    demo.say("no, i meant lindqvist")
    demo.say("no, the other one")
    assert about(demo) == (demo.player("Okafor"),)
    assert demo.stored() == before


def test_after_a_note_the_note_is_meant(demo: Talk) -> None:
    demo.say("where do I serve okafor?")
    demo.say("okafor: lefty, pops up backhand dinks")
    assert demo.say("no, i meant lindqvist").startswith("Changed. Lindqvist: left-handed")


def test_the_partner_is_the_other_one_before_any_match(demo: Talk) -> None:
    demo.say("where do I dink hale")
    demo.say("no, the other one")
    assert about(demo) == (demo.player("Ana Ruiz"),)


def test_with_nobody_else_known_it_is_asked(demo: Talk) -> None:
    demo.say("should we stack")
    before = demo.stored()
    assert demo.say("no, the other one") == "Whom do you mean? Send it with the name."
    assert demo.stored() == before


def test_two_names_with_more_said_are_no_correction(demo: Talk) -> None:
    demo.say("where do I dink okafor")
    demo.say("okafor is not as quick as lindqvist")
    assert demo.heard is not None
    assert demo.heard.kind == "note"


@pytest.mark.parametrize("said", ["not okafor", "no, not okafor", "not him", "not him, her"])
def test_who_was_not_meant_leaves_the_other_of_the_pair(demo: Talk, said: str) -> None:
    demo.say("where do I dink okafor")
    demo.say(said)
    assert about(demo) == (demo.player("Lindqvist"),)


def test_of_two_the_denied_one_goes(demo: Talk) -> None:
    demo.say("report on okafor and hale")
    demo.say("not hale")
    assert about(demo) == (demo.player("Okafor"),)


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("i meant the third shot", Topic.THIRD_SHOT),
        ("no, i meant where do i serve him", Topic.AIM_SERVE),
        ("sorry i mean who covers the middle", Topic.COVER_MIDDLE),
    ],
)
def test_another_topic_keeps_whom_it_was_about(demo: Talk, said: str, topic: Topic) -> None:
    demo.say("where do I dink okafor on the backhand")
    demo.say(said)
    assert demo.context.asked is not None
    assert demo.context.asked.topic is topic
    assert about(demo) == (demo.player("Okafor"),)


def test_the_other_one_of_a_note_is_the_partner(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist, to 11")
    demo.say("okafor: lefty")
    assert demo.say("no, the other one").startswith("Changed. Lindqvist: left-handed")


def test_a_note_not_of_somebody_is_kept_and_asked_about(demo: Talk) -> None:
    demo.say("note ruiz-peña: lobs a lot")
    before = demo.stored()
    assert demo.say("not ruiz-peña") == "Whom do you mean? Send it with the name."
    assert demo.stored() == before


@pytest.mark.parametrize("said", ["that's not what I asked", "wrong answer", "I didn't ask that"])
def test_an_answer_to_something_else_is_not_given_twice(demo: Talk, said: str) -> None:
    answered = demo.say("where do I dink okafor")
    reply = demo.say(said)
    assert reply != answered
    assert reply == "Which of these do you mean?"
    assert len(demo.buttons) == 3


@pytest.mark.parametrize("said", ["no the other one", "wrong player", "no, his partner"])
def test_words_that_are_nobodys_yet_are_never_deleted_for_a_slip_of_the_name(
    demo: Talk, said: str
) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("lindquist hits everything to the middle")
    before = demo.notes()
    assert demo.say(said).splitlines()[0] == "Those words are kept, on nobody yet."
    assert demo.notes() == before
    assert demo.tap("undo").startswith("Taken back")


def test_his_partner_is_the_other_of_the_two(demo: Talk) -> None:
    demo.say("lindqvist lobs a lot")
    assert demo.say("no his partner") == "Changed. Okafor: lob often."


def test_what_a_note_says_of_a_name_still_asked_about_is_not_dropped(demo: Talk) -> None:
    demo.say("add moreno")
    demo.say("morena leans middle, okafor guards the line")
    told = demo.say("not moreno, okafor").splitlines()
    assert told == [
        "Changed. Okafor: squeezing the middle rarely.",
        "On nobody yet: morena leans middle.",
    ]
    assert "Moreno" not in [one.label for one in demo.buttons]
    assert "Morena: squeezing the middle often" in demo.tap("add morena")


def test_once_the_name_is_settled_nothing_is_open(demo: Talk) -> None:
    demo.say("add moreno")
    demo.say("morena leans middle, okafor guards the line")
    demo.tap("Moreno")
    assert "On nobody yet" not in demo.say("not okafor, lindqvist")


@pytest.mark.parametrize(
    "said",
    [
        "undo that it was a question",
        "undo that middle thing it was a question",
        "take it back, i was only asking",
        "scratch that note because it was a question not a note",
    ],
)
def test_a_note_made_of_a_question_goes(demo: Talk, said: str) -> None:
    notes = len(demo.notes())
    demo.say("note who takes the middle with tom")
    assert demo.say(said).startswith("Taken back")
    assert len(demo.notes()) == notes


@pytest.mark.parametrize("said", ["forget that, it was a good shot", "is it a question of nerves"])
def test_what_only_sounds_like_it_takes_nothing_back(demo: Talk, said: str) -> None:
    demo.say("okafor is slow")
    notes = len(demo.notes())
    assert not demo.say(said).startswith("Taken back")
    assert len(demo.notes()) >= notes


@pytest.mark.parametrize("said", ["*lindq", "* lindqvist", "lindqvist*"])
def test_a_star_beside_a_name_puts_the_note_right(demo: Talk, said: str) -> None:
    demo.say("okafor is tall")
    assert demo.say(said) == "Changed. Lindqvist: tall."


def test_a_star_before_a_whole_note_is_none(demo: Talk) -> None:
    assert demo.say("* okafor is slow") == "Noted. Okafor: foot speed weak."
