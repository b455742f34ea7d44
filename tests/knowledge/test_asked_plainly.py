"""Rules asked for in words that mean something else in play. Our own wordings."""

from __future__ import annotations

from knowledge.rulebook.asked_plainly import (
    CHANGE_ENDS,
    LATE,
    PADDLE_CHANGE,
    rule_asked_plainly,
)

FOUND = {
    "they change ends at 6 or?": CHANGE_ENDS,
    "do they switch sides at 8": CHANGE_ENDS,
    "they change sides at 6": None,
    "my paddle has a crack, is it allowed": PADDLE_CHANGE,
    "can i play on with a cracked paddle": PADDLE_CHANGE,
    "there is a crack in the ball": None,
    "paddle broke the plane of the net": None,
    "they are 20 minutes late, do we win by walkover": LATE,
    "the other team is not here, do we win": LATE,
    "they are late on every volley, do we win with speedups": None,
}


def test_plain_words_find_their_rule_and_no_play() -> None:
    assert {words: rule_asked_plainly(words) for words in FOUND} == FOUND
