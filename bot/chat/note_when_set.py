"""A stroke that holds only while they stand: "fine when set, floaty when she's moving"."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.note_line import NoteLine
from bot.chat.note_opinions import found_in
from bot.chat.said import Claim
from knowledge.regex import regex
from knowledge.vocabulary import TRAITS, Tag, TraitKind, Value

_WHEN = r"(?:(?:when|if|as long as|while|once|so long as|whenever|on|only|but|and|is|its) )*"
_ARE = r"(?:(?:hes|shes|theyre|he is|she is|they are|he|she|they|is|are|the|in) )*"
_SET = regex(
    rf"\b(?:(?:when|if|as long as|while|so long as|whenever|once) {_ARE}"
    r"(?:set|balanced|planted|still|stationary|(?:has|have|got|gets) time|stands?(?: still)?"
    r"|standing(?: still)?|not moving|not stretched)|standing still|with time|given time"
    r"|from a set position)\b"
)
_MOVING = regex(
    rf"\b{_WHEN}{_ARE}(?:(?:has|have|made|need|needs) to )?"
    r"(?:moving|moves?|on the (?:run|move|stretch)|running|stretched|stretching|reaching"
    r"|off balance|pulled|rushed wide|jumping)\b"
)
_BAD = regex(
    r"\b(?:float\w*|bad|weak|awful|poor|terrible|pops?|popped|popup\w*|sits?|gone|nothing|breaks?"
    r"|falls? apart|misses|dumps|nets|not|shaky|loose|high|horrible|rubbish|useless|trash|shit)\b"
)
_MILD = regex(
    r"\b(?:fine|ok|okay|alright|all right|decent|solid|good|steady|holds|well|not bad|reliable)\b"
)
_SKILLS = frozenset({TraitKind.SKILL, TraitKind.SKILL_AND_HABIT})


def only_when_set(claim: Claim, note: NoteLine) -> Claim | None:
    """Weak when pulled wide, where it is said to fail on the move; else no more than not weak.

    Praise beyond that ("lethal when set") stands: it is dangerous, whatever it does on the run.
    """
    if TRAITS[claim.trait].kind not in _SKILLS or claim.denied:
        return claim
    if claim.value not in (Value.STRENGTH, Value.WEAKNESS):
        return claim
    typed = [word.folded for word in note.said]
    line = " ".join(typed)
    own = " ".join(
        word.folded for word in note.said if claim.span[0] <= word.span[0] < claim.span[1]
    )
    if not any(True for _ in found_in(typed, _SET)) or not _MILD.search(line):
        return claim
    if _fails_on_the_move(line):
        return replace(claim, value=Value.WEAKNESS, tag=Tag.PULLED_WIDE)
    is_mild = claim.value is Value.STRENGTH and _MILD.search(own) is not None
    return replace(claim, value=Value.WEAKNESS, denied=True) if is_mild else claim


def _fails_on_the_move(line: str) -> bool:
    """Whether something bad stands beside the moving, behind or before it, and not the standing."""
    for moving in _MOVING.finditer(line):
        near = " ".join(line[: moving.start()].split()[-3:] + line[moving.end() :].split()[:2])
        if _BAD.search(near):
            return True
    return False
