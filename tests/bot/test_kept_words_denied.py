"""What is quoted of a note says what was said: a "not" stays with the words it denies."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("note", "kept"),
    [
        (
            "okafor is not bad at the net hes just bad at dinking on the backhand",
            "not bad at the net",
        ),
        ("okafor is no fool at the net and his backhand dink is weak", "no fool at the net"),
        ("okafor never smiles and his backhand dink is weak", "never smiles"),
        ("okafor isnt bad at the net but his backhand dink is weak", "isnt bad at the net"),
    ],
)
def test_what_denies_kept_words_is_kept_with_them(demo: Talk, note: str, kept: str) -> None:
    reply = demo.say(note)
    assert reply.startswith("Noted. Okafor: backhand dink weak.")
    assert f"Kept as words: {kept}." in reply


@pytest.mark.parametrize(
    "note", ["okafor doesnt stack and his backhand dink is weak", "okafor never lobs, he is slow"]
)
def test_what_denies_a_claim_is_not_quoted(demo: Talk, note: str) -> None:
    assert "Kept as words" not in demo.say(note)
