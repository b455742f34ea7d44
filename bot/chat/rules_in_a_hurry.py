"""Rules asked for by whether something is ok, or when ends change, in the words of a hurry.

"Nvz erne ok if he lands oob": what somebody's body does, and whether it is ok, is a rule; whether a
shot is a good one ("ok to lob if it lands short") is none, nor is what we should do.
"""

from __future__ import annotations

from knowledge.regex import regex

_OK = r"(?:ok|okay|legal|illegal|allowed|a? ?fault|fine|good|counts?)"
_WHO = (
    r"(?:i|he|she|we|they|u|you|partner|opp|(?:my|his|her|their|the|one|a) (?:foot|feet|toes?|heel|"
    r"shoe|paddle|hand|body|momentum|knee))"
)
_MOVES = (
    r"(?:land(?:s|ed|ing)?|jump(?:s|ed)?|leap(?:s|ed)?|step(?:s|ped)?|touch(?:es|ed)?|fall(?:s)?|fell|"
    r"lean(?:s|ed)?|run(?:s)?|ran|slide(?:s)?|slid|stand(?:s)?|stood|is|are|was|goes|carries)"
)
_WHERE = (
    r"(?:oob|ob|out of bounds|out of court|outside|off (?:the )?court|nvz|kitchen|line|net|post|"
    r"their side)"
)
_OK_IF = regex(
    rf"\b{_OK} (?:if|when|even if|as long as|so long as) {_WHO} (?:\w+ ){{0,2}}?{_MOVES}\b"
    rf".*\b{_WHERE}\b"
)
_OUR_CHOICE = regex(
    r"\b(?:should|where (?:do|to|should)|how (?:do|to|should)|when (?:do|should|can) (?:i|we)|"
    r"better|worth|target|good idea)\b"
)
_GAME_THREE = r"(?:(?:game|gm|g) ?(?:3|three)|(?:3rd|third|last|deciding|final) (?:game|gm))"
_TURN = r"(?:change|switch|swap|turn)(?:s|ing)?"
_ENDS = regex(
    rf"(?:when|what score|at what(?: score| point)?)"
    rf"(?: (?:do|should|must|does) (?:we|you|u|teams|they))?"
    rf" {_TURN} (?:ends|sides) (?:in|of|for|during)(?: the)? {_GAME_THREE}"
    rf"|{_GAME_THREE} (?:do we |when (?:do we )?)?(?:{_TURN} )?(?:ends|sides)(?: {_TURN})?"
    rf" (?:when|at what(?: score)?)"
    rf"|{_GAME_THREE} when (?:do (?:we|u) )?{_TURN} (?:ends|sides)"
)


def asks_if_ok(line: str) -> bool:
    """Whether a line of folded words asks if what a body does is ok."""
    return _OK_IF.search(line) is not None and _OUR_CHOICE.search(line) is None


def asks_when_ends_change(line: str) -> bool:
    """Whether nothing else is asked than when ends change in the last game."""
    return _ENDS.fullmatch(line) is not None
