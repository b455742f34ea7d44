"""Any taps and score words in any order: never an error, never a match that cannot be."""

from __future__ import annotations

from random import Random

import pytest
from talk import Talk

from bot.chat.match_log import format_from_json, read_log
from bot.chat.payload import Tap, Verb
from knowledge.game import faults

TAPS_OF_A_MATCH = frozenset(
    {
        Verb.RALLY,
        Verb.SERVE,
        Verb.SIDES,
        Verb.SERVER,
        Verb.TIMEOUT,
        Verb.UNDO,
        Verb.REDO,
        Verb.SCORE,
        Verb.ENDED,
        Verb.ENDED_BY,
        Verb.MEANT,
        Verb.OVER,
        Verb.TAG,
    }
)
WORDS = (
    "our point",
    "their point",
    "side out",
    "undo",
    "redo",
    "they serve",
    "5 all",
    "we're up 8-3",
    "hale started right",
    "what's the score",
    "won 11-8",
    "won 11-8, lost 9-11",
    "no, their rally",
    "other way round",
    "they scored",
    "hale is serving",
    "we have 5",
    "oops",
    "it was my dink",
    "ours, hale netted a dink",
    "theirs, brandt hit it out",
    "tag rallies",
)
TURNS = 60
OF_THE_LAST_REPLY, OF_AN_OLDER_ONE = 0.7, 0.85
"""Shares of taps under the newest message and under older ones; the rest are words."""


@pytest.mark.parametrize(
    ("seed", "format"),
    [
        (1, "one game to 11"),
        (2, "best of 3 to 11"),
        (3, "rally scoring to 21"),
        (4, "to 15 cap 17"),
        (5, "best of 5 to 11"),
    ],
)
def test_any_taps_in_any_order(demo: Talk, seed: int, format: str) -> None:
    chance = Random(seed)
    demo.say(f"next: ruiz and hale, {format}")
    older: list[str] = []
    calls = set()
    for _ in range(TURNS):
        now = [
            one.payload for one in demo.buttons if Tap.parse(one.payload).verb in TAPS_OF_A_MATCH
        ]
        older += now
        kind = chance.random()
        if now and kind < OF_THE_LAST_REPLY:
            demo.press(chance.choice(now))
        elif older and kind < OF_AN_OLDER_ONE:
            demo.press(chance.choice(older))
        else:
            demo.say(chance.choice(WORDS))
        calls.add(_checked(demo))
    assert len(calls) > TURNS // 6, "the score moved"


def _checked(talk: Talk) -> str:
    """The call of the running match, which is one that can be."""
    match = talk.context.match
    if match is None:
        return "none"
    with talk.book() as book:
        row, entries = book.match(match), book.entries(match)
    assert row is not None
    log = read_log(entries, format_from_json(row.format))
    assert faults(log.match.game) == ()
    assert log.match.we_won is None, "a match that is won is no longer the current one"
    assert len(log.finished) == log.match.games_ours + log.match.games_theirs
    return str(log.match.game.call)
