"""A score told behind a question is kept; one that the question only supposes is not."""

from __future__ import annotations

from dataclasses import replace

import pytest
from voices import EVENING

from bot.chat.said import ScoreSaid
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId

OKAFOR, LINDQVIST = PlayerId(3), PlayerId(4)
MATCH = replace(EVENING, theirs=(OKAFOR, LINDQVIST), focus=(OKAFOR, LINDQVIST), match_on=True)


@pytest.mark.parametrize(
    ("said", "is_kept"),
    [
        ("deuce what now ten ten they serve first server", True),
        ("time out? 10-10-1 they serve", True),
        ("what if its 10-10-1 they serve", False),
        ("whats our chance, 10-10-1 they serve", False),
    ],
)
def test_a_call_that_stands_now_is_kept(said: str, is_kept: bool) -> None:
    told = understand(said, chat=MATCH)
    assert any(isinstance(one, ScoreSaid) for one in told) is is_kept
