"""Several rallies told in one message: never counted as one, nor as a score; a tap counts them.

Scores follow the 2025 rulebook's side-out scoring; how rallies are told is from memory.
"""

from __future__ import annotations

import pytest
from talk import Talk

ASKS = "Tap where that leads, or tell me the score."


@pytest.mark.parametrize(
    ("said", "leads_to"),
    [
        ("our rally x3", "we serve at 7-2-1"),
        ("2 more for us", "we serve at 6-2-1"),
        ("three nothing run for us now", "we serve at 7-2-1"),
        ("us x2", "we serve at 6-2-1"),
        ("2x us", "we serve at 6-2-1"),
        ("we won 4 more", "we serve at 8-2-1"),
        ("their point 3x", "they serve at 3-4-1"),
        ("two more to them", "they serve at 2-4-1"),
        ("they are on a 4-0 run", "they serve at 4-4-1"),
    ],
)
def test_several_rallies_are_counted_by_a_tap(demo: Talk, said: str, leads_to: str) -> None:
    demo.say("next: ruiz and hale")
    demo.say("4-2-1 us")
    stored = demo.stored()
    text, score = demo.say(said).splitlines()
    assert text.endswith(ASKS)
    assert score.startswith("4-2-1. We serve")
    assert demo.stored() == stored
    assert demo.tap(leads_to).startswith(leads_to.split()[-1])
    assert demo.say("undo").splitlines()[1].startswith("4-2-1. We serve")


@pytest.mark.parametrize(
    ("before", "said"), [("9-3-1 us", "our rally x2"), ("9-3-1 us", "4 more for us")]
)
def test_a_run_to_the_end_of_a_game_wants_the_score(demo: Talk, before: str, said: str) -> None:
    demo.say("next: ruiz and hale")
    demo.say(before)
    assert demo.say(said).startswith("Which score?")


@pytest.mark.parametrize(
    ("said", "then"), [("one more point for us", "5-2-1."), ("3-0 us", "3-0-"), ("us", "5-2-1.")]
)
def test_one_rally_and_a_score_are_none_of_it(demo: Talk, said: str, then: str) -> None:
    demo.say("next: ruiz and hale")
    demo.say("4-2-1 us")
    assert demo.say(said).startswith(then)


@pytest.mark.parametrize(
    ("before", "said", "then"),
    [
        ("5-5-1, they serve", "they took two straight, its 5-7", "7-5-1. They serve."),
        ("5-5-1, they serve", "they took two straight, its 7-5", "7-5-1. They serve."),
        ("7-5-1, they serve", "we won 3 points, so its 8-7", "8-7-1. We serve"),
        ("7-5-1, they serve", "we won 3 points so its 7-8", "8-7-1. We serve"),
    ],
)
def test_a_score_reached_by_a_run_is_no_result_and_its_side_has_risen(
    demo: Talk, before: str, said: str, then: str
) -> None:
    """Only the serving side scores, so whoever just scored serves."""
    demo.say("next: ruiz and hale")
    demo.say(before)
    assert demo.say(said).startswith(then)


def test_who_serves_is_asked_where_a_run_cannot_have_led_there(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    demo.say("5-5-1, they serve")
    assert demo.say("they took two straight, its 4-4") == "4-4: who serves?"


def test_a_result_no_game_ends_at_is_still_questioned(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    demo.say("we serve")
    assert "Not stored" in demo.say("won 9-7")


@pytest.mark.parametrize(
    ("said", "leads"),
    [
        ("lost 3 in a row", "they serve at 2-3-1"),
        ("just lost the last 3 straight", "they serve at 2-3-1"),
        ("they got 2 str8", "they serve at 1-3-1"),
        ("won 2 straight", "we serve at 5-0-2"),
    ],
)
def test_a_run_without_a_name_is_ours(demo: Talk, said: str, leads: str) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("we serve")
    demo.say("3-0-2 us")
    demo.say(said)
    assert demo.buttons[0].label == leads


def test_a_run_that_a_question_gives_is_answered(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("3-0-2 us")
    assert demo.say("lost 3 in a row, should we call timeout").startswith("Take it")


@pytest.mark.parametrize("said", ["4-0-2? no 3-0-2", "3-1-2?? wait 3-0-2", "4-0-2? sorry, 3-0-2"])
def test_a_doubt_settled_in_the_same_breath_is_a_score(demo: Talk, said: str) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("2-0-2 us")
    assert demo.say(said).startswith("3-0-2. We serve")


@pytest.mark.parametrize("said", ["is it 4-0-2? or 3-0-2", "3-0-2?", "no, 3-0-2?"])
def test_a_score_that_is_asked_is_not_stored(demo: Talk, said: str) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("2-0-2 us")
    entries = demo.stored()["entry"]
    demo.say(said)
    assert demo.stored()["entry"] == entries


@pytest.mark.parametrize("said", ["to?", "to now?", "t/o?", "call a to?"])
def test_a_break_in_two_letters(demo: Talk, said: str) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("3-0-2 us")
    assert demo.say(said).startswith("Take it")


def test_how_a_run_went_is_kept_beside_it(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    demo.say("4-2-1 us")
    told = demo.say("lost 3 in a row, hale flicked me twice, i netted a dink")
    assert told.startswith(f"3 more for them? {ASKS}\n4-2-1. We serve")
    assert "they serve at" in " ".join(one.label for one in demo.buttons)
    assert "hale flicked me twice, i netted a dink" in demo.say("what did i note about hale")
    assert demo.say("won 2 straight because they popped it up").startswith("2 more for you?")
    assert "4-2-1. We serve" in demo.say("score")
    assert demo.say("won again").startswith("5-2-1. We serve")
    assert "more for" not in demo.say("lost 3 in a row, 5-7")
