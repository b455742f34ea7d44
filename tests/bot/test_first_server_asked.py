"""Which of us two serves first, with what either misses; and two players hardly known compared."""

from __future__ import annotations

from talk import Talk
from told_rallies import MATCH

from bot.chat.said import Question
from bot.chat.understand import understand
from knowledge.vocabulary import Topic


def test_who_misses_fewer_serves_first_and_too_little_known_ranks_nobody(fresh: Talk) -> None:
    for said in (
        "we are devi and soren",
        "add ike okoye and tamsin brandt",
        "next: ike okoye and tamsin brandt",
        "soren plays right",
    ):
        fresh.say(said)
    told = {
        "we won toss, we serve first. who of us": "Soren",
        "who should start serving, me (5% miss) or soren (20%)": "Devi",
        "who serves first, me who misses 3 of 10 or soren 1 of 10": "Soren",
    }
    assert {said: fresh.say(said).split("\n")[0] for said in told} == {
        said: f"Agree: {name} serves first." for said, name in told.items()
    }
    fresh.say("soren misses 2 of 10 serves")
    assert fresh.say("who serves first, me or soren").startswith("Agree: Devi serves first.")
    assert not fresh.say("who serves first").startswith("Agree")
    fresh.say("okoye righty, 6'4")
    fresh.say("brandt might be a lefty not sure")
    compared = fresh.say("compare okoye and brandt")
    assert compared.startswith("Too little to rank them; they differ:")
    assert "Brandt: maybe lefty" in compared
    assert "Okoye: right-handed, tall" in compared


OURS = (
    "should i serve first or tom",
    "is it better that i serve first or tom",
    "in which order serve we",
    "who should serve first of us two",
)
OTHERS = ("should we serve first", "should i serve first or okafor", "in which order do they serve")


def test_which_of_us_serves_first_is_agreed() -> None:
    found = {text: understand(text, chat=MATCH)[0] for text in (*OURS, *OTHERS)}
    agreed = [
        text
        for text, one in found.items()
        if isinstance(one, Question) and one.topic is Topic.PAIR_UP
    ]
    assert agreed == [*OURS]
