"""What somebody's shot is like is a note of them; what it did is a rally."""

from __future__ import annotations

from dataclasses import replace

from voices import EVENING

from bot.chat.said import NoteSaid, RallySaid
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId

OKAFOR, LINDQVIST = PlayerId(3), PlayerId(4)
MATCH = replace(EVENING, theirs=(OKAFOR, LINDQVIST), focus=(OKAFOR, LINDQVIST), match_on=True)


def test_no_rally_is_counted_of_what_a_shot_is_like() -> None:
    for line in (
        "okafor's erne is nasty",
        "okafor's put away is lethal",
        "okafor's lob winner is his best shot",
        "lindqvist's erne, watch it",
        "okafor's big erne threat off his left",
        "okafor's nasty erne hurts us",
        "okafor's erne off my line dink is scary good",
        "okafor has a nasty erne",
    ):
        read = understand(line, chat=MATCH)
        notes = [one for one in read if isinstance(one, NoteSaid) and one.claims]
        assert notes, line
        assert not any(isinstance(one, RallySaid) for one in read), line


def test_what_it_did_counts() -> None:
    for line in (
        "okafor's erne",
        "okafor's lob winner",
        "okafor with a nasty erne",
        "okafor's nasty winner",
        "okafor's erne won it",
        "theirs, okafor's erne is nasty",
        "lost it, okafor's erne is nasty",
    ):
        (read,) = understand(line, chat=MATCH)
        assert isinstance(read, RallySaid), line
        assert not read.won_by_us, line
