"""Phrases kept as data: gaps, sets, slips, denials, names."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.chat.common_words import is_common
from knowledge.said_phrases import OURS, Phrases, fold
from knowledge.tactics import probe_data, reset_head, symptoms

LOBS = {"lob": ("{lob}",), "drive": ("{they} ?just drives|rips .. at|past us",), "go": ("pass*",)}
SETS = {"lob": ("lobs", "lobbing", "over my head"), "they": ("they", "he", OURS)}
PHRASES = Phrases(entries=LOBS, sets=SETS, guard=frozenset({"passable"}))


def _found(said: str, **names: list[str]) -> list[str]:
    return [hit.id for hit in PHRASES.find(said, **names)]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("he lobs", ["lob"]),
        ("over the my head", ["lob"]),
        ("they just rips it at us", ["drive"]),
        ("they rips it hard every time at us", []),  # a gap holds three words
        ("they rips. at us", []),  # never past the end of a sentence
        ("passing", ["go"]),
        ("Lobbing! Then they drives past us", ["lob", "drive"]),
    ],
)
def test_phrases_are_found_in_the_order_said(said: str, found: list[str]) -> None:
    assert _found(said) == found


@pytest.mark.parametrize("said", ["lobbign", "lobing", "lobbinng", "lobbijg"])
def test_one_slip_of_the_finger_is_forgiven(said: str) -> None:
    assert _found(f"she keeps {said}") == ["lob"]


def test_two_slips_and_short_words_are_not() -> None:
    assert _found("she keeps lobgnii") == []
    assert _found("the labs") == []


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("they never lobs", False),
        ("he doesn't really lobs much", False),
        ("no lobs", False),
        ("they stopped lobbing", False),
        ("never lobs. lobs though from her", True),
        ("they haven't stopped lobbing", True),
        ("they dont stop lobbing", True),
        ("not only lobs", True),
        ("I can't handle lobs", True),
        ("no idea how to beat lobs", True),
    ],
)
def test_what_is_denied_is_not_told(said: str, told: bool) -> None:
    assert (_found(said) == ["lob"]) is told


def test_our_names_are_read_as_a_role() -> None:
    assert _found("tom drives past us", ours=["Tom"]) == ["drive"]
    assert _found("tom drives past us") == []


@given(st.text(max_size=200))
def test_any_text_is_read(said: str) -> None:
    assert PHRASES.find(said) == PHRASES.find(said)
    assert fold(fold(said)) == fold(said)


COMMON_WORDS = [
    *("change", "shot", "start", "place", "state", "still", "small", "stick", "shape", "leave"),
    *("leaves", "court", "count", "corner", "plans", "follow", "cheap", "slower", "others"),
    *("talking", "missed", "really", "switch", "through", "though", "while", "whose", "black"),
]


@pytest.mark.parametrize("data", [symptoms.phrases(), reset_head.phrases()])
def test_everyday_words_are_no_slips(data: Phrases) -> None:
    assert all(is_common(word) for word in COMMON_WORDS)
    assert [word for word in COMMON_WORDS if data._mended(word) != word] == []


def test_every_phrase_of_the_data_is_a_pattern() -> None:
    for data in (symptoms.phrases(), reset_head.phrases(), probe_data.asked_for()):
        assert len(data._patterns) == len(data.entries)
