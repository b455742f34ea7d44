"""Rules questions in a chat: the other branch by a button, follow-ups, and what to do now."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.payload import Tap, Verb
from bot.chat.wording import wording
from knowledge.advice import MatchFact
from knowledge.vocabulary import Topic

MOMENTUM = "momentum carried tom in after the smash, is that a fault"


def test_the_other_branch_is_one_tap_away_and_back(demo: Talk) -> None:
    first = demo.say(MOMENTUM)
    assert "No ref assumed" in first
    assert "Now: " in first
    officiated = demo.tap("with a referee")
    assert "With a ref" in officiated
    assert "before the next serve" in officiated
    assert "No ref." in demo.tap("no referee")


def test_a_follow_up_about_the_referee_keeps_the_rule(demo: Talk) -> None:
    call = demo.say(MOMENTUM).splitlines()[0]
    reply = demo.say("and what if there's a referee, who calls it then?")
    assert reply.splitlines()[0] == call
    assert "With a ref" in reply


def test_a_new_question_does_not_lean_on_the_one_before(demo: Talk) -> None:
    demo.say(MOMENTUM)
    reply = demo.say("what's the rule if the serve hits the net cord")
    assert reply.startswith("Play on: a serve")
    assert demo.context.asked is not None
    assert demo.context.asked.before is None


def test_in_a_match_the_short_answer_says_what_to_do_now(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("we serve first")
    reply = demo.say("wrong server served, what happens?")
    assert "Now: Stop, agree" in reply
    assert len(reply.splitlines()) <= 4


def test_a_rule_may_be_picked_by_its_name(demo: Talk) -> None:
    demo.say(MOMENTUM)
    payload = str(Tap(verb=Verb.SETTLE, args=(Topic.RULES_QUESTION, MatchFact.RULE, "drop serve")))
    assert demo.press(payload).startswith("Legal: drop it")


@pytest.mark.parametrize(
    ("fact", "value"),
    [(MatchFact.OFFICIATED, "maybe"), (MatchFact.RULE, "no such rule"), (MatchFact.RULE, "yes")],
)
def test_a_forged_button_changes_nothing(demo: Talk, fact: MatchFact, value: str) -> None:
    demo.say(MOMENTUM)
    context = demo.context
    payload = str(Tap(verb=Verb.SETTLE, args=(Topic.RULES_QUESTION, fact, value)))
    assert demo.press(payload) == wording("unclear.too_old")
    assert demo.context == context


@pytest.mark.parametrize("text", ["replay", "replay?"])
def test_a_bare_word_of_several_rules_is_asked_about(demo: Talk, text: str) -> None:
    assert demo.say(text).splitlines()[0] == "Which rule do you mean?"
    assert "broken ball" in [one.label for one in demo.buttons]
    assert demo.tap("broken ball").startswith("Play the rally out")


@pytest.mark.parametrize(
    "said", ["freeze at 20?", "is there a freeze", "does the score freeze at 20?", "freeze rule?"]
)
def test_a_freeze_of_the_score_is_a_rule(demo: Talk, said: str) -> None:
    """2025 rulebook, 12.B: in rally scoring the winning point only on serve."""
    assert "rally scoring" in demo.say(said).splitlines()[0]


@pytest.mark.parametrize("said", ["they freeze me out at 20", "i freeze at game point"])
def test_a_freeze_of_ours_is_none(demo: Talk, said: str) -> None:
    assert "rally scoring" not in demo.say(said)


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ("the ref called my foot in, was i", "it was after the bounce though"),
        ("ref called a kitchen foot on me", "but the ball bounced before i hit it"),
        ("my foot touched the line, fault?", "it was after the bounce"),
        ("is it a fault if i fall into the kitchen after a volley", "no it bounced first"),
    ],
)
def test_a_foot_in_after_the_bounce_is_no_fault(demo: Talk, asked: str, told: str) -> None:
    """Only a volley from the kitchen is a fault (2026 edition, 11.A)."""
    assert not demo.say(asked).startswith("Legal")
    reply = demo.say(told)
    assert reply.startswith("Legal: be in the kitchen any time, but don't volley.")
    assert "(rulebook: 2026, 11.A)" in reply


@pytest.mark.parametrize(
    ("asked", "told", "call"),
    [
        (
            "is it a fault if my hat falls in the kitchen",
            "it was after the point though",
            "No fault",
        ),
        (
            "they called a foot fault on my serve",
            "my foot was behind the line though",
            "Fault: feet",
        ),
        ("where do i dink okafor", "it was after the bounce though", "Take it in the air"),
        ("my foot touched the line, fault?", "it bounced twice", "Fault"),
        (
            "can my paddle touch the net after the ball is dead",
            "and if it was before he hit winner?",
            "Fault: touch no net",
        ),
    ],
)
def test_what_else_is_told_of_it_keeps_its_own_answer(
    demo: Talk, asked: str, told: str, call: str
) -> None:
    demo.say(asked)
    assert demo.say(told).startswith(call)


@pytest.mark.parametrize(
    "said", ["tom foot fault on srv, their pt?", "foot fault on the serve, whose point"]
)
def test_whose_point_a_fault_makes_is_told_where_that_is_asked(demo: Talk, said: str) -> None:
    reply = demo.say(said)
    assert reply.startswith("Fault:")
    assert "Now: Server's fault: no point. Receiver's fault: a point." in reply


def test_of_the_fault_alone_it_is_not(demo: Talk) -> None:
    assert "no point" not in demo.say("is a foot fault on the serve a fault")


def test_in_rally_scoring_every_fault_is_a_point(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist, rally scoring to 15")
    assert "Now: Rally scoring: a fault is the other side's point." in demo.say(
        "tom foot fault on srv, their pt?"
    )
