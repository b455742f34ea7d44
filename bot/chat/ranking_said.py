"""Everybody ranked: "which pair is most dangerous", "who is the weakest of the eight"."""

from __future__ import annotations

from bot.chat.said import Among, CompareAsked, Compared
from knowledge.regex import regex

LONGEST = 14
"""Words of such a question."""

_STRONG = (
    r"(?:most dangerous|strongest|toughest|hardest|best|scariest|biggest threat|most difficult"
    r"|trickiest)"
)
_WEAK = r"(?:weakest|easiest|worst|least dangerous|softest|poorest|most beatable)"
_SUPERLATIVE = rf"(?:(?P<weak>{_WEAK})|{_STRONG})"
_PAIRS = r"(?:pairs?|teams?|duos?|pairings?|match(?:es)?|opponents)"
_ALL = (
    r"(?: (?:overall|(?:of|in|among|from|out of|across) (?:them all|all(?: of them)?(?: players)?"
    r"|everyone|everybody|(?:the|my|our|this|these|those)? ?(?:pool|book|group|field|bracket|draw"
    r"|lot|tournament|notes|three|four|five|six|seven|eight|nine|ten|twelve|sixteen|[3-9]|1\d)"
    r"(?: players| pairs| teams)?)))"
)
_OPENS = r"(?:(?:so|ok|and|hey|tell me|in your view) )*"
_FORMS = (
    regex(
        rf"{_OPENS}(?:which|what|whats|whos|who)(?: (?:is|are|of))?(?: (?:the|these|my|those|all))*"
        rf" {_PAIRS}{_ALL}?(?: (?:is|are|was|were|looks?|will be|would be))?(?: the| our)?"
        rf" {_SUPERLATIVE}(?: (?:to beat|for us|one|today|so far|{_PAIRS}))*{_ALL}?"
    ),
    regex(
        rf"{_OPENS}(?:which|what|whats|whos|who)(?: (?:is|are|was|were))?(?: the| our)?"
        rf" {_SUPERLATIVE} {_PAIRS}(?: (?:to (?:beat|play)|today|so far|for us))*{_ALL}?"
    ),
    regex(
        rf"{_OPENS}(?:rank|order|sort|compare)(?: all)?(?: of)?(?: the| my| our| these| those)?"
        rf"(?: two| both| three| four| five| six)? (?:{_PAIRS}|pool|field)"
        rf"(?: by (?:danger|strength|threat))?{_ALL}?"
    ),
)
_PLAYERS = (
    regex(
        rf"{_OPENS}(?:which|what|whats|whos|who)(?: (?:player|one|opponent))?(?: (?:is|are))?"
        rf"(?: the)? {_SUPERLATIVE}(?: (?:player|one|opponent|link))?{_ALL}"
    ),
    regex(
        rf"{_OPENS}(?:rank|order|sort|compare)(?: all)?(?: of)?(?: the| my| our| these)?"
        rf" (?:players|opponents one by one|everyone|everybody|them all){_ALL}?"
    ),
)
_OF_POOL = regex(r"\b(?:pool|group|bracket|draw|field|tournament)\b")
_OF_THEM = regex(r"\b(?:of (?:them|these two|the two|those two|the pair|this pair)|of the 2)\b")
_OF_ALL = regex(r"\b(?:of them all|in all|everyone|everybody)\b")


def ranking_asked(text: str, line: str) -> CompareAsked | None:
    """Pairs or players ranked as a whole; None for anything else."""
    if len(line.split()) > LONGEST:
        return None
    for what, forms in ((Compared.PAIRS, _FORMS), (Compared.PLAYERS, _PLAYERS)):
        found = next((at for form in forms if (at := form.fullmatch(line)) is not None), None)
        if found is not None:
            weakest = bool(found.groupdict().get("weak"))
            among = Among.POOL if _OF_POOL.search(line) else Among.BOOK
            return CompareAsked(text=text, what=what, among=among, weakest=weakest)
    return None


def among_said(line: str) -> Among:
    """Among whom somebody is looked for, as the line says it."""
    if _OF_POOL.search(line):
        return Among.POOL
    return Among.THEM if _OF_THEM.search(line) and not _OF_ALL.search(line) else Among.BOOK
