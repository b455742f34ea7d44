"""What is typed between two rallies in few words: calls, match points, who is hurt."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import Question
from knowledge.vocabulary import Topic


@pytest.mark.parametrize(
    "said", ["7-8-2 they won that one", "7-8-2 we won that one", "7-8-2, they won it"]
)
def test_a_call_of_three_numbers_with_whose_rally_is_no_result(demo: Talk, said: str) -> None:
    demo.say("next: ana ruiz and ben hale")
    demo.say("they serve")
    assert demo.say(said).startswith("7-8-2.")


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("5-7-2 they won that one", "6-7-2. They serve."),
        ("5-7-2, we won it", "7-5-1."),
        ("5-7-2 lost that rally", "6-7-2. They serve."),
        ("6-7-2 they won that one", "6-7-2. They serve."),  # the call it led to
    ],
)
def test_a_rally_told_with_its_call_counts_once(demo: Talk, said: str, stands: str) -> None:
    """The call is where the match stands by the log, or where the rally takes it."""
    demo.say("next: ana ruiz and ben hale")
    demo.say("they serve")
    demo.say("5-7-2, they serve")
    assert demo.say(said).startswith(stands)


def test_a_call_told_again_with_the_point_that_led_to_it_counts_nothing(demo: Talk) -> None:
    demo.say("next: ana ruiz and ben hale")
    demo.say("5-7-2, they serve")
    demo.say("their point")
    assert demo.say("6-7-2, their point").startswith("6-7-2. They serve.")
    assert demo.say("5-7-2 they won that one").splitlines()[1].startswith("6-7-2. They serve.")


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("4-10 match point them", "10-4-1. They serve."),
        ("10-4 match point us", "10-4-"),
        ("9-10 their game point", "10-9-1. They serve."),
        ("match point against us, 9-10", "10-9-1. They serve."),
    ],
)
def test_whose_match_point_it_is_tells_who_leads_and_serves(
    demo: Talk, said: str, stands: str
) -> None:
    """Only the serving side scores (2025 rulebook), so nobody else has a match point."""
    demo.say("next: ana ruiz and ben hale")
    demo.say("we serve")
    assert demo.say(said).startswith(stands), "it tells the score, and asks nothing"


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("we won the first rally", "1-0-2."),
        ("lost the first point", "0-0-1. They serve"),
        ("that was out our ball", "1-0-2."),
        ("that was out, our ball", "1-0-2."),
        ("ok it went long so its their ball", "0-0-1. They serve"),
        ("ball was wide our serve", "1-0-2."),
    ],
)
def test_a_rally_told_by_its_number_or_by_who_has_the_ball(
    demo: Talk, said: str, stands: str
) -> None:
    demo.say("next: ana ruiz and ben hale")
    demo.say("we serve")
    assert demo.say(said).startswith(stands)
    assert demo.say("undo").splitlines()[0].startswith("Taken back: ")


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("lost, hale netted third", "0-0-1. They serve"),
        ("won it, tom netted third", "1-0-2."),
        ("lost, mira netted third", "0-0-1. They serve"),
        ("hale netted third", "1-0-2."),
    ],
)
def test_lost_or_won_that_opens_a_rally_counts_before_who_missed(
    demo: Talk, said: str, stands: str
) -> None:
    demo.say("next: ana ruiz and ben hale")
    demo.say("we serve")
    assert demo.say(said).startswith(stands)


@pytest.mark.parametrize(
    "said",
    [
        "we won the first rally but lost the next",
        "was that out our ball",
        "they called it out, our ball",
    ],
)
def test_a_story_or_a_call_in_doubt_counts_no_rally(demo: Talk, said: str) -> None:
    demo.say("next: ana ruiz and ben hale")
    demo.say("we serve")
    demo.say(said)
    assert demo.say("score").startswith("0-0-2.")


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("5-4-1 tom is serving", "5-4-1. Tom serves from the right."),
        ("its 5-4-1, mira serving", "5-4-1. Mira serves from the left."),
        ("5-4-2 hale serves", "5-4-2. Hale serves from the left to Tom."),
        ("tom serving 6-4-1", "6-4-1. Tom serves from the left."),
        ("5-4-1 tom returning", "5-4-1. They serve."),
        ("5-4-1 lindqvist is serving", "5-4-1. "),  # not on court
    ],
)
def test_who_serves_by_name_beside_a_score_is_kept_and_one_step_to_undo(
    demo: Talk, said: str, stands: str
) -> None:
    """A starter stands right at even points of the own side (2025 rulebook, from memory)."""
    demo.say("next: ana ruiz and ben hale")
    demo.say("mira serves first")
    assert demo.say(said).startswith(stands)
    demo.say("undo")
    assert demo.say("score").startswith("0-0-")


@pytest.mark.parametrize(
    "said",
    [
        "match point against us. what serve",
        "game point for them, where do i serve",
        "at 9 8 what serve",
        "10-9 us game point what serve",
        "thats 7-4-1 what serve",
    ],
)
def test_what_serve_at_a_match_point_asks_for_the_serve(demo: Talk, said: str) -> None:
    demo.say("next: ana ruiz and ben hale")
    demo.say(said)
    assert demo.heard is not None
    question = demo.heard.understood
    assert isinstance(question, Question)
    assert question.topic is Topic.AIM_SERVE


@pytest.mark.parametrize(
    "said",
    [
        "them both",
        "so them",
        "tom missed practice",
        "hale missed a lot in warm up",
        "hale won this last year",
        "my point is she never moves",
        "hale is out today",
    ],
)
def test_what_was_played_elsewhere_or_not_at_all_counts_nothing(demo: Talk, said: str) -> None:
    demo.say("next: ruiz and hale to 15")
    demo.say("we serve")
    before = demo.stored()["entry"]
    demo.say(said)
    assert demo.stored()["entry"] == before
