"""Rules asked for in plain words that mean something else in play: ends, a paddle, who is late.

"They change ends at 6 or?" is no pattern of theirs, "do we win by walkover" no chance, and a crack
in a paddle none in the ball.
"""

from __future__ import annotations

from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.touching import plain

CHANGE_ENDS: Final = "change ends"
PADDLE_CHANGE: Final = "paddle change"
LATE: Final = "late to the match"

_LEAD = r"(?:(?:so|ok|okay|wait|hey|um|and|but|oh) )*"
_AT = r"(?:\d+|four|five|six|seven|eight|nine|ten|eleven)"
_SURE = r"(?:or|right|correct|no|not|yes|yeah|true|dont|do|isnt|is|we|they|it|that)"
_ENDS: Final = regex(
    rf"{_LEAD}(?:do|does|should|must) (?:we|you|they|teams|the teams) (?:switch|change|swap)"
    rf" (?:ends|sides) at {_AT}(?: {_SURE})*"
    rf"|{_LEAD}(?:we|you|they|teams|the teams) (?:switch|change|swap) (?:ends|sides) at {_AT}"
    rf"(?: {_SURE})+"
)
_DAMAGE = r"(?:crack(?:s|ed)?|broken?|breaks|chip(?:ped)?|split|hole|delaminat\w+|came apart)"
_PADDLE: Final = regex(
    rf"\bpaddles?(?: \w+){{0,2}} (?:(?:a|an|is|has|got|just|now) )*{_DAMAGE}\b"
    rf"|\b{_DAMAGE} (?:in (?:my|the|his|her|a) )?paddles?\b|\bpaddle {_DAMAGE}\b"
)
_OTHERWISE: Final = regex(
    r"\bball (?:\w+ )?(?:crack|broke|split|is cracked|has)|\b(?:threw|thrown|plane|net|kitchen)\b"
)
"""A ball that cracks, a paddle in anger, or one that broke the plane of the net."""

_THEY = r"(?:they|the others|(?:the |our )?opponents?|(?:the )?other (?:team|pair|two|side|ones))"
_ABSENT: Final = regex(
    rf"\b{_THEY}(?: \w+){{0,4}} (?:(?:min|mins|minutes|hour) late|not here|no ?shows?|missing"
    r"|not (?:on court|there|coming|shown? up)"
    r"|(?:havent|have not|hasnt) (?:come|shown|turned|arrived)"
    r"|(?:didnt|did not|dont) (?:show|come|turn)(?: up)?)\b"
)
_LATE: Final = regex(rf"\b{_THEY}(?: \w+){{0,4}} late\b")
_CLAIM: Final = regex(
    r"\b(?:do we (?:get|have) (?:a |the )?(?:walk ?over|forfeit|win)|walk ?over|forfeit\w*"
    r"|by default|claim (?:it|the match|the win))\b"
)
_WINS: Final = regex(r"\b(?:do|have|did|will) we (?:then )?(?:win|won)\b")
_ASKS: Final = regex(r"\b(?:do|does|is|are|can|could|may|have|did|will|when|what|how|or)\b")
_LONGEST: Final = 20
"""Words of such a question; a longer one tells an incident. Our own bound."""


def rule_asked_plainly(words: str) -> str | None:
    """The rule's name where such a question is nothing else; else None."""
    said = plain(words)
    if len(said.split()) > _LONGEST:
        return None
    if _ENDS.fullmatch(said):
        return CHANGE_ENDS
    if _PADDLE.search(said) and not _OTHERWISE.search(said):
        return PADDLE_CHANGE
    claims = _CLAIM.search(said) and _ASKS.search(said)
    is_gone = _ABSENT.search(said) and (claims or _WINS.search(said))
    return LATE if is_gone or (claims and _LATE.search(said)) else None
