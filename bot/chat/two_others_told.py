"""A result between two that are not us: "the de wits lost 11-8 to the old guys on court 3".

Who tells of their own match says "we", or leaves themselves out; where both who won and who lost
are named by looks, or another court is told with its winner, the points are not ours.
"""

from __future__ import annotations

from knowledge.regex import regex

_NO_PAIR = (
    r"(?:games?|sets?|match|matches|points?|rall(?:y|ies)|scores?|finals?|results?|first|second"
    r"|third|1st|2nd|3rd|last|next|one|ones|wind|sun|clock|end|line|middle|serves?|returns?|odds"
    r"|in|of|to|a|straight|times"
    r"|other (?:game|match|set)|good|day|time|net|ball|tape|kitchen|start|better|same|way|call)\b"
)
"""Behind an article: nobody who plays."""

_LOOKS = (
    rf"(?:the|(?<!# )#|some|those|these|both) (?:# )?(?!{_NO_PAIR})"
    r"(?:[a-z]\w*(?: [a-z]\w*){0,2}?)"
)
_PARTNER = r"(?: and (?:his|her|their) (?:partner|mate|buddy|friend|wife|husband|brother|sister))?"
_PAIR = rf"(?:[@%]|{_LOOKS}){_PARTNER}"
_PLAYED = r"(?: (?:just|have|has|had|also))* (?:won|wins?|lost|loses?|beats?|took it|went down)"
_RESULT = r"(?: (?:#|in|games?|two|three|straight|it|and|final))*"

_BOTH = regex(
    rf"(?<!\w){_PAIR}{_PLAYED}{_RESULT} (?:(?:to|against|over|from|vs|versus) )?"
    rf"(?:@|{_LOOKS})(?!\w)"
)
_ON_A_COURT = regex(
    rf"(?:^|\b(?:on|at|over|so|and|from) )(?:court|ct) (?:#|\w+)(?: (?:now|today|again))*"
    rf" {_PAIR.replace('@%', '@')}{_PLAYED}\b"
)
_WITH_PARTNER = regex(
    rf"@ and (?:his|her|their) (?:partner|mate|buddy|friend|wife|husband|brother|sister){_PLAYED}\b"
)


def is_of_two_others(line: str) -> bool:
    """Whether it is such a result; `line` as `match_of_others` writes it, with a sign for whoever
    is named and one for a number, and without a word of us."""
    return any(form.search(line) for form in (_BOTH, _ON_A_COURT, _WITH_PARTNER))
