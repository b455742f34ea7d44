"""A nickname told in words is known from then on; a trait is no nickname."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "told",
    [
        "we call hale the mule", "call hale mule", "hale aka the mule", "hale alias mule",
        "the mule is hale", "mule is hale", "hales nickname is mule", "nickname for hale is mule",
        "/nickname hale mule", "everyone just calls hale the mule", "hale is known as the mule",
    ],
)  # fmt: skip
def test_who_is_called_so_is_meant(demo: Talk, told: str) -> None:
    assert demo.say(told) == "“mule” means Ben Hale now."
    demo.say("the mule never lobs")
    assert ("lob", "rarely", False) in demo.claims("Ben Hale")
    assert "Hale" in demo.say("where do i serve the mule").splitlines()[0]


def test_it_is_taken_back(demo: Talk) -> None:
    demo.say("we call hale the mule")
    assert demo.say("undo") == "Taken back: the nickname."
    assert "Hale" not in demo.say("where do i serve the mule").splitlines()[0]


@pytest.mark.parametrize(
    "told", ["call hale slow", "call hale a lefty", "we call hale out", "the middle is hales"]
)
def test_what_says_something_is_no_nickname(demo: Talk, told: str) -> None:
    assert "means" not in demo.say(told)


def test_a_command_without_a_nickname_asks_for_one(demo: Talk) -> None:
    assert demo.say("/nickname hale").startswith("What is Ben Hale called?")


def test_whoever_nobody_knows_yet_is_added_first(demo: Talk) -> None:
    assert demo.say("we call bram the tractor").startswith("No bram in your book yet.")
    demo.tap("add bram")
    assert "Bram" in demo.say("where do i serve the tractor").splitlines()[0]


@pytest.mark.parametrize("told", ["we call balls out", "they call it the kitchen"])
def test_what_is_no_name_is_nobody(demo: Talk, told: str) -> None:
    assert "in your book" not in demo.say(told)
