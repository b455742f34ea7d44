"""Whoever introduces themselves before we know anybody is asked who plays, and added to no side."""

from __future__ import annotations

import pytest
from voices import EVENING

from bot.chat.said import BookSaid, CoachSaid
from bot.chat.understand import understand
from bot.chat.view import ChatView

NOBODY_YET = ChatView(book=1, version=1, roster=())


@pytest.mark.parametrize(
    "text",
    [
        "hello, i am Ingrid, i coach Halvorsen and Brandt today",
        "Hei! I'm Ingrid Solberg. I'm the coach of Halvorsen and Brandt.",
        "hi, this is Ingrid, coach of Halvorsen and Brandt",
        "I am Ingrid and I coach Halvorsen and Brandt",
    ],
)
def test_a_coach_by_name_speaks_for_the_pair(text: str) -> None:
    (said,) = understand(text, chat=NOBODY_YET)
    assert isinstance(said, CoachSaid)
    assert [one.typed for one in said.ours] == ["Halvorsen", "Brandt"]


@pytest.mark.parametrize(
    "text", ["good morning. I am Ingrid", "im Ingrid", "my name is ingrid", "hi, im the coach"]
)
def test_a_name_alone_asks_who_plays(text: str) -> None:
    (said,) = understand(text, chat=NOBODY_YET)
    assert isinstance(said, BookSaid)
    assert (said.verb.value, said.words) == ("our_pair", "")


@pytest.mark.parametrize(
    "text", ["I am Tired", "I am ready", "I am Ingrid, Castellan is lefty", "I am Ingrid?"]
)
def test_what_is_no_introduction_stays_as_it_was(text: str) -> None:
    said = understand(text, chat=NOBODY_YET)
    assert not any(isinstance(one, BookSaid | CoachSaid) for one in said)


@pytest.mark.parametrize("text", ["I am Ingrid", "im Mira"])
def test_where_we_know_who_plays_nothing_changes(text: str) -> None:
    said = understand(text, chat=EVENING)
    assert not any(isinstance(one, BookSaid) and not one.words for one in said)
