"""What is seen against a weakness just noted: "she dealt with it fine last 3 times tho"."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from bot.chat.words import Word, folded_line
from knowledge.regex import regex

_WELL: Final = (
    r"(?:fine|ok|okay|well|alright|easily|comfortably|no (?:problem|bother|trouble|sweat))"
)
_DEALT: Final = regex(
    r"(?:(?:but|although|though|hm+|yeah|well|ok|mind you|tbf|to be fair|actually) )*"
    r"(?:he|she|they)(?: (?:has|have|had|s|just|actually|then|now|also))*"
    r" (?:dealt|deals|coped|copes|handled|handles|managed|manages|took|takes|got|gets)"
    r" (?:(?:with|w|on with) )?(?:it|them|that|those|these|all of (?:it|them))"
    rf" (?:(?:just|really|pretty|perfectly|totally|quite) )*{_WELL}"
    r"(?: (?:the|in|last|past|this|that|time|times|game|few|couple|of|both|twice|today|now|just|all"
    r"|every|since|again|though|tho|however|so|far|\d+|two|three|four|five))*"
)


def dealt_with_it(said: Sequence[Word]) -> bool:
    """Whether nothing else is said. What "it" is, only the note just before tells."""
    return _DEALT.fullmatch(folded_line(said)) is not None
