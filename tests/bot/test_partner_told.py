"""A new partner told by name. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "text",
    [
        "new partner tmrw, bronagh",
        "new partner bronagh",
        "bronagh is my new partner",
        "bronaghs my partner!!",
        "Bronagh's my partner for saturday",
        "my partner today is bronagh",
        "got a new partner, bronagh",
        "ok my new partner is called bronagh",
        "playing with bronagh tomorrow",
        "im playing w bronagh today",
        "im with bronagh now",
        "new match, mixed, im with bronagh now",
        "ok im w bronagh for mixed",
    ],
)
def test_a_partner_that_the_book_does_not_know_is_ours(fresh_anywhere: Talk, text: str) -> None:
    fresh_anywhere.user, fresh_anywhere.name = "zoe", "Zoe"
    assert fresh_anywhere.say(text) == "And you? Write: we are YOUR NAME and Bronagh"
    fresh_anywhere.say("im petronella, playing with kim")
    assert fresh_anywhere.say(text) == "You are Petronella and Bronagh."
    assert fresh_anywhere.say("my partner is a lefty").startswith("Noted. Bronagh: left-handed.")


@pytest.mark.parametrize(
    "text",
    [
        "new partner any tips",
        "new partner jitters",
        "new partner tomorrow, what do we agree on",
        "is bronagh my partner?",
        "bronagh is my least favourite partner",
        "tom is my partner and he poaches everything",
        "okafor is my partner",
        "okafor targets my partner",
        "hale attacks my partner",
        "playing with wind today",
        "im with you now",
        "im with the idea now",
        "im happy with lobs now",
        "im with bronagh who serves first",
        "my partner is slow",
        "my partner is a lefty",
    ],
)
def test_what_is_told_or_asked_of_a_partner_makes_none(demo: Talk, text: str) -> None:
    assert "You are" not in demo.say(text)


def test_a_name_that_ends_in_s_keeps_it(fresh_anywhere: Talk) -> None:
    assert (
        fresh_anywhere.say("chris my partner tomorrow")
        == "And you? Write: we are YOUR NAME and Chris"
    )


def test_who_rests_may_be_switched_to(demo: Talk) -> None:
    assert demo.say("switch partners to oskar today") == "You are Mira and Oskar."
    assert demo.say("back with tom") == "You are Mira and Tom."
    assert demo.say("switch to oskar") == "You are Mira and Oskar."


@pytest.mark.parametrize(
    "text",
    ["switch to okafor", "switch to lobs", "switch to spanish", "should we switch to tom"],
)
def test_switching_to_something_else_changes_no_partner(demo: Talk, text: str) -> None:
    demo.say(text)
    assert demo.say("who are we").startswith("You are Mira and Tom.")
