"""Words that open a question are nobody's name, whoever's name sounds like them."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "asked", ["whats in your book about vance", "what do i have on vance", "What about Vance"]
)
def test_what_is_no_bhatt(fresh: Talk, asked: str) -> None:
    for pair in ("vance and dufort", "lunde and bhatt"):
        fresh.say(f"next: {pair}")
        fresh.tap(f"add {pair}")
    reply = fresh.say(asked)
    assert "Bhatt" not in reply
    assert "no notes on Vance." in reply


def test_a_bhatt_mistyped_is_still_one(fresh: Talk) -> None:
    fresh.say("next: lunde and bhatt")
    fresh.tap("add lunde and bhatt")
    assert fresh.say("bhat is a lefty").startswith("Noted. Bhatt: left-handed.")
