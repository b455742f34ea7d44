"""Agreed sides and formation reach every page, beneath what is said of the match itself."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

import pytest
from noted_players import MIRA, TOM, match, player

from knowledge.game import GameFormat, Lineup, start
from knowledge.situation import Agreement, Formation, Situation
from knowledge.tactics import advise
from knowledge.tactics.agreed_places import is_as_agreed, with_agreed_places
from knowledge.vocabulary import AgreementKey, PlayerId, Side, Topic

LEFTIES_PARTNER = player(1, "Mira", None), player(2, "Tom", None)
LINEUP = Lineup(
    our_starter=MIRA.player,
    our_partner=TOM.player,
    their_starter=PlayerId(3),
    their_partner=PlayerId(4),
)


def _agreed(sides: str | None = None, stack: str | None = None) -> Situation:
    said = {AgreementKey.SIDES: sides, AgreementKey.STACK: stack}
    agreements = {
        key: Agreement(key=key, value=words, words=words) for key, words in said.items() if words
    }
    asked = match(Topic.WHERE_TO_STAND, ours=LEFTIES_PARTNER)
    return replace(asked, agreements=MappingProxyType(agreements))


@pytest.mark.parametrize(
    ("words", "left"),
    [
        ("mira left, tom right", "Mira"),
        ("tom plays left", "Tom"),
        ("mira on the right", "Tom"),
    ],
)
def test_the_agreed_one_stands_left(words: str, left: str) -> None:
    seated = with_agreed_places(_agreed(sides=words))
    assert {one.name: one.side for one in seated.ours}[left] is Side.LEFT
    assert {one.side for one in seated.ours} == {*Side}


def test_what_is_said_of_this_match_stands() -> None:
    asked = replace(_agreed("mira left, tom right", "stack on serve"), ours=(MIRA, TOM))
    played = with_agreed_places(replace(asked, formation=Formation.STRAIGHT), sides_said=True)
    assert [one.side for one in played.ours] == [Side.RIGHT, Side.LEFT]
    assert played.formation is Formation.STRAIGHT
    assert not is_as_agreed(played)


def test_without_an_agreement_nothing_changes() -> None:
    asked = _agreed()
    assert with_agreed_places(asked) == asked


@pytest.mark.parametrize(
    ("words", "formation"),
    [
        ("stack on serve", Formation.STACK_ON_SERVE),
        ("stack on serve and return", Formation.STACK_ALWAYS),
        ("stack on serve, signal on return", Formation.ON_SIGNAL),
        ("straight, no stack", Formation.STRAIGHT),
    ],
)
def test_the_words_of_the_card_are_the_formation(words: str, formation: Formation) -> None:
    assert with_agreed_places(_agreed(stack=words)).formation is formation


def test_where_to_stand_says_that_it_is_as_agreed() -> None:
    """2025 edition, 4.B: at 0-0-2 the starter serves from the right, wherever they play."""
    asked = with_agreed_places(_agreed("mira left, tom right", "stack on serve"))
    game = start(GameFormat(), we_serve=True, lineup=LINEUP)
    said = advise(replace(asked, game=game)).reasons[-1].text
    assert said == "Stack, as you agreed: Tom waits outside; after the serve Mira goes left"
    receiving = start(GameFormat(), we_serve=False, lineup=LINEUP)
    assert "agreed" not in advise(replace(asked, game=receiving)).reasons[-1].text


def test_where_the_score_settles_nobody_the_agreed_homes_are_told() -> None:
    asked = with_agreed_places(_agreed("mira left, tom right", "stack on serve"))
    game = replace(start(GameFormat(), we_serve=True), ours=3, theirs=2, server=1)
    open_call = replace(game, starter_serves=None)
    first = advise(replace(asked, game=open_call)).reasons[0]
    assert (first.text, str(first.source)) == ("Then Mira left, Tom right", "agreed")
