"""Rules as data: refused where they do not fit a phone; every topic has a page that answers."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.advice import CALL_LIMIT, Advice
from knowledge.general_rule import (
    LINE_LIMIT,
    RuleDataError,
    overlap,
    read_reason,
    read_rule,
    read_source,
)
from knowledge.situation import Asked, Situation
from knowledge.sources import SourceKind
from knowledge.tactics import PAGES, advise
from knowledge.vocabulary import Topic

BY_WORDS = (Topic.RULES_QUESTION, Topic.WEATHER_OR_BODY, Topic.SMALLTALK_OR_UNKNOWN)
"""Topics of many answers, of which the words pick one."""

PHONE_LINES = 7
"""Call, three reasons, a number or exception, the assumption, a caution."""


def _ask(topic: Topic, words: str = "") -> Advice:
    return advise(Situation(topic=topic, asked=Asked(words=words)))


def test_every_topic_has_a_page() -> None:
    assert set(PAGES) == set(Topic)


@pytest.mark.parametrize("topic", BY_WORDS)
def test_without_words_too_the_answer_is_short_and_verb_first(topic: Topic) -> None:
    advice = _ask(topic)
    lines = [advice.number, advice.unless, advice.assumed, advice.caution]
    said = [*(reason.text for reason in advice.reasons), *(line for line in lines if line)]
    assert advice.topic is topic
    assert 0 < len(advice.call) <= CALL_LIMIT
    assert len(said) < PHONE_LINES
    assert all(len(line) <= LINE_LIMIT for line in said)


@given(words=st.text(max_size=300), topic=st.sampled_from(BY_WORDS))
def test_any_words_get_an_answer(words: str, topic: Topic) -> None:
    assert _ask(topic, words).call


def test_a_phrase_must_stand_whole_and_a_stem_matches_longer_forms() -> None:
    assert overlap(("wrong side",), "served from the wrong side") == 2
    assert overlap(("wrong side",), "wrong, and on this side") == 0
    assert overlap(("bang",), "banging") == 1
    assert overlap(("atp",), "atps") == 0
    assert overlap(("bang", "banging"), "banging") == 1


@pytest.mark.parametrize(
    "row",
    [
        {},
        {"call": ""},
        {"call": "x" * (CALL_LIMIT + 1)},
        {"call": "Go.", "reasons": ["a", "b", "c", "d"]},
        {"call": "Go.", "reasons": ["x" * (LINE_LIMIT + 1)]},
        {"call": "Go.", "unless": ""},
        {"call": "Go.", "words": []},
    ],
)
def test_data_that_does_not_fit_a_phone_is_refused(row: dict[str, object]) -> None:
    with pytest.raises(RuleDataError):
        read_rule(row)


@pytest.mark.parametrize("said", ["rule", "hearsay x", ""])
def test_a_source_that_we_do_not_have_is_refused(said: str) -> None:
    with pytest.raises(RuleDataError):
        read_source(said)


def test_sources_are_read() -> None:
    assert str(read_source("rule 5.B")) == "rulebook: 2025, 5.B"
    assert read_source("published X 2024").kind is SourceKind.PUBLISHED
    assert read_reason({"text": "t", "source": "computed flight"}).source.kind is (
        SourceKind.COMPUTED
    )


def test_small_talk_is_polite_and_offers_a_question() -> None:
    advice = _ask(Topic.SMALLTALK_OR_UNKNOWN, "hello")
    assert advice.choices
    assert advice.assumed is not None
