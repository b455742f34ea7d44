"""A serve of both depths: "serves short mostly, sometimes long" varies it, which is no weakness."""

from __future__ import annotations

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from knowledge.regex import regex
from knowledge.vocabulary import Trait

_SHORT = regex(r"\bshort\b")
_DEEP = regex(r"\b(?:deep|long)\b")
_VARIED = regex(
    r"\b(?:sometimes|mostly|usually|often|now and then|at times|other times|once in a while|some"
    r"|mix(?:es|ed|ing)?|var(?:y|ies|ied)|alternat(?:es|ing)|both|half)\b"
)


def is_mixed_depth(claim: Claim, note: NoteLine) -> Claim | None:
    """Nothing of a serve that is judged by no more than that some are short and some deep.

    Long ones out ("some go long") are missed, and whatever is called bad besides stays so.
    """
    if claim.trait is not Trait.SERVE or claim.denied:
        return claim
    start, stop = claim.span
    own = " ".join(word.folded for word in note.said if start <= word.span[0] < stop)
    typed = " ".join(word.folded for word in note.said)
    is_of_depth = _SHORT.search(own) or _DEEP.search(own)
    is_both = _SHORT.search(typed) and _DEEP.search(typed)
    is_mixed = is_of_depth and is_both and _VARIED.search(typed)
    return None if is_mixed and not _MISSED.search(typed) else claim


_MISSED = regex(
    r"\b(?:goes?|going|went|too|way|out|miss(?:es|ed)?|weak|bad|poor|soft|easy|awful|attackable)\b"
)
