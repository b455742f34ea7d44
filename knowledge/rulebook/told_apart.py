"""Rules whose ways of asking are alike but for a few words: those words decide.

A medical time-out is no other time-out (2025 edition, 10.B); an Erne from a foot that touched the
kitchen is a volley from the kitchen (2026 edition, 11.A.3); a foot fault is the server's unless it
is told of an Erne or of a ball round the post, which has bounced (2026 edition, 11.A). A follow
through is legal over the net; where the kitchen is spoken of it is momentum (2025, section 9).
"""

from __future__ import annotations

from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.asked_plainly import rule_asked_plainly
from knowledge.rulebook.bad_calls import BAD_CALL, tells_of_bad_calls
from knowledge.rulebook.newcomers import rule_of_a_newcomer
from knowledge.rulebook.touching import plain

MEDICAL: Final = "medical"
ERNE: Final = "erne"
KITCHEN_JUMP: Final = "kitchen jump"
RALLY_SCORING: Final = "rally scoring"
KITCHEN_ENTER: Final = "kitchen enter"
_OF_A_FOOT_IN: Final = frozenset(
    ["kitchen line volley", "kitchen jump", "kitchen who calls", "momentum", "kitchen item"]
)
"""Rules of a volley, which a ball that has bounced is none of (2026 edition, 11.A)."""
SERVE_FOOT: Final = "serve foot"
MOMENTUM: Final = "momentum"
OVER_THE_NET: Final = "over the net"
KITCHEN_ITEM: Final = "kitchen item"

_TIME_OUT = r"(?:time ?outs?|t ?os?|breaks?|stoppage)"
_MEDICAL: Final = regex(
    rf"\b(?:med|meds|medical|medic|injury|injured) {_TIME_OUT}\b"
    rf"|\b{_TIME_OUT} (?:for|because of) (?:a |an |my |his |her |the )?(?:injury|cramps?|medical)\b"
    r"|\b(?:a |get |take |call |have |use |still |the )(?:med|medical)\b"
    r"(?! (?:staff|team|people|tent|brace|tape|sleeve|issue|condition|help|advice|reason))"
    r"|\b(?:med|medical) (?:ok|okay|allowed|left|still|length|possible|too)\b"
)

_KITCHEN = r"(?:kitchen|nvz|non volley zone|kitchen line|line)"
_FOOT_IN: Final = regex(
    rf"\b(?:touch(?:es|ed|ing)?|step(?:s|ped|ping)?|stand(?:s|ing)?|stood|stand|land(?:s|ed|ing)?|walk"
    r"(?:s|ed|ing)?|run(?:s|ning)?|ran|was|is|starts?|started|foot|feet|toes?|inside|through)"
    rf"(?: (?!around|round|over|past|outside|behind|along)\w+){{0,2}} "
    rf"(?:in|on|into|onto|through|inside|the|a)(?: the)? ?{_KITCHEN}\b"
    r".*\b(?:before|b4|first|then|and|without|prior|when|till|until)\b"
    rf"|\b(?:from|out of|off) (?:inside )?the {_KITCHEN}\b(?! (?:side|corner|line))"
    r"|\bre ?(?:establish|set|plant)(?:es|ed|ing|ting)?\b(?: \w+){0,3} (?:feet|foot|outside)"
    r"|\bboth (?:feet|foot)\b(?: \w+){0,4} (?:outside|out|down|before|b4|first|behind)\b"
)
_FROM_OUTSIDE: Final = regex(
    r"\b(?:jump\w*|leap\w*|launch\w*|tak\w+ off|start\w*|came|comes?)(?: \w+)? (?:behind|outside)\b"
)
_LANDS_OUTSIDE: Final = regex(
    r"\bland\w*(?: \w+){0,2} (?:oob|ob|out|outside|past|beyond|clear|off)\b"
)
_FOLLOW_THROUGH: Final = regex(r"\bfoll?ow(?:ed|s|ing)? ?th(?:r|or)(?:u|ough)s?\b")
_OF_KITCHEN: Final = regex(r"\b(?:kitchen|kitch|nvz|non ?volley(?: (?:zone|line))?)\b")
_OVER_THE_NET: Final = regex(
    r"\b(?:net|plane|their (?:side|court|kitchen|nvz)|other side|across|post)\b"
)
_ERNE: Final = regex(r"\bern(?:e|es|ie|ies|ey|ed|ing|eing)\b")
_ROUND_THE_POST: Final = regex(r"\batps?\b|\b(?:a?round|outside) (?:of )?(?:the )?(?:post|net)\b")
_PADDLE_OVER: Final = regex(r"\b(?:paddle|reach\w*|arm|hand)\b.*\b(?:over|across|past) the net\b")
_AFTER_HIT: Final = regex(r"\bfoll?ow|\bafter\b|\bonce\b")
_SERVES: Final = regex(r"\bserv\w+\b|\bbase ?line\b")
_OUTSIDE: Final = regex(r"\bfeet (?:are |were |stay |stayed )?outside\b|\bjump\w* (?:\w+ )?over\b")
"""An Erne as it should be: "feet outside", "jumps over the corner"."""

