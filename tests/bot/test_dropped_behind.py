"""Notes taken back in plain words, alone or behind what is told. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk
from voices import IN_TALK

from bot.chat.message import read_message
from bot.chat.notes_dropped import notes_dropped


@pytest.mark.parametrize(
    ("noted", "text", "beside"),
    [
        ("hale weak bh", "take back weak bh", ""),
        ("hale slices his return", "sorry wrong one, scrub that hale thing", ""),
        (
            "hale weak bh",
            "hales bh isnt that weak after all, take back weak bh",
            "\n\nNoted. Hale: backhand dink not weak.",
        ),
    ],
)
def test_a_note_goes_in_whatever_words(fresh: Talk, noted: str, text: str, beside: str) -> None:
    fresh.say("new opponent ben hale")
    fresh.say(noted)
    assert fresh.say(text) == f"Taken back: “{noted}”.{beside}"
    assert len(fresh.notes()) == bool(beside)


def test_the_middle_is_taken_back_in_play() -> None:
    message = read_message("take back the middle", IN_TALK)
    assert notes_dropped(message, IN_TALK) is None
