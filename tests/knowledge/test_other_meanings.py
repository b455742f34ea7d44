"""Whose lob, and whether a rule or a number is asked for; small talk by its words."""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import MIRA, player

from knowledge.advice import Advice
from knowledge.situation import Agreement, Asked, Situation
from knowledge.tactics import advise
from knowledge.vocabulary import AgreementKey, PlayerId, Side, Topic

OKAFOR = player(3, "Okafor", Side.LEFT, "hand right")


def _ask(topic: Topic, words: str) -> Advice:
    return advise(Situation(topic=topic, asked=Asked(words=words), theirs=(OKAFOR,)))


@pytest.mark.parametrize(
    "said",
    [
        "they are lobbing me to death",
        "they lob a lot",
        "okafor lobs every second ball",
        "he keeps lobbing over us",
        "how do we handle the lob",
        "they lob us constantly",
        "when they lob where do i go",
    ],
)
def test_their_lobs_are_run_for_and_answered(said: str) -> None:
    advice = _ask(Topic.LOB, said)
    everything = " ".join([advice.call, *(reason.text for reason in advice.reasons)])
    assert "turn and run" in everything
    assert "high and deep" in everything
    assert "middle" in everything
    assert advice.caution is not None
    assert "never backpedal" in advice.caution


@pytest.mark.parametrize(
    "said",
    [
        "who goes for the lob",
        "lob over my head who takes it",
        "whose lob is it",
        "who takes the lob",
    ],
)
def test_who_runs_is_said_first(said: str) -> None:
    assert _ask(Topic.LOB, said).call.startswith("Let partner cross")


@pytest.mark.parametrize(
    "said",
    ["should we lob", "when do i lob", "lob over whom", "who should we lob", "can i lob them", ""],
)
def test_our_own_lob_is_the_attack_lob(said: str) -> None:
    assert _ask(Topic.LOB, said).call.startswith("Lob cross")


def test_a_desperate_lob_is_a_third() -> None:
    assert _ask(Topic.LOB, "pulled off the court, should i lob").call.startswith("Lob it high")


def test_an_agreement_on_lobs_says_who_runs() -> None:
    agreed = Agreement(key=AgreementKey.LOBS, value="left player", words="Tom takes all lobs")
    asked = Situation(topic=Topic.LOB, asked=Asked(words="who goes for the lob"))
    advice = advise(replace(asked, agreements={AgreementKey.LOBS: agreed}))
    assert advice.call == "Do as agreed: Tom takes all lobs."


def test_the_forehand_overhead_in_the_middle_has_a_name() -> None:
    """A right-hander on the left has the forehand in the middle (geometry)."""
    tom = player(2, "Tom", Side.LEFT, "hand right")
    asked = Situation(topic=Topic.LOB, asked=Asked(words="they lob a lot"), ours=(MIRA, tom))
    assert any("Tom's forehand" in reason.text for reason in advise(asked).reasons)


@pytest.mark.parametrize(
    ("said", "start"),
    [
        ("thanks", "Any time."),
        ("thank you!", "Any time."),
        ("lol", "Laughing"),
        ("you suck", "Fair enough"),
        ("are you chatgpt", "Ask me about the match: I'm a rule-based"),
        ("what are you", "Ask me about the match: I'm a rule-based"),
        ("hi", "Hello!"),
        ("Hello there", "Hello!"),
        ("Ich verstehe nicht", "I read English only"),
        ("donde saco", "I read English only"),
        ("qui prend le milieu, je ne comprends pas", "I read English only"),
        ("\u3053\u3093\u306b\u3061\u306f", "I read English only"),
        ("blorf", "Ask me about the match"),
        ("", "Ask me about the match"),
    ],
)
def test_small_talk_gets_a_friendly_line_and_an_example(said: str, start: str) -> None:
    advice = _ask(Topic.SMALLTALK_OR_UNKNOWN, said)
    assert advice.call.startswith(start)
    assert advice.assumed is not None
    assert "where do I dink Okafor?" in advice.assumed
    strangers = advise(Situation(topic=Topic.SMALLTALK_OR_UNKNOWN, asked=Asked(words=said)))
    assert strangers.assumed is not None
    assert "who covers the middle?" in strangers.assumed


def test_it_says_that_it_is_no_language_model() -> None:
    advice = _ask(Topic.SMALLTALK_OR_UNKNOWN, "are you chatgpt")
    assert "no language model" in str(advice.assumed)


def test_no_name_is_guessed_for_a_lob() -> None:
    someone = player(PlayerId(9), "Tom", None)
    asked = Situation(topic=Topic.LOB, asked=Asked(words="they lob a lot"), ours=(someone,))
    assert not any("Tom" in reason.text for reason in advise(asked).reasons)
