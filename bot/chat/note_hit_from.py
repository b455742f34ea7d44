"""Where somebody hits from: who "bangs from the transition zone" is not weak in it."""

from __future__ import annotations

from bot.chat.note_line import NoteLine
from bot.chat.note_plain import between_commas
from bot.chat.said import Claim
from bot.chat.trait_lexicon import Role
from knowledge.vocabulary import Trait, Value

_THE = frozenset(["the", "his", "her", "their"])


def is_hit_from(claim: Claim, note: NoteLine) -> bool:
    """Whether mid-court is only where something is done, with nothing bad between its commas."""
    if claim.trait is not Trait.TRANSITION or claim.value is not Value.WEAKNESS or claim.denied:
        return False
    places = [hit for hit in note.hits.having(Role.NOUN) if hit.meaning.trait is Trait.TRANSITION]
    if len(places) != 1:
        return False
    at = places[0].start - 1
    while at >= 0 and note.line[at] in _THE:
        at -= 1
    part = note.hits.inside(between_commas(note, places[0].start, places[0].stop))
    return at >= 0 and note.line[at] == "from" and not part.having(Role.BAD)
