"""How the last match against somebody ended. The ways to ask are our own: no source."""

from __future__ import annotations

import pytest
from talk import Talk

ASKED = (
    "did we beat hale last time",
    "did we win against hale last time?",
    "have we ever beaten hale",
    "what was the score last time against hale",
    "who won against hale last time",
    "how did we do last time against hale",
    "when did we last play hale",
    "did we beat ruiz and hale last time",
)


@pytest.mark.parametrize("text", ASKED)
def test_the_last_match_against_them_is_told(demo: Talk, text: str) -> None:
    demo.say("next: ana ruiz and hale")
    demo.say("we won 11-5 11-7")
    demo.say("next: okafor and lindqvist")
    demo.say("lost 5-11 6-11")
    assert demo.say(text) == "You won 11-5 11-7, earlier today, vs Ana Ruiz/Hale."


def test_them_are_whom_we_play_now(demo: Talk) -> None:
    demo.say("next: ana ruiz and hale")
    demo.say("we won 11-5 11-7")
    demo.say("next: ana ruiz and hale")
    assert demo.say("did we beat them last time").startswith("You won 11-5 11-7, earlier today")


def test_the_newest_of_several_counts(demo: Talk) -> None:
    demo.say("next: ana ruiz and hale")
    demo.say("we won 11-5 11-7")
    demo.later(days=2)
    demo.say("next: brandt and hale")
    demo.say("lena brandt")
    demo.say("next: lena brandt and hale")
    demo.say("lost 5-11 6-11")
    demo.later(days=1)
    assert demo.say("did we beat hale last time").startswith("You lost 5-11 6-11, ")


@pytest.mark.parametrize("text", ["did we beat hale last time", "have we played hale before"])
def test_where_there_was_none_it_says_so(demo: Talk, text: str) -> None:
    assert demo.say(text) == "No match against Hale in the book."


@pytest.mark.parametrize(
    "text", ["how do we beat hale", "did hale lob last time", "can we beat hale", "did tom win"]
)
def test_what_asks_something_else_stays_elsewhere(demo: Talk, text: str) -> None:
    assert "in the book." not in demo.say(text)
