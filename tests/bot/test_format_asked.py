"""What is played is told where it is asked, and nothing else is taken for it. Our own wordings."""

from __future__ import annotations

from talk import Talk

from bot.chat.format_asked import asks_of_format

ASKED = (
    "is it 11 or 15 points in mixed here",
    "match is best of 3 to 11 or",
    "what do we play to",
    "how many points is a game",
    "is it best of 3",
)
NOT_ASKED = (
    "match is best of 3 to 11",
    "what do we play to okafor",
    "how many points do we need",
    "is it 9 8 or 8 9",
    "how many games do we need to win",
)


def test_what_we_play_to(fresh: Talk) -> None:
    assert [line for line in ASKED if not asks_of_format(line)] == []
    assert [line for line in NOT_ASKED if asks_of_format(line)] == []
    assert fresh.say("is it 11 or 15?").startswith("I have best of 3 to 11.")
