"""Who is meant by a typed name: never silently somebody else."""

from __future__ import annotations

import json
import random
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from voices import (
    FRESH_NAME_VOICES,
    LATER_SLOT_VOICES,
    OPEN_VOICES,
    SLOT_VOICES,
    judge_name,
    score_names,
)

from knowledge.vocabulary import PlayerId
from scouting_db import names
from scouting_db.names import Alike, Found, NameIndex, Nobody, fold, lookup
from scouting_db.values import PlayerRow

CASES = [
    json.loads(line)
    for line in (Path(__file__).parent.parent / "cases" / "names.jsonl")
    .read_text(encoding="utf-8")
    .splitlines()
]

VOICES_RIGHT_FLOOR = 0.98
FRESH_RIGHT_FLOOR = 0.97
"""Recorded: 265 of 270 on the six open voices, 79 of 80 on the two written for slots, 89 of 90 on
the two written later (74 before they were read, 5 of them silently wrong). Design section 7 asks
for 97%."""


def roster(*names: str, aliases: Sequence[str] = ()) -> list[PlayerRow]:
    return [
        PlayerRow(player=PlayerId(number), name=name, ours=False, aliases=tuple(aliases))
        for number, name in enumerate(names, start=1)
    ]


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case['typed']}-{len(case['roster'])}")
def test_case(case: dict[str, Any]) -> None:
    is_right, _ = judge_name(case["typed"], case["roster"], case["right"], supposing=False)
    assert is_right, lookup(case["typed"], roster(*case["roster"]))


def test_open_voices_are_told_right_and_never_silently_wrong() -> None:
    voices = (*OPEN_VOICES, *SLOT_VOICES, *LATER_SLOT_VOICES)
    scores = [score_names(voice) for voice in voices]
    assert [wrong for score in scores for wrong in score.silently_wrong] == []
    right, typed = sum(score.right for score in scores), sum(score.typed for score in scores)
    assert right / typed >= VOICES_RIGHT_FLOOR


def test_fresh_voices_are_told_right_and_never_silently_wrong() -> None:
    """Read while the look-up was mended, so the figure flatters: a floor, no measure."""
    scores = [score_names(voice) for voice in FRESH_NAME_VOICES]
    assert [wrong for score in scores for wrong in score.silently_wrong] == []
    right, typed = sum(score.right for score in scores), sum(score.typed for score in scores)
    assert right / typed >= FRESH_RIGHT_FLOOR


@pytest.mark.parametrize(
    ("typed", "folded"),
    [
        ("O'Dell", "odell"),
        ("O’DELL", "odell"),
        ("Ruiz-Peña", "ruiz pena"),
        ("  Zoë  Lefèvre ", "zoe lefevre"),
        ("Søren Łuk", "soren luk"),
        ("Ｈａｌｅ", "hale"),
        ("🙂", ""),
    ],
)
def test_fold(typed: str, folded: str) -> None:
    assert fold(typed) == folded


@given(st.text(max_size=40))
def test_folding_twice_changes_nothing(text: str) -> None:
    assert fold(fold(text)) == fold(text)


@given(st.text(max_size=60))
def test_any_text_is_answered(text: str) -> None:
    match = lookup(text, roster("Ana Ruiz", "Anna Ruis", "Ben Hale", "Joost van der Meer"))
    assert isinstance(match, Found | Alike | Nobody)


def test_aliases_are_names_and_two_players_may_share_one() -> None:
    both = roster("Ana Ruiz", "Ben Hale", aliases=["the wall"])
    match = lookup("The Wall", both)
    assert isinstance(match, Alike)
    assert [row.name for row in match.players] == ["Ana Ruiz", "Ben Hale"]


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("cast", "Gia Castellano"),
        ("ng-b", "Kim Nguyen-Brandt"),
        ("hale ben", "Ben Hale"),
        ("carl", "Carla Meyer"),
        ("meyer", "Carla Meyer"),
    ],
)
def test_a_name_cut_short_or_turned_round_is_found(typed: str, meant: str) -> None:
    known = roster("Gia Castellano", "Kim Nguyen-Brandt", "Ben Hale", "Carla Meyer")
    match = lookup(typed, known)
    assert isinstance(match, Found)
    assert match.player.name == meant


