"""Signs that a message denies: "im not dizzy" tells of no emergency.

Better once too often than once too seldom: only a plain denial counts. What is graded ("not too
dizzy"), doubted ("hope its not a concussion"), asked ("is it not a stroke") or over ("not dizzy any
more") stays a sign, and so does whatever else the message tells.
"""

from __future__ import annotations

import re
from itertools import islice
from typing import Final

from knowledge.regex import regex
from knowledge.said_phrases import without_accents

_NOT = (
    r"(?:not|nobody|no one|none of (?:us|them)|neither|without|isnt|arent|wasnt|werent|aint|"
    r"didnt|dont|doesnt|havent|hasnt)"
)
_BETWEEN = (
    r"(?: (?:a|an|any|the|my|his|her|their|even|actually|going to|gonna|about to|feel|feeling|have|"
    r"having|had|get|getting|got|been|being|is|was|are|has|all|me|myself|himself|herself))*"
)
_DENIES = regex(rf"\b(?:{_NOT}{_BETWEEN} )(?=\w)")
_NO = regex(r"\bno (?:signs? of (?:a )?)?(?=\w)")

_NAMED = regex(
    r"(?:dizziness|light ?headedness|nausea|vomit(?:ing)?|faint(?:ing|s)|headaches?|confusion|"
    r"concussion|bleeding|blood|chest (?:pains?|pressure|tightness)|"
    r"heart (?:attack|pains?|problem)|(?:pain|pressure|tightness) in (?:my|the|his|her) chest|"
    r"palpitations?|(?:broken )?bones?|"
    r"fracture|dislocation|numbness|(?:blurry|blurred|double) (?:vision|sight)|black eye|"
    r"(?:heat|sun) ?stroke|seizure|hives|allergic reaction|falls?)\b"
)
"""What "no" denies before it; "no dizzy" may be an answer: "no, i am dizzy"."""

_FELL = (
    r"(?:fall(?:s|en|ing)?|fell|go(?:es|ne|ing)? down|went down|down|"
    r"on the (?:ground|floor|court|deck)|trip(?:ped|s)?|slip(?:ped|s)?|collapse|"
    r"hurt(?:ing|s)?|injured|in pain|pain|(?:an )?emergency|"
    r"unwell|hit (?:my|his|her|their) head|(?:pass|black|faint)(?: out)?)"
)

_UNSURE = regex(
    r"\b(?:hop(?:e|es|ed|ing|efully)|pray\w*|think|thought|thinks|sure|certain|doubt|wonder\w*|if|"
    r"whether|maybe|might|unless|say|saying|know|afraid|worried|fear|cant|cannot|why|how)\b"
    r"(?: (?!just|only|but|and)\w+){0,4} $"
    r"|\b(?:is|are|am|was|were|do|does|did|has|have) (?:it|that|this|he|she|i|they|you) $"
)
"""What makes a denial none, right before it."""

_GRADED = regex(
    r" ?(?:\?|(?:any ?more|any ?longer|now|yet|before|earlier|until|till|much|a lot|bad(?:ly)?|"
    r"heav\w+|hard|(?:\w+ ){0,3}any ?more|(?:, )?but (?:now|today|this time|im|hes|shes|"
    r"(?:i|he|she|they) (?:am|is|are|was|did|do|does)))\b)"
)
"""What makes it none, right behind: it was so, or it is so a little."""

_LOOSE = regex(r"^(?:(?:but|and|or) )+|(?: (?:but|and|or))+$")
"""What joined the denial to the rest."""

_OR = regex(rf" (?:or|nor)(?: im| i| he| she)?(?: not)?{_BETWEEN} ")


class Denials:
    """Takes denied signs out of words; `signs` are the forms of what may be denied."""

    __slots__ = ("_sign",)

    def __init__(self, signs: tuple[str, ...]) -> None:
        self._sign: Final = regex(r"(?:" + "|".join((*signs, _FELL)) + r")(?!\w)")

    def without(self, words: str) -> str | None:
        """The words without what they deny, folded; None where nothing is denied."""
        said = _marked(words)
        kept, at = "", 0
        for found in _openings(said):
            end = self._end(said, found)
            if found.start() < at or end is None:
                continue
            kept, at = kept + said[at : found.start()], end
        if not at:
            return None
        rest = " ".join(re.sub(r"[?,]", " ", kept + " " + said[at:]).split())
        return _LOOSE.sub("", rest)

    def _end(self, said: str, denied: re.Match[str]) -> int | None:
        """Where the signs that this denies end; None if it denies none, or not plainly."""
        if _UNSURE.search(said[: denied.start()]):
            return None
        names_it = denied[0].startswith("no ") and not denied[0].startswith("no one")
        end = _shortest(_NAMED if names_it else self._sign, said, denied.end())
        while end is not None and (other := _OR.match(said, end)) is not None:
            more = _shortest(self._sign, said, other.end())
            if more is None:
                break
            end = more
        return None if end is None or _GRADED.match(said, end) else end


LONGEST_SIGN = 7
"""Words of a sign that may be denied. Our own bound."""


def _shortest(sign: re.Pattern[str], said: str, start: int) -> int | None:
    """Where the sign at this place ends that takes the fewest words: "not dizzy my sugar is low"
    denies nothing of the sugar."""
    end = start
    for word in islice(_WORD.finditer(said, start), LONGEST_SIGN):
        end = word.end()
        if sign.fullmatch(said, start, end) is not None:
            return end
    return None


_WORD = regex(r"[a-z0-9]+")


def _openings(said: str) -> list[re.Match[str]]:
    if not _MAY_DENY.search(said):
        return []
    found = [*_DENIES.finditer(said), *_NO.finditer(said)]
    return sorted(found, key=lambda one: (one.start(), -one.end()))


_MAY_DENY = regex(rf"\b(?:{_NOT}|no)\b")


def _marked(words: str) -> str:
    """Lower case without accents or apostrophes; a mark that parts what is said stays, as one."""
    said = without_accents(words).replace("'", "").replace("’", "")
    said = re.sub(r"[.,;:!()\-–—\n]+", " , ", said).replace("?", " ? ")
    return " ".join(re.sub(r"[^a-z0-9?,]+", " ", said).split())
