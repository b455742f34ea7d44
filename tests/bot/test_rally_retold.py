"""A rally put right in the same breath counts as it was told last."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.message import read_message
from bot.chat.rally_retold import rally_retold
from bot.chat.said import RallySaid, RemarkSaid, ScoreRemark
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId

OKAFOR, LINDQVIST = PlayerId(3), PlayerId(4)
MATCH = replace(EVENING, theirs=(OKAFOR, LINDQVIST), focus=(OKAFOR, LINDQVIST), match_on=True)


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("start")
    demo.say("6-4-1 us")
    return demo


@pytest.mark.parametrize(
    "said",
    [
        "their point no wait ours",
        "they won it no we did",
        "they got that one, actually we did",
        "lost it. no, they did",
        "lost it, no i mean we won it",
        "their rally, no it wasn't theirs",
        "we lost that one no we didn't",
        "our point, no theirs, no wait ours",
    ],
)
def test_what_turns_out_ours_counts_for_us(match: Talk, said: str) -> None:
    assert match.say(said).startswith("7-4-1.")


@pytest.mark.parametrize(
    "said",
    [
        "we won that one no i mean they did",
        "our point scratch that theirs",
        "our rally. nope, theirs, sorry",
        "won it, no wait okafor reached it, they won it",
        "we got that one - my bad, they did",
        "okafor netted, no wait tom did",
    ],
)
def test_what_turns_out_theirs_counts_for_them(match: Talk, said: str) -> None:
    assert match.say(said).startswith("6-4-2.")


@pytest.mark.parametrize(
    "said",
    [
        "won that one okafor netted no wait lindqvist",
        "won that one, okafor netted, no lindqvist did",
        "okafor missed, sorry that was lindqvist",
    ],
)
def test_who_is_named_behind_the_slip_ended_it(match: Talk, said: str) -> None:
    reply = match.say(said)
    assert reply.startswith("7-4-1.")
    assert "Noted: Lindqvist's error." in reply


def test_behind_a_tap_who_is_named_last_ended_it(match: Talk) -> None:
    match.say("our rally")
    reply = match.say("okafor netted no wait lindqvist")
    assert reply.startswith("7-4-1.")
    assert "Noted: Lindqvist's error." in reply


def test_an_opening_that_corrects_still_corrects_the_rally_before() -> None:
    (said,) = understand("no wait our point, i mean theirs", chat=MATCH)
    assert isinstance(said, RallySaid)
    assert (said.won_by_us, said.corrects) == (False, True)


@pytest.mark.parametrize(
    "said",
    [
        "our point no doubt",
        "won it no problem",
        "lost it, no luck at all",
        "we won it i mean they were awful",
        "won that one no okafor is slow",
        "we won that one no?",
        "our point or no theirs?",
        "okafor is a lefty no wait righty",
        "wait, did they win it no we did",
        "lost it, tom netted, no they did",
    ],
)
def test_what_tells_one_rally_or_none_is_none_of_it(said: str) -> None:
    assert rally_retold(read_message(said, MATCH), MATCH) is None


def test_without_a_match_nothing_is_retold() -> None:
    alone = replace(MATCH, match_on=False)
    assert rally_retold(read_message("they won it no we did", alone), alone) is None


@pytest.mark.parametrize(
    "said",
    [
        "won it, wait no it was a let",
        "lost that one, no hang on it was a let",
        "our point, actually no it was a let we replay",
        "tom netted it oh no wait, stray ball",
    ],
)
def test_a_rally_that_was_a_let_is_nobodys(said: str) -> None:
    (told,) = understand(said, chat=MATCH)
    assert isinstance(told, RemarkSaid)
    assert told.remark is ScoreRemark.LET


def test_a_let_leaves_the_score_as_it_was(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("we serve 3-3-1")
    stored = demo.stored()
    assert "3-3-1" in demo.say("won it, wait no it was a let")
    assert demo.stored() == stored


@pytest.mark.parametrize(
    ("said", "is_rally"),
    [
        ("scratch that, mira netted it", True),
        ("no strike that, okafor hit it long", True),
        ("scratch that okafor misses returns", False),
        ("scratch that, okafor is slow", False),
    ],
)
def test_a_rally_behind_scratch_that_takes_no_note_back(said: str, is_rally: bool) -> None:
    (told,) = understand(said, chat=MATCH)
    assert (isinstance(told, RallySaid) and told.corrects) is is_rally


def test_what_goes_on_from_a_question_is_no_rally() -> None:
    asked = replace(MATCH, asked_last=True)
    (told,) = understand("and theirs", chat=MATCH)
    assert isinstance(told, RallySaid)
    assert not any(isinstance(one, RallySaid) for one in understand("and theirs", chat=asked))
