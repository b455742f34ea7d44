"""Formats as said, over the one that stands; what cannot be played says why."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.chat.format_said import LARGEST_TARGET, SaidFormat, format_parts
from bot.chat.words import words
from knowledge.game import Discipline, GameFormat, Scoring

RALLY, SINGLES = Scoring.RALLY, Discipline.SINGLES


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("one game to 15", SaidFormat(target=15, best_of=1)),
        ("best of 5", SaidFormat(best_of=5)),
        ("bo3 to 15", SaidFormat(target=15, best_of=3)),
        ("singles to 11", SaidFormat(target=11, discipline=SINGLES)),
        ("rally scoring to 21, cap 25", SaidFormat(target=21, scoring=RALLY, cap=25)),
        ("to 15 cap 17 win by 1", SaidFormat(target=15, cap=17, win_by=1)),
        ("the red cap, 9:20, court 3, to 11", SaidFormat(target=11)),
        ("the one with the cap 9:20 to 15", SaidFormat(target=15)),
        ("to 15, capped at 17, 9:20", SaidFormat(target=15, cap=17)),
        ("game to 13", SaidFormat(target=13)),
        ("to 21 with freeze", SaidFormat(target=21, freeze_on_serve=True)),
        ("freeze scoring to 15", SaidFormat(target=15, scoring=RALLY, freeze_on_serve=True)),
        ("rally to 21, no freeze", SaidFormat(target=21, scoring=RALLY, freeze_on_serve=False)),
        ("the score freezes at 20", SaidFormat(freeze_on_serve=True)),
        ("i freeze at 9-9", None),
        ("they go with freezing me out", None),
        ("first to 30", SaidFormat(target=30)),
        ("game to twenty one", SaidFormat(target=21)),
        ("chances at 12-3-1 to 11", SaidFormat(target=11)),
        ("nine eight two to eleven", SaidFormat(target=11)),
        ("17-19 of 21", SaidFormat(target=21)),
        ("court 7 to 11", SaidFormat(target=11)),
        ("up 9 to 7", None),
        ("came back from 1-7 to 7-7", None),
        ("or wait in case it gets to nine", None),
        ("we won 11 to 9", None),
        ("one game all", None),
        ("up one game to love", None),
        ("two games to one", None),
        ("up one game and 5-3", None),
    ],
)
def test_parts(text: str, said: SaidFormat | None) -> None:
    assert format_parts(words(text)) == said


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("game to 0", "a game is played to at least 1, not 0"),
        ("game to -5", "a game is played to at least 1, not -5"),
        ("to 15 cap 11", "a cap of 11 lies below the target 15"),
        ("to 11 win by 3", "a game is won by 1 or 2, not 3"),
        (f"game to {LARGEST_TARGET + 1}", "I count games up to 50, not to 51"),
        ("to 11", None),
    ],
)
def test_faults(text: str, fault: str | None) -> None:
    said = format_parts(words(text))
    assert said is not None
    assert said.fault == fault
    assert said.playable.target in (11, 15)


def test_what_is_not_said_stands() -> None:
    standing = GameFormat(target=15, best_of=1, scoring=RALLY, cap=17, freeze_on_serve=True)
    assert SaidFormat(best_of=3).over(standing).cap == 17
    longer = SaidFormat(target=21).over(standing)
    assert (longer.target, longer.best_of, longer.scoring, longer.cap) == (21, 1, RALLY, None)
    assert SaidFormat(scoring=Scoring.SIDE_OUT).over(standing).freeze_on_serve is False


MAYBE = st.none()


@given(
    st.builds(
        SaidFormat,
        target=MAYBE | st.integers(-3, 40),
        win_by=MAYBE | st.integers(0, 3),
        cap=MAYBE | st.integers(0, 40),
        scoring=MAYBE | st.sampled_from(Scoring),
        discipline=MAYBE | st.sampled_from(Discipline),
        best_of=MAYBE | st.sampled_from([1, 3, 5]),
        freeze_on_serve=MAYBE | st.booleans(),
    )
)
def test_storage_round_trip_and_always_something_playable(said: SaidFormat) -> None:
    assert SaidFormat.from_json(said.to_json()) == said
    assert isinstance(said.playable, GameFormat)
    if said.fault is None:
        assert said.playable == said.over(GameFormat())


@pytest.mark.parametrize(
    ("code", "said"),
    [
        ("15", SaidFormat(target=15)),
        ("s11", SaidFormat(target=11, discipline=SINGLES)),
        ("r21", SaidFormat(target=21, scoring=RALLY)),
        ("sr21", SaidFormat(target=21, scoring=RALLY, discipline=SINGLES)),
    ],
)
def test_codes(code: str, said: SaidFormat) -> None:
    assert SaidFormat.from_code(code) == said


@pytest.mark.parametrize("code", ["", "0", "011", "x11", "11s", "100", "-5", "٣"])
def test_other_codes_are_refused(code: str) -> None:
    with pytest.raises(ValueError, match="no format"):
        SaidFormat.from_code(code)
