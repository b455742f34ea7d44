"""A side of the body is no way to run: "hates left shoulder balls" tells of a jam, not of feet."""

from __future__ import annotations

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.words import words_in
from knowledge.regex import regex
from knowledge.vocabulary import Trait, Value

_RUNS = frozenset({Trait.MOVES_LEFT, Trait.MOVES_RIGHT})
_SIDES = frozenset(["left", "right", "lft", "rt"])
_OF_A_SIDE = words_in("hand side handed")
_PARTS = words_in("shoulder shoulders hip hips rib ribs armpit pocket thigh chest waist")
_ON_THE_RUN = regex(r"\b(?:mov\w+|run\w*|ran|step\w*|shuffl\w+|lateral\w*|reach\w*|slide\w*|to)\b")
"""Where somebody has to go there, the feet may be meant after all."""


def is_of_a_body_side(claim: Claim, note: NoteLine) -> bool:
    """Whether a weak way to run was read from the side of a part of the body."""
    if claim.trait not in _RUNS or claim.value is not Value.WEAKNESS or claim.denied:
        return False
    if _ON_THE_RUN.search(" ".join(note.line)):
        return False
    start, stop = claim.span
    sides = [
        at
        for at, word in enumerate(note.said)
        if start <= word.span[0] < stop and word.folded in _SIDES
    ]
    return bool(sides) and all(_is_of_a_part(at, note) for at in sides)


def _is_of_a_part(at: int, note: NoteLine) -> bool:
    behind = [word for word in note.line[at + 1 : at + 3] if word not in _OF_A_SIDE]
    return behind[:1] != [] and behind[0] in _PARTS
