"""A partner told behind something else, and whose the match is that waits. Our own wordings."""

from __future__ import annotations

import pytest
from talk import Talk

from scouting_db.values import MatchId


@pytest.fixture
def marisol(fresh: Talk) -> Talk:
    fresh.say("im marisol, with benedikt")
    fresh.say("add gretel aas and rune holm")
    fresh.say("we are marisol and anouk")
    return fresh


@pytest.mark.parametrize(
    ("text", "partner", "announced"),
    [
        ("next: gretel and rune 14:15, mixed w benedikt", "Benedikt", True),
        ("next: gretel and rune, im playing mixed with benedikt again", "Benedikt", True),
        ("next: gretel and rune, in mixed with pelle", "Pelle", True),
        ("sorry who's ben, i mean benedikt, back with benedikt", "Benedikt", False),
        ("rune is slow when he is tired, with benedikt", "Anouk", False),
    ],
)
def test_who_plays_with_us_then(marisol: Talk, text: str, partner: str, announced: bool) -> None:
    assert ("Next: Gretel Aas and Rune Holm" in marisol.say(text)) is announced
    assert marisol.say("who are we").startswith(f"You are Marisol and {partner}.")


def test_a_match_that_waits_is_the_pairs_that_was_told_last(marisol: Talk) -> None:
    marisol.say("next: gretel and rune, they serve")
    marisol.say("back with benedikt")
    assert _pair_of_match(marisol) == {"Marisol", "Benedikt"}
    marisol.say("undo")
    assert _pair_of_match(marisol) == {"Marisol", "Anouk"}
    marisol.say("their rally")
    marisol.say("back with benedikt")
    assert _pair_of_match(marisol) == {"Marisol", "Anouk"}


def test_a_match_announced_before_we_are_known_is_ours(fresh: Talk) -> None:
    fresh.say("add gretel aas and rune holm")
    fresh.say("next: gretel and rune")
    assert _pair_of_match(fresh) == set()
    fresh.say("we are marisol and anouk")
    assert _pair_of_match(fresh) == {"Marisol", "Anouk"}


def test_the_match_before_keeps_its_pair_where_the_next_one_names_a_partner(marisol: Talk) -> None:
    marisol.say("next: gretel and rune 14:15")
    first = marisol.context.match
    marisol.say("next: gretel and rune 15:15, mixed with benedikt")
    assert marisol.context.match != first
    assert _pair_of_match(marisol) == {"Marisol", "Benedikt"}
    assert _pair_of_match(marisol, first) == {"Marisol", "Anouk"}


def _pair_of_match(talk: Talk, number: MatchId | None = None) -> set[str]:
    match = number or talk.context.match
    assert match is not None
    with talk.book() as book:
        row = book.match(match)
        names = {one.player: one.name for one in book.players()}
    assert row is not None
    return set() if row.our_pair is None else {names[one] for one in row.our_pair.players}
