"""General rules: every topic answered, nothing pretended, all of it fit for a phone."""

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
from knowledge.tactics import answer_pattern, general_rules, weather
from knowledge.tactics.general_rules import GENERAL_NOTE, OWN_ENGINE
from knowledge.vocabulary import Topic

OTHER_TOPICS = sorted(set(Topic) - OWN_ENGINE)
WITHOUT_NOTES_ANYWAY = {Topic.RULES_QUESTION, Topic.WEATHER_OR_BODY, Topic.SMALLTALK_OR_UNKNOWN}

PHONE_LINES = 7
"""Call, three reasons, a number or exception, the assumption, a caution."""


def _ask(topic: Topic, words: str = "") -> Advice:
    return general_rules.advise(Situation(topic=topic, asked=Asked(words=words)))


@pytest.mark.parametrize("topic", OTHER_TOPICS)
def test_every_other_topic_is_answered_short_and_verb_first(topic: Topic) -> None:
    advice = _ask(topic)
    lines = [advice.number, advice.unless, advice.assumed, advice.caution]
    said = [*(reason.text for reason in advice.reasons), *(line for line in lines if line)]
    assert advice.topic is topic
    assert 0 < len(advice.call) <= CALL_LIMIT
    assert len(said) < PHONE_LINES
    assert all(len(line) <= LINE_LIMIT for line in said if line != GENERAL_NOTE)


@pytest.mark.parametrize("topic", sorted(set(OTHER_TOPICS) - WITHOUT_NOTES_ANYWAY))
def test_what_notes_could_sharpen_says_that_it_does_not_use_them(topic: Topic) -> None:
    assert _ask(topic).assumed == GENERAL_NOTE


@given(words=st.text(max_size=300), topic=st.sampled_from(OTHER_TOPICS))
def test_any_words_get_an_answer(words: str, topic: Topic) -> None:
    assert _ask(topic, words).call


PATTERNS = [
    ("these two bang everything at us", "Stand half a step back"),
    ("they keep lobbing", "Call it early"),
    ("she poaches every third", "Go behind the poacher"),
    ("he crashes behind the drive", "Return at the crasher"),
    ("everything goes to my partner", "Play it middle and deep"),
    ("they freeze me out completely", "Step in"),
    ("he speeds up at my hip", "Wait with the backhand"),
    ("she speeds up off the bounce", "Give less bounce"),
    ("heavy topspin dinks", "Take it early"),
    ("they never miss a dink", "Move the dink"),
    ("they return short", "Step in and drive"),
    ("very deep returns", "Stand a step back"),
    ("nasty spin serves", "Stand two steps back"),
    ("they erne us", "Dink middle for three"),
    ("he goes around the post", "Dink middle or short"),
    ("they stack", "Return at the one who crosses"),
    ("the lefty pulls us with a slice", "Move a step"),
    ("they counter everything", "Speed up less"),
    ("we are stuck in mid court", "Stop and split"),
    ("our dinks pop up", "Soften the grip"),
    ("our thirds are too high", "Drive the third"),
    ("we cant get to the line", "Win one ball"),
    ("they slow the game down", "Keep your own clock"),
    ("he squeezes the middle", "Hit behind"),
    ("they hit through the middle", "Name the owner"),
    ("she pulls us out wide", "Answer from the middle"),
]


@pytest.mark.parametrize(("words", "start"), PATTERNS)
def test_symptoms_are_found(words: str, start: str) -> None:
    assert _ask(Topic.ANSWER_PATTERN, words).call.startswith(start)


def test_every_symptom_has_a_case_that_finds_it() -> None:
    found = {answer_pattern.find_pattern(words) for words, _ in PATTERNS}
    assert found == set(answer_pattern.patterns())


def test_a_symptom_has_both_partners_a_sign_and_a_plan_b() -> None:
    advice = _ask(Topic.ANSWER_PATTERN, "they bang everything")
    assert len(advice.reasons) == 3
    assert advice.reasons[2].text.startswith("Sign:")
    assert advice.unless


def test_an_unnamed_symptom_is_still_answered() -> None:
    assert _ask(Topic.ANSWER_PATTERN, "zebra").call == answer_pattern.NO_PATTERN.call


def test_every_entry_is_found_by_its_own_first_words() -> None:
    for entry in weather.entries():
        assert weather.find_entry(" ".join(entry.words)) == entry


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
