"""High balls that somebody attacks: "attacks everything over the net" is no weak speed-up.

Attacking what is low, or anything at all, may be one; what stands above the net is there to be
attacked. How well is another matter: the skill may be offered, and is not claimed.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from bot.chat.half_understood import Doubted
from bot.chat.note_line import NoteLine
from bot.chat.note_opinions import found_in
from bot.chat.note_weighing import Weighed
from bot.chat.said import Claim
from bot.chat.trait_lexicon import Role
from knowledge.regex import regex
from knowledge.vocabulary import Trait, Value

_HIGH = (
    r"(?:(?:over|above) (?:the )?net(?: height| level)?|(?:too |up |so |very )?high(?:er)?"
    r"(?: than the net)?|(?:sits|pops|floats|comes|bounces|stands|is) up(?: high)?|floats)"
)
_ATTACKED: Final = regex(
    r"\b(?:attack(?:s|ed|ing)?|punish(?:es|ed|ing)?|pounc(?:es|ed|ing) on|pounce on"
    r"|(?:jumps?|jumped|jumping) on|(?:goes|go|went|going) after|(?:speeds|speed|sped|speeding) up"
    r"|(?:swings|swing|fires|fire) at|flicks?)"
    r" (?:everything|anything|whatever|every|all|each|any)(?: of)?"
    r"(?: (?!low\b|below\b|under\b)[^ ]+){0,4}?"
    rf" {_HIGH}(?![^ ])"
)
_WEAK: Final = frozenset({Trait.SPEED_UP, Trait.PATIENCE})


def of_high_balls(note: NoteLine, read: Weighed) -> Weighed:
    """The reading without the weakness that is none, where nothing bad is said beside it."""
    stretches = [*_attacks(note)]
    if not stretches:
        return read
    gone = [one for one in read.claims if _is_weak(one)]
    doubted = [one for one in read.doubted if not _is_weak(one.claim)]
    instead = [*gone, *(one.claim for one in read.doubted if _is_weak(one.claim))]
    return replace(
        read,
        claims=tuple(one for one in read.claims if one not in gone),
        doubted=(*doubted, *(_as_strength(one) for one in instead if one.trait is Trait.SPEED_UP)),
    )


def _attacks(note: NoteLine) -> Iterator[tuple[int, int]]:
    """Where high balls are attacked, in a note that tells of nothing bad outside those words."""
    for start, stop in found_in(note.line, _ATTACKED):
        bad = (hit for hit in note.hits.having(Role.BAD) if hit.start >= stop or hit.stop <= start)
        if next(bad, None) is None:
            yield start, stop


def _is_weak(claim: Claim) -> bool:
    return claim.trait in _WEAK and claim.value is Value.WEAKNESS and not claim.denied


def _as_strength(claim: Claim) -> Doubted:
    return Doubted(claim=replace(claim, value=Value.STRENGTH), chance=1.0)
