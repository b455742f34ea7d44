"""What one of two did, who of them being left open: asked, and noted of whoever is named then."""

from __future__ import annotations

from talk import Talk

from bot.chat.said import NoteSaid


def test_which_of_the_two_is_asked_and_answered(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    said = "okafor or was it lindqvist popped up 3 resets in a row"
    assert demo.say(said) == "Which of the two?"
    assert demo.say("it was okafor").startswith("Noted. Okafor: reset weak.")
    assert demo.say("score") == "Who serves first?"


def test_a_question_about_two_is_answered(demo: Talk) -> None:
    demo.say("okafor or maybe lindqvist, who do we target")
    assert not isinstance(demo.heard and demo.heard.understood, NoteSaid)
