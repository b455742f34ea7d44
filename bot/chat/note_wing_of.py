"""A skill without wings that is good off the one and bad off the other: a drop, a return, a serve.

Of "third drop good from fh, bad from bh" neither half is the whole: the skill is not strong, and no
backhand dink is weak.
"""

from __future__ import annotations

from bot.chat.note_hits import JUDGEMENTS, Hit
from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.trait_lexicon import TRAIT_OF_STROKE, Role
from knowledge.vocabulary import Trait, Value

_WINGLESS = frozenset(
    {Trait.THIRD_SHOT_DROP, Trait.RETURN, Trait.RETURN_DEPTH, Trait.SERVE, Trait.RESET, Trait.LOB}
)
_WITH_WINGS = frozenset(TRAIT_OF_STROKE.values())
_SKILL = frozenset({Value.STRENGTH, Value.WEAKNESS})
_FROM = frozenset(["from", "off", "on", "with"])
_THE = frozenset(["the", "his", "her", "their", "of"])
_MARKS = frozenset(".;!?\n")


def is_wing_of_another(claim: Claim, note: NoteLine) -> bool:
    """Whether both wings of a wingless skill are judged, and not alike."""
    if claim.value not in _SKILL or not (claim.trait in _WINGLESS or claim.trait in _WITH_WINGS):
        return False
    named = [hit for hit in note.hits.having(Role.NOUN) if hit.meaning.trait in _WINGLESS]
    if len(named) != 1 or note.hits.having(Role.STROKE):
        return False
    if claim.trait in _WINGLESS and claim.trait is not named[0].meaning.trait:
        return False
    told = [_judgement(wing, note) for wing in note.hits.having(Role.WING) if _is_led(wing, note)]
    roles = {one.meaning.role for one in told if one is not None}
    return len(told) == 2 and roles == JUDGEMENTS


def _is_led(wing: Hit, note: NoteLine) -> bool:
    """ "From the fh", "off his backhand"."""
    at = wing.start - 1
    while at >= 0 and note.line[at] in _THE:
        at -= 1
    return at >= 0 and note.line[at] in _FROM


def _judgement(wing: Hit, note: NoteLine) -> Hit | None:
    """The judgement before that wing, in its sentence."""
    before = [hit for hit in note.hits.having(*JUDGEMENTS) if hit.start < wing.start]
    last = before[-1] if before else None
    if last is None or any(
        set(note.said[at].gap) & _MARKS for at in range(last.start + 1, wing.start + 1)
    ):
        return None
    return last
