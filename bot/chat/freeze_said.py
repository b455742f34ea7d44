"""Whether the game point counts only on one's own serve, as told: "to 21 with freeze", "no freeze".

Players also freeze ("i freeze at 9-9") and are frozen out: it is the format's only where "with" or
"no" stands before it, a word of scoring beside it, or the score itself is what freezes.
"""

from __future__ import annotations

from knowledge.regex import regex

_OF_PLAYERS = r"(?! (?:me|us|him|her|them|out|up)\b)"
_FREEZE = regex(
    r"\b(?:with|(?P<no>no|without|minus))(?: (?:a|the|any|score|point))*"
    rf" freez(?:e|ing)\b{_OF_PLAYERS}"
    r"|\bfreeze (?:scoring|format)\b"
    r"|\b(?:score|scores|game|point) (?:(?P<never>doesnt|never|isnt|not) )?(?:is |gets? )?"
    rf"(?:freezes|frozen)\b{_OF_PLAYERS}"
    rf"|\brally(?: scoring)?(?: to)?(?: \w+)?(?: win by \w+)? freeze\b{_OF_PLAYERS}"
)


def freeze_said(line: str) -> bool | None:
    """Whether it does, by the folded words; None where nothing is said of it."""
    found = _FREEZE.search(line)
    return None if found is None else not (found["no"] or found["never"])
