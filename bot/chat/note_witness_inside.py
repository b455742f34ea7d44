"""Who saw it, told behind: of "okafor is quick, tom saw him run two down" nothing is Tom's."""

from __future__ import annotations

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.trait_lexicon import NAME
from knowledge.regex import regex

_SAW = regex(
    rf"(?<![^ ]){NAME} (?:has |just |also )*"
    r"(?:saw|seen|watched|caught|heard|told (?:me|us)|noticed)(?: that)?"
    r" (?:him|her|them|it|he|she|they)\b"
)


def seen_by_another(claim: Claim, note: NoteLine) -> Claim | None:
    """Nothing of the witness; whoever was seen is told of by the words before."""
    line = " ".join(note.line)
    for found in _SAW.finditer(line):
        at = line[: found.start()].count(" ")
        if claim.player in note.subjects.at(at) and claim.span[0] >= note.said[at].span[0]:
            return None
    return claim
