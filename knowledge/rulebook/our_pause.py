"""Who holds play up between rallies: whoever wants longer themselves has a time-out for it."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.entry import Rule
from knowledge.rulebook.touching import plain

TEN_SECONDS: Final = "ten seconds"
OURS: Final = "Need longer? Call a time-out before the serve."
"""The same that the rule says of more time (2025 edition, 10.A)."""

_WE_TAKE: Final = regex(
    r"\b(?:can|may|could|should|am|are|do|is it ok if|want to|need to|like to|let) (?:we|i|us|me)\b"
    r"(?: \w+){0,3} (?:tak(?:e|ing)|have|get|use|wait|rest|breathe|stand|slow|walk)\b"
    r"|\b(?:we|i)(?: \w+){0,2} (?:need|want|wanna|would like) (?:\w+ ){0,3}"
    r"(?:take|longer|more|moment|breather|pause|rest|minute|time|wait|breathe)\b"
)
_THEY: Final = regex(r"\b(?:they|them|their|he|she|him|her|opponents?)\b")


def as_our_pause(rule: Rule, words: str) -> Rule:
    """The rule of the seconds between rallies, with what to do where we want more of them."""
    said = plain(words)
    if rule.name != TEN_SECONDS or _THEY.search(said) or not _WE_TAKE.search(said):
        return rule
    return replace(rule, ruling=replace(rule.ruling, now=OURS))
