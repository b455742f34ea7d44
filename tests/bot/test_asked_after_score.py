"""A question behind a score is answered by its own words, and the score counts.

Side-out scoring, the score called ours first: rulebook 2025, section 4. Which topic is meant:
common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import Question, ScoreSaid
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId, Topic

MATCH = replace(EVENING, theirs=(PlayerId(3), PlayerId(4)), match_on=True)


def topics(text: str) -> list[Topic]:
    return [one.topic for one in understand(text, chat=MATCH) if isinstance(one, Question)]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("9-9-2 our serve, serve to who", Topic.AIM_SERVE),
        ("5-4-1 our serve who do i serve to", Topic.AIM_SERVE),
        ("3-3-1 we serve. which one do i serve at", Topic.AIM_SERVE),
        ("6-8 our serve im 2nd server where do i serve", Topic.AIM_SERVE),
        ("4-3-2 them serving, who do i aim at", Topic.WHOM_TO_TARGET),
        ("4-6-1 they serve, return to who", Topic.AIM_RETURN),
        ("4-8-1 them, where do i return", Topic.AIM_RETURN),
        ("9-10-2 their serve should we take a time out", Topic.TIMEOUT_NOW),
        ("9-8-1 us, who stands where", Topic.WHERE_TO_STAND),
        ("9-8-2 us tgt?", Topic.WHOM_TO_TARGET),
        ("9-9-1 us target", Topic.WHOM_TO_TARGET),
        ("9-9-1 us mid?", Topic.COVER_MIDDLE),
        ("7-4-1 us mid", Topic.COVER_MIDDLE),
    ],
)
def test_the_clause_behind_a_score_is_what_is_asked(text: str, topic: Topic) -> None:
    assert topics(text) == [topic]
    assert sum(isinstance(one, ScoreSaid) for one in understand(text, chat=MATCH)) == 1


def test_the_score_counts_beside_the_answer(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    told = demo.say("5-4-1 our serve who do i serve to")
    assert told.startswith("Serve ")
    assert "\n\n5-4-1. We serve" in told


def test_what_they_do_to_us_is_no_question_of_the_score() -> None:
    found = topics("0-4 down, they keep blasting at my partner")
    assert found in ([Topic.ANSWER_PATTERN], [Topic.BEING_TARGETED])


@pytest.mark.parametrize(
    "text", ["2-2-1, he missed an easy one", "5-6-2 nice", "7-4-1 us", "9-10-1 them, match point"]
)
def test_chatter_behind_a_score_asks_nothing(text: str) -> None:
    assert topics(text) == []


@pytest.mark.parametrize("text", ["who will okafor serve to", "who are they serving to"])
def test_whom_they_serve_to_is_told_from_the_score(demo: Talk, text: str) -> None:
    """The receiver stands diagonally across from the server: rulebook 2025, 4.B."""
    demo.say("next: okafor and lindqvist")
    demo.say("they serve")
    assert "Receive on the right" in demo.say(text)


@pytest.mark.parametrize(
    ("short", "full"),
    [
        ("tgt", Topic.WHOM_TO_TARGET),
        ("whos tgt", Topic.WHOM_TO_TARGET),
        ("su where", Topic.AIM_ATTACK),
        ("3rd drp or drv", Topic.THIRD_SHOT),
        ("rst or cntr", Topic.RESET_OR_COUNTER),
        ("stk?", Topic.STACK_OR_NOT),
        ("wp?", Topic.WIN_CHANCE),
        ("tmo?", Topic.TIMEOUT_NOW),
        ("what chg", Topic.ADJUST),
        ("pos?", Topic.WHERE_TO_STAND),
    ],
)
def test_the_courts_shorthand_asks_like_its_words(short: str, full: Topic) -> None:
    assert topics(short) == [full]


def test_which_game_it_is_before_a_score_asks_nothing(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("we serve")
    assert demo.say("3rd, 6-6-1 they serve").startswith("6-6-1. They serve")
    assert demo.say("6-6-1 we serve, third shot?").startswith("Drop thirds")
