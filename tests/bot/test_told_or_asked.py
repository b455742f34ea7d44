"""Notes that sound like questions, questions that sound like notes or scores, and what may be both.

Lines of our own; how often it goes right is measured on writers (test_asks_model, whole path).
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import MatchSaid, NoteSaid, Question, RallySaid, ResultSaid, ScoreSaid
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId, Topic

MATCH = replace(EVENING, theirs=(PlayerId(3), PlayerId(4)), match_on=True)


@pytest.mark.parametrize(
    "said",
    [
        "no idea why hale lobs so much, he is awful at it",
        "who hits the hardest of them: brandt, easily",
        "why ruiz slices everything, it dies low",
        "okafor? lefty.",
        "at 9-9 lindqvist tightens up, why i do not know",
        "who covers the middle for them: okafor",
    ],
)
def test_a_word_that_asks_makes_no_question_of_a_note(said: str) -> None:
    [note] = understand(said, chat=MATCH)
    assert isinstance(note, NoteSaid)


@pytest.mark.parametrize(
    "said",
    [
        *("is hale a lefty", "where does hale serve", "um does brandt poach", "whats okafor like"),
        *("who covers middle if hale lobs", "who has it when lindqvist drives"),
    ],
)
def test_a_plain_question_is_one_without_its_mark(said: str) -> None:
    assert any(isinstance(one, Question) for one in understand(said, chat=MATCH))


@pytest.mark.parametrize(
    "said",
    [
        "what do i do when okafor leans to poach",
        "what do we do if lindqvist lobs",
    ],
)
def test_what_to_do_when_they_do_it_is_answered(said: str) -> None:
    asked = understand(said, chat=MATCH)[-1]
    assert isinstance(asked, Question)
    assert asked.topic is Topic.ANSWER_PATTERN


@pytest.mark.parametrize("verb", ["takes", "covers", "has"])
def test_who_of_us_does_it_when_they_do_that_is_asked_and_not_kept(verb: str) -> None:
    [question] = understand(f"who {verb} the middle when okafor drives", chat=MATCH)
    assert isinstance(question, Question)
    assert question.topic is Topic.COVER_MIDDLE


@pytest.mark.parametrize(
    "said",
    [
        "hwo covrs mid wen tom is puled wide",
        "hwo takes it wen okafor lobs a lot",
        "who takes it when okafor lobs a lot",
        "wehre do i go if hale pops up his backhand dinks",
        "waht do i do when okafor is slow",
    ],
)
def test_the_words_of_a_question_are_no_note_however_typed(said: str) -> None:
    asked = understand(said, chat=MATCH)
    assert not any(isinstance(one, NoteSaid) for one in asked)


@pytest.mark.parametrize(
    "said",
    ["okafor lobs a lot waht do we do", "okafor is slow, wehre do i go", "hale is lefty wich side"],
)
def test_what_is_told_before_a_question_is_noted_however_that_is_typed(said: str) -> None:
    note, *_ = understand(said, chat=MATCH)
    assert isinstance(note, NoteSaid)
    assert note.claims


def test_a_score_that_asks_is_kept_and_answered() -> None:
    question, score = understand("0-6 in five minutes, fix it", chat=MATCH)
    assert isinstance(question, Question)
    assert question.topic is Topic.ADJUST
    assert isinstance(score, ScoreSaid)


@pytest.mark.parametrize("said", ["6-4-2", "we're up 9-8 receiving", "their ball 6 3 to them"])
def test_a_bare_score_asks_nothing(said: str) -> None:
    [score] = understand(said, chat=MATCH)
    assert isinstance(score, ScoreSaid)


def test_an_announcement_asks_nothing() -> None:
    [match] = understand("next: hale and brandt, 14:10, court 3, best of three", chat=EVENING)
    assert isinstance(match, MatchSaid)


@pytest.mark.parametrize(("said", "is_ours"), [("we won", True), ("they won", False)])
def test_in_a_match_who_won_is_a_rally_and_else_the_match(said: str, is_ours: bool) -> None:
    """A rally is much the commoner, and closing the match by mistake costs more."""
    [rally] = understand(said, chat=MATCH)
    assert isinstance(rally, RallySaid)
    assert rally.won_by_us is is_ours
    [result] = understand(said, chat=EVENING)
    assert isinstance(result, ResultSaid)
    assert result.won is is_ours


@pytest.mark.parametrize(
    "said",
    ["wher shuld i put my 2nd shot vs okafor hes deep", "we won the coin, give me both options"],
)
def test_what_asks_moves_no_score(said: str) -> None:
    understood = understand(said, chat=MATCH)
    assert any(isinstance(one, Question) for one in understood)
    assert not any(isinstance(one, RallySaid | ResultSaid) for one in understood)


def test_a_note_that_may_ask_offers_topics_and_is_kept(demo: Talk) -> None:
    said = "every drive at lindqvist comes back faster"
    notes = len(demo.notes(50))
    demo.say(said)
    assert len(demo.notes(50)) == notes + 1
    assert any(button.topic is not None for button in demo.buttons)


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("ruiz drives n hale sprints in behind it like a freight train", Topic.ANSWER_PATTERN),
        ("speed it up at WHO. okafor has hands like a snake, hale is asleep", Topic.AIM_ATTACK),
    ],
)
def test_a_note_with_a_topic_beyond_doubt_offers_it(said: str, topic: Topic) -> None:
    [note] = understand(said, chat=EVENING)
    assert isinstance(note, NoteSaid)
    assert topic in note.may_ask


def test_a_plain_note_offers_no_topic() -> None:
    [note] = understand("okafor is a lefty", chat=EVENING)
    assert isinstance(note, NoteSaid)
    assert note.may_ask == ()


def test_a_second_sentence_may_ask_without_a_mark() -> None:
    said = "score is 3 all side out to us. who starts on the right"
    question = understand(said, chat=EVENING)[0]
    assert isinstance(question, Question)
    assert question.topic is Topic.WHERE_TO_STAND


def test_a_time_out_in_capitals_is_no_mere_link() -> None:
    [question] = understand("TO now???", chat=EVENING)
    assert isinstance(question, Question)
    assert question.topic is Topic.TIMEOUT_NOW


def test_what_is_called_a_note_offers_no_topic() -> None:
    [note] = understand("note okafor eats everything at his body, out of ideas", chat=MATCH)
    assert isinstance(note, NoteSaid)
    assert note.may_ask == ()


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("who takes the middle with tom", Topic.COVER_MIDDLE),
        ("who takes the middle with okafor", Topic.COVER_MIDDLE),
        ("so who takes the middle with tom", Topic.COVER_MIDDLE),
    ],
)
def test_a_who_with_somebody_is_asked_and_no_note(said: str, topic: Topic) -> None:
    [asked] = understand(said, chat=MATCH)
    assert isinstance(asked, Question)
    assert asked.topic is topic


@pytest.mark.parametrize(
    "said",
    [
        "lindqvist who takes the middle",
        "who poaches the most: okafor",
        "okafor plays left and is slow with lindqvist",
    ],
)
def test_a_who_that_tells_stays_a_note(said: str) -> None:
    [note] = understand(said, chat=MATCH)
    assert isinstance(note, NoteSaid)
