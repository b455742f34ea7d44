"""General rules: every topic answered, nothing pretended, all of it fit for a phone."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge import rulebook
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
from knowledge.tactics import answer_pattern, general_rules
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


# Rulebook statements: national rulebook, 2025 edition (shared facts, section 2, read; the
# serve, line call and net statements from memory of the same edition).
RULES = [
    ("my momentum took me into the kitchen after the volley", "Fault: momentum"),
    ("can i stand in the kitchen between shots", "Legal: enter the kitchen"),
    ("her foot was on the kitchen line when she volleyed", "Fault: no volley"),
    ("the serve clipped the net and dropped in", "Play on: a serve"),
    ("serve landed on the kitchen line", "Short, a fault"),
    ("ball landed on kitchen line on the serve", "Short, a fault"),
    ("is the line out on the serve", "Play it: on the serve"),
    ("serve hit the sideline is it in", "Play it: on the serve"),
    ("serve landed on the baseline", "Play it: on the serve"),
    ("he stepped on the baseline when serving", "Fault: feet behind"),
    ("do we call balls on the line", "Call your own side"),
    ("is it a let if serve clips the net", "Play on: a serve"),
    ("can i ask my coach during a timeout", "Legal: take advice in time-outs"),
    ("how long is a timeout", "Take two a game"),
    ("can my coach talk to me during the rally", "Keep it for time-outs"),
    ("does the ball have to bounce on the serve", "Let serve and return bounce"),
    ("is a drop serve ok", "Legal: drop it"),
    ("is the ernie legal", "Legal: volley from outside"),
    ("he went round the post below the net", "Legal: round the post"),
    ("how many timeouts do we get", "Take two a game"),
    ("when do we change ends in a game to 15", "Change ends"),
    ("we won the toss what can we choose", "Pick one"),
    ("partner says in but i say out", "Call it in"),
    ("who calls the line", "Call your own side"),
    ("the wrong server just served", "Stop before the next serve"),
    ("a ball rolled onto our court", "Stop and replay"),
    ("why does the game start 0-0-2", "Start at 0-0-2"),
    ("do we win by two", "Win by two"),
    ("how long is a medical timeout", "Ask for a medical"),
    ("can my friend coach me during the game", "Keep it for time-outs"),
    ("can we volley the return", "Let serve and return bounce"),
    ("can i hit the ball on their side of the net", "Fault: don't touch net"),
    ("the ball hit the ceiling", "Rally over"),
    ("we switch sides at 6 right", "Change ends"),
    ("it hit my paddle hand", "Fault if it hits you"),
]


@pytest.mark.parametrize(("words", "start"), RULES)
def test_common_rules_are_found_with_their_edition(words: str, start: str) -> None:
    advice = _ask(Topic.RULES_QUESTION, words)
    assert advice.call.startswith(start)
    assert all(reason.source.kind is SourceKind.RULEBOOK for reason in advice.reasons)
    assert all("2025" in reason.source.citation for reason in advice.reasons)


def test_a_rule_we_do_not_know_is_the_referees() -> None:
    assert _ask(Topic.RULES_QUESTION, "zebra").call == rulebook.UNKNOWN_RULE


def test_time_outs_and_ends_say_what_the_rulebook_says() -> None:
    """2025 edition, 10.A: 2 to 11 or 15, 3 to 21; 5.B: at 6, 8 and 11."""
    assert "two a game to 11 or 15, three to 21" in _ask(Topic.RULES_QUESTION, "timeouts").call
    said = " ".join(reason.text for reason in _ask(Topic.RULES_QUESTION, "change ends").reasons)
    assert "at 6 (to 11)" in said
    assert "At 8 (to 15), at 11 (to 21)" in said


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
    for entry in rulebook.rules():
        assert rulebook.find_rule(" ".join(entry.words)) == entry


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
