"""Who stands in the middle squeezes it: a place between the two of them, and no weak mid-court.

Only where somebody gets stuck, or on which way there, is the middle the part of court between the
baseline and the kitchen.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from knowledge.regex import regex
from knowledge.vocabulary import Trait, Value

_STANDS = regex(
    r"\b(?:stand|stay|hang|camp|sit|live|play|park|wait|lurk|hover)(?:s|ed|ing)?"
    r"(?: (?:out|around|right|always|mostly|usually|a lot|too|much|over|up|there))*"
    r" (?:in|on|at) (?:the )?(?:dead )?(?:middle|center|centre)\b(?! of\b)"
)
_OTHER_MIDDLE = regex(
    r"\b(?:stuck|caught|dies|transition|midcourt|mid court|way (?:in|up)|coming|comes|after|when"
    r"|drops?|returns?|serves?|drives?|third|lobs?|paddle|racket|back|baseline|kitchen|no mans land"
    r"|half ?way|doesnt|dont|never|not|isnt|wont|rarely|hardly|seldom|no)\b"
)
"""What makes it the middle on the way in, of another thing, or denies it."""

_MISREAD = frozenset({(Trait.TRANSITION, Value.WEAKNESS), (Trait.SQUEEZES_MIDDLE, Value.RARELY)})


def at_the_seam(claims: Iterable[Claim], note: NoteLine) -> tuple[Claim, ...]:
    """The claims, with what was read as a weak mid-court said as what it is."""
    found = tuple(claims)
    line = " ".join(note.line)
    if _STANDS.search(line) is None or _OTHER_MIDDLE.search(line) is not None:
        return found
    return tuple(dict.fromkeys(_seam(one) for one in found))


def _seam(claim: Claim) -> Claim:
    if claim.denied or (claim.trait, claim.value) not in _MISREAD:
        return claim
    return replace(claim, trait=Trait.SQUEEZES_MIDDLE, value=Value.OFTEN)
