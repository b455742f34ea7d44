"""Who stands where, told beside the score that opens a game. Our own wordings."""

from __future__ import annotations

from told_rallies import MATCH

from bot.chat.said import ScoreSaid, StarterSaid
from bot.chat.understand import understand

PLACES = {
    "0-0-2 they serve, tom stands right": [(False, None), (2, True)],
    "they serve first, tom is on the right": [(False, None), (2, True)],
    "we serve first, i stand on the left": [(True, None), (1, False)],
    "0-0-2 they serve, tom starts right and okafor right": [(False, None), (2, True), (3, True)],
    "4-3-1 they serve, tom is on the right": [(False, None)],
    "0-0-2 they serve, okafor has a weak right side": [(False, None)],
}


def test_a_place_at_the_opening_is_where_somebody_starts() -> None:
    found = {
        text: [
            (one.score and one.score.we_serve, None)
            if isinstance(one, ScoreSaid)
            else (one.mention.players[0], one.is_right)
            for one in understand(text, chat=MATCH)
            if isinstance(one, ScoreSaid | StarterSaid)
        ]
        for text in PLACES
    }
    assert found == PLACES
