"""Where somebody stands and what is theirs to take, told of our own court: no trait of anybody."""

from __future__ import annotations

from typing import Final

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from knowledge.regex import regex
from knowledge.vocabulary import Trait

_ON_A_SIDE: Final = regex(
    r"\b(?:(?:when|if|while|whenever) (?:hes|shes|he is|she is|he|she|him|her|im|@)"
    r"|with (?:him|her))"
    r" (?:(?:is|s|plays|playing|stands|standing|on|at|from|over) )*(?:the )?(?:left|right)\b"
)
_OF_SIDES: Final = frozenset({Trait.MOVES_LEFT, Trait.MOVES_RIGHT, Trait.SIDE_PLAYED})

_TAKES_WITH: Final = regex(
    r"\b(?:covers?|takes?|has|owns|gets) (?:the )?(?:middle|mid|centre|center)"
    r" (?:balls? )?(?:with|w) (?:(?:his|her|the|my) )?(?:forehand|fh|backhand|bh)\b"
)


def is_place_taken(claim: Claim, note: NoteLine) -> bool:
    """ "Covers more when he's on the right" tells of a side that changes, "takes the middle with
    his forehand" of who takes it; "moves badly to the right" and "squeezes the middle" are traits.
    """
    if claim.trait in _OF_SIDES:
        return _ends_on_a_side(claim, note)
    line = " ".join(note.line)
    return claim.trait is Trait.SQUEEZES_MIDDLE and _TAKES_WITH.search(line) is not None


def _ends_on_a_side(claim: Claim, note: NoteLine) -> bool:
    """Whether the left or right that is claimed is where they stand at times."""
    last = max((at for at, word in enumerate(note.said) if word.span[0] < claim.span[1]), default=0)
    place = len(" ".join(note.line[: last + 1])) - 1
    found = _ON_A_SIDE.finditer(" ".join(note.line))
    return any(one.start() <= place < one.end() for one in found)
