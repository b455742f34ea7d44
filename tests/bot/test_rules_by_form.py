"""Everyday questions of rules, in words that mean something else in play. Wordings: our own."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import NoteSaid, Question
from knowledge.vocabulary import Topic

ENDS = "Change ends after each game."
DEVICES = "Ask the desk first: many events bar devices."
BAD_CALL = "Play on and stay calm: you can't overrule it."


@pytest.mark.parametrize(
    ("text", "call"),
    [
        ("in game three do we change ends at six", ENDS),
        ("do we swap ends at six in the third", ENDS),
        ("in the decider when do we switch sides", ENDS),
        ("can i use my phone between points", DEVICES),
        ("can i look at my phone in a time out", DEVICES),
        ("am i allowed to use my phone on court", DEVICES),
        ("hale cheats on the lines", BAD_CALL),
        ("what do we do about her line calls she cheats", BAD_CALL),
        ("they keep cheating on line calls what can we do", BAD_CALL),
        ("they keep calling my good balls out what do we do", BAD_CALL),
        ("shes calling everything out", BAD_CALL),
        ("ruiz makes bad line calls", BAD_CALL),
        ("can we get a line judge", BAD_CALL),
    ],
)
def test_the_rule_is_told_and_nothing_kept(demo: Talk, text: str, call: str) -> None:
    demo.say("next: ana ruiz and hale, we serve")
    told = demo.say(text)
    assert told.startswith(call)
    assert "Not meant?" not in told
    assert "cheats" not in demo.say("what did i note about hale")
    assert "0-0-2" in demo.say("whats the score")


@pytest.mark.parametrize(
    "text",
    [
        "hale cheats to the middle",
        "hale cheats on his backhand",
        "can i get the plan on my phone",
        "my calls were bad today",
        "do we decide who calls the balls out loud",
        "hale calls everything early and his backhand is weak",
    ],
)
def test_what_only_sounds_like_it_is_read_as_before(demo: Talk, text: str) -> None:
    demo.say("next: ana ruiz and hale, we serve")
    demo.say(text)
    heard = demo.heard and demo.heard.understood
    assert not (isinstance(heard, Question) and heard.topic is Topic.RULES_QUESTION)
    if text.startswith("hale"):
        assert isinstance(heard, NoteSaid)
