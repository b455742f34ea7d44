"""What it takes to go on from the pool: "what do we need to get into the playoff"."""

from __future__ import annotations

from bot.chat.said import PoolAsked, PoolVerb
from bot.chat.words import READ_AT_MOST, words
from knowledge.regex import regex

MOST_WORDS = 18
"""Words looked at; the longest such question has fewer."""

_LEAD = r"(?:(?:so|ok|okay|and|but|hey|right|now|well|then) )*"
_STAGE = (
    r"(?:(?:the|a|that|our) )*(?:play ?offs?|knock ?outs?|semis?|semi ?finals?|quarters?"
    r"|quarter ?finals?|medal (?:rounds?|match(?:es)?)|finals?|next (?:round|stage)|main draw"
    r"|brackets?)"
)
_FROM = r"(?:out of|from|past|beyond) (?:(?:the|our|this|a) )*(?:pools?|groups?|round robin)"
_ON = (
    r"(?:(?:get|go|make|reach|come|move|be|getting|going|making)(?: it)?"
    rf"(?: (?:in|on|into|to|through|out))*(?: {_STAGE}| {_FROM})?"
    r"|qualify|qualified|advance|progress|through)"
    rf"(?: (?:to|for|into|from|through)(?: {_STAGE})?)?(?: {_FROM})?"
)
_OUT = (
    r"(?:(?:now|already|then|all|still) )*(?:out|eliminated|through|still in)"
    r"(?: (?:of|in|to|into|for) (?:it|(?:the |this )?(?:draw|tournament|event|competition"
    rf"|{_STAGE})))?"
)
"""`whos out`, behind a match that was lost: of the draw, since no ball is a who."""

_GOAL = rf"(?:{_STAGE}|{_FROM}|through|out|eliminated|still in|qualify\w*|advance|progress)"
_ASKS = regex(
    rf"{_LEAD}(?:(?:what|how many(?: wins| games| matches| points| more)*|how much)"
    rf" (?:do|must|would|will|did) (?:we|i) (?:(?:still|have|need|to|win|get|do|more|now|score) )+"
    rf"(?:to |for )(?:{_ON}|{_STAGE})"
    rf"|(?:do|are|will|can|could|would|did) we (?:(?:still|even|already|now) )*{_ON}"
    r"|(?:how many|who|which)(?: teams| pairs| of us)*(?: \w+){0,2}"
    rf" (?:go|goes|get|gets|come|comes|make|makes) (?:it )?(?:through|on|out|to {_STAGE}|{_FROM})"
    rf"|(?:who|whos|who is|who are|(?:are|is) (?:we|they|it over for us)) {_OUT})"
    r"(?: (?:now|then|please|pls|today|anyone))*"
)
_NAMES_IT = regex(rf"\b{_GOAL}\b")


def through_asked(text: str) -> PoolAsked | None:
    """The request; None unless it is all that is said, and names where one goes on to or from."""
    said = words(text[:READ_AT_MOST])
    if len(said) > MOST_WORDS:
        return None
    line = " ".join(word.folded for word in said)
    if _ASKS.fullmatch(line) is None or _NAMES_IT.search(line) is None:
        return None
    return PoolAsked(text=text, verb=PoolVerb.THROUGH)
