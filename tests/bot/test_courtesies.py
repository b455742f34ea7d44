"""Greetings, thanks, chatter and abuse: a polite line with an example; a question inside wins."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.courtesies import is_courtesy, without_courtesies
from bot.chat.said import Question
from bot.chat.understand import understand
from bot.chat.words import words
from knowledge.vocabulary import Topic

SCOLDING = ("language", "polite", "rude", "please don't", "respect", "calm down", "sorry")


@pytest.mark.parametrize(
    ("said", "begins"),
    [
        ("hi", "Hello!"),
        ("hey coach good morning", "Hello!"),
        ("thanks a lot", "Any time."),
        ("thx bro", "Any time."),
        ("lol", "Laughing"),
        ("ok", "Ask me about the match"),
        ("yes sure", "Ask me about the match"),
        ("you suck", "Fair enough."),
        ("fuck you", "Fair enough."),
        ("you useless piece of shit", "Fair enough."),
    ],
)
def test_small_talk_gets_its_line_and_an_example_of_this_chat(
    demo: Talk, said: str, begins: str
) -> None:
    demo.say("next: ruiz-peña and hale, to 11")
    before = demo.stored()
    reply = demo.say(said)
    assert reply.startswith(begins)
    assert '"where do I dink Ruiz-Peña?"' in reply
    assert not any(word in reply.lower() for word in SCOLDING)
    assert demo.stored() == before


def test_the_example_can_be_sent_as_it_stands(demo: Talk) -> None:
    example = demo.say("hello").split('"')[1]
    assert "Okafor" in demo.say(example).splitlines()[0]


def test_an_empty_book_has_an_example_without_a_name(fresh: Talk) -> None:
    assert '"who covers the middle?"' in fresh.say("hello")


@pytest.mark.parametrize(
    "said",
    [
        "you idiot, who covers the middle?",
        "who the fuck covers the middle",
        "thanks! who covers the middle?",
        "hello good morning who covers the middle",
        "who covers the middle you useless piece of shit",
        "wtf who covers the middle ffs",
    ],
)
def test_a_question_inside_is_answered(demo: Talk, said: str) -> None:
    assert demo.say(said).splitlines()[0] == demo.say("who covers the middle").splitlines()[0]


@pytest.mark.parametrize("said", ["order me a pizza", "tell me a joke", "do you speak german"])
def test_off_topic_gets_a_polite_line_and_an_example(demo: Talk, said: str) -> None:
    reply = demo.say(said)
    assert len(reply.splitlines()) == 2
    assert '"where do I dink Okafor?"' in reply


@pytest.mark.parametrize("said", ["שלום מה שלומך", "こんにちは", "привет как дела"])
def test_another_script_is_told_what_is_read(demo: Talk, said: str) -> None:
    assert demo.say(said).startswith("I read English only")


@pytest.mark.parametrize(
    "said", ["okafor sucks", "great serve", "hello from court 4 we are up", "is that legal", ""]
)
def test_what_says_more_is_no_courtesy(said: str) -> None:
    assert not is_courtesy(words(said))


@pytest.mark.parametrize(
    ("text", "bare"),
    [
        ("thanks, where do i serve?", "where do i serve?"),
        ("where do i fucking serve", "where do i serve"),
        ("hi hello", ""),
        ("no courtesy here", "no courtesy here"),
    ],
)
def test_what_is_left_without_them(text: str, bare: str) -> None:
    assert without_courtesies(text, words(text)) == bare


@pytest.mark.parametrize(
    "words", ["thanks drive safe", "safe travels", "have a good drive home", "see you tomorrow"]
)
def test_whoever_leaves_asks_for_no_drive(demo: Talk, words: str) -> None:
    assert "third" not in demo.say(words).lower()
    assert "Drop" in demo.say("drive or drop")


CHATTER = [
    "cheers pal going for a pint", "off for lunch brb", "thanks mate get in",
    "okafor is in the bathroom brb lol", "tom says just breathe haha",
    "thats a bit mean lol ignore that", "sorry thats a bit mean, ignore that",
]  # fmt: skip
NO_CHATTER = [
    "get in", "going for a drop or drive", "tom says lob more", "okafor is at the net",
    "okafor is off for a lob", "ignore that ball",
]  # fmt: skip


def is_chatter(text: str) -> bool:
    said = understand(text, chat=EVENING)
    return [one.topic for one in said if isinstance(one, Question)] == [Topic.SMALLTALK_OR_UNKNOWN]


@pytest.mark.parametrize("text", CHATTER)
def test_a_break_a_cheer_and_a_kind_word_ask_and_tell_nothing(text: str) -> None:
    assert is_chatter(text)


@pytest.mark.parametrize("text", NO_CHATTER)
def test_play_told_in_such_words_is_no_chatter(text: str) -> None:
    assert not is_chatter(text)


def test_behind_a_note_ignoring_it_is_no_chatter() -> None:
    said = understand("sorry thats a bit mean, ignore that", chat=replace(EVENING, noted=True))
    assert not any(
        isinstance(one, Question) and one.topic is Topic.SMALLTALK_OR_UNKNOWN for one in said
    )
