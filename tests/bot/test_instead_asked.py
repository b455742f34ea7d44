"""What to play in place of a shot is never that shot; what goes wrong is changed, and noted."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from topic_examples import VIEW

from bot.chat.instead_asked import instead_asked
from bot.chat.message import read_message
from knowledge.vocabulary import Topic

INSTEAD = {
    "what instead of speeding up at okafor": Topic.WHOM_TO_TARGET,
    "what else can we do instead of going at him": Topic.WHOM_TO_TARGET,
    "what instead of speeding it up": Topic.AIM_DINK,
    "what instead of overheads": Topic.TAKE_OR_LET_BOUNCE,
    "what should i play instead of lobbing okafor": Topic.AIM_DINK,
    "what to hit instead of the drive": Topic.THIRD_SHOT,
    "okafor lobs instead of driving": None,
    "i dinked instead of speeding up": None,
    "what instead": None,
}


def test_the_shot_given_up_is_no_answer() -> None:
    for said, topic in INSTEAD.items():
        found = instead_asked(read_message(said, VIEW), replace(VIEW, last_topic=None))
        assert (found.topic if found else None) is topic, said


def test_what_one_of_us_should_do_instead_is_answered(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    for said in (
        "tom keeps going down the line and missing. what instead",
        "we keep missing thirds, what instead",
    ):
        assert "Works if" in demo.say(said), said
    assert demo.say("okafor poaches a lot. what instead").startswith("Noted")


@pytest.mark.parametrize(
    ("first", "then", "opening"),
    [
        ("who do we target", "and okafor?", "Okafor"),
        ("what do i do about bangers", "and lobbers", "Call it early"),
        ("what do i do about bangers", "and if they poach", "Go behind the poacher"),
        ("tom is nervous and tight", "what do i say to him", "Say: "),
    ],
)
def test_what_goes_on_is_no_repetition(demo: Talk, first: str, then: str, opening: str) -> None:
    demo.say("next: okafor and lindqvist")
    before = demo.say(first).splitlines()[0]
    reply = demo.say(then).splitlines()
    assert reply[0] != before
    assert opening in "\n".join(reply[:2])
