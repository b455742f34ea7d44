"""Who is rattled has weak nerves, unless it is said that nothing does it. Wordings: our own."""

from __future__ import annotations

import pytest
from voices import IN_TALK

from bot.chat.said import NoteSaid, Question
from bot.chat.understand import understand, understand_note
from knowledge.vocabulary import Trait


def nerves(text: str) -> set[str]:
    note = understand_note(text, chat=IN_TALK)
    told = (*note.claims, *note.offered)
    return {one.value.value for one in told if one.trait is Trait.NERVES and not one.denied}


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("okafor rattled when rushed", "weakness"),
        ("hale takes his time, looks rattled", "weakness"),
        ("ruiz seems flustered when we lob", "weakness"),
        ("okafor cant be rattled", "strength"),
    ],
)
def test_who_is_rattled_is_not_calm(text: str, value: str) -> None:
    assert nerves(text) == {value}


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("okafor takes forever between points, looks rattled when rushed", NoteSaid),
        ("okafor takes forever between points can i say smth", Question),
        ("tom is rattled", Question),
    ],
)
def test_who_is_described_beside_slow_play_makes_a_note(text: str, kind: type[object]) -> None:
    assert isinstance(understand(text, chat=IN_TALK)[0], kind)
