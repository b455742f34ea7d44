"""What is done to us, is ours to hit or only a place taken is no weakness or habit of theirs."""

from __future__ import annotations

import pytest
from voices import EVENING

from bot.chat.understand import understand_note

Told = set[tuple[str, str]]


def told(text: str) -> Told:
    claims = understand_note(text, chat=EVENING).claims
    return {(one.trait.value, one.value.value) for one in claims}


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("okafor jams me at my right hip every time", set()),
        ("okafor is jamming us all day", set()),
        ("okafor hits everything at me", set()),
        ("hale leaves the line wide open, atp is there", set()),
        ("okafor gets jammed at his right hip", {("body_jam", "weakness")}),
        ("okafor hits everything even out balls", {("leaves_out_balls", "rarely")}),
        ("okafor goes for the atp a lot", {("around_post", "often")}),
        ("tom covers middle with his forehand when hes left", set()),
        ("tom covers more when hes on the right", set()),
        ("okafor squeezes the middle", {("squeezes_middle", "often")}),
        ("okafor is slow to his right when hes on the left", {("moves_right", "weakness")}),
    ],
)
def test_only_what_they_do_or_suffer_is_theirs(text: str, claims: Told) -> None:
    assert told(text) == claims


def test_whom_they_jam_is_who_is_jammed() -> None:
    claims = understand_note("okafor jams hale at the hip", chat=EVENING).claims
    assert {one.player for one in claims} <= {
        player for one in understand_note("hale", chat=EVENING).mentions for player in one.players
    }


@pytest.mark.parametrize(
    "text",
    [
        "okafor has no backhand runs round it every time",
        "okafors got no backhand so he runs round it",
        "okafor has no bh, runs around it",
    ],
)
def test_running_round_it_is_why_there_is_no_backhand(text: str) -> None:
    assert told(text) == {("backhand_dink", "weakness")}
