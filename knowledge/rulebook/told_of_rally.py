"""Rules of the rally that words of it decide: a net cord, a hurt player, a foot at a bounced ball.

The net cord of a serve and that of a rally are asked for alike; only a serve has to clear the
kitchen (2022 edition, 4.A.2). The rally goes on despite an injury (2018 edition, 11.F). A ball that
bounced is volleyed by nobody, wherever the foot stood (2026 edition, 11.A).
"""

from __future__ import annotations

from typing import Final

from knowledge.complaints import complains
from knowledge.regex import regex
from knowledge.rulebook.told_apart import KITCHEN_ENTER
from knowledge.rulebook.touching import plain

NET_CORD: Final = "net cord"
HURT: Final = "hurt in the rally"

_OF_SERVES_AT_THE_NET: Final = frozenset(["serve net", "serve net kitchen"])
_SERVED: Final = regex(r"\b(?:serv\w+|lets?|receiv\w+|box)\b")
_SEEMS_SERVED: Final = regex(r"\b(?:kitchen|nvz|non volley|lands? in|landed in)\b")
_OF_A_CORD: Final = regex(r"\bnet ?cords?\b|\b(?:our|their|my|his|her) side\b")
_IN_A_RALLY: Final = regex(r"\b(?:died|rally|mid point|dropped dead|dribbl\w+)\b")

_WHOSE_RALLY: Final = regex(
    r"\b(?:do|does|did|can) (?:we|they|i|he|she) (?:get|win|lose|keep|score) (?:a |an |the |that )?"
    r"(?:pt|point|rally)\b"
    r"|\bwhose (?:pt|point|rally)\b|\bwho (?:gets|wins|won|got) (?:the |that )?(?:pt|point|rally)\b"
    r"|\b(?:do|does|did|should|can) (?:we|they|you|it|that|the point|the rally) "
    r"(?:(?:have to|need to|just) )?(?:replay|redo|count|play (?:it|that) (?:again|over))\b"
)
_HIT: Final = regex(r"\b(?:hits?|hitting|struck|pegged|tagged|nailed|drilled)\b")
"""A ball that hit somebody has a rule of its own."""

_FOOT: Final = (
    r"(?:foot|feet|toes?|heel|shoe|sneaker|step(?:s|ped|ping)?|stood|standing|was|were|inside)"
)
_KITCHEN: Final = r"(?:kitchen|nvz|non volley zone|line)"
_FOOT_IN: Final = regex(
    rf"\b{_FOOT} (?:\w+ ){{0,3}}?(?:in|on|into|onto|over|inside|touching|the) (?:the )?"
    rf"(?:\w+ )?{_KITCHEN}\b"
)
_BOUNCED_FIRST: Final = regex(
    r"\b(?:but|although|though|even though) (?:the |that |his |her |my |this )?(?:ball|it|that one)"
    r" (?:(?:had|has|already|did|clearly|def|definitely) )*bounced?\b"
    r"|\b(?:ball|it) (?:(?:had|has|already|did|clearly) )*bounced?(?: \w+){0,2}?"
    r" (?:first|already|before (?:he|she|i|we|they) (?:hit|played|took|got|touched)|"
    r"then \w+ (?:\w+ )?(?:hit|played|took|got)|and then \w+ (?:\w+ )?(?:hit|played|took|got))\b"
    r"|\bafter (?:it|the ball|that ball) (?:had )?bounced\b(?=.*\bfault)"
)
_NO_BOUNCE: Final = regex(
    r"\b(?:twice|momentum|carried|fell|out of (?:the air|bounds)|bounced (?:out|wide|long|in|on))\b"
    r"|\b(?:before|until|till|never|not|hadnt|didnt|wasnt) (?:(?:it|the|ball|had|even) )*bounced?\b"
    r"|\b(?:serv\w+|base ?line)\b"
)
"""A bounce that was another one, or none; and a foot that moved there after a volley."""


def tells_of_a_bounced_ball(words: str) -> bool:
    """Whether a foot is told in the kitchen, or on its line, at a ball that had bounced."""
    said = plain(words)
    is_told = _FOOT_IN.search(said) is not None and _BOUNCED_FIRST.search(said) is not None
    return is_told and _NO_BOUNCE.search(said) is None


def asks_of_a_hurt_rally(words: str) -> bool:
    """Whether it is asked whose rally it is in which somebody was hurt, by no ball."""
    said = plain(words)
    if _WHOSE_RALLY.search(said) is None or _HIT.search(said) is not None:
        return False
    return complains(words)


def rule_of_rally(words: str, found: str | None, *, before: str = "") -> str | None:
    """The rule's name where such words decide it; else None. `found`: the likeliest."""
    if tells_of_a_bounced_ball(words):
        return KITCHEN_ENTER
    if asks_of_a_hurt_rally(words):
        return HURT
    if found in _OF_SERVES_AT_THE_NET and _is_of_no_serve(plain(words), plain(before)):
        return NET_CORD
    return None


def _is_of_no_serve(said: str, before: str) -> bool:
    if _SERVED.search(f"{before} {said}") is not None:
        return False
    if _IN_A_RALLY.search(said) is not None:
        return True
    return _SEEMS_SERVED.search(said) is None and _OF_A_CORD.search(said) is not None
