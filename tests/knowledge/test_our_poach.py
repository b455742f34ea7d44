"""How often we poach, and off which ball: common practice, no source, unless a test says more."""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import match, player

from knowledge.advice import CALL_LIMIT, Advice, Confidence
from knowledge.situation import Asked, OnCourt
from knowledge.sources import SourceKind
from knowledge.tactics import advise
from knowledge.tactics.our_poach import (
    NEW_SIGNAL,
    NOT_THE_RETURN,
    USUAL_CALL,
    asks_of_our_poach,
)
from knowledge.vocabulary import Topic

GELL, RUDD = player(3, "Gell", None), player(4, "Rudd", None)


def asked(words: str, *theirs: OnCourt) -> Advice:
    return advise(replace(match(Topic.BEING_TARGETED, *theirs), asked=Asked(words=words)))


@pytest.mark.parametrize(
    "words",
    [
        "poach or stay",
        "stay or poach",
        "poach how often",
        "how often should we poach",
        "how often do I poach?",
        "when to poach",
        "when should we poach",
        "is it worth poaching",
        "are we poaching too much",
        "do we poach enough",
        "should we poach less",
        "do i poach their thirds",
        "poach the third?",
        "poach on his backhand?",
    ],
)
def test_the_rate_and_the_ball(words: str) -> None:
    assert asks_of_our_poach(words)
    advice = asked(words, GELL, RUDD)
    assert advice.call == USUAL_CALL
    assert advice.confidence is Confidence.GENERAL_RULE


@pytest.mark.parametrize(
    "words",
    [
        "they poach a lot",
        "how often do they poach",
        "how do we stop the poach",
        "go behind the poacher",
        "how do you beat a poacher",
        "she poaches our thirds",
        "they pick on noor, how often do i poach",
        "should i poach more when they pick on her",
        "poached that one, our point",
        "we poached 3 times",
        "poach signals",
        "he poaches so lob behind him?",
        "how often should we lob",
        "",
    ],
)
def test_what_it_is_not_about(words: str) -> None:
    assert not asks_of_our_poach(words)


@pytest.mark.parametrize(
    ("words", "call"),
    [
        ("we poach 40% ok?", "40 in 100 is a lot"),
        ("poach rate 40% too much?", "40 in 100 is a lot"),
        ("poach 1 in 3?", "33 in 100 is about right"),
        ("we poach 25 percent", "25 in 100 is about right"),
        ("we poach 10% enough?", "10 in 100 is little"),
        ("we poach 400%", USUAL_CALL),
        ("poach 1 in 0", USUAL_CALL),
        (f"we poach {'9' * 5000}%", USUAL_CALL),
    ],
)
def test_a_rate_that_is_told_is_weighed(words: str, call: str) -> None:
    said = asked(words, GELL, RUDD).call
    assert said.startswith(call)
    assert len(said) <= CALL_LIMIT


def test_a_return_to_us_cannot_be_volleyed() -> None:
    """The rule of two bounces, 2025 section 7: the earliest volley is the fourth shot."""
    advice = asked("poach off their return?", GELL, RUDD)
    assert advice.call == NOT_THE_RETURN
    assert advice.reasons[0].source.kind is SourceKind.RULEBOOK


def test_a_weak_third_says_off_whom() -> None:
    advice = asked("poach or stay", GELL, player(4, "Rudd", None, "third_shot_drop weakness"))
    assert advice.reasons[0].text == "Off Rudd's third: weak third shot"
    assert advice.reasons[0].source.kind is SourceKind.BOOK
    assert advice.assumed is None
    strong = asked("poach or stay", GELL, player(4, "Rudd", None, "third_shot_drop strength"))
    assert not any("Rudd" in one.text for one in strong.reasons)


@pytest.mark.parametrize("words", ["they read our poach", "they keep reading our signals"])
def test_a_signal_that_they_read_is_changed(words: str) -> None:
    assert asked(words, GELL, RUDD).call == NEW_SIGNAL


def test_poaching_more_is_of_our_poach_unless_they_play_at_one_of_us() -> None:
    alone = replace(match(Topic.BEING_TARGETED), asked=Asked(words="should I poach more"))
    in_a_talk = replace(
        alone, asked=Asked(words="should I poach more", before="they play everything at mira")
    )
    assert advise(alone).call == USUAL_CALL
    assert advise(in_a_talk).call != USUAL_CALL
