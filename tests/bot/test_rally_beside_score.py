"""A rally with what happened in it and the score it led to: one rally, its details, that score."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import ScoreSaid
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId

OKAFOR, LINDQVIST = PlayerId(3), PlayerId(4)
MATCH = replace(EVENING, theirs=(OKAFOR, LINDQVIST), focus=(OKAFOR, LINDQVIST), match_on=True)


@pytest.fixture
def behind(demo: Talk) -> Talk:
    """They serve at 1-0-2."""
    demo.say("start")
    demo.say("they serve first")
    demo.say("their point")
    return demo


@pytest.mark.parametrize(
    "said",
    [
        "they won the rally too, 0-2 now, Tom has put the return in the net",
        "they got it, 2-0-2, tom netted the return",
        "lost it, 2-0, tom dumped the return in the net",
        "their point, tom put the return in the net, 0-2 now",
    ],
)
def test_it_is_counted_once_with_what_happened(behind: Talk, said: str) -> None:
    reply = behind.say(said)
    assert reply.startswith("2-0-2. They serve")
    assert "Noted: Tom's return error." in reply
    assert "0-2-2" not in behind.say("undo")


def test_told_again_it_counts_no_second_rally(behind: Talk) -> None:
    behind.say("their point")
    reply = behind.say("they won it, 0-2 now, tom netted the return")
    assert "2-0-2" in reply


def test_a_score_that_the_log_does_not_bear_out_is_taken_as_it_is(behind: Talk) -> None:
    assert "5-3-1" in behind.say("our point, 5-3-1, okafor netted the third")


@pytest.mark.parametrize(
    "said",
    [
        "8-5-2, okafor keeps missing returns",
        "lost it, 3-4-2, lindqvist is a lefty",
        "they won it, 0-2 now, should tom return deeper?",
        "4-2-1, tom put the return in the net",
    ],
)
def test_a_note_or_a_question_beside_a_score_is_no_such_rally(said: str) -> None:
    told = understand(said, chat=MATCH)
    assert not any(isinstance(one, ScoreSaid) and one.rally is not None for one in told)
