"""Fast said of the shot before it: of "flicks from below, very fast" nobody's feet are quick."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.note_hits import Hit
from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.trait_lexicon import NAME, Family, Role
from bot.chat.words import words_in
from knowledge.vocabulary import Trait, Value

_MARKS = frozenset(",;:!?()\n—–|")
_FAST = words_in("fast quick quickly rapid")
_BESIDE_FAST = words_in("very really so super too pretty and real damn insanely crazy it is its")
_WHO = words_in("he she they hes shes theyre his her their feet") | {NAME}
_HIT = words_in("hits hit hitting bangs bang banging serves smashes slaps rolls swings")
_FAR = 5
"""Words between a shot and the mark before "very fast". Common practice, no source."""


def speed_of_a_stroke(claim: Claim, note: NoteLine) -> Claim | None:
    """The shot is fast, which of a speed-up is praise; of others no trait says it."""
    if claim.trait is not Trait.FOOT_SPEED or claim.value is not Value.STRENGTH or claim.denied:
        return claim
    start, stop = claim.span
    own = [at for at, word in enumerate(note.said) if start <= word.span[0] < stop]
    mark = next((at for at in range(own[0], 0, -1) if set(note.said[at].gap) & _MARKS), 0)
    said = set(note.line[mark : own[-1] + 1])
    if not mark or not said & _FAST or not said <= _FAST | _BESIDE_FAST:
        return claim
    before = range(max(0, mark - _FAR), mark)
    shots = [hit for hit in note.hits.traits if hit.start in before and _attacks(hit)]
    if any(hit.meaning.trait is Trait.SPEED_UP for hit in shots):
        return replace(claim, trait=Trait.SPEED_UP, span=(note.said[mark].span[0], stop))
    is_hit = bool(shots) or any(note.line[at] in _HIT for at in before)
    return None if is_hit else claim


def _attacks(hit: Hit) -> bool:
    """ "Lobs a lot, very fast" tells of feet: a lob is not hit fast, nor a dink."""
    return hit.meaning.trait is Trait.SPEED_UP or (
        hit.meaning.family is Family.DRIVE and hit.meaning.role is Role.STROKE
    )
