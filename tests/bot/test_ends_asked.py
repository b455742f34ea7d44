"""When ends are changed is the rulebook's, not what to change in our game.

Official Rulebook 2025, 5.B: after each game, and in a deciding game at 6 (to 11), 8 (to 15) or
11 (to 21).
"""

from __future__ import annotations

import pytest
from talk import Talk, demo_talk

RULE = "Change ends after each game."


@pytest.mark.parametrize(
    "said",
    [
        "do we change ends now",
        "when do we change ends",
        "when do we switch ends in a game to 15?",
        "at what score do we switch sides in the third game",
        "switch ends when",
        "so when do we swap sides",
    ],
)
def test_the_rule_is_answered(demo: Talk, said: str) -> None:
    answered = demo.say(said)
    assert answered.splitlines()[0] == RULE
    assert "(to 11)" in answered


def test_asked_after_another_question_it_is_no_follow_up(demo: Talk) -> None:
    demo.say("where do i stand")
    assert demo.say("switch ends when").splitlines()[0] == RULE


def test_a_score_told_with_it_counts() -> None:
    match = demo_talk()
    for said in ("next: okafor and lindqvist", "4-4-1 we serve"):
        match.say(said)
    answered = match.say("6-4-1 us, do we change ends now").splitlines()
    assert answered[0] == RULE
    assert "6-4-1. We serve: Mira right, Tom left." in answered
    assert match.say("score?").startswith("6-4-1.")


@pytest.mark.parametrize("said", ["should we switch sides", "what do we change", "do they switch"])
def test_what_we_may_change_ourselves_is_another_question(demo: Talk, said: str) -> None:
    assert RULE not in demo.say(said)
