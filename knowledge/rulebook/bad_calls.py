"""Line calls of theirs that we doubt: "she cheats on the lines", "they call my good balls out"."""

from __future__ import annotations

from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.touching import plain

BAD_CALL: Final = "bad call"
LONGEST: Final = 14
"""Words of such a remark; a longer message tells of something else."""

_BAD: Final = r"(?:bad|wrong|awful|terrible|dodgy|horrible|shady|crooked|unfair|dishonest)"
_CALLS: Final = r"(?:lines|line ?calls?|calls|out calls?)"
_TELLS: Final = regex(
    rf"\b(?:cheat(?:s|ed|ing|ers?)?|hook(?:s|ed|ing)? (?:us|me)|rob(?:s|bed|bing)? (?:us|me))"
    rf"(?: (?:on|with|about|at))?(?: (?:the|all|every|our|her|his|their|my)){{0,2}} {_CALLS}\b"
    rf"|\b{_CALLS} (?:are|is) (?:so |really |just |all )*(?:{_BAD}|cheating)\b"
    rf"|\b(?:makes?|making|made|gives?|giving|with|these|those|their|her|his) (?:really |such |so"
    rf" many |more )?{_BAD} (?:line ?calls?|out calls)\b"
    r"|\bcall(?:s|ed|ing)? (?:everything|(?:(?:all|my|our|good|clear|so many|every|the) )+"
    r"(?:balls|shots|ones|(?<=every )(?:ball|shot))) out\b(?! loud)"
    rf"|\bdo about (?:her|his|their|the|these|those|\w+s) (?:{_BAD} )?(?:line ?calls?|out calls?)\b"
    r"|\b(?:can|could|may|should) (?:we|i) (?:get|ask for|have|request) (?:a |an |some )?"
    r"(?:line judges?|line callers?|linesmen|linesman)\b"
)
_OF_OURS: Final = regex(r"\b(?:i|we) (?:cheat|call(?:ed)?|made|make)\b|\bmy calls?\b")
_OUTCOME: Final = r"(?:theirs|ours|(?:their|our) (?:point|rally)|(?:lost|won) (?:it|that)(?: one)?)"
_OF_A_RALLY: Final = regex(rf"^{_OUTCOME}\b|\b{_OUTCOME}$")
"""Told with them, a rally is counted first: "they call everything out, theirs"."""


def tells_of_bad_calls(words: str) -> bool:
    """Whether calls of theirs are doubted, or somebody wanted who sees the lines."""
    said = plain(words)
    is_none = _OF_OURS.search(said) or _OF_A_RALLY.search(said)
    return is_none is None and _TELLS.search(said) is not None
