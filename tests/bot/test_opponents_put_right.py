"""Other opponents told right after a match was named or booked change that, and no notes."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def pool(fresh: Talk) -> Talk:
    fresh.say("we are petronella and bronagh")
    fresh.say("pool: oduya/halvorsen, tamsin/yuki, dov/marisela")
    return fresh


@pytest.fixture
def named(fresh: Talk) -> Talk:
    """Scouting on Dov, whom we played before, and Tamsin's pair just named as next."""
    fresh.say("we are petronella and bronagh")
    fresh.say("next: dov and marisela")
    fresh.say("yes")
    fresh.say("dov bangs everything, slow feet")
    fresh.say("next is tamsin and yuki")
    fresh.say("yes")
    return fresh


RIGHT = [
    "scratch that it IS dov",
    "scratch that, its dov and marisela",
    "no wait it's dov",
    "no, dov",
    "not tamsin, dov",
    "sorry i mean dov and marisela",
    "actually it was dov",
    "its dov",
]


@pytest.mark.parametrize("said", RIGHT)
def test_the_next_match_changes_and_the_scouting_stays(named: Talk, said: str) -> None:
    assert named.say(said).startswith("Next: Dov and Marisela, best of 3 to 11.")
    assert ("foot_speed", "weakness", False) in named.claims("Dov")


def test_it_changes_too_once_it_is_said_who_serves(named: Talk) -> None:
    named.say("we serve")
    assert named.say("no wait it's dov").startswith("Next: Dov and Marisela")


def test_once_played_they_are_who_they_are(named: Talk) -> None:
    named.say("we serve")
    named.say("our point")
    assert "Next: " not in named.say("no, dov")


def test_a_note_told_since_is_what_is_put_right(named: Talk) -> None:
    named.say("tamsin pops up backhands")
    assert named.say("no, yuki").startswith("Changed. Yuki")


@pytest.mark.parametrize(
    "said", ["no that was dov", "that was against dov and marisela", "sorry, not oduya, dov"]
)
def test_a_result_moves_to_the_pair_it_was_of(pool: Talk, said: str) -> None:
    pool.say("won 11-9")
    assert pool.say(said).startswith("Booked on Dov/Marisela instead.\nWon 11-9.")
    table = pool.say("pool").splitlines()
    assert table[0] == "Pool: 1 won, 0 lost, 2 to play."
    assert table[1:4] == ["1 Oduya/Halvorsen", "2 Tamsin/Yuki", "3 Dov/Marisela: won 11-9"]


def test_a_match_played_rally_by_rally_stays_theirs(pool: Talk) -> None:
    pool.say("we serve")
    for _ in range(11):
        pool.say("our point")
    assert "Booked on" not in pool.say("no that was dov")
    assert "Oduya/Halvorsen: won 11-0" in pool.say("pool")


def test_what_a_note_said_still_goes_by_name(named: Talk) -> None:
    assert named.say("scratch that dov bangs").startswith("Taken back")
