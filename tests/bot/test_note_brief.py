"""How brief an answer is to be is nobody's height. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from voices import IN_TALK

from bot.chat.understand import understand_note


def claims(text: str) -> set[str]:
    note = understand_note(text, chat=IN_TALK)
    return {f"{one.trait} {one.value}" for one in note.claims}


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("short, 60 sec timeout lines for mira and tom", set()),
        ("lines for mira and tom, short", set()),
        ("short one for mira and tom", set()),
        ("okafor: short, cue is lob him", {"height short"}),
    ],
)
def test_who_is_short_is_told_of_somebody(text: str, told: set[str]) -> None:
    assert claims(text) == told
