"""What was done after all, behind a note that it never is: "actually she lobbed twice just now".

Twice is no habit, so that nothing is claimed of how often: only the "never" goes.
"""

from __future__ import annotations

from knowledge.regex import regex

_COUNTED = (
    r"(?:once|twice|thrice|(?:a )?(?:couple|few)(?: of)? times|(?:one|two|three|four|five|\d{1,2})"
    r"(?: times| x)|\d{1,2}x|again|just now|right now|now|already"
    r"|(?:the )?last (?:point|rally|game)|(?:that|this) (?:one|point|rally|game|time)"
    r"|in (?:a row|that game|this game))"
)
_DONE = regex(
    r"(?P<who>\w+) (?P<just>(?:just|now|also|even|did|has|have|only) )*"
    r"(?P<did>(?!is\b|was\b|does\b|did\b|has\b|had\b|lost\b|won\b)\w+"
    r"(?: (?:up|round|around|the|post|an?|erne|ernie|lob|me|us|him|her|it|one|at|over|my"
    r"|our)){0,4}?)"
    rf"(?P<counted>(?: (?:me|us|at|on|over))* {_COUNTED}(?: {_COUNTED})*)?"
)
_PRESENT = regex(r"\w+(?<!s)s\b")


def done_since(line: str) -> str | None:
    """The folded line as it would tell of all times, "she lobbed a lot"; None for anything else."""
    found = _DONE.fullmatch(line)
    if found is None or not (found["counted"] or found["just"]):
        return None
    if _PRESENT.fullmatch(found["did"].split()[0]):
        return None
    return f"{found['who']} {found['did']} a lot"
