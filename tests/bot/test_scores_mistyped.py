"""Scores, rallies, results and announcements mistyped, dictated and told in other words."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from voices import EVENING, count_right, fields_of

from bot.chat.said import RallySaid, ResultSaid, ScoreSaid
from bot.chat.understand import understand
from bot.chat.view import ChatView
from knowledge.vocabulary import PlayerId

LINES = Path(__file__).parent.parent / "train" / "line_writers"
IN_MATCH = replace(EVENING, match_on=True, theirs=(PlayerId(3), PlayerId(6)))
"""With Okafor and Hale across the net."""

READ_RIGHT = {
    "abe": 85, "bea": 82, "coby": 89, "dag": 85, "fitz": 74, "gus": 87, "ike": 84,
    "jude": 87, "lou": 80, "effie": 66, "hana": 69, "kit": 35,
}  # fmt: skip
"""Recorded, of every second of 180 lines; only ever raised. The last three's nobody reads."""


@pytest.mark.parametrize("writer", sorted(READ_RIGHT))
def test_lines_read_right(writer: str) -> None:
    lines = (LINES / f"{writer}.scores.jsonl").read_text(encoding="utf-8").splitlines()
    right = count_right([json.loads(line) for line in lines[::2] if line.strip()])
    assert right >= READ_RIGHT[writer], f"{right} of {len(lines)}"


def settled(text: str, chat: ChatView = IN_MATCH) -> dict[str, Any]:
    return fields_of(understand(text, chat=chat)[-1])


def settles(text: str, right: dict[str, Any], chat: ChatView = IN_MATCH) -> None:
    got = settled(text, chat)
    assert {key: got.get(key) for key in right} == right


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("6-3 theri srve", {"ours": 6, "theirs": 3, "we_serve": False}),
        ("7-2us", {"ours": 7, "theirs": 2}),
        ("5alll", {"ours": 5, "theirs": 5}),
        ("2-8down", {"ours": 2, "theirs": 8}),
        ("1o-4-2", {"call": [10, 4, 2]}),
        ("852", {"call": [8, 5, 2]}),
        ("9.3.1", {"call": [9, 3, 1]}),
    ],
)
def test_mistyped_and_run_together(text: str, right: dict[str, Any]) -> None:
    settles(text, right)


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("too ate two", {"call": [2, 8, 2]}),
        ("ate to six", {"call": [8, 6]}),
        ("for all", {"ours": 4, "theirs": 4}),
        ("side out to zero won", {"call": [2, 0, 1]}),
        ("we got the side out to zero won", {"call": [2, 0, 1], "we_serve": True}),
        ("side out for us", {"side_out": True, "won_by": "us"}),
    ],
)
def test_numbers_as_dictation_hears_them(text: str, right: dict[str, Any]) -> None:
    settles(text, right)


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("8-3-2 and my pair hold the ball", {"ours": 8, "theirs": 3, "we_serve": True}),
        ("6-5 us, other lot serving", {"ours": 6, "theirs": 5, "we_serve": False}),
        ("9-4 for the bad guys", {"ours": 4, "theirs": 9}),
        ("up 8-5 and serving", {"ours": 8, "theirs": 5, "we_serve": True}),
        ("3-7, ours the three", {"ours": 3, "theirs": 7}),
        ("5-3-1 mira", {"ours": 5, "theirs": 3, "we_serve": True}),
        ("2nd server them", {"server": 2, "we_serve": False}),
        ("okafor on second serve", {"server": 2, "we_serve": False}),
    ],
)
def test_whose_score_and_who_serves(text: str, right: dict[str, Any]) -> None:
    settles(text, right)


@pytest.mark.parametrize(
    ("text", "won_by"),
    [
        ("they nicked that", "them"),
        ("okafor whiffed it lol", "us"),
        ("hale into the tape, ours", "us"),
        ("tom put it away", "us"),
        ("double bounce on me", "them"),
        ("another one to the other side", "them"),
        ("unreturned serve by tom", "us"),
        ("side out against us", "them"),
        ("broke their serve", "us"),
        ("sideout, the ball goes to them", "them"),
    ],
)
def test_rallies_in_other_words(text: str, won_by: str) -> None:
    assert (settled(text)["kind"], settled(text)["won_by"]) == ("rally", won_by)


@pytest.mark.parametrize(
    ("text", "won"),
    [
        ("we won", True),
        ("we lost ugh", False),
        ("we're through", True),
        ("g2 them 11-5", False),
        ("L 9-11", False),
        ("second set ours 11-6", True),
        ("15-13 W", True),
    ],
)
def test_results_in_hardly_a_word(text: str, won: bool) -> None:
    said = understand(text, chat=EVENING)[-1]
    assert isinstance(said, ResultSaid)
    assert said.won is won


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("v okafor hale", {"opponents": 2}),
        ("new match against castellano and ruiz", {"opponents": 2}),
        ("moved to court 6", {"court": "6"}),
        ("delayed til 11:40", {"time": "11:40"}),
        ("bo5", {"best_of": 5}),
    ],
)
def test_announcements_by_little(text: str, right: dict[str, Any]) -> None:
    settles(text, right | {"kind": "match"}, EVENING)


@pytest.mark.parametrize(
    "text",
    [
        "next door it's 8-8",
        "at 7-7 okafor went for a lob",
        "hale lost 5-11 to some juniors this morning",
        "the other semi is at 9-6",
        "okafor hits 7/10 cross court",
        "hale is 0 for 5 on lobs",
        "okafor nets his drops when rushed",
        "hale always hits it out under pressure",
        "who took the toss, they did",
    ],
)
@pytest.mark.parametrize("chat", [EVENING, IN_MATCH], ids=["before", "in a match"])
def test_no_score_of_ours(text: str, chat: ChatView) -> None:
    said = understand(text, chat=chat)
    assert not any(isinstance(one, ScoreSaid | RallySaid | ResultSaid) for one in said)
