"""Who only tells of somebody else is not whom a note is about. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import NoteSaid

TOLD = (
    "mira says the guy on the left is cheating to the middle",
    "mira says the blond one on their side is cheating on the middle",
    "tom thinks their lefty is slow",
    "mira reckons the tall guy hates lobs",
)


@pytest.mark.parametrize("text", TOLD)
def test_what_one_of_us_tells_of_somebody_not_named_is_nobodys_yet(demo: Talk, text: str) -> None:
    assert demo.say(text) == "Your words are kept. Who is the note about? Send the name."
    assert demo.heard is not None
    assert demo.heard.trace["claims"] == ()


def test_the_words_are_theirs_once_the_name_is_sent(demo: Talk) -> None:
    demo.say(TOLD[0])
    assert demo.say("lindqvist").startswith("Noted. Lindqvist: ")
    assert demo.heard is not None
    assert "squeezes_middle" in {one.trait.value for one in demo.heard.trace["claims"]}


@pytest.mark.parametrize(
    ("text", "whom"),
    [
        ("mira says okafor is cheating to the middle", "Okafor"),
        ("hale says nothing", "Hale"),
        ("hale never tells his partner what to do", "Hale"),
    ],
)
def test_who_is_named_or_only_talks_is_meant(demo: Talk, text: str, whom: str) -> None:
    assert demo.say(text).startswith(f"Noted. {whom}: ")
    assert isinstance(demo.heard.understood if demo.heard else None, NoteSaid)
