"""Misses of whoever writes are no weakness of whoever was named before, nor is one in twenty."""

from __future__ import annotations

from voices import EVENING

from bot.chat.said import NoteSaid
from bot.chat.understand import understand
from knowledge.vocabulary import Trait, Value


def _weak_at(line: str) -> set[Trait]:
    notes = [one for one in understand(line, chat=EVENING) if isinstance(one, NoteSaid)]
    assert notes, line
    return {
        one.trait
        for note in notes
        for one in note.claims
        if one.value is Value.WEAKNESS and not one.denied
    }


def test_whose_misses_they_are_and_how_many() -> None:
    for line in (
        "tom starts serving, i miss 1 in 20",
        "tom starts serving, i keep netting my backhand",
        "okafor drives, i miss every volley",
        "okafor misses 1 in 20 serves",
        "okafor serves ok, misses 1 of 12",
    ):
        assert _weak_at(line) == set(), line
    for line in (
        "okafor misses 1 in 3 serves",
        "tom misses 2 of 10 serves",
        "okafor misses serves",
    ):
        assert _weak_at(line) == {Trait.SERVE}, line
    assert _weak_at("okafor's serve is weak, i miss nothing of it") == {Trait.SERVE}
