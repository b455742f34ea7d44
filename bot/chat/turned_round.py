"""What was told last is the other side's: "the other way round", "no, other way, they lost it"."""

from __future__ import annotations

from typing import NamedTuple

from bot.chat.slip_words import SLIP
from knowledge.regex import regex

_ROUND = regex(
    rf"{SLIP}*(?:(?:its|it is|it was|thats|that was|the) )?(?:the )?"
    r"(?:other way(?: (?:round|around))?|wrong way (?:round|around)"
    r"|swap (?:it|them|that|the score)|reversed|flip it|backwards)"
    r"(?:(?: and| so| because)? (?P<side>we|they|us|weve|theyve) (?:have |just )?"
    r"(?P<how>won|lost|took)(?: (?:it|that|this|that one|the game|that game|the match))?)?"
)


class Turned(NamedTuple):
    """Who then won, where that is said beside it: `says_they` where it was told of "they"."""

    won: bool | None
    says_they: bool


def turned_round(line: str) -> Turned | None:
    """What such a line says; None for any that says more, or something else."""
    found = _ROUND.fullmatch(line)
    if found is None:
        return None
    if found["side"] is None:
        return Turned(won=None, says_they=False)
    theirs = found["side"].startswith("they")
    return Turned(won=(found["how"] != "lost") is not theirs, says_they=theirs)
