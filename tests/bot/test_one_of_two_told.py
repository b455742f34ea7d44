"""What one of two did, who of them being left open: asked, and noted of whoever is named then."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import NoteSaid


@pytest.mark.parametrize(
    "said",
    [
        "okafor or was it lindqvist popped up 3 resets in a row",
        "okafor or maybe lindqvist pops up resets",
    ],
)
def test_which_of_the_two_is_asked_and_answered(demo: Talk, said: str) -> None:
    demo.say("next: okafor and lindqvist")
    assert demo.say(said) == "Which of the two?"
    assert demo.say("it was okafor").startswith("Noted. Okafor: reset weak.")
    assert demo.say("score") == "Who serves first?"


@pytest.mark.parametrize(
    "said",
    ["okafor or maybe lindqvist, who do we target", "is it okafor or maybe lindqvist who poaches"],
)
def test_a_question_about_two_is_answered(demo: Talk, said: str) -> None:
    demo.say(said)
    assert not isinstance(demo.heard and demo.heard.understood, NoteSaid)