_FREEZE: Final = regex(
    r"\b(?:freez(?:e|es|ing)|frozen)\b(?=.*\b(?:at|on|rule|serve|point|score|\d+)\b)"
    r"|\b(?:is there|any|no|the|a) freeze\b"
)
"""The score freezes: the last point of a game in rally scoring counts only on serve."""
_BOUNCED: Final = regex(
    r"\b(?:after|once|since|off) (?:(?:the|a|it|that|my|had|first) ?)*bounced?\b"
    r"|\b(?:it|ball|that|this|one)(?: (?:had|has|already|did|clearly))* bounced?\b"
    r"(?! (?:twice|out|again|on (?:the|their|my) (?:kitchen )?line))"
    r"|\b(?:wasnt|was not|isnt|not|no|didnt|did not) (?:even )?(?:a )?volley(?:ed)?\b"
)
"""It came off the ground: "it was after the bounce", "but it bounced first"."""

ROTATION: Final = "rotation"
_WHO_SERVES_AT: Final = regex(
    r"\bwhom? (?:(?:is|it|its|best|better|should|shall|do|can|would|could|we|i|you|want|let|have|to"
    r"|be) )+(?:serves?|serving|server)\b(?! (?:to|at (?:them|him|her)|first))"
    r"(?=.* ?(?:\b(?:[1-9]|1\d|2\d) \d{1,2}\b|\b(?:game|match) point\b))"
)
"""In mid-game nobody chooses the server; first of a game is another question."""

_CHALLENGED: Final = regex(
    r"(?=.*\b(?:line ?judges?|lines(?:man|men|woman|people)|umpires?)\b)"
    r"(?=.*\b(?:challeng\w+|appeal\w*|contest|dispute|protest)\b)"
)
"""Who calls lines other than the players may be appealed from, whatever the ball did."""

_STOPPED: Final = regex(r"\b(?:stop|beat|counter|defend|handle|punish)\b")
"""What to play against an Erne is no rule."""


def asks_of_medical(words: str) -> bool:
    """Whether a time-out for an injury is spoken of, by that name."""
    return _MEDICAL.search(plain(words)) is not None


def asks_of_feet_first(words: str) -> bool:
    """Whether it is asked what a foot in the kitchen before an Erne means."""
    said = plain(words)
    return _ERNE.search(said) is not None and _tells_foot_in(said)


def asks_who_should_serve(words: str) -> bool:
    """Whether it is asked which of us is best to serve at a score, where the order is fixed."""
    return _WHO_SERVES_AT.search(plain(words)) is not None


def asks_of_line_judges(words: str) -> bool:
    """Whether it is asked if a call may be taken further where there are line judges."""
    return _CHALLENGED.match(plain(words)) is not None


def tells_of_a_bounce(words: str) -> bool:
    """Whether the ball is told to have bounced before it was hit."""
    return _BOUNCED.search(plain(words)) is not None


def is_of_a_foot_in(rule: str | None) -> bool:
    """Whether a rule is of a foot, or what one wears, in the kitchen on a volley."""
    return rule in _OF_A_FOOT_IN


def _tells_foot_in(said: str) -> bool:
    is_outside = _OUTSIDE.search(said) or _STOPPED.search(said)
    return _FOOT_IN.search(said) is not None and is_outside is None


def rule_told_apart(words: str, found: str | None) -> str | None:
    """The rule's name where such words decide it; else None. `found`: the likeliest."""
    if (asked := rule_of_a_newcomer(words) or rule_asked_plainly(words)) is not None:
        return asked
    if asks_of_medical(words):
        return MEDICAL
    if asks_who_should_serve(words):
        return ROTATION
    if asks_of_line_judges(words) or tells_of_bad_calls(words):
        return BAD_CALL
    if _FREEZE.search(plain(words)):
        return RALLY_SCORING
    if found != KITCHEN_ITEM and _follows_into_kitchen(plain(words)):
        return KITCHEN_ENTER if tells_of_a_bounce(words) else MOMENTUM
    if _reaches_over(plain(words)):
        return OVER_THE_NET
    if asks_of_feet_first(words) or (found == ERNE and _tells_foot_in(plain(words))):
        return KITCHEN_JUMP
    if found == KITCHEN_JUMP and _jumps_clear(plain(words)):
        return ERNE
    return _foot_of_no_server(plain(words)) if found == SERVE_FOOT else None


def _follows_into_kitchen(said: str) -> bool:
    """ "Nvz fault on follow through?": the swing, or who swung, goes on into the kitchen."""
    goes_on = _FOLLOW_THROUGH.search(said) and _OF_KITCHEN.search(said)
    return bool(goes_on) and _OVER_THE_NET.search(said) is None


def _reaches_over(said: str) -> bool:
    """Whether a paddle is told over the net at an Erne, by no follow through."""
    is_over = _ERNE.search(said) is not None and _PADDLE_OVER.search(said) is not None
    return is_over and _AFTER_HIT.search(said) is None


def _jumps_clear(said: str) -> bool:
    """Whether somebody is told to jump from outside the kitchen and to land outside it."""
    return _FROM_OUTSIDE.search(said) is not None and _LANDS_OUTSIDE.search(said) is not None


def _foot_of_no_server(said: str) -> str | None:
    """The rule for a foot at an Erne or at a ball round the post: "foot fault on atp?"."""
    if _SERVES.search(said):
        return None
    if _ROUND_THE_POST.search(said):
        return KITCHEN_ENTER
    return ERNE if _ERNE.search(said) else None
