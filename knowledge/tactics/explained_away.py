"""What somebody takes a complaint for: "nah, just nerves" is a guess, and calls nothing off.

A chest that was tight may be nerves; who has it cannot tell (common practice as first aid is
taught, from memory).
"""

from __future__ import annotations

from typing import Final

from knowledge.advice import Advice, Choice, Reason
from knowledge.regex import regex
from knowledge.sources import COMMON_PRACTICE, rule
from knowledge.tactics.weather_said import folded
from knowledge.vocabulary import Topic

_GUESSES = regex(
    r"\b(?:nerves|nervous(?:ness)?|anxiety|anxious|adrenaline|stress|stressed|excitement|excited"
    r"|pressure|tension|jitters|butterflies|heartburn|indigestion|acid reflux|reflux"
    r"|coffee|caffeine|heat|tired|tiredness|out of shape|unfit|stitch|(?:pulled )?muscle|muscular"
    r"|lunch|breakfast|something (?:i|he|she) ate|false alarm|scare|in (?:my|his|her) head|nothing"
    r"|(?:no|not a) big deal)\b"
)
_SMALL_WORDS: Final = (
    "1 a actually again ah all alright am and anyway at be because been bet better bit but case "
    "could definitely did dont down fine for from gone good guess he her hes his i im is isnt it "
    "its just know lol mate maybe me might more must my nah no nope not now of off oh ok okay only "
    "or over passed perhaps prob probably really reckon right said say says serious she shes so "
    "simply still sure surely tbh than that thats the then there think this though to too typical "
    "was well worried worries worry yeah yes"
)
_SMALL: Final = frozenset(_SMALL_WORDS.split())
"""Words that tell nothing else: what more is told or asked keeps its own answer."""

_TELLS = regex(
    r"\b(?:its|it was|it is|is it|this is|that was|thats|im|am|hes|shes|just|only|nothing|nerves"
    r"|prob|probably|maybe|perhaps|must|might|could|think|guess|reckon|bet|surely|alarm|deal)\b"
)
"""What makes a guess of it: "and the heat" asks of the heat."""


def explains_away(words: str) -> bool:
    """Whether it tells nothing but what a complaint is taken for. For use after a complaint."""
    said = regex(r"[^a-z0-9]+").sub(" ", folded(words))
    rest = _GUESSES.sub(" ", said)
    return rest != said and _TELLS.search(said) is not None and set(rest.split()) <= _SMALL


def advise() -> Advice:
    """Staff look first, whatever it was taken for; what makes it an emergency stays said."""
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call="Have medical staff look first. Sit out till then.",
        reasons=(
            Reason(text="In doubt, out: a match lost heals faster", source=COMMON_PRACTICE),
            Reason(text="Medical time-out: up to 15 minutes", source=rule("10.B")),
        ),
        unless="Harmless and grave feel alike: staff tell.",
        caution="Back, worse, or no breath: emergency number.",
        choices=(Choice(label="the rule", topic=Topic.RULES_QUESTION),),
    )
