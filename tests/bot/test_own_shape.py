"""What a pair says of its own shape, and messages that stand on what was asked or told before.

The wordings are our own; that they mean what is expected is common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import SATURDAY, Talk

from bot.channels import console
from bot.channels.console import open_console
from bot.chat.said import Question
from bot.demo_book import demo_store
from knowledge.vocabulary import Topic

LINE = "Ball in front of you? Line and body first, then middle."
PADDLES = "Stay set at the line, paddles up; split as they swing."


def _topic(demo: Talk, text: str) -> Topic | None:
    demo.say(text)
    assert demo.heard is not None
    understood = demo.heard.understood
    found = demo.heard.trace.get("topic")
    return found or (understood.topic if isinstance(understood, Question) else None)


@pytest.mark.parametrize(
    "text",
    [
        "my partner keeps drifting middle leaving the line open",
        "partner drifts to the middle and leaves her line wide open",
        "my partner wont stop poaching and leaves the alley open",
        "pard keeps shading middle and they pass him down the line",
        "i keep drifting middle and get burned down the line",
        "partner leaves a big gap down the line",
        "our line is always open",
    ],
)
def test_a_line_left_open_asks_who_covers_it(demo: Talk, text: str) -> None:
    assert demo.say(text).splitlines()[0] == LINE


def test_of_one_named_it_is_kept_too(demo: Talk) -> None:
    reply = demo.say("tom keeps sliding into the middle and his line is open")
    assert reply.startswith("Noted. Tom: squeezing the middle often.")
    assert LINE in reply


@pytest.mark.parametrize(
    "text",
    [
        "paddle down at the kitchen",
        "caught with my paddle down",
        "tom has his paddle down at the line",
        "partner keeps his paddle low at the kitchen",
        "where should my paddle be at the kitchen",
    ],
)
def test_a_paddle_that_hangs_asks_for_the_ready_position(demo: Talk, text: str) -> None:
    assert PADDLES in demo.say(text)


@pytest.mark.parametrize(
    "text",
    ["we both go for the same ball", "both of us going for the same balls", "we both leave it"],
)
def test_two_for_one_ball_ask_whose_it_is(demo: Talk, text: str) -> None:
    assert _topic(demo, text) is Topic.COVER_MIDDLE


@pytest.mark.parametrize(
    ("text", "other"),
    [
        ("they both go for the same ball", Topic.COVER_MIDDLE),
        ("okafor keeps drifting middle leaving his line open", Topic.WHERE_TO_STAND),
        ("okafor keeps his paddle low", Topic.WHERE_TO_STAND),
    ],
)
def test_what_they_do_is_not_our_shape(demo: Talk, text: str, other: Topic) -> None:
    assert _topic(demo, text) is not other


@pytest.mark.parametrize(
    "text",
    [
        "who gets teh midle if tom is pulld wide",
        "who takes middel when tom is draged wide",
        "middle when tom is yankd wide",
        "whose ball in the midle tom pulled wdie",
    ],
)
def test_a_slip_in_who_is_wide_hides_nothing(demo: Talk, text: str) -> None:
    assert demo.say(text).startswith("Give Mira all inside while Tom is wide.")


def test_how_bold_at_a_score_is_asked_and_the_score_is_told(demo: Talk) -> None:
    assert _topic(demo, "0-0-2 how hard do i go") is Topic.RISK_AT_SCORE
    assert "4-2-1: who serves?" in demo.say("4-2-1 how aggressive")


def test_a_failing_turn_is_not_reported_as_the_turn_before(monkeypatch: pytest.MonkeyPatch) -> None:
    store = demo_store(now=SATURDAY)
    talk = open_console(store, user_name="Mira")
    assert talk.say_json("okafor is tall")["kind"] == "note"

    def broken(*_: object, **__: object) -> None:
        raise RuntimeError("broken on purpose")

    monkeypatch.setattr(console, "hear", broken)
    told = talk.say_json("hale is short")
    store.close()
    assert (told["kind"], told["observations"]) == ("unclear", None)
    assert told["reply"].startswith("That went wrong on my side.")
