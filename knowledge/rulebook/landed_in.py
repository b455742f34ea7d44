"""Who comes down in the kitchen after an Erne, a volley or a smash: momentum, a fault.

A legal Erne and one that lands inside are asked for in nearly the same words, and only the second
loses the rally (2025 edition, section 9; 2026, 11.A.2). At a ball that had bounced it is legal.
"""

from __future__ import annotations

from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.touching import plain

_ERNE: Final = r"ern(?:e|es|ie|ies|ey|ed|ing|eing)"
_HIT: Final = (
    rf"(?:{_ERNE}|volley(?:s|ed|ing)?|smash(?:es|ed|ing)?|overheads?|put ?aways?|speed ?ups?"
    r"|(?:hits?|hitting|takes?|took) (?:it|the ball)(?: out of the air)?)"
)
_KITCHEN: Final = r"(?:kitchen|nvz|non volley(?: zone)?)"
_COMES_DOWN: Final = (
    r"(?:land(?:s|ed|ing)?|falls?|fell|falling|step(?:s|ped|ping)?|comes? down|came down"
    r"|coming down|walk(?:s|ed|ing)?|runs?|ran|running|slid(?:es|ing|e)?|slip(?:s|ped|ping)?"
    r"|stumbl(?:es|ed|ing)|stumble|trip(?:s|ped|ping)?|carr(?:y|ies|ied)|takes? (?:him|her|me|them)"
    r"|touch(?:es|ed|ing)?)"
)
_PLACE: Final = (
    r"(?: (?!outside|out|clear|over|past|beyond|behind|around|before|not|then|and|ball|his|her)\w+)"
    rf"{{0,2}}? (?:in|inside|into|on|onto|the) (?:the )?{_KITCHEN}\b"
)
_IS_DOWN: Final = r"(?:foot|feet|toes?|heel|shoe)(?: \w+){0,2}?"

_AFTER_THE_HIT: Final = regex(
    rf"\b(?:{_COMES_DOWN}|{_IS_DOWN}(?=.* (?:after|following) )){_PLACE}(?: line)?"
    rf"(?: right| just| straight)? (?:after|on|off|from|following|with)"
    rf" (?:(?:an?|the|his|her|my|their|that|he|she|i|they) )?{_HIT}\b"
)
"""`lands in the nvz after an erne`."""

_HIT_AND_IN: Final = regex(
    rf"\b(?:{_HIT}\b.*? (?:and|then|but|n|he|she|i|they|foot|feet|toe|heel|momentum|if|to)"
    rf"|{_ERNE}) (?:\w+ )??{_COMES_DOWN}{_PLACE}"
)
"""`volleys it and walks in the kitchen`; of an Erne alone nobody says that the ball lands there."""

_COMES_IN: Final = regex(rf"\b(?:{_COMES_DOWN}|{_IS_DOWN}){_PLACE}")
_OF_A_HIT: Final = regex(rf"\b{_HIT}\b")

_OTHERWISE: Final = regex(
    r"\b(?:before|b4|first|prior|until|till|unless|re ?establish\w*|partners?|teammate"
    r"|(?<!or )not|never|who calls|doesnt|didnt|dont|isnt|wont|without|outside)\b"
    r"|\b(?:stop|beat|counter|defend|handle|punish|hat|cap|visor|glasses|sunglasses|towel)\b"
    rf"|\b(?:ball|it|shot|dink|drop|return|serve|lob) (?:(?!and|then|he|she)\w+ )?{_COMES_DOWN}\b"
    rf"|\b{_KITCHEN}(?: line)? (?:and |then |and then )+(?:\w+ )?(?:jump\w*|{_HIT})"
)
"""Feet that were in before, or never; somebody else's; the ball that lands there; tactics."""


def lands_in_kitchen(words: str, *, before: str = "") -> bool:
    """Whether somebody who volleyed is told to come down in the kitchen after it.

    `before`: the question it goes on from, which may have named the shot: "and landing in the nvz".
    """
    said = plain(words)
    if _OTHERWISE.search(said) is not None:
        return False
    if _AFTER_THE_HIT.search(said) is not None or _HIT_AND_IN.search(said) is not None:
        return True
    is_of_it = bool(before) and _OF_A_HIT.search(plain(before)) is not None
    return is_of_it and _COMES_IN.search(said) is not None
