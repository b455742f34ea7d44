"""What to look at first: nothing is looked for that is noted already."""

from __future__ import annotations

import pytest
from scouted import player

from knowledge.planning.probes import PROBES, probes
from knowledge.situation import OnCourt
from knowledge.vocabulary import Hand, PlayerId


def langford(hand: Hand | None = None) -> OnCourt:
    return player(PlayerId(3), "Langford", hand=hand)


def okoro(hand: Hand | None = None) -> OnCourt:
    return player(PlayerId(4), "Okoro", hand=hand)


def texts(*theirs: OnCourt) -> list[str]:
    return [one.text for one in probes(theirs)]


@pytest.mark.parametrize("theirs", [(), (okoro(),), (langford(), okoro())])
def test_with_no_hand_known_all_three_are_worth_a_look(theirs: tuple[OnCourt, ...]) -> None:
    assert probes(theirs) == PROBES


@pytest.mark.parametrize("hand", [Hand.LEFT, Hand.RIGHT])
def test_a_hand_that_is_known_is_looked_for_no_more(hand: Hand) -> None:
    assert texts(okoro(hand))[0] == "Who hits a two-handed backhand?"
    assert texts(okoro(hand), langford(hand))[0] == "Who hits a two-handed backhand?"


def test_the_one_whose_hand_is_not_known_is_named() -> None:
    assert texts(okoro(Hand.LEFT), langford())[0] == "Is Langford a lefty?"
    assert texts(okoro(), langford(Hand.RIGHT))[0] == "Is Okoro a lefty?"


def test_the_other_probes_stay() -> None:
    assert texts(okoro(Hand.LEFT))[1:] == [one.text for one in PROBES[1:]]
