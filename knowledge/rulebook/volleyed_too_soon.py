"""A serve or return that was struck before its bounce: whose fault it was makes whose rally it is.

Serve and return must bounce (2021-22 edition, 7.A); whoever volleys one has lost the rally.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.entry import Rule
from knowledge.rulebook.touching import plain

TWO_BOUNCES: Final = "two bounces"
OURS: Final = "They volleyed too soon? Our rally."
EITHER: Final = "Who volleyed too soon loses the rally."

_STRUCK: Final = (
    r"(?:volley(?:s|ed|ing)?|hits?|took|takes|struck|smashe[ds]|plays?|played|returned)"
)
_OF_SERVE: Final = regex(
    r"\bvolley(?:s|ed|ing)? (?:our|their|my|his|her|the|a|your) (?:serve|service|return)\b"
)
_TWO: Final = regex(
    r"\b(?:2|two|double) bounces? (?:(?:rule|each|first|right) ?)*(?:before|b4|till|until|then) "
    r"(?:\w+ ){0,3}?(?:volley\w*|in the air|out of the air)"
)
_ELSEWHERE: Final = regex(r"\b(?:kitchen|nvz|non volley|line|net|post|out|twice|paddle)\b")

_WE: Final = r"(?:i|we|me|partner|my partner|ourname)"
_THEY: Final = r"(?:they|them|opponents?|opps?|theirname|returner|receiver|he|she)"
_DID: Final = r"(?: (?!and\b|or\b|if\b)\w+){0,3}? (?:" + _STRUCK + r")\b"
_OURS_DID: Final = regex(rf"\b{_WE}{_DID}|\bvolley\w* their (?:serve|return)\b")
_THEIRS_DID: Final = regex(rf"\b{_THEY}{_DID}|\bvolley\w* (?:our|my) (?:serve|return)\b")


def tells_of_a_volley_too_soon(words: str) -> bool:
    """Whether a serve or return struck out of the air is told of, and no line or kitchen."""
    said = plain(words)
    if _ELSEWHERE.search(said) is not None:
        return False
    return _OF_SERVE.search(said) is not None or _TWO.search(said) is not None


def as_whose_volley(rule: Rule, words: str, *, ours: Sequence[str], theirs: Sequence[str]) -> Rule:
    """The rule of the two bounces with whose rally it is; `ours` and `theirs` are names."""
    if rule.name != TWO_BOUNCES:
        return rule
    signs = {plain(one): "ourname" for one in ours} | {plain(one): "theirname" for one in theirs}
    line = " ".join(signs.get(word, word) for word in plain(words).split())
    if _OURS_DID.search(line) is not None:
        return rule
    now = OURS if _THEIRS_DID.search(line) is not None else EITHER
    return replace(rule, ruling=replace(rule.ruling, now=now))
