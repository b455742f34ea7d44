"""An opponent is hurt, and it is asked whether to go at it: play the ball, not the injury.

Common practice, no source: fair play as coaches teach it; the event's staff decide who plays on.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from knowledge.advice import Advice, Choice, Reason
from knowledge.complaints import complains, complains_of_us
from knowledge.regex import regex
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.hurt_told import goes_at_told_injury
from knowledge.tactics.weather_said import folded
from knowledge.vocabulary import Topic

_GOES_AT = regex(
    r"\b(?:attack(?:ing)?|target(?:ing)?|exploit(?:ing)?|pick(?:ing)? on|pound(?:ing)?"
    r"|go(?:ing)? (?:at|after|for)|hit(?:ting)? (?:at|it|to|her|him|them|that|this|there)"
    r"|(?:at|on|to|over) (?:that|this|(?:the|his|her) bad) (?:side|wing|part|shoulder|knee|leg|arm)"
    r"|lob(?:bing)?|(?:drop|dink) ?shot(?:ting|s)?|(?:run|move) (?:her|him|them) (?:around|wide)"
    r"|wear (?:her|him|them) out|aim(?:ing)?|punish"
    r"|use it|take advantage|(?:make|making) (?:her|him|them) (?:run|move)|(?:lob|drop|play|dink) "
    r"(?:her|him|it|them|on|to))\b"
)
_ASKER = regex(
    r"\b(?:should|do|can|could|may|shall|if) (?:we|i)\b|\b(?:we|i) (?:should|can|could)\b"
)
"""Who asks: in "should we attack it" nothing is told of a body of ours."""

_IF_FAIR = regex(
    r"\b(?:mean|unfair|fair|dirty|cheap|nasty|cruel|wrong|unsporting|unsportsmanlike|rude|ok|okay|bad"
    r"|(?:bad|poor) (?:form|manners)|allowed) (?:of (?:me|us) )?(?:if (?:i|we)|to) (?:keep )?"
    r"(?:attack|target|exploit|pick on|go (?:at|after|for)|hit (?:at|to)?|aim (?:at|for)"
    r"|play (?:at|on)"
    r"|use) (?:the|her|his|their|a|that|an) (?:(?:bad|sore|hurt|injured|weak|taped|braced) )?"
    r"(?:knees?|ankles?|injury|leg|foot|back|elbow|wrist|brace|limp)\b"
)

_LEGS = r"(?:ankles?|calf|calves|hamstrings?|achilles|groin|limp|injury)"
_ANY_PART = (
    r"(?:knees?|shoulders?|backs?|elbows?|wrists?|hips?|legs?|foot|feet|arms?|thighs?|quads?)"
)
_HURT = r"(?:bad|sore|hurt|injured|weak|taped|braced|dodgy|stiff|swollen|twisted|pulled)"
_WEAK_SPOT = rf"(?:(?:left|right) )?(?:{_HURT} (?:{_LEGS}|{_ANY_PART})|{_LEGS})\b"
_WHOSE = r"(?:his|her|their|(?!my|our)\w+ ?s)"
_AT_A_PART = regex(
    r"\b(?:(?:should|shall|can|could|may|do|must) (?:we|i)|lets|(?:we|i) (?:should|could|must))"
    r"(?: (?:just|also|now|still|then|better|simply|maybe))? (?:"
    r"(?:play (?:it |balls? |more |everything )?(?:on|at|to|over)|go (?:at|after|for)"
    rf"|(?:aim|hit|drop|dink|lob|serve)(?: it)? (?:at|on|over|to)) {_WHOSE} {_WEAK_SPOT}"
    rf"|(?:attack|target|exploit|pick on|punish) (?:{_WHOSE}|the|that) (?:{_WEAK_SPOT}|knees?\b)"
    r"|(?:use|exploit) (?:his|her|their) (?:limp|injury)\b)"
)
"""`shall we play on her ankle`: a part that nobody aims a ball at while it is sound."""


def asks_if_fair(words: str) -> bool:
    """Whether a part of somebody's body that hurts is to be gone at, or if that is fair."""
    said = folded(words)
    return _IF_FAIR.search(said) is not None or _AT_A_PART.search(said) is not None


CALL: Final = "Play the ball, not the injury."


def goes_at_injury(words: str, *, ours: Iterable[str]) -> bool:
    """Whether somebody hurt, who is none of us, is to be gone at: "she tweaked her knee, attack?".

    `ours` are our players' names: one of us who hurts comes first, whatever else is asked.
    """
    said = folded(words)
    if asks_if_fair(words):
        return True
    ours = tuple(ours)
    if goes_at_told_injury(said, ours=ours):
        return True
    if _GOES_AT.search(said) is None or not complains(words):
        return False
    names = [part for name in ours for part in name.split()]
    return not complains_of_us(_ASKER.sub(" ", said), names=names)


def advise() -> Advice:
    """The fair answer; who plays on is nobody's to judge but the staff's."""
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call=CALL,
        reasons=(
            Reason(text="Moving them is fair; aiming at the pain isn't", source=COMMON_PRACTICE),
            Reason(text="Your usual plan stands: best ball, open court", source=COMMON_PRACTICE),
        ),
        unless="They stop or go down? Stop, and call the referee.",
        caution="Referee and medical staff decide who plays on.",
        choices=(
            Choice(label="whom to target", topic=Topic.WHOM_TO_TARGET),
            Choice(label="game plan", topic=Topic.GAME_PLAN),
        ),
    )
