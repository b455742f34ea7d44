"""A he and a she whom nobody named are the pair across the net, never one of us."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def introduced(fresh: Talk) -> Talk:
    fresh.say("hi im marisol my partner is benedict")
    fresh.say("benedict is lefty")
    return fresh


PAIRS = [
    "he bangs everything from the base line honestly and she just stands there and blocks it back"
    " really soft hands though",
    "she has really soft hands and he never comes in",
    "his backhand is weak and shes slow to her left",
]


@pytest.mark.parametrize("said", PAIRS)
def test_nothing_of_a_pair_is_noted_on_us(introduced: Talk, said: str) -> None:
    before = len(introduced.notes())
    introduced.say(said)
    ours = {introduced.player("Marisol"), introduced.player("Benedict")}
    noted = introduced.notes()[: len(introduced.notes()) - before]
    assert not [one for note in noted for one in note.observations if one.player in ours]


@pytest.mark.parametrize("said", PAIRS)
def test_it_is_of_the_pair_that_we_play(introduced: Talk, said: str) -> None:
    introduced.say("next: philippa langford and desmond okoro")
    introduced.say("yes add both")
    introduced.say("benedict has a good serve")
    introduced.say(said)
    theirs = {introduced.player("Philippa Langford"), introduced.player("Desmond Okoro")}
    seen = introduced.notes()[0].observations
    assert seen
    assert {one.player for one in seen} <= theirs


def test_she_is_never_who_writes(introduced: Talk) -> None:
    introduced.say("she has soft hands")
    marisol = introduced.player("Marisol")
    seen = [one for note in introduced.notes() for one in note.observations]
    assert marisol not in {one.player for one in seen}


def test_one_who_was_just_spoken_of_is_still_meant(introduced: Talk) -> None:
    assert introduced.say("he has soft hands").startswith("Noted. Benedict: reset strong.")


@pytest.mark.parametrize(
    "said", ["he wont poach, told him twice", "he still doesnt poach, i keep telling him to"]
)
def test_who_is_told_what_to_do_is_my_partner(introduced: Talk, said: str) -> None:
    introduced.say("next: philippa langford and desmond okoro")
    introduced.say("yes add both")
    introduced.say("desmond poaches a lot")
    before = introduced.claims("Desmond Okoro")
    assert introduced.say(said).startswith("Noted. Benedict: poaching rarely.")
    assert introduced.claims("Desmond Okoro") == before
