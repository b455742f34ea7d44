"""Words of real distress: they get a kind line and the way to people who can help, not tactics.

Better once too often than once too seldom, but a figure of speech is none: sayings are taken
out before the signs are looked for.
"""

from __future__ import annotations

from collections.abc import Iterable
from enum import StrEnum
from typing import Final

from knowledge.afraid import afraid_of_somebody
from knowledge.regex import regex
from knowledge.said_phrases import fold


class Distress(StrEnum):
    """How grave it is, gravest first."""

    HARM = "harm"
    PANIC = "panic"
    DESPAIR = "despair"
    AFRAID = "afraid"


_ONESELF = r"(?:myself|himself|herself|themself|themselves|my self|him self|her self)"
_WANTS = (
    r"(?:wants?|wanted|wanna|wish|wishes|rather|ready|plans?|planning|thinking|thinks|thought|"
    r"feels?|feeling|urge|going|gonna|might|will|could)"
)

_SAYINGS: Final = (
    r"(?:they|these two|those two|he|she|it|that|this|this (?:heat|sun|wind)|\w+ serve) "
    r"(?:is |are |s )?(?:just |really )?(?:killing|kills|murdering|destroying) (?:me|us)",
    r"(?:could|gonna|going to|will|want to|wanna) (?:kill|murder|strangle) "
    r"(?:him|her|them|my partner)\b",
    r"dying (?:of|to|out there|laughing|in this)",
    r"(?:kill|end) (?:the|this|that|a) (?:point|rally|ball|game|match|set)",
    r"kill shots?",
    r"dead (?:dink|ball|tired|even|last|legs?|hand|set)\w*",
    r"(?:hurt|hurts|hurting|harm) (?:us|them|him|her)\b",
    r"end it (?:early|now|here|quick|quickly|with|at|by|on)",
    r"panic(?:s|ked|ky)? (?:at|when|on|and) (?:the|they|he|she|i|we|fast|speed|lobs?|hit|hits)",
    r"hopeless (?:at|on|with|against|serve|return|backhand|forehand|shot|lob|dink)",
    rf"without (?:killing|hurting) {_ONESELF}",
    rf"(?:kill|killing|hurt|hurting) {_ONESELF} (?:to|for|running|chasing|trying|out there|over)\b",
)

_SIGNS: Final = (
    (
        Distress.HARM,
        (
            rf"(?:kill|killing) {_ONESELF}",
            rf"{_WANTS} (?:(?:to|of|about|like|i|i am|were) )*"
            rf"(?:hurt|hurting|harm|harming|cut|cutting) {_ONESELF}",
            rf"(?:harm|harms|harming|cuts|cutting) {_ONESELF}",
            r"suicid\w+",
            r"(?:want|wants|wish|wanted|rather|ready|wanna) (?:(?:to|i was|i were|be) )*"
            r"(?:die\b(?! down)|dead|not be here|disappear for good|not exist|not wake up)",
            r"end (?:it all\b(?! with| by)|my life|my own life|everything)",
            r"(?:no|nothing|what is the|whats the) (?:reason|point) (?:to|in|of) "
            r"(?:live|living|life|go on living)",
            r"(?:done with|give up on|tired of) (?:life|living|being alive)",
            r"better off (?:dead|without me)",
            r"(?:dont|do not|cant|can not|no longer) want to (?:live|be alive|go on living|exist)",
            r"take my (?:own )?life",
        ),
    ),
    (
        Distress.PANIC,
        (
            r"(?:panic|anxiety) attacks?",
            r"having (?:a )?(?:full |total |proper )?(?:panic|meltdown|breakdown)",
            r"(?:full|total|blind) panic",
            r"hyperventilat\w+",
            r"(?:cant|can not|cannot|wont) stop (?:crying|sobbing|shaking and crying)",
            r"going to (?:pass out|lose my mind)",
        ),
    ),
    (
        Distress.DESPAIR,
        (
            r"(?:i am|im|feel|feeling) (?:so |completely |totally )?(?:worthless|hopeless)",
            r"hate (?:myself|my life)",
            r"(?:cant|can not|cannot) (?:go on|cope|take it) ?(?:any ?more|any longer|with life)",
            r"(?:nobody|no one) (?:cares|would care|would miss me|would notice)",
            r"(?:dont|do not) see (?:a|any) way out",
        ),
    ),
)

_SAYING = regex(r"\b(?:" + "|".join(_SAYINGS) + r")\b")
_KINDS: Final = tuple((kind, regex(r"\b(?:" + "|".join(signs) + r")\b")) for kind, signs in _SIGNS)


def distress_of(
    words: str, *, ours: Iterable[str] = (), theirs: Iterable[str] = ()
) -> Distress | None:
    """The gravest distress that the words tell of; None if none does.

    `ours` are the names of our pair, `theirs` those across the net.
    """
    said = _SAYING.sub(" ~ ", fold(words))
    told = next((kind for kind, signs in _KINDS if signs.search(said)), None)
    if told is None and afraid_of_somebody(words, ours=ours, theirs=theirs):
        return Distress.AFRAID
    return told
