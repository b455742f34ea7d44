"""Next, review, and what rally scoring is: answered by the nearest true thing."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import Question
from knowledge.vocabulary import Topic


def topic(talk: Talk) -> Topic | None:
    assert talk.heard is not None
    said = talk.heard.understood
    return said.topic if isinstance(said, Question) else None


@pytest.mark.parametrize("text", ["next", "whats next", "next match?", "who do we play next"])
def test_next_is_the_plan_of_the_match_announced(demo: Talk, text: str) -> None:
    demo.say("next: ruiz-peña and hale")
    assert "Hale" in demo.say(text)
    assert topic(demo) is Topic.GAME_PLAN


def test_next_without_a_match_says_what_is_needed(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("we won 11-5 11-7")
    assert demo.say("next").startswith("No match is on. Say: next:")


@pytest.mark.parametrize("text", ["review", "how did we do", "how did that match go?", "recap"])
def test_a_review_is_the_result_and_what_to_change(demo: Talk, text: str) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("we won 11-5 11-7")
    assert demo.say(text).startswith("Last match: won 11-5 11-7.\n")
    assert "what to change" in [one.label for one in demo.buttons]


def test_a_review_before_anything_was_played_says_so(demo: Talk) -> None:
    assert demo.say("how did we do").startswith("Nothing played is logged yet.")


def test_other_words_of_next_stay_what_they_are(demo: Talk) -> None:
    assert demo.say("next: okafor and lindqvist, to 11").startswith("Next: Chidi Okafor")
    demo.say("how did okafor beat us")
    assert "Last match" not in demo.sent[-1]


@pytest.mark.parametrize(
    "text",
    [
        "ask rally scoring",
        "what is rally scoring",
        "how does rally scoring work?",
        "explain rally scoring",
    ],
)
@pytest.mark.parametrize("match_on", [False, True])
def test_asking_what_rally_scoring_is_asks_the_rulebook(
    demo: Talk, text: str, match_on: bool
) -> None:
    """Rulebook 2025, section 12: rally scoring is optional. The match keeps its own scoring."""
    if match_on:
        demo.say("next: okafor and lindqvist, to 11")
    with demo.book() as book:
        before = [one.format for one in book.matches()]
    assert "rally scoring varies" in demo.say(text)
    assert topic(demo) is Topic.RULES_QUESTION
    with demo.book() as book:
        assert [one.format for one in book.matches()] == before


@pytest.mark.parametrize(
    "said",
    [
        "what time do we play",
        "when is our next match",
        "what court are we on",
        "when do we play",
        "who do we play",
        "so who are we playing?",
        "whos our next opponent",
    ],
)
def test_when_and_where_we_play_is_told_from_the_book(demo: Talk, said: str) -> None:
    demo.say("next: ruiz and hale, 14:00, court 3")
    assert "Ana Ruiz/Hale, 14:00" in demo.say(said)
    assert "court 3" in demo.sent[-1]


def test_when_nothing_is_announced_that_is_said(fresh: Talk) -> None:
    assert fresh.say("when do we play next").startswith("No match is on.")


def test_whom_to_play_at_stays_a_question_of_the_match(demo: Talk) -> None:
    demo.say("next: ruiz and hale, 14:00, court 3")
    demo.say("who do we play at")
    assert topic(demo) is Topic.WHOM_TO_TARGET


@pytest.mark.parametrize("text", ["whos in my book", "who's in my book", "who’s in my book"])
def test_an_apostrophe_changes_nothing_of_who_is_in_the_book(demo: Talk, text: str) -> None:
    assert demo.say(text).startswith("You: Mira Dahl, Tom Adeyemi.")


@pytest.mark.parametrize(
    "text", ["whens next one", "when's next one", "when’s the next one", "when is next one"]
)
def test_an_apostrophe_changes_nothing_of_when_we_play(demo: Talk, text: str) -> None:
    assert demo.say(text).startswith("Okafor/Lindqvist, ")
