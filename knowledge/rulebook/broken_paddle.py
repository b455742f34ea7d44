"""A paddle that cracks or breaks: told in the words of a cracked ball, it is changed, not replayed.

Broken gear stops no rally (2018 edition, 11.G); a face with a crack or a hole is not allowed any
longer (2025 edition, 2.E, from memory).
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from knowledge.advice import Reason
from knowledge.regex import regex
from knowledge.rulebook.entry import Rule, Ruling
from knowledge.rulebook.touching import plain
from knowledge.sources import rule_of_edition

PADDLE_CHANGE: Final = "paddle change"

CALL: Final = "Play the rally out, then change the paddle."
NOT_LEGAL: Final = "No: change it before the next rally."
NOW: Final = "Swap before the next score is called."

_PADDLE: Final = r"(?:paddles?|racke?ts?|racquets?|bats?)"
_BREAKS: Final = (
    r"(?:crack(?:s|ed|ing)?|br[eo]ak(?:s|ing)?|broke|broken|split|splits|snap(?:s|ped|ping)?"
    r"|shatter(?:s|ed)?|delaminat\w+)"
)
_BROKEN_PADDLE: Final = regex(
    rf"\b{_PADDLE}(?: (?!hit|hits|on|after|when|ball)\w+){{0,3}}? {_BREAKS}\b"
    rf"|\b(?:crack(?:ed|s)?|broken|split|snapped|delaminated) "
    rf"(?:(?:in|on|my|his|her|their|the|a) ){{0,2}}{_PADDLE}\b"
    rf"|\b(?:broke|cracked|snapped|breaks|cracks|smashed up) (?:my|his|her|their|the) {_PADDLE}\b"
)
_OTHERWISE: Final = regex(
    r"\b(?:ball|balls|it) (?:(?:is|was|has|just|had|got|s) )*(?:crack\w*|broke|broken|split)\b"
    r"|\b(?:broken|cracked) ball\b|\bcrack in the ball\b|\bplane\b|\b(?:threw|throws?|thrown"
    r"|slam\w*|anger|angry|rage)\b"
)
"""The ball that cracked; the plane of the net that a paddle breaks; a paddle broken in anger."""
_ONLY_TOLD: Final = regex(
    rf"(?:(?!won|lost|lose|we|they|point|rally)\w+ ){{0,2}}{_PADDLE}"
    rf"(?: (?:just|has|is|got|s|a|now))* {_BREAKS}"
    r"(?: (?:just|now|in|mid|during|the|this|rally|point|game|match|on|me|us|half|two|a))*"
)
"""`my paddle broke`, and no word of whose rally it was."""
_IF_LEGAL: Final = regex(
    r"\b(?:legal|illegal|allowed|permitted|ok|okay|fine|keep (?:using|playing))\b"
)


def tells_of_broken_paddle(words: str) -> bool:
    """Whether somebody's paddle is told to have cracked or broken."""
    said = plain(words)
    return _BROKEN_PADDLE.search(said) is not None and _OTHERWISE.search(said) is None


def only_tells_of_broken_paddle(words: str) -> bool:
    """Whether that is all they tell."""
    return _ONLY_TOLD.fullmatch(plain(words)) is not None


def as_broken_paddle(rule: Rule, words: str) -> Rule:
    """The rule for changing a paddle, of one that broke."""
    if rule.name != PADDLE_CHANGE or not tells_of_broken_paddle(words):
        return rule
    play_on = Reason(
        text="Broken gear doesn't stop a rally", source=rule_of_edition("2018", "11.G")
    )
    face = Reason(
        text="A cracked face is not legal any more",
        source=rule_of_edition("2025", "2.E from memory"),
    )
    ruling = Ruling(call=CALL, reasons=(play_on, face), now=NOW)
    if _IF_LEGAL.search(plain(words)) is not None:
        ruling = Ruling(call=NOT_LEGAL, reasons=(face, play_on), now=NOW)
    officiated = replace(ruling, now="Show the referee, then change it.")
    return replace(rule, ruling=ruling, officiated=officiated)
