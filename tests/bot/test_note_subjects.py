"""Whom the words of a note are about where somebody is only named in passing."""

from __future__ import annotations

import pytest
from voices import IN_TALK, PEOPLE

from bot.chat.message import read_message, weighed_note


def _told(text: str) -> set[tuple[str, str]]:
    note = weighed_note(read_message(text, IN_TALK), IN_TALK)
    return {(PEOPLE[one.player - 1].split()[1], str(one.trait)) for one in note.claims}


@pytest.mark.parametrize(
    ("text", "claim"),
    [
        (
            "lindqvist: poaches xtra, stk w/ okafor on R, drops 3rd every time",
            ("Lindqvist", "third_shot_drop"),
        ),
        ("okafor stacks with lindqvist, lobs a lot", ("Okafor", "lob")),
        ("lindqvist plays with okafor, lobs a lot", ("Lindqvist", "lob")),
        ("hale paired with ruiz on the left, poaches", ("Hale", "poaching")),
    ],
)
def test_behind_the_comma_it_is_told_of_the_first_again(text: str, claim: tuple[str, str]) -> None:
    told = _told(text)
    assert claim in told
    assert {who for who, trait in told if trait == claim[1]} == {claim[0]}


@pytest.mark.parametrize(
    ("text", "claim"),
    [
        ("okafor stacks with lindqvist, who lobs a lot", ("Lindqvist", "lob")),
        ("lindqvist w okafor, okafor lobs a lot", ("Okafor", "lob")),
        ("okafor with lindqvist, both poach", ("Lindqvist", "poaching")),
        ("hale paired with ruiz on the left, poaches", ("Ruiz", "side_played")),
    ],
)
def test_what_goes_on_of_the_second_is_theirs(text: str, claim: tuple[str, str]) -> None:
    assert claim in _told(text)
