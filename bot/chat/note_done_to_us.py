"""What is done to us, or is ours to do, read as theirs: "jams me", "the ATP is there"."""

from __future__ import annotations

from typing import Final

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.trait_lexicon import NAME
from knowledge.regex import regex
from knowledge.vocabulary import Trait

_STRUCK: Final = frozenset({Trait.BODY_JAM, Trait.HANDLES_PACE})
_AT_US: Final = regex(r"\bjam(?:s|med|ming)?(?: up)? (?:me|us|my|our|you)\b")
"""Whoever jams us is not the one who is jammed."""

_JAMS: Final = frozenset(["jams", "jammed"])
"""With whoever does it before them: "better to jam her than him" is said of what we do."""

_WHO: Final = frozenset([NAME, "he", "she", "who", "always", "often", "just"])

_PELTS: Final = regex(
    r"\b(?:hits?|hitting|smash(?:es)?|drives?|bangs?|whacks?|sends?|slams?|aims?|puts?|plays?"
    r"|returns?) (?:everything|every (?:single )?(?:ball|one|shot)|it all|all of (?:it|them)"
    r"|all balls) (?:(?:right|straight|back|hard) )*(?:at|to|into|on|towards?)"
    rf" (?:me|us|my|our|you|her|him|{NAME})(?![^ ])"
)
"""Whom they pick on, and not which balls they let go out."""

_IS_OURS: Final = regex(
    r"(?:(?:is|was|are|s|its|shot|always|wide) )*"
    r"(?:there|open|on(?! \w)|free|available|mine|ours|possible|for (?:us|me)|to be had)\b"
)
_AROUND_THE_POST: Final = frozenset({Trait.AROUND_POST, Trait.ERNIE})


def is_done_to_us(claim: Claim, note: NoteLine) -> bool:
    """Whether the words that were read as theirs tell of us."""
    line = " ".join(note.line)
    if claim.trait in _STRUCK and claim.player != note.asker:
        return _AT_US.search(line) is not None or _jams_another(claim, note)
    if claim.trait is Trait.LEAVES_OUT_BALLS:
        return _PELTS.search(line) is not None
    return claim.trait in _AROUND_THE_POST and _is_ours_to_hit(claim, note)


def _is_ours_to_hit(claim: Claim, note: NoteLine) -> bool:
    """ "ATP is there": a shot that their place leaves us."""
    behind = [note.line[at] for at, word in enumerate(note.said) if word.span[0] >= claim.span[1]]
    return _IS_OURS.match(" ".join(behind)) is not None


def _jams_another(claim: Claim, note: NoteLine) -> bool:
    """ "Lotte jams Tobias": the one named right behind is jammed."""
    for at in range(1, len(note.line) - 1):
        is_done = note.line[at] in _JAMS and note.line[at - 1] in _WHO
        if is_done and note.line[at + 1] == NAME:
            start = note.said[at + 1].span[0]
            jammed = [one.players for one in note.whose if one.span[0] == start]
            return all(claim.player not in players for players in jammed)
    return False
