"""A score that asks, a note that may ask, a question that may be a note, and an unclear reply.

Lines of our own; the figures on the writers' lines stand beside the thresholds in `asks_model`.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import NoteSaid, Question, RallySaid, ResultSaid, ScoreSaid, Unclear, Understood
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
    ("said", "topic", "kept"),
    [
        ("lost 2-11, my head is gone", Topic.RESET_HEAD, ResultSaid),
        ("match pt them, go safe", Topic.RISK_AT_SCORE, RallySaid),
    ],
)
def test_a_result_or_a_rally_that_surely_asks_is_answered_too(
    said: str, topic: Topic, kept: type[Understood]
) -> None:
    question, *told = understand(said, chat=EVENING)
    assert isinstance(question, Question)
    assert question.topic is topic
    assert all(isinstance(one, kept) for one in told)


@pytest.mark.parametrize("said", ["lost 2-11", "we won that rally", "beat them 11-4 11-9"])
def test_a_result_or_a_rally_that_only_tells_stays_one(said: str) -> None:
    [told] = understand(said, chat=EVENING)
    assert isinstance(told, ResultSaid | RallySaid | ScoreSaid)


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("rally scoring to 21, they're on 20, i'm on 20, do i go for it", Topic.RISK_AT_SCORE),
        ("rally scoring 12-9 us", Topic.WIN_CHANCE),
        ("20-19 us serving in this rally scoring circus", Topic.WIN_CHANCE),
    ],
)
def test_a_score_of_another_format_weighs_the_risk_only_where_that_is_asked(
    said: str, topic: Topic
) -> None:
    [question] = understand(said, chat=EVENING)
    assert isinstance(question, Question)
    assert question.topic is topic


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("okafor is limping, go at him", Topic.WHOM_TO_TARGET),
        ("hale has a bad knee so drop it short", Topic.DROP_ON_DEEP_OPPONENTS),
        ("tom hurt his ankle, i play with a stranger now", Topic.PAIR_UP),
    ],
)
def test_words_about_a_body_offer_what_they_may_ask_too(said: str, topic: Topic) -> None:
    [note] = understand(said, chat=EVENING)
    assert isinstance(note, NoteSaid)
    assert note.may_ask[0] is Topic.WEATHER_OR_BODY
    assert topic in note.may_ask


def test_one_of_us_who_hurts_is_offered_no_tactics() -> None:
    [note] = understand("my ankle hurts on each drop", chat=EVENING)
    assert isinstance(note, NoteSaid)
    assert note.may_ask == (Topic.WEATHER_OR_BODY,)


def test_the_topics_beside_a_body_are_buttons(demo: Talk) -> None:
    demo.say("okafor is limping, go at him")
    assert Topic.WHOM_TO_TARGET in {button.topic for button in demo.buttons}


@pytest.mark.parametrize("said", ["was out and i hit it", "was out i hit it"])
def test_small_words_with_a_clear_topic_are_a_question(said: str) -> None:
    [question] = understand(said, chat=EVENING)
    assert isinstance(question, Question)
    assert question.topic is Topic.LET_IT_GO


def test_a_claim_in_a_sure_question_of_no_clear_topic_is_kept_and_asked_about() -> None:
    note, unclear = understand("would okafor poach again, he is quick", chat=EVENING)
    assert isinstance(note, NoteSaid)
    assert note.claims
    assert isinstance(unclear, Unclear)


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
        ("our serves are going out", Topic.ADJUST),
        ("my drive keeps going long today", Topic.ADJUST),
        ("i keep hitting it long", Topic.ADJUST),
        ("his drives are going out", Topic.LET_IT_GO),
        ("my lobs are going out", Topic.LOB),
        ("desperate on the baseline, lob?", Topic.LOB),
        ("we r stuck bak what now", Topic.TRANSITION),
        ("stuck back", Topic.ADJUST),
        ("when can i go for the line dink", Topic.AIM_DINK),
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


@pytest.mark.parametrize(
    "said",
    [
        "is it legal if okafor leans over the kitchen after her volley",
        "wait is that legal",
        "is it even a fault if i lob from the kitchen",
        "was that allowed?",
    ],
)
def test_legal_or_not_is_a_rule_whatever_the_shot(said: str) -> None:
    [question] = understand(said, chat=replace(MATCH, last_topic=Topic.LOB))
    assert isinstance(question, Question)
    assert question.topic is Topic.RULES_QUESTION
