"""Touching net or their court: which rule, by whether the ball was still live as it is told.

The fault is for a live ball only (2021-22 edition, 7.G and 8.E). Ways of asking are alike in both
cases but for a few words of time, so those words decide here.
"""

from __future__ import annotations

import re
from typing import Final

from knowledge.regex import regex

NET_TOUCH: Final = "net touch"
NET_AFTER_DEAD: Final = "net after dead"

_STILL_LIVE: Final = regex(
    r"\bbefore (?:\w+ ){0,4}(?:second bounce|2nd bounce|bounced twice|bounces twice|double bounced?"
    r"|bounces? (?:a )?(?:second|2nd) time|(?:was|is|went|goes) dead|died"
    r"|(?:point|rally) (?:was|is|had) (?:over|ended)|(?:point|rally) ended)\b"
    r"|\bbefore (?:he|she|they|i|we|you|partner|opponent|\w+) (?:\w+ )?(?:hit|hits|smash\w*|put"
    r"|puts|made|makes|played|plays|struck|finish\w*)\b(?! (?:(?:the|into|in) )*(?:net|post|tape))"
    r"|\bbefore (?:the|his|her|their|my|our|that) (?:winner|put ?away|smash|last (?:shot|ball|hit)"
    r"|final (?:shot|ball))\b|\b(?:during|in the middle of) the (?:rally|point)\b|\bmid ?rally\b"
    r"|\b(?:still|while (?:\w+ ){0,3}(?:is|was|s)?) ?(?:live|alive|in play)\b"
)
_TOLD_DEAD: Final = regex(
    r"\b(?:after\w*|dead|over|done|finish\w*|ended|end|ends|won|winner|then|already|between|gone"
    r"|twice|second bounce|scored|celebrat\w+|walking|handshake|once|following|out|lost|later)\b"
)
"""Whatever may tell that the rally had ended; without it a net was touched while it went on."""

_SOMEBODY: Final = (
    r"(?:i|we|he|she|they|partner|opponent"
    r"|(?:my|his|her|our|their) (?:partner|foot|feet|shoe|hand|paddle|body|hat|toe|knee|leg)"
    r"|foot|paddle)"
)
_THEIR_COURT: Final = regex(
    rf"\b{_SOMEBODY}(?: (?!ball|balls|it|serve|dink|lob|drop|shot|return)\w+){{0,3}}?"
    r" (?:touch(?:ed|es|ing)?|step(?:ped|s|ping)?|stood|land(?:ed|s|ing)?|fell|slid|ran|went"
    r"|cross(?:ed|es)?|brush(?:ed|es)?)"
    r"(?: (?:on|in|into|onto|over|to|down|under|the|net))*"
    r" (?:their|his|her|opponents?|other (?:teams?|pairs?|guys)|our|my)"
    r"(?: (?:side(?: of the court)?|court|kitchen|half))\b"
)
_OF_A_PLACE: Final = regex(r"\b(?:wrong|correct|serv\w+|receiv\w+|stack\w*|ball)\b")


def plain(words: str) -> str:
    """Lower case, without marks or apostrophes, one blank between words."""
    return " ".join(re.findall(r"\w+", re.sub(r"['’]", "", words.casefold())))


def tells_live(words: str) -> bool:
    """Whether the ball is said to have been live still: "before it bounced twice"."""
    return _STILL_LIVE.search(plain(words)) is not None


def tells_their_court(words: str) -> bool:
    """Whether somebody is said to have touched the other pair's court: a person, not the ball."""
    said = plain(words)
    found = _THEIR_COURT.search(said)
    return found is not None and _OF_A_PLACE.search(said[: found.end()]) is None


def rule_of_touch(words: str, found: str | None) -> str | None:
    """The rule's name where words of time or place decide it; else None. `found`: the likeliest."""
    if tells_their_court(words) and found != NET_AFTER_DEAD:
        return NET_TOUCH
    if found == NET_AFTER_DEAD and (tells_live(words) or not _TOLD_DEAD.search(plain(words))):
        return NET_TOUCH
    return None
