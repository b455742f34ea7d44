"""What the pair's card answers first where something else was asked of it or settled."""

from __future__ import annotations

from typing import Final

from knowledge.regex import regex

NO_RANK: Final = "I rank neither of you: share the court by ball."
NOT_KEPT: Final = "I keep only these: say that one before you serve."

_RANK: Final = r"(?:weaker|weakest|worse|worst|better|best|stronger|strongest)"
_RANKS: Final = regex(
    rf"\b(?:who(?:'?s| is)?|which(?: one)?(?: of us)?(?: is)?|am i|is \w+) (?:the )?{_RANK}"
    r"(?: (?:player|one|link))?"
    r"(?: (?:out )?of (?:us|the two of us|our two)(?: two)?| between us| us two| than \w+"
    r"| \w+ or \w+)?[\s?!.]*$"
)
_SETTLES: Final = regex(
    r"^\W*(?:(?:so|ok|okay|right|and|btw) )*(?:we(?:'ve|ve| have)? )?(?:(?:just|both|all) )*"
    r"(?:agreed|decided)\b(?!.*\b(?:what|how|who|which|should)\b)"
)


def call_instead(words: str) -> str | None:
    """That it ranks none of the two, or does not keep what they settled; None where neither is."""
    spoken = words.casefold().replace("’", "'")
    if _SETTLES.search(spoken) is not None and "?" not in spoken:
        return NOT_KEPT
    return NO_RANK if _RANKS.search(spoken) is not None else None
