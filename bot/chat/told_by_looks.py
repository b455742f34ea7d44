"""Somebody told of by looks: "the tall one", "their big lad", "the lady with the visor".

Strangers on a tournament day have no names yet. Whoever is described so is across the net: nobody
says it of the partner beside them, who has a name.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import any_of
from bot.chat.words import Word, folded_line


def points_at_a_stranger(said: Sequence[Word]) -> bool:
    """Whether somebody is described in it by what everybody on court can see."""
    return any_of("told_by_looks").search(folded_line(said)) is not None


def points_across_the_net(said: Sequence[Word]) -> bool:
    """Whether "the lad" or "their quiet one" is in it: whoever was spoken of last, but not one of
    us, of whom nobody speaks so."""
    line = folded_line(said)
    return points_at_a_stranger(said) or any_of("somebody_pointed_at").search(line) is not None


def opens_with_a_stranger(said: Sequence[Word]) -> int:
    """How many words lead up to more told of somebody whom a statement opens with, described; 0
    where it opens otherwise. "The tall one" alone answers a question of ours, and notes nothing."""
    found = any_of("opens_by_looks", first=True).match(folded_line(said))
    places = 0 if found is None else len(found[0].split())
    return places if places < len(said) else 0


def is_one_of_their(said: Sequence[Word], position: int) -> bool:
    """Whether the "their" there owns one person, "their tall one", and so stands for nobody."""
    return any_of("one_of_their", first=True).match(folded_line(said[position:])) is not None
