"""A lob that is up already is theirs; what we ask about lobs of our own stays ours."""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import match, player

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
