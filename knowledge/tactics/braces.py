"""Whether a brace, sleeve or tape may be worn: asked of the desk, and no cure for what hurts.

Common practice, no source: none of our rules names them.
"""

from __future__ import annotations

from knowledge.advice import Advice, Choice, Reason
from knowledge.cautions import DEFERS
from knowledge.regex import regex
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.weather_said import folded
from knowledge.vocabulary import Topic

_SUPPORT = (
    r"(?:braces?(?! for\b)|(?:knee|elbow|ankle|wrist|arm|calf|leg|compression) "
    r"(?:sleeves?|straps?|supports?|wraps?)|strapping"
    r"|kinesio(?: tape)?|k tape|sports tape|bandages?|splint)"
)
_MAY = (
    r"(?:can|may|could|allowed|legal|permitted|(?:is it|is|are|are they) (?:\w+ ){0,3}(?:ok|okay"
    r"|fine|legal|allowed))"
)
_ASKED = regex(
    rf"\b{_MAY} (?:\w+ ){{0,5}}{_SUPPORT}\b|\b{_SUPPORT} (?:\w+ ){{0,4}}(?:allowed|legal|permitted"
    r"|ok|okay|fine)\b"
    r"|\b(?:allowed|permitted|may|can) (?:\w+ ){0,3}?(?:(?:to )?(?:wear|have|use|put on) )?"
    r"(?:any |some )?(?:tape|taping)(?: on(?: (?:court|him|her|his|my|the|it)\b(?! paddle| net))+"
    r"(?: (?:ankle|knee|wrist|elbow|leg|arm|finger|thumb|foot|calf|shoulder)s?)?)?$"
)


def asks_for_brace(words: str) -> bool:
    """Whether it is asked if a brace or the like may be worn."""
    return _ASKED.search(folded(words)) is not None


def advise() -> Advice:
    """Who says so, and what such a thing does not do."""
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call="Braces, sleeves and tape are usual; ask the desk.",
        reasons=(
            Reason(text="Soft, no hard edge: hardly anybody minds", source=COMMON_PRACTICE),
            Reason(text="No rule of mine names them; the event decides", source=COMMON_PRACTICE),
        ),
        unless="It hurts? A brace hides it: off till staff look.",
        caution=DEFERS,
        choices=(Choice(label="the rule", topic=Topic.RULES_QUESTION),),
    )
