"""Answers fit a phone's screen, and "why" tells what they leave out.

The screen: 9 lines of 40 characters, buttons not counted (common practice, no source). A report
and a plan are lists by nature, read before a match and not between rallies: they may take 11.
"""

from __future__ import annotations

import textwrap
import tomllib
from pathlib import Path

import pytest
from talk import Talk

from knowledge.advice import Advice
from knowledge.vocabulary import Topic

CASES = Path(__file__).parents[1] / "cases" / "reply_lengths.toml"
ASKED = [
    (Topic(topic), said)
    for topic, questions in tomllib.loads(CASES.read_text()).items()
    for said in questions
]

PHONE_CHARACTERS = 40
MOST_LINES = 9
LISTS = {Topic.OPPONENT_REPORT: 11, Topic.GAME_PLAN: 11, Topic.PAIR_UP: 11}


def _lines(text: str) -> int:
    return sum(len(textwrap.wrap(line, PHONE_CHARACTERS)) for line in text.splitlines())


def _advice(talk: Talk) -> Advice:
    assert talk.heard is not None
    advice = talk.heard.trace["advice"]
    assert isinstance(advice, Advice)
    return advice


def test_every_topic_that_gives_advice_is_among_the_questions() -> None:
    assert {topic for topic, _ in ASKED} == set(Topic) - {Topic.SMALLTALK_OR_UNKNOWN}


@pytest.mark.parametrize(("topic", "said"), ASKED)
def test_an_answer_fits_the_screen_and_why_tells_the_rest(
    demo: Talk, topic: Topic, said: str
) -> None:
    text = demo.say(said)
    advice = _advice(demo)
    assert advice.topic is topic
    assert _lines(text) <= LISTS.get(topic, MOST_LINES), text
    _keeps_what_may_not_go(advice, text)
    body = advice.lines or advice.reasons
    wanted = [*(one.text for one in body), advice.number, advice.now]
    told = text + demo.say("why")
    assert [line for line in wanted if line and line not in told] == []


def _keeps_what_may_not_go(advice: Advice, text: str) -> None:
    """The call, a reason with its source, what would change it, what was assumed, cautions."""
    lines = text.splitlines()
    assert lines[0] == advice.call
    reasons = [one for one in advice.lines or advice.reasons if one.text in text]
    assert reasons or not (advice.lines or advice.reasons)
    if advice.topic is Topic.RULES_QUESTION:
        assert str(advice.reasons[0].source) in text
    for line in (advice.unless, advice.assumed, advice.caution):
        assert line is None or line in text


@pytest.mark.parametrize("said", ["where do i serve to hale", "is a spin serve legal"])
def test_why_tells_what_a_short_answer_in_a_match_leaves_out(demo: Talk, said: str) -> None:
    demo.say("match vs ruiz and hale")
    demo.say("we won the rally")
    short = demo.say(said)
    advice = _advice(demo)
    assert advice.unless is None or advice.unless not in short
    assert advice.reasons[-1].text not in short
    why = demo.tap("why")
    told = short + why
    wanted = [*(one.text for one in advice.reasons), advice.number, advice.unless, advice.assumed]
    assert [line for line in wanted if line and line not in told] == []
