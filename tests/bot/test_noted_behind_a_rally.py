"""What holds of an opponent, told behind a rally or beside a question, is kept as well."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("4-2-1 us")
    return demo


@pytest.mark.parametrize(
    ("said", "score", "noted"),
    [
        ("we lost that one and lindqvist is really fast", "4-2-2.", "Lindqvist: foot speed strong"),
        ("our point and lindqvist poaches a lot", "5-2-1.", "Lindqvist: poaching often"),
        ("lost that one because lindqvist is fast", "4-2-2.", "Lindqvist: foot speed strong"),
        ("their point, lindqvist never lobs", "4-2-2.", "Lindqvist: lob rarely"),
    ],
)
def test_the_rally_counts_and_the_note_is_kept(
    match: Talk, said: str, score: str, noted: str
) -> None:
    before = len(match.notes())
    reply = match.say(said)
    assert reply.startswith(score)
    assert f"Noted. {noted}" in reply
    assert len(match.notes()) == before + 1


@pytest.mark.parametrize(
    "said",
    [
        "our point okafor drove it in the net",
        "lost that one lindqvist was too fast",
        "their point lindqvist poached",
        "our point and tom is really fast",
        "lost that one, mira popped it up",
    ],
)
def test_how_one_rally_went_is_no_note(match: Talk, said: str) -> None:
    before = len(match.notes())
    assert match.say(said)[:2] in ("4-", "5-")
    assert len(match.notes()) == before


@pytest.mark.parametrize(
    ("said", "noted"),
    [
        (
            "lindqvist is slow on his backhand side and where do i serve okafor",
            "Noted. Lindqvist: ",
        ),
        ("lindqvist is slow to his backhand side, where do i serve okafor", "Noted. Lindqvist: "),
    ],
)
def test_a_note_blurred_by_its_question_is_kept(demo: Talk, said: str, noted: str) -> None:
    before = len(demo.notes())
    reply = demo.say(said)
    assert noted in reply
    assert "Serve Okafor" in reply
    assert len(demo.notes()) == before + 1


@pytest.mark.parametrize(
    "said",
    [
        "if lindqvist is slow on his backhand side where do i serve okafor",
        "is lindqvist slow on his backhand side or where do i serve him",
        "lindqvist is serving and where do i stand",
        "tom is slow on his backhand side and where do i serve lindqvist",
    ],
)
def test_what_is_only_supposed_or_asked_is_no_note(demo: Talk, said: str) -> None:
    before = len(demo.notes())
    demo.say(said)
    assert len(demo.notes()) == before
