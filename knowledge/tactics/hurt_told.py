"""An opponent told of as hurt in the words of a bystander, and ways to go at it.

"He's got an ankle thing", "her knee is taped", "she limps to her left": of one of ours none of
these is a complaint by itself, so they are looked for only where somebody is to be gone at.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from knowledge.regex import regex
from knowledge.tactics.weather_said import folded

_PART: Final = (
    r"(?:ankles?|knees?|calf|calves|hamstrings?|hammy|achilles|groin|hips?|thighs?|quads?|legs?"
    r"|foot|feet|toes?|heels?|shoulders?|elbows?|wrists?|arms?|back|neck|ribs?|hand|thumb|fingers?)"
)
_HER: Final = r"(?:his|her|their|that|the|a|one)"
_TAPED: Final = (
    r"(?:taped?(?: up)?|strapped(?: up)?|wrapped(?: up)?|braced|bandaged|iced|heavily taped)"
)
_HURT: Final = regex(
    rf"\b{_PART} (?:thing|issues?|problems?|trouble|niggle|injury|complaint|brace|sleeve|support)\b"
    rf"|\b{_PART} (?:(?:is|was|s|are|looks?|all|heavily|both|got|has been|still) ?)+{_TAPED}\b"
    rf"|\b(?:tape|kt tape|strapping|brace|bandage|ice|wrap|sleeve) on"
    rf" (?:{_HER} )?(?:\w+ )?{_PART}\b"
    r"|\b(?<!ball )(?:limp(?:s|ed|ing)?|hobbl(?:es|ed|ing|y)|lame|injured)\b"
    rf"|\b(?:favou?r(?:s|ing)|nurs(?:es|ing)|protect(?:s|ing)|holds|holding|grabb(?:ed|ing)|clutch\w+"
    rf"|rubbing|dragging) (?:{_HER} )?(?:left |right |sore |bad )?{_PART}\b"
    r"|\b(?:tweaked|pulled|strained|twisted|tore) (?:something|a muscle)\b"
    rf"|\bpulled up (?:lame|hurt|sore|with (?:{_HER} )?{_PART})\b"
    r"|\b(?:carrying|has|got|playing with|with) an? (?:knock|injury|niggle|strain|sprain|limp)\b"
    rf"|\b(?:bad|dodgy|sore|hurt|injured|gammy|bum) (?!hand|back ?hand){_PART}\b"
)
_GOES_AT: Final = regex(
    r"\b(?:lob(?:s|bing)?(?: (?:her|him|them))?|drop(?:s|ping)?(?: (?:her|him|it|them|short))?"
    r"|(?:go|going|hit|hitting|play|aim|serve|return|dink|drive)(?: (?:it|more|every(?:thing| ball)"
    r"|balls?))? (?:short|there|behind|wide|at|to|on|over|after|for|deep)"
    r"|(?:keep|make|get|run|move) (?:her|him|them) (?:moving|running|run|move|round|around|wide"
    r"|bend|lunge|stretch|side)"
    r"|speed(?:s|ing)? ?(?:it )?up (?:at|on|to)|target(?:s|ing)?|attack(?:s|ing)?|exploit"
    r"|pick(?:ing)? on|pound|punish|test|use (?:it|that)|take advantage)\b"
)
_STROKES: Final = regex(
    r"\bback ?hand|\bbackhand\b|\bback (?:line|court|corner)\b|\bbehind (?:her|his|their) back\b"
    r"|\b(?:back|front|lead|trail|inside|outside) (?:foot|feet|hips?|shoulders?)\b"
)
_OURS: Final = regex(r"\b(?:my|mine|me|im|ive|our|us|partners?)\b")


def goes_at_told_injury(said: str, *, ours: Iterable[str]) -> bool:
    """Whether folded words tell that somebody who is none of `ours` hurts, and go at them."""
    plain = _STROKES.sub(" ~ ", said)
    if _HURT.search(plain) is None or _GOES_AT.search(plain) is None:
        return False
    names = {part for name in ours for part in folded(name).split()}
    words = {word.removesuffix("s") for word in plain.split()} | {*plain.split()}
    return _OURS.search(plain) is None and names.isdisjoint(words)
