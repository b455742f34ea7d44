"""A case, a place, one wing of two, pressure: what they judge. Wordings: our own, no source."""

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
        ("okafor pops up bh when mira dinks behind him, good", {"backhand_dink weakness"}),
        ("okafor third drop good off the forehand but bad off the backhand", set()),
        ("okafor return weak on the bh", {"return weakness"}),
        ("okafor pops up under pressure on his bh", {"backhand_dink weakness"}),
        ("okafor chokes under pressure", {"nerves weakness"}),
        ("okafor bangs from the transition zone", set()),
    ],
)
def test_only_what_is_judged_is_claimed(text: str, told: set[str]) -> None:
    assert claims(text) == told


def test_a_return_that_was_short_is_offered_as_such() -> None:
    note = understand_note("okafor returned short twice", chat=IN_TALK)
    assert [one.value.value for one in (*note.claims, *note.offered)] == ["weakness"]