@pytest.mark.parametrize(
    ("typed", "known"),
    [("carla", "Karl Brandt"), ("paula", "Paul Winter"), ("szymanski", "Viktor Szymanek")],
)
def test_another_ending_is_another_person(typed: str, known: str) -> None:
    assert isinstance(lookup(typed, roster(known)), Nobody)


def test_a_misspelt_name_that_two_nearly_bear_is_asked_about() -> None:
    match = lookup("castelano", roster("Gia Castellano", "Gino Castellanos"))
    assert isinstance(match, Alike)
    assert len(match.players) == 2


def test_a_plain_surname_is_likelier_than_the_end_of_a_double_one() -> None:
    match = lookup("Brandt", roster("Lotte Brandt", "Kim Nguyen-Brandt"))
    assert isinstance(match, Alike)
    assert match.likeliest is not None
    assert match.likeliest.name == "Lotte Brandt"


def test_two_plain_surnames_have_no_likeliest() -> None:
    match = lookup("Brandt", roster("Lotte Brandt", "Otto Brandt", "Kim Nguyen-Brandt"))
    assert isinstance(match, Alike)
    assert match.likeliest is None


def test_nobody_offers_the_nearest() -> None:
    match = lookup("Lindgren", roster("Ben Hale", "Sven Lindqvist"))
    assert isinstance(match, Nobody)
    assert [row.name for row in match.nearest][:1] == ["Sven Lindqvist"]


def test_an_empty_roster_knows_nobody() -> None:
    assert lookup("Hale", []) == Nobody()


def invented_names(count: int) -> list[PlayerRow]:
    chance = random.Random(5)
    sounds = [
        "ba",
        "ki",
        "lo",
        "men",
        "rud",
        "sta",
        "vor",
        "zel",
        "nis",
        "tham",
        "pe",
        "gor",
        "dun",
    ]

    def word() -> str:
        return "".join(chance.choice(sounds) for _ in range(chance.choice((2, 3, 4)))).capitalize()

    first = [word() for _ in range(300)]
    return roster(*(f"{chance.choice(first)} {word()}" for _ in range(count)))


def seconds_for(look_up: Callable[[str], object], typed: Sequence[str]) -> float:
    """The quickest of three rounds, so that a busy machine does not decide."""
    rounds = []
    for _ in range(3):
        start = time.process_time()
        for name in typed:
            look_up(name)
        rounds.append(time.process_time() - start)
    return min(rounds)


def test_a_look_up_hardly_grows_with_the_roster() -> None:
    """Design section 7 allows ten times the cost for a hundred times the names; here twenty."""
    small, large = NameIndex(invented_names(500)), NameIndex(invented_names(10_000))
    typed = [row.name.split()[1] for row in small.roster[:40]]
    typed += [name[:2] + name[3:] for name in typed] + [f"xq{name[::-1]}" for name in typed]
    assert seconds_for(large.lookup, typed) <= 10 * seconds_for(small.lookup, typed)


def test_answers_are_kept_and_bounded(monkeypatch: pytest.MonkeyPatch) -> None:
    """Asked again, and after so many others that it was dropped, a name is the same one's."""
    monkeypatch.setattr(names, "KEPT_LOOKUPS", 3)
    roster = [PlayerRow(player=PlayerId(1), name="Ana Ruiz", ours=False)]
    index, fresh = NameIndex(roster), NameIndex(roster)
    for typed in ("ruiz", "riuz", "hale", "brandt", "ruiz", "ana", "riuz"):
        assert index.lookup(typed) == index.lookup(typed) == NameIndex(roster).lookup(typed)
        assert len(index._answers) <= 3
    assert fresh.lookup("ruiz") == index.lookup("ruiz")
