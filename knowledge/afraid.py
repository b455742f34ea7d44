"""Somebody is afraid of a person beside them on court, or was laid hands on: that is no nerves.

Better once too often than once too seldom, but who fears a shot, a score or an opponent's pace
fears nobody. The names of our own tell whom: "i am afraid of bram" is fear of a partner.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from knowledge.regex import regex
from knowledge.said_phrases import fold

_AFRAID = r"(?:afraid|scared|frightened|terrified|fearful|feared|fear|in fear)"
_HOW = r"(?:(?:a|bit|little|so|really|very|actually|now|still|also|even|just|truly|too) )*"
_ENDS = (
    r"(?=$| (?:and|but|so|because|cause|since|now|today|again|when (?:he|she)|"
    r"if (?:he|she) (?:shout|yell|get|lose|is)\w*|on (?:the )?court|tbh|he|"
    r"she|his|her temper|what|please|help|how|can|should|is|a bit|lately|after)\b)"
)
_ANGRY = regex(
    r"\b(?:shout\w*|yell\w*|scream\w*|curs(?:es|ed|ing)|swear\w*|swore|rag(?:e|es|ing)|threat\w*|"
    r"insult\w*|angry|anger|furious|temper|violent|aggressive|throws?|threw|slams?|slammed|bully\w*|"
    r"bullies|humiliat\w*|hits? me|abus\w*)\b"
)
_PARTNER = r"(?:(?:my|our) (?:own )?(?:partner|pard|mate|coach|husband|wife|boyfriend|girlfriend))"
_OF_THEM = regex(rf"\b{_AFRAID} {_HOW}of (?:him|her|them){_ENDS}")
_ALONE = regex(rf"\b(?:i|im|am) {_HOW}(?:am )?{_HOW}{_AFRAID} {_HOW}of (?:him|her)$")

_HANDS_ON: Final = regex(
    # A push is mostly a ball that pushes somebody back, and a serve may kick at one.
    r"\b(?:(?:push|shov)(?:es|ed|ing) me(?: (?:hard|down|on purpose|twice|again|around on court"
    r"|in the (?:back|chest)|into the (?:net|fence|post|ground|floor))\b|$)"
    r"|(?:spat|spits) (?:at|on) me\b"
    r"|(?:slap(?:s|ped|ping)?|punch(?:es|ed|ing)?|kick(?:s|ed|ing)?|chok(?:es|ed|ing)|strangl\w+)"
    r" me\b(?! (?:a|an|some|the|balls?|volleys?|serves?|drives?|drops?|"
    r"dinks?|lobs?|off|out|down|deep|wide|with (?:a|the|his|her|their|some|volleys|drives|balls)))"
    r"|grabb?(?:s|ed|ing) (?:me by )?my (?:arm|wrist|neck|shoulder|hair|shirt))"
)
_THREATENED: Final = regex(
    r"\b(?:threat(?:ens?|ened|ening) (?:me|to (?:hit|hurt|beat|kill) me)\b"
    r"|(?:threw|throws?|thrown|swung|swings) (?:(?:his|her|their|the|a) )?(?:paddle|bottle|racket|"
    r"racquet) (?:right |straight )?at me\b"
    r"|(?:rais(?:es|ed)) (?:his|her|a) (?:hand|fist) (?:at|to|against) me\b"
    r"|(?:gets?|got|is|was|turns?|turned) (?:violent|physical) (?:with|to|towards?) me\b)"
)


def afraid_of_somebody(words: str, *, ours: Iterable[str] = (), theirs: Iterable[str] = ()) -> bool:
    """Whether it tells of fear of a partner, or of one who hurts or threatens; `ours` are names.

    An opponent of these names who kicked somebody is the referee's: that is answered as a blow.
    """
    said = fold(words)
    if _THREATENED.search(said) is not None or _ALONE.search(said) is not None:
        return True
    if _HANDS_ON.search(said) is not None and not _names_one(said, theirs):
        return True
    if _ANGRY.search(said) is not None and _OF_THEM.search(said) is not None:
        return True
    names = [part for name in ours for part in fold(name).split()]
    whom = "|".join((_PARTNER, *(re.escape(name) for name in names)))
    return re.search(_forms(whom), said) is not None


def _names_one(said: str, names: Iterable[str]) -> bool:
    return not {part for name in names for part in fold(name).split()}.isdisjoint(said.split())


def _forms(whom: str) -> str:
    return (
        rf"\b(?:i|im|am|me|makes me) (?:\w+ ){{0,4}}?{_AFRAID} {_HOW}of (?:{whom}){_ENDS}"
        rf"|\b(?:{whom}) (?:\w+ )?(?:scares|frightens|terrifies|threatens) me{_ENDS}"
        rf"|\b(?:dont|not|never|do not) feel (?:\w+ )?safe (?:with|around|near|beside|next to) "
        rf"(?:{whom}|him|her){_ENDS}"
        rf"|\bunsafe (?:with|around|near|beside|next to) (?:{whom}|him|her){_ENDS}"
    )
