"""A score that asks, a note that may ask, a question that may be a note, and an unclear reply.

Lines of our own; the figures on the writers' lines stand beside the thresholds in `asks_model`.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from topic_examples import OPEN_VOICES, voice_examples
from voices import EVENING

from bot.chat.question import NoteSaid, Question, ResultSaid, ScoreSaid, Unclear, Understood
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId, Topic

MATCH = replace(EVENING, theirs=(PlayerId(3), PlayerId(4)), match_on=True)

ODD = ["??", "...", "🏓🏓", "asdf qwer zxcv", "721", "+1", "<b>x</b>", "no", "and?", "(a|b)*[c]+^$"]


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("9-all second server. one liner", Topic.CUE),
        ("too soon at 0 to 4", Topic.TIMEOUT_NOW),
        ("up 9-8 help", Topic.ADJUST),
    ],
)
def test_few_words_beside_a_score_are_answered_and_the_score_is_kept(
    said: str, topic: Topic
) -> None:
    question, score = understand(said, chat=MATCH)
    assert isinstance(question, Question)
    assert question.topic is topic
    assert isinstance(score, ScoreSaid)


@pytest.mark.parametrize(
    "said", ["6-4-2", "we're up 9-8 receiving", "7 all nice", "won 11-8 11-6 thanks"]
)
def test_a_score_that_hardly_asks_stays_one(said: str) -> None:
    [told] = understand(said, chat=MATCH)
    assert isinstance(told, ScoreSaid | ResultSaid)
    assert told.may_ask == ()


def test_a_score_that_may_ask_offers_topics_and_is_counted(demo: Talk) -> None:
    demo.say("we serve first")
    said = "10-6 us, partner wants winners only"
    [told] = understand(said, chat=MATCH)
    assert isinstance(told, ScoreSaid)
    assert len(told.may_ask) == 2
    demo.say(said)
    assert "10-6" in demo.sent[-1]
    assert {told.may_ask[0], told.may_ask[1]} <= {button.topic for button in demo.buttons}


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("castellano lobs like it's 1975", Topic.LOB),
        ("okafor poaches often", Topic.ANSWER_PATTERN),
    ],
)
def test_a_note_with_a_clear_topic_is_kept_and_its_topic_to_be_seen(
    said: str, topic: Topic
) -> None:
    note, *asked = understand(said, chat=EVENING)
    assert isinstance(note, NoteSaid)
    assert note.claims
    assert topic in (*note.may_ask, *(one.topic for one in asked if isinstance(one, Question)))


def test_words_about_a_body_offer_what_helps() -> None:
    [note] = understand("my heel hurts after the volley", chat=EVENING)
    assert isinstance(note, NoteSaid)
    assert note.may_ask == (Topic.WEATHER_OR_BODY,)


def test_a_statement_answered_can_be_written_down_with_one_tap(demo: Talk) -> None:
    notes = len(demo.notes(50))
    demo.say("we lose every long dink rally with hale")
    assert len(demo.notes(50)) == notes
    button = next(one for one in demo.buttons if one.label == "write it down")
    demo.press(button.payload)
    assert len(demo.notes(50)) == notes + 1
    demo.press(button.payload)
    assert len(demo.notes(50)) == notes + 1


@pytest.mark.parametrize("said", ["where do i dink okafor", "thanks that helped", "lob okafor?"])
def test_a_plain_question_offers_no_note(said: str) -> None:
    [question] = understand(said, chat=EVENING)
    assert isinstance(question, Question)
    assert not question.may_note


@pytest.mark.parametrize("said", ODD)
def test_an_unclear_reply_has_buttons_whatever_was_typed(demo: Talk, said: str) -> None:
    demo.say(said)
    assert demo.heard is not None
    unclear = demo.heard.understood
    assert demo.buttons
    if isinstance(unclear, Unclear):
        assert any(button.topic is not None for button in demo.buttons)
        assert any(map(str.isalnum, said)) == bool(unclear.offers)


def test_what_was_not_asked_offers_other_topics() -> None:
    chat = replace(EVENING, last_topic=Topic.AIM_DINK)
    [unclear] = understand("that's not what i asked", chat=chat)
    assert isinstance(unclear, Unclear)
    assert unclear.offers
    assert Topic.AIM_DINK not in unclear.offers


@pytest.mark.parametrize("voice", OPEN_VOICES)
def test_no_unclear_question_of_an_open_voice_is_without_topics(voice: str) -> None:
    said: list[Understood] = []
    for one in voice_examples(voice):
        said += understand(one.text, chat=replace(EVENING, last_topic=one.after))
    assert all(1 <= len(one.offers) <= 3 for one in said if isinstance(one, Unclear))


@pytest.mark.parametrize(
    "said",
    ["how high is the net", "how wide is the court?", "how deep is the kitchen", "net height"],
)
def test_a_measure_of_the_court_is_in_the_rulebook(said: str) -> None:
    """Their topic is the rulebook's: 2025, section 2 (court and net)."""
    [question] = understand(said, chat=EVENING)
    assert isinstance(question, Question)
    assert question.topic is Topic.RULES_QUESTION


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("how high should my dink be over the net", Topic.AIM_DINK),
        ("how high is a lob supposed to go", Topic.LOB),
        ("serve is too hard", Topic.AIM_RETURN),
        ("their serve is too fast for us", Topic.AIM_RETURN),
        ("my serve is too hard", Topic.AIM_SERVE),
        ("serve is too short", Topic.AIM_SERVE),
        ("our thrids float what now", Topic.THIRD_SHOT),
        ("my heel came down on the line after the volley", Topic.RULES_QUESTION),
        ("where do my feet go after the volley", Topic.WHERE_TO_STAND),
    ],
)
def test_near_words_go_where_they_belong(said: str, topic: Topic) -> None:
    [question] = understand(said, chat=EVENING)
    assert isinstance(question, Question)
    assert question.topic is topic
