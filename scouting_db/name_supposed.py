"""Whom words may mean that are nobody's name by the rules: supposed, said, and easily put right.

A name that is misspelt beyond what the rules allow is likelier somebody's than a stranger's where
it is much like one name and no name of its own. That is only likely: so whoever goes ahead says
whom they took it for, and what is typed for good (a new player, a pair on court) is still asked.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from scouting_db.name_chances import chances
from scouting_db.name_keys import NameKeys
from scouting_db.name_matches import Nobody
from scouting_db.sounds import sound
from scouting_db.values import PlayerRow

SUPPOSED_FROM = 0.75
"""The chance from which one player is taken for meant. Of the writers left out while training, 117
of the 122 so taken were; from .6 on more are found, and twice as many are wrong."""

ASKED_FROM = 0.5
"""The same where several may be."""

_RIVALS = 0.4
"""The part of the likeliest one's chance from which another's must be asked about too."""

FEW, SMALL_ROSTER = 24, 2_000
"""Names that are all compared, and names from which nobody is supposed: some are always near."""

_AT_MOST = 3
_FEWEST_LETTERS = 3


def supposed(keys: NameKeys, words: Sequence[str], nobody: Nobody) -> Nobody:
    """`nobody`, with whoever is likely meant all the same, first among the nearest."""
    if sum(map(len, words)) < _FEWEST_LETTERS or len(keys.roster) > SMALL_ROSTER:
        return nobody
    near = list(candidates(keys, words, nobody.nearest))
    names = [(keys.roster[each].name, keys.roster[each].aliases) for each in near]
    likely = chances(words, names, of=len(keys.roster))
    ranked = sorted(zip(likely, near, strict=True), key=lambda each: (-each[0], each[1]))
    if not ranked or ranked[0][0] < ASKED_FROM:
        return nobody
    meant = [each for chance, each in ranked if chance >= _RIVALS * ranked[0][0]]
    if len(meant) == 1 and ranked[0][0] < SUPPOSED_FROM:
        return nobody
    rows = tuple(keys.roster[each] for each in meant[:_AT_MOST])
    others = tuple(row for row in nobody.nearest if row not in rows)
    return replace(nobody, nearest=(rows + others)[:_AT_MOST], supposed=rows)


def candidates(
    keys: NameKeys, words: Sequence[str], nearest: Sequence[PlayerRow] = ()
) -> Sequence[int]:
    """Players to compare, by their place: all of a few, else those that sound the nearest."""
    if len(keys.roster) <= FEW:
        return range(len(keys.roster))
    scorer = DamerauLevenshtein.normalized_similarity
    heard = sound("".join(words))
    near = process.extract(heard, list(keys.by_sound), scorer=scorer, limit=FEW)
    found = {each for one, *_ in near for key in keys.by_sound[one] for each in keys.holders(key)}
    offered = {row.player for row in nearest}
    found |= {at for at, row in enumerate(keys.roster) if row.player in offered}
    return sorted(found)
