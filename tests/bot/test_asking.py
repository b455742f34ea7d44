"""What asks without a mark is never stored as a note of what it asks after."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.asking import asks, surely_asks
from bot.chat.words import words


@pytest.mark.parametrize(
    "text",
    [
        "which hand is okafor",
        "what side is hale weaker on",
        "how good are okafors resets when hes moving",
        "how fast is hale",
        "thirds, what's hale's bh drop",
        "okafor: how good are his hands",
    ],
)
def test_how_somebody_is_asks_and_notes_nothing(demo: Talk, text: str) -> None:
    before = demo.notes()
    demo.say(text)
    assert demo.notes() == before
    assert surely_asks(text, words(text))


@pytest.mark.parametrize(
    "text", ["okafor lobs, what a pain", "hale is slow, how he moves is odd", "okafor, good hands"]
)
def test_what_only_tells_does_not_surely_ask(text: str) -> None:
    assert not surely_asks(text, words(text))


def test_a_pause_alone_asks_nothing() -> None:
    assert not asks("okafor, good hands", words("okafor, good hands"))
