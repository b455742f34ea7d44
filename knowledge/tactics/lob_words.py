"""How our own lob is said: over whom, which shoulder, and off which ball."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Final

from knowledge.planning.names import first_that_fits
from knowledge.regex import regex
from knowledge.situation import OnCourt
from knowledge.tactics.lob_answer import LobAnswer
from knowledge.vocabulary import Hand, PlayerId

GENERAL: Final = "Lob cross off a dead dink, over the off shoulder."
INTO_THE_SUN: Final = "Lob high into the sun, cross, off a dead dink."
NO_LOB_CALL: Final = "Leave the lob; keep dinking."
NOT_OURS: Final = "Leave the lob: it isn't your shot. Keep dinking."
HIT_DOWN: Final = "Leave the lob: this one is to be hit down."
LOW_OR_LOB: Final = "Low as the rule; a lob once or twice, off a dead dink."
TRIGGER: Final = "the dink is dead and they lean in"
CAUTION: Final = "Turn and run; never backpedal."
TURN: Final = "They lob back? Turn and run, never backpedal."

_LOW: Final = (
    r"(?:keep(?:ing)? (?:it|them|em) (?:low|down)|stay(?:ing)? low|low balls?|dink(?:ing)?)"
)
_AGAINST_LOW: Final = regex(
    rf"\blob\w*\b.*\b(?:or|says?|reckons?|thinks?|wants?|prefers?)\b.*\b{_LOW}\b"
    rf"|\b{_LOW}\b.*\b(?:or|says?|reckons?|thinks?|wants?|prefers?)\b.*\blob"
)
"""The two of them weighed, by one or by two who differ."""

SHOULDERS: Final = {Hand.RIGHT: "left shoulder", Hand.LEFT: "right shoulder"}
"""The one that isn't the hitting one."""


def off_a_dead_dink(answer: LobAnswer) -> str:
    """ "Lob Okafor off a dead dink", by name where only one of us should."""
    assert answer.target is not None
    who = f"{answer.who}: " if answer.who else ""
    return f"{who}{'lob' if who else 'Lob'} {answer.target.name} off a dead dink"


def shoulder(one: OnCourt) -> str:
    return "off shoulder" if one.hand is None else SHOULDERS.get(one.hand, "off shoulder")


def call(answer: LobAnswer) -> str:
    """The plan's line, with the shoulder where there is room."""
    assert answer.target is not None
    line = off_a_dead_dink(answer)
    over = shoulder(answer.target)
    return first_that_fits((f"{line}, over the {over}.", f"{line}, {over}.", f"{line}."))


def general(pair: Sequence[OnCourt], about: Collection[PlayerId], said: str) -> str:
    """The rule for anybody; of one who is asked about, or where that is asked, which shoulder.

    Held against a low ball, it is the lob that needs its moment.
    """
    if _AGAINST_LOW.search(said.casefold()):
        return LOW_OR_LOB
    named = [one for one in pair if one.player in about]
    asked = named if len(named) == 1 else pair if "shoulder" in said.lower() else ()
    told = [(one, SHOULDERS[one.hand]) for one in asked if one.hand in SHOULDERS]
    if not told or len(told) != len(asked):
        return GENERAL
    sides = {side for _, side in told}
    name, side = told[0][0].name, told[0][1]
    line = "Lob cross off a dead dink, over"
    if len(sides) > 1:
        each = ", ".join(f"{one.name}'s {over.split()[0]}" for one, over in told)
        return first_that_fits((f"Lob over the off shoulder: {each}.", GENERAL))
    whose = (f"{line} {name}'s {side}.",) if len(told) == 1 else ()
    return first_that_fits((*whose, f"{line} the {side}."))
