"""What somebody bears at all times ends no rally, though the net stands in it. Our own wordings."""

from __future__ import annotations

from told_rallies import MATCH, rally_of

from bot.chat.said import RallySaid
from bot.chat.understand import understand

BORNE = (
    "tom has a little fear of the net",
    "okafor has respect for the net",
    "lindqvist scared of the net",
    "okafor has a tendency to go long",
    "we have problems with the net",
)
"""Each was a rally before: "net" and "long" tell how one ends."""

TOLD = (
    "okafor in trouble with the lob, netted it",
    "tom has netted it",
    "okafor scared, missed it",
)


def test_a_fear_of_the_net_is_no_ball_into_it() -> None:
    said = [one for text in BORNE for one in understand(text, chat=MATCH)]
    assert [one.text for one in said if isinstance(one, RallySaid)] == []
    assert [text for text in TOLD if rally_of(text) is None] == []
