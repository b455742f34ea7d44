"""Somebody else is meant by "him" after a rally: who it was is asked, and nothing is made up."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("start")
    demo.say("our point")
    return demo


@pytest.mark.parametrize(
    "said",
    [
        "no i mean him not me",
        "no i meant her",
        "no him not me",
        "not me him",
        "no not me",
        "it was him",
        "no he did",
    ],
)
def test_who_it_was_is_asked(match: Talk, said: str) -> None:
    stored = match.stored()
    assert match.say(said).startswith("Who was it?")
    assert match.stored() == stored
    labels = [one.label for one in match.buttons]
    assert {"Tom", "Okafor", "Lindqvist"} <= {*labels}
    assert ("Mira" in labels) is ("not me" not in said)


def test_a_tap_says_who(match: Talk) -> None:
    match.say("no i mean him not me")
    assert "Tom" in match.tap("Tom")


def test_who_writes_is_still_understood(match: Talk) -> None:
    assert "Mira" in match.say("no me")


def test_after_a_question_it_is_of_the_question(match: Talk) -> None:
    match.say("where do i serve okafor")
    assert not match.say("no i mean her").startswith("Who was it?")


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("okafor got burned", "1-0-2"),
        ("lindqvist just got smashed by tom", "1-0-2"),
        ("okafor's third got dumped in the net", "1-0-2"),
        ("okafor dumped it", "1-0-2"),
        ("mira got aced", "0-0-1"),
        ("tom got passed down the line", "0-0-1"),
    ],
)
def test_what_is_done_to_somebody_is_won_by_the_others(demo: Talk, said: str, then: str) -> None:
    demo.say("next okafor lindqvist 10:40")
    demo.say("we serve")
    assert demo.say(said).startswith(then)


@pytest.mark.parametrize(
    "said",
    [
        "okaf just got dumped, hes rattled",
        "okafor got dumped by his girlfriend",
        "lindqvist was dumped last week so hes distracted",
        "hale just got dumped",
    ],
)
def test_of_whoever_was_dumped_no_rally_is_told_and_nothing_is_kept(match: Talk, said: str) -> None:
    before = match.stored()["rally"], match.say("score?")
    match.say(said)
    assert (match.stored()["rally"], match.say("score?")) == before
    assert not any("dumped" in str(row) for rows in match.stored().values() for row in rows)
