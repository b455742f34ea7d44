"""Who covers what while one of ours is hurt. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "said",
    [
        "tom hurt his ankle who takes mid",
        "tom rolled his ankle, who covers the middle",
        "my knee hurts who takes the middle",
        "tom cant move who covers middle",
        "who takes mid if tom cant move",
        "my partner can barely walk who takes the lobs",
    ],
)
def test_the_body_comes_first_and_nothing_is_noted(demo: Talk, said: str) -> None:
    stored = demo.stored()
    reply = demo.say(said)
    assert "medical staff" in reply.split("\n")[0]
    assert "Cleared to play? Partner takes middle and lobs." in reply
    assert demo.stored() == stored


@pytest.mark.parametrize(
    "said",
    [
        "who takes the middle",
        "okafor cant move, who takes middle",
        "we cant move fast who takes the middle",
        "who takes the middle on a lob",
    ],
)
def test_of_sound_players_and_opponents_the_middle_is_asked(demo: Talk, said: str) -> None:
    assert demo.say(said).startswith(("Slow:", "Let Tom's forehand"))
