"""How deep each pair stands: "they're both back", "one up one back", "my partner's back"."""

from __future__ import annotations

import re

from bot.chat.ball_forms import form, names_in
from bot.chat.ball_line import BallLine
from knowledge.ball_facts import Depth
from knowledge.dataclass import dataclass

_OF_ONE = ("the one ", "one ", "the guy ", "the player ")
"""So begins what tells of one of them even as whom to hit: "lob over the one coming in"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundDepths:
    """Each pair's depth, and whether our partner, of us two, is said to be at the line."""

    theirs: Depth | None = None
    ours: Depth | None = None
    partner_up: bool = False


def find_depths(line: BallLine) -> FoundDepths:
    """What the line says of either pair; what it aims at them ("keep them deep") says nothing."""
    if line.take(form("alone", "all_up")):
        return FoundDepths(theirs=Depth.AT_LINE, ours=Depth.AT_LINE)
    ours = _depth(line, "ours")
    theirs = _depth(line, "theirs")
    partner_up = line.take(form("alone", "partner_up")) is not None
    return FoundDepths(theirs=theirs, ours=ours, partner_up=partner_up)


def _depth(line: BallLine, side: str) -> Depth | None:
    """The first of the side's values that is told; of one told twice the later says nothing."""
    told: Depth | None = None
    for name in names_in(side):
        for found in form(side, name).finditer(line.text):
            words = line.before(found).split()
            is_made_so = words and form("veto", "keeps").fullmatch(words[-1])
            if is_made_so and not found[0].startswith(_OF_ONE):
                continue
            spoken = f"{line.before(found)} {found[0]}"
            if side == "ours" and re.search(form("veto", "where_to_be").pattern + "$", spoken):
                continue
            line.cover(found)
            told = told or Depth(name)
    return told
