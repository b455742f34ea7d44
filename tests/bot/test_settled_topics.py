"""Short messages whose form settles their topic. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from voices import EVENING

from bot.chat.said import Question
from bot.chat.understand import understand
from knowledge.vocabulary import Topic


def _topic(text: str) -> Topic | None:
    found = understand(text, chat=EVENING)[-1]
    return found.topic if isinstance(found, Question) else None


@pytest.mark.parametrize(
    "text",
    [
        "they stand both back all the time what do we do",
        "they both stay back",
        "both of them stay back what do we do",
        "they always hang back",
        "they keep staying back the whole match what now",
    ],
)
def test_who_stays_back_lobs_nothing(text: str) -> None:
    assert _topic(text) is Topic.DROP_ON_DEEP_OPPONENTS


@pytest.mark.parametrize(
    "text",
    [
        "my drops go in the net",
        "our thirds keep going in the net what now",
        "my returns keep sailing long",
        "our dinks are going into the net",
    ],
)
def test_our_misses_are_what_to_change(text: str) -> None:
    assert _topic(text) is Topic.ADJUST


def test_one_ball_in_the_net_is_no_habit() -> None:
    assert _topic("my third goes in the net") is not Topic.ADJUST


@pytest.mark.parametrize(
    "text",
    [
        "who do we serve to",
        "who should i serve to now",
        "ok and who are we serving to",
        "which one should we serve at",
        "whom do i serve it to first",
    ],
)
def test_whom_we_serve_is_the_aim_of_the_serve(text: str) -> None:
    assert _topic(text) is Topic.AIM_SERVE


@pytest.mark.parametrize(
    "text", ["who do they serve to", "who serves first", "who do we play next"]
)
def test_who_receives_or_starts_is_no_aim(text: str) -> None:
    assert _topic(text) is not Topic.AIM_SERVE


@pytest.mark.parametrize(
    "text",
    ["who takes overheads", "who takes the lob", "who covers our smashes", "who gets the overhead"],
)
def test_who_goes_for_a_lob_is_no_question_of_the_middle(text: str) -> None:
    assert _topic(text) is Topic.LOB


def test_who_covers_the_middle_stays_there() -> None:
    assert _topic("who takes the middle") is Topic.COVER_MIDDLE


@pytest.mark.parametrize(
    "text",
    [
        "9-9-2 us whats the safe serve",
        "whats the safest serve here",
        "so what is my most reliable serve",
        "we need a safe serve now",
        "safest serve?",
    ],
)
def test_the_safe_serve_is_the_aim_of_the_serve(text: str) -> None:
    assert _topic(text) is Topic.AIM_SERVE


@pytest.mark.parametrize("text", ["lindqvist has a safe serve", "play it safe at 9-9?"])
def test_a_safe_serve_of_theirs_or_safe_play_is_none(text: str) -> None:
    assert _topic(text) is not Topic.AIM_SERVE


@pytest.mark.parametrize(
    "text",
    [
        "okafor foot faulted when he hit that, his toe was on the line, but the ball had bounced",
        "okafor stepped in the kitchen but the ball had bounced",
        "imani rolled her ankle, do we get the point",
    ],
)
def test_what_the_rules_settle_of_one_ball_is_no_habit(text: str) -> None:
    assert _topic(text) is Topic.RULES_QUESTION


@pytest.mark.parametrize(
    "text", ["okafor foot faults on the kitchen line a lot", "imani rolled her ankle"]
)
def test_a_habit_or_a_body_alone_is_no_rule(text: str) -> None:
    assert _topic(text) is not Topic.RULES_QUESTION


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("mira wants to lob the sun side, smart?", Topic.LOB),
        ("we wanna lob into the sun, good idea?", Topic.LOB),
        ("we want the sun side, which end", Topic.CHOOSE_END_OR_SERVE),
    ],
)
def test_a_lob_into_the_sun_is_a_lob_and_no_end(text: str, topic: Topic) -> None:
    assert _topic(text) is topic


@pytest.mark.parametrize("text", ["what rates are you using", "which numbers do you go by"])
def test_the_rates_used_are_told_with_the_chance(text: str) -> None:
    assert _topic(text) is Topic.WIN_CHANCE
