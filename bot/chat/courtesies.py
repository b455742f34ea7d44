"""Words of courtesy, chatter and abuse: alone they are small talk; around a question they go."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import Word, words_in
from knowledge.regex import regex

_COURTESY = words_in(
    "hi hello hey hiya howdy yo sup morning gday greetings thanks thank thx thnx ty tysm cheers ta"
    " bye goodbye cya later gn lol lmao haha hahaha hehe rofl nice cool great perfect awesome"
    " brilliant lovely sweet appreciated obliged welcome bravo"
)
_NODS = words_in("ok okay k kk yes yep yeah yup sure no nope nah fine alright understood")
"""Alone they answer nothing we asked; before a question they belong to it."""

_ABUSE = words_in(
    "idiot stupid dumb useless moron suck sucks fuck fucking fuckin fck shit shitty crap crappy"
    " damn dammit bloody bullshit garbage rubbish trash pathetic ass asshole bastard dumbass"
    " wtf ffs loser hell"
)
_AROUND = words_in(
    "a an the you your youre ur u are is it its that this so very much really ever such again and"
    " ok okay all of for to me my we us i im good bot coach mate dude man bro evening afternoon day"
    " night see see_you there how one answer help helpful tip what piece absolute total complete"
    " just oh well at be was them got problem worries lot lots bunch million"
)
"""Words beside them that ask and tell nothing."""

_DECLINED = regex(
    r"(?:(?:no|nope|wait|oh|ok|please|pls|sorry|actually|hang on) )*"
    r"(?:(?:dont|do not)(?: (?:do|delete|forget|erase|remove) (?:it|that|this|him|her|them))?"
    r"|never ?mind(?: (?:that|it|then))?|nvm|cancel"
    r"|(?<=no )(?:dont |do not )?(?:keep|leave) (?:him|her|them)(?: (?:in|there|alone|as is))?)"
    r"(?: (?:please|pls|then|now))*"
)
"""What says no to something we asked to tap for."""

_FAREWELL = regex(
    r"(?:(?:ok|okay|alright|right|so|and|thanks|thank you|ty|cheers|bye|well) )*"
    r"(?:(?:drive|travel|fly|ride|get home) safe(?:ly)?|safe (?:travels?|drive|flight|trip|journey"
    r"|home|ride)|sleep well|(?:have a )?(?:good|safe|nice|great|lovely) (?:drive|flight|trip"
    r"|journey|ride|rest|evening|weekend)|see (?:you|ya) (?:tomorrow|then|later|soon|next \w+))"
    r"(?: (?:home|back|all|everyone|both|you|two|coach|mate|guys|bye|thanks|now|then|tomorrow"
    r"|and))*"
)
"""`thanks drive safe`: whoever leaves asks for no drive."""

_THANKS = (
    r"(?:(?:ok|okay|right|alright|cheers|thanks|thank you|thx|ty|ta|nice one|bye|later|yes|haha|lol"
    r"|well|so|and|pal|mate|buddy|bud|man|dude|bro|guys|all|coach|boss|legend) ?)*"
)
_LEAVES = regex(
    rf"{_THANKS}(?:(?:i am|im|we are|were|ill|gonna|going|go|off|heading|headed|gone|popping"
    r"|nipping|time|grabbing|getting|get|have|having|to|for|out|a|an|some|my|the|quick|now|we|i) )+"
    r"(?:pints?|beers?|drinks?|coffee|tea|lunch|dinner|food|snacks?|bite|ice cream|shower|loo"
    r"|toilet|bathroom|restroom|bar|smoke|nap|home|brb)(?: (?:now|brb|lol|haha|bye|later|then"
    r"|cheers|thanks|mate|pal|back soon|back in \d+))*"
)
"""`cheers pal going for a pint`: whoever takes a break asks for nothing."""

_HURRAH = regex(
    r"(?:(?:thanks|cheers|ta|ty|thank you|yes|yess+|yeah|mate|pal|bro|dude|lol|haha|wow|oh) )+"
    r"get in(?: (?:there|mate|lol|haha|son|my son|pal))*|get in (?:mate|pal|my son|son|lol)"
)
"""`thanks mate get in` cheers; "get in" alone may ask how to come to the net."""

LONGEST_COURTESY = 8
"""Words of a message that is nothing but courtesy or abuse."""


def is_courtesy(said: Sequence[Word]) -> bool:
    """Whether a message is small talk and nothing else: "hi there", "thanks a lot", "you suck"."""
    words = [word.folded for word in said]
    if not words or len(words) > LONGEST_COURTESY:
        return False
    line = " ".join(words)
    if any(form.fullmatch(line) for form in (_FAREWELL, _LEAVES, _HURRAH)):
        return True
    known = _COURTESY | _NODS | _ABUSE
    return any(word in known for word in words) and all(word in known | _AROUND for word in words)


def is_declined(text: str, said: Sequence[Word]) -> bool:
    """Whether a message only turns down what we asked: "no dont", "no keep him", "never mind"."""
    line = " ".join(word.folded for word in said)
    return "?" not in text and _DECLINED.fullmatch(line) is not None


_REGRETTED = regex(
    r"(?:(?:sorry|ok|oh|no|that|thats|that was|it was|im|being|was|is|a bit|bit|a little|too|so"
    r"|kinda|very|bad|mean|harsh|rude|nasty|unfair|unkind|silly|stupid|of me|lol|haha|hehe|joking"
    r"|just|only|kidding) )+(?:ignore|disregard) (?:that|it|me|this|what i said)"
    r"(?: (?:lol|haha|pls))*"
)


def is_regretted(said: Sequence[Word]) -> bool:
    """Whether a question is taken back by who asked it: "thats a bit mean lol ignore that"."""
    return _REGRETTED.fullmatch(" ".join(word.folded for word in said)) is not None


def without_courtesies(text: str, said: Sequence[Word]) -> str:
    """The text without abuse, and without the courtesy it opens or ends with."""
    start, stop = 0, len(said)
    loose = _COURTESY | _ABUSE
    while start < stop and said[start].folded in loose:
        start += 1
    while stop > start and said[stop - 1].folded in loose:
        stop -= 1
    kept = [word for word in said[start:stop] if word.folded not in _ABUSE]
    tail = "?" if "?" in text else ""
    return " ".join(word.typed for word in kept) + tail if kept else ""
