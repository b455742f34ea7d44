"""What our reader makes of the demo's notes, kept as data: read at every start they took a second.

`python tests/support/demo_notes.py` writes the file anew; a test refuses one that differs from
what the reader says today.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from functools import cache
from importlib.resources import files
from typing import Any

from bot.chat.answers.notes import observation_of, observations
from bot.chat.understand import understand_note
from bot.chat.view import ChatView
from scouting_db.values import NewObservation, PlayerRow

FILE = "note_readings.json"

NoteReader = Callable[[str, Sequence[PlayerRow]], tuple[NewObservation, ...]]
"""From a note's words and the roster to what it says of whom."""


def read_now(text: str, roster: Sequence[PlayerRow]) -> tuple[NewObservation, ...]:
    """What the reader makes of the words."""
    view = ChatView(book=1, version=-1, roster=tuple(roster))
    return observations(understand_note(text, chat=view))


def as_kept(text: str, roster: Sequence[PlayerRow]) -> tuple[NewObservation, ...]:
    """What it made of them when the file was written; KeyError for words it never saw."""
    players = {row.name: row.player for row in roster}
    kept = _kept()[text]
    return tuple(observation_of(one | {"player": players[one["player"]]}) for one in kept)


@cache
def _kept() -> dict[str, list[dict[str, Any]]]:
    data: dict[str, list[dict[str, Any]]] = json.loads(
        files("bot.demo_book").joinpath(FILE).read_text(encoding="utf-8")
    )
    return data
