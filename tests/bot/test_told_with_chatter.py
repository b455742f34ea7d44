"""Scores, results, rallies and matches with chatter around them; examples of our own, no source."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from voices import EVENING, fields_of

from bot.chat.said import NoteSaid, Question, ResultSaid, ScoreSaid, Unclear
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId

MATCH = replace(EVENING, match_on=True, theirs=(PlayerId(3), PlayerId(4)))


def _told(text: str, *, match_on: bool = True) -> dict[str, Any]:
    told = understand(text, chat=MATCH if match_on else EVENING)[-1]
    return {key: value for key, value in fields_of(told).items() if value not in (None, [])}


@pytest.mark.parametrize(
    ("text", "ours", "theirs", "we_serve"),
    [
        ("16-19 down, they're serving, what a glorious evening for tom to nap", 16, 19, False),
        ("7-9 up serving, lovely", 9, 7, True),
        ("we're at 6, they're at 2, their ball, my lungs at zero", 6, 2, False),
        ("5-3 us and serving, somebody pinch me", 5, 3, True),
        ("8-4 down they serve, thanks wind", 4, 8, False),
        ("6 3 1 we serve, gorgeous evening", 6, 3, True),
        ("tied up again, eight each, mira returns", 8, 8, False),
        ("4-2 us, our serve. lovely stuff", 4, 2, True),
        ("down 3-8, they serve lol kill me now", 3, 8, False),
        ("phew. 9-7 up, we serve", 9, 7, True),
    ],
)
def test_a_score_is_read_before_its_chatter(
    text: str, ours: int, theirs: int, we_serve: bool
) -> None:
    told = _told(text)
    assert (told["kind"], told["ours"], told["theirs"]) == ("score", ours, theirs)
    assert told["we_serve"] is we_serve


@pytest.mark.parametrize(
    ("text", "won"),
    [
        ("we're out. thanks for nothing, wind", False),
        ("good night nurse. we're out", False),
        ("we're through, somebody buy tom a beer", True),
        ("9-11, first game gone, two match points thrown in the bin", False),
        ("done. 11-7, 9-11, 12-10, lovely", True),
    ],
)
def test_a_result_is_read_before_its_chatter(text: str, won: bool) -> None:
    told = _told(text, match_on=False)
    assert (told["kind"], told["won"]) == ("match", won)


@pytest.mark.parametrize(
    ("text", "court"),
    [
        ("they moved us to court 9. again. with the sun in our eyes", "9"),
        ("we moved to court 3 now, glorious slope", "3"),
    ],
)
def test_a_match_is_read_before_its_chatter(text: str, court: str) -> None:
    assert _told(text, match_on=False)["court"] == court


@pytest.mark.parametrize(
    "text",
    [
        *("we're out. what should we have done", "we lost. how do we beat the lob next time"),
        "8-9 down, they serve, should i poach",
        "8-9 down, they serve, drop or drive",
        "8-9 down, we need a plan",
    ],
)
def test_what_asks_after_a_score_is_still_a_question(text: str) -> None:
    assert any(isinstance(one, Question) for one in understand(text, chat=MATCH))


@pytest.mark.parametrize(
    "text", ["if we're out, fine", "when it's 8-8, they lob", "say 9-4 up, ok"]
)
def test_what_is_only_supposed_is_not_told(text: str) -> None:
    assert not isinstance(understand(text, chat=MATCH)[-1], ResultSaid)


def test_a_note_of_an_opponent_after_a_score_stays_a_note() -> None:
    said = understand("at 8-2 ruiz gets lazy, lobs everything short", chat=EVENING)
    assert not isinstance(said[-1], ScoreSaid | Unclear)
    assert any(isinstance(one, NoteSaid) for one in said)
