"""A lob that is up already is theirs; what we ask about lobs of our own stays ours."""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import MIRA, TOM, match, player

from knowledge.situation import Asked
from knowledge.tactics.lob_meaning import LobMeaning, asks_of_their_lob, meaning
from knowledge.vocabulary import Side, Topic

PAIR = (player(3, "Okafor", Side.LEFT), player(4, "Lindqvist", Side.RIGHT))


def _meant(words: str) -> LobMeaning:
    return meaning(replace(match(Topic.LOB, *PAIR), asked=Asked(words=words)))


@pytest.mark.parametrize(
    "words",
    [
        "lob what now",
        "lob now what",
        "lob, what do i do",
        "lob what do we do?",
        "lob help",
        "deep lob what now",
        "lob coming!",
        "lob incoming",
        "lob defence",
        "lob defense what do we do",
        "defense against the lob",
        "what do we do about the lob",
        "what about the lob",
    ],
)
def test_a_lob_that_is_up_is_theirs(words: str) -> None:
    assert _meant(words) is LobMeaning.THEIRS
    assert asks_of_their_lob(words)


@pytest.mark.parametrize(
    "words",
    [
        "lob?",
        "lob now?",
        "lob who",
        "when to lob",
        "should i lob deep",
        "i lob what now",
        "we lob, what do we do",
        "my lob what now",
        "lob cross what now",
        "lob him what now",
        "lob or dink what now",
        "what lob with the wind behind us",
    ],
)
def test_a_lob_of_our_own_stays_ours(words: str) -> None:
    assert _meant(words) is LobMeaning.ATTACK
    assert not asks_of_their_lob(words)


def _meant_of_ours(words: str) -> LobMeaning:
    situation = replace(match(Topic.LOB, *PAIR), ours=(MIRA, TOM), asked=Asked(words=words))
    return meaning(situation)


@pytest.mark.parametrize(
    "words",
    [
        "when okafor is lobbing, who takes it, Mira or Tom?",
        "who goes back when lindqvist keeps lobbing it",
        "if they are lobbing, who takes it",
        "Is Mira or Tom better to take the lobs?",
        "should tom or mira run for the lobs",
    ],
)
def test_who_of_us_takes_their_lobs(words: str) -> None:
    assert _meant_of_ours(words) is LobMeaning.WHO_RUNS


@pytest.mark.parametrize(
    "words",
    [
        "shall she lob? okafor stands very near the net",
        "should he lob over okafor",
        "should tom lob, okafor is crowding the net",
        "should tom or mira lob them",
        "is lobbing okafor a good idea",
    ],
)
def test_whether_one_of_us_should_lob_is_ours(words: str) -> None:
    assert _meant_of_ours(words) is LobMeaning.ATTACK


@pytest.mark.parametrize(
    "words",
    [
        "is it worth lobbing okafor",
        "is it worth lobbing her",
        "worth a lob?",
        "what about lobbing him",
        "thoughts on lobbing lindqvist",
        "lobbing her good idea?",
        "should we keep lobbing okafor",
    ],
)
def test_a_lob_that_is_weighed_is_ours(words: str) -> None:
    assert _meant_of_ours(words) is LobMeaning.ATTACK


@pytest.mark.parametrize(
    "words", ["they keep lobbing her", "what about okafor lobbing us", "is it worth chasing lobs"]
)
def test_a_lob_that_they_hit_is_theirs(words: str) -> None:
    assert _meant_of_ours(words) is LobMeaning.THEIRS


@pytest.mark.parametrize("words", ["should she lob back", "what should he do if they lob"])
def test_what_one_of_us_does_off_theirs_is_not(words: str) -> None:
    assert _meant_of_ours(words) is not LobMeaning.ATTACK
