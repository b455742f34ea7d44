"""A whole name that dictation broke into everyday words: `ya blond ska` for Jabłońska.

Three words or more of which no part is known are compared by sound alone. Of two words a second
name that is really somebody else's is likelier: there nothing is guessed.
"""

from __future__ import annotations

from collections.abc import Sequence

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from scouting_db.heard import plainly
from scouting_db.name_forms import Strength, is_particles
from scouting_db.name_keys import NameKeys
from scouting_db.sounds import sound

FEWEST_WORDS = 3

_SHORTEST = 6
"""Sounds of what was typed, from which it can be told from any three short words."""

_LIKENESS, _APART = 0.7, 0.15
"""Share of sounds in common, and how much less whoever comes next has. Set on the voices and line
writers that were read: of their strangers in three words or more none came so near."""

_NAMES = (Strength.WHOLE, Strength.SURNAME, Strength.PART)
_COMPARED = 40
"""Sounds looked at from the nearest on: a player has several."""

_SMALL_ROSTER = 2_000


def dictated(keys: NameKeys, words: Sequence[str]) -> int | None:
    """The one player whose name sounds much as these words do, None if nobody or two do."""
    if len(words) < FEWEST_WORDS or is_particles(words[0]) or len(keys.roster) > _SMALL_ROSTER:
        return None
    best: dict[int, float] = {}
    for heard in {sound("".join(words)), sound(plainly(words).replace(" ", ""))}:
        for position, likeness in _likenesses(keys, heard):
            best[position] = max(best.get(position, 0.0), likeness)
    ranked = sorted(best.items(), key=lambda one: -one[1])
    if not ranked or ranked[0][1] < _LIKENESS:
        return None
    if len(ranked) > 1 and ranked[0][1] - ranked[1][1] < _APART:
        return None
    return ranked[0][0]


def _likenesses(keys: NameKeys, heard: str) -> list[tuple[int, float]]:
    if len(heard) < _SHORTEST:
        return []
    scorer = DamerauLevenshtein.normalized_similarity
    near = process.extract(
        heard, list(keys.by_sound), scorer=scorer, limit=_COMPARED, score_cutoff=_LIKENESS - _APART
    )
    return [
        (position, likeness)
        for sounding, likeness, _ in near
        for key in keys.by_sound[sounding]
        for strength, position in keys.held(key)
        if strength in _NAMES
    ]
