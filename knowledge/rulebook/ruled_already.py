"""A rule asked for by those it was used on: we were warned, or their pause has run over.

"Tell the referee" helps nobody whom the referee has just warned, and a time-out that the other
pair took is none to ask for. Common practice, no source, but for the figures of the entries.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.entry import Rule, Ruling
from knowledge.rulebook.hurt_awaited import MEDICAL
from knowledge.rulebook.told_people import COACH_IN_BREAKS, COACHING
from knowledge.rulebook.touching import plain

WARNED: Final = "A warning stands. Ask them to wait for a time-out."
THEIR_PAUSE: Final = "Theirs too may last up to 15 minutes."
OVERRUN: Final = "Longer? Ask the referee or the desk, calmly."

_WARNED: Final = regex(
    r"\b(?:(?:ref|referee|umpire|official|desk|he|she|they) (?:just |has |have )?"
    r"(?:gave|given|gives|warned|warns|showed|penali[sz]ed) (?:us|me|my partner|\w+)\b"
    r"|(?:we|i|partner) (?:just |have |ve )?(?:got|get|were|was|had|received) (?:\w+ ){0,2}"
    r"(?:warn\w*|penal\w*))"
)
_THEIRS: Final = regex(
    r"\b(?:(?:their|his|her|opponents?|opps?) (?:\w+ )?medical"
    r"|(?:they|he|she|opponents?|opps?) (?:just |have |has )?(?:took|take|takes|taken|had|got|used"
    r"|needed) (?:a |the |their |an? \d+ min\w* )?(?:\w+ )?medical)\b"
)
_MINUTES: Final = regex(r"\b\d+ ?(?:min\w*|m)\b|\b(?:too long|so long|over time|longer|overran)\b")


def as_ruled_already(rule: Rule, words: str) -> Rule:
    """The rule as those need it whom it was used on, or who wait; else as it is."""
    said = plain(words)
    if rule.name in (COACHING, COACH_IN_BREAKS) and _WARNED.search(said):
        return _told(rule, now=WARNED)
    if rule.name == MEDICAL and _THEIRS.search(said) and _MINUTES.search(said):
        return _told(rule, now=OVERRUN, call=THEIR_PAUSE)
    return rule


def _told(rule: Rule, *, now: str, call: str | None = None) -> Rule:
    """With a referee and without one: the rule is not looked for, it was given."""
    officiated = None if rule.officiated is None else _said(rule.officiated, now, call)
    return replace(rule, ruling=_said(rule.ruling, now, call), officiated=officiated)


def _said(ruling: Ruling, now: str, call: str | None) -> Ruling:
    return replace(ruling, now=now, call=ruling.call if call is None else call)
