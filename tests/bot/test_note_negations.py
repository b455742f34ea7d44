"""What a "no" denies ends where the next thing is told."""

from __future__ import annotations

import pytest
from voices import IN_TALK

from bot.chat.message import read_message, weighed_note


def _claimed(text: str) -> dict[str, str]:
    note = weighed_note(read_message(text, IN_TALK), IN_TALK)
    return {str(one.trait): str(one.value) for one in note.claims if not one.denied}


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("hale no soft game, crashes", {"crash": "often"}),
        ("hale lefty, no soft game, crashes", {"hand": "left", "crash": "often"}),
        ("lindqvist no lob, ernes lots", {"lob": "rarely", "ernie": "often"}),
        ("okafor no lob, poaches", {"lob": "rarely", "poaching": "often"}),
        ("okafor no spin, ernies", {"topspin": "rarely", "ernie": "often"}),
        ("okafor no 3rd, poaches", {"third_shot_drop": "rarely", "poaching": "often"}),
        ("hale never stacks, poaches", {"stacks": "rarely", "poaching": "often"}),
        ("hale no hands, crashes every drive", {"counter": "weakness", "crash": "often"}),
        (
            "hale careful, never speeds up, backhand drop floats high",
            {"speed_up": "weakness", "backhand_dink": "weakness", "third_shot_drop": "weakness"},
        ),
        ("hale maybe lefty?? cant tell yet. ok no hes righty", {"hand": "right"}),
        ("okafor i dont think hes righty", {}),
    ],
)
def test_a_no_ends_at_the_comma_or_before_whoever_is_told_of(
    text: str, claims: dict[str, str]
) -> None:
    assert _claimed(text) == claims


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        (
            "okafor no lobs, ernies or poaches",
            {"lob": "rarely", "ernie": "rarely", "poaching": "rarely"},
        ),
        ("okafor no lobs and ernies", {"lob": "rarely", "ernie": "rarely"}),
        ("okafor no lob, rarely ernies", {"lob": "rarely", "ernie": "rarely"}),
        ("okafor never lobs, never poaches", {"lob": "rarely", "poaching": "rarely"}),
    ],
)
def test_a_list_under_one_no_is_denied_whole(text: str, claims: dict[str, str]) -> None:
    assert _claimed(text) == claims


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("nothing weak about ruiz's hands", set()),
        ("nothing really weak about ruiz's hands", set()),
        ("nothing good about ruiz's serve", {("serve", "weakness")}),
        ("ruiz nothing but weak hands", {("counter", "weakness")}),
        ("ruiz has nothing but a weak serve", {("serve", "weakness")}),
    ],
)
def test_nothing_denies_the_judgement_behind_it(text: str, claims: set[tuple[str, str]]) -> None:
    assert set(_claimed(text).items()) == claims
