"""Turning down what we asked to tap for. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "text",
    [
        "no dont", "dont", "no", "nope dont do that", "no cancel", "never mind", "nvm",
        "no keep him", "no, leave her in", "please dont forget him", "do not do that",
    ],
)  # fmt: skip
def test_a_no_leaves_everything_as_it_is(demo: Talk, text: str) -> None:
    before = demo.stored()
    demo.say("forget okafor")
    reply = demo.say(text)
    assert "Which of these" not in reply
    assert "Taken back" not in reply
    assert "Nothing of yours to take back" not in reply
    assert demo.stored() == before


def test_to_take_back_is_something_else(demo: Talk) -> None:
    demo.say("okafor is slow")
    assert demo.say("cancel that").startswith("Taken back")
