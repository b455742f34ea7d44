"""A body hit by the ball: "she hit her in the chest, she says it is ok" tells of no skill.

That somebody is "ok" after a hard one says how they are, not how they play; and a blow to chest,
throat or belly is one to look after, whatever they say of it (common practice, no source).
"""

from __future__ import annotations

from typing import Final

from knowledge.regex import regex
from knowledge.said_phrases import fold

_BLOW = (
    r"(?:hit|hits|struck|got|gets|caught|drilled|nailed|pegged|tagged|smacked|whacked|plunked|"
    r"clocked|took|takes|copped|belted|blasted)"
)
_TENDER = (
    r"(?:chest|breasts?|boobs?|ribs?|rib ?cage|sternum|breastbone|stomach|belly|tummy|throat|neck|"
    r"collarbone|kidneys?|groin)"
)
_BODY = rf"(?:{_TENDER}|body|hip|thigh|leg|arm|shoulder|hand|back|knee|face|head|eye)"
_AT = r"(?:in|on|to) (?:the|my|her|his) (?:left |right )?"
_FINE = r"(?:ok|okay|fine|alright|all right|good|unhurt)"
_IS = r"(?:(?:it|she|he|i|everything|that) (?:is|was|feels|felt)|its|shes|hes|im)"
_WELL = (
    rf"{_IS} (?:all |quite |still |totally |perfectly )?{_FINE}"
    r"(?! (?:with|at|on|in|under|against|about|for|when|player|hands?|volley\w*))"
)
_MARKED = (
    r"(?:bruis(?:e|es|ed|ing)|(?:blue|red|black|big|purple) (?:mark|spot)|welt|winded|"
    r"out of breath|cant breathe)"
)

_GOES_ON = (
    r"(?:can|could|should|shall|may|let|does|do) (?:she|he|i|her|him|\w+) (?:still |just )?"
    r"(?:go on|play|continue|carry on|keep (?:on )?playing)"
)

_TELLS_HOW_THEY_ARE: Final = regex(rf"\b(?:{_WELL}|{_MARKED}|{_GOES_ON})\b")
_STRUCK: Final = regex(rf"\b{_BLOW} (?:\w+ ){{0,4}}{_AT}{_BODY}\b")
_STRUCK_BADLY: Final = regex(rf"\b{_BLOW} (?:\w+ ){{0,4}}{_AT}{_TENDER}\b")


def is_struck(words: str) -> bool:
    """Whether they tell of somebody the ball hit, and how they are since or whether to go on."""
    said = fold(words)
    return _STRUCK.search(said) is not None and _TELLS_HOW_THEY_ARE.search(said) is not None


def is_struck_badly(words: str) -> bool:
    """The same, where a blow is to be looked after even if they say it is nothing."""
    said = fold(words)
    return _STRUCK_BADLY.search(said) is not None and _TELLS_HOW_THEY_ARE.search(said) is not None
