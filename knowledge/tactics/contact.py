"""A body that struck one of us: an elbow, a push, a kick, somebody who ran into us.

Common practice as first aid is taught, and as events handle conduct (from memory): whoever is hit
looks after the body first; whether it was meant is the referee's or the desk's to judge.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from knowledge.advice import Advice, Reason
from knowledge.cautions import DEFERS
from knowledge.regex import regex
from knowledge.sources import COMMON_PRACTICE, rule
from knowledge.tactics.weather_said import folded
from knowledge.vocabulary import Topic

CALL: Final = "Stop. Hurt? Medical staff. On purpose? Referee."

_US: Final = r"(?:me|us|him|her|ourname|(?:my |our )?(?:partner|pard|pardner))"
_STRIKES: Final = (
    r"(?:elbow(?:s|ed|ing)?|kick(?:s|ed|ing)?|punch(?:es|ed|ing)?|slap(?:s|ped|ping)?"
    r"|head ?butt(?:s|ed|ing)?|knee(?:d|s)|tackl(?:es|ed|ing)|trip(?:s|ped|ping)|shov(?:es|ed|ing)"
    r"|shove|shoulder (?:check|barge)(?:s|d|ed)?|barg(?:es|ed) into|knock(?:s|ed|ing)"
    r"|bump(?:s|ed|ing) into)"
)
_RUNS_INTO: Final = (
    r"(?:ran|runs|running|crash(?:es|ed|ing)?|slam(?:s|med|ming)?|smash(?:es|ed)|bump(?:s|ed|ing)?"
    r"|collid(?:es|ed|ing)|bang(?:s|ed)) (?:right |straight |hard )?(?:into|with)"
)
_STRUCK: Final = regex(
    rf"\b{_STRIKES} {_US}\b(?! (?:out|off|back|wide|around|up|backhand|forehand|serve|serves"
    r"|paddle)\b)"
    rf"|\b{_RUNS_INTO} {_US}\b"
    r"|\bwe (?:just |both )?(?:(?:ran|crashed|bumped|banged|smashed) into each other"
    r"|collided|clashed heads)\b"
    # A push is mostly a ball that pushes somebody back.
    rf"|\bpush(?:es|ed|ing)? {_US}(?: (?:hard|over|down|at|by|on purpose|twice|again|in|with his"
    r"|with her|into the (?:net|fence|post|ground|floor))\b|$)"
    rf"|\b(?:hit|hits|struck|whacked|smacked|clocked|clipped|caught) {_US}(?: \w+){{0,3}}? with"
    r" (?:his|her|their|the|an?) (?:paddle|elbow|knee|fist|hand|arm|shoulder|foot|head)\b"
    r"|\b(?!my |our |off )\w+ (?:paddle|elbow|knee|shoulder) (?:hit|hits|struck|caught|smacked"
    rf"|whacked|clocked|clipped) (?:{_US}|(?:my|our) (?:face|head|eye|nose|mouth|jaw|ear|cheek|ribs"
    r"|chest|neck|throat|hand|fingers?|knuckles|wrist|arm|leg|shoulder|knee|body|back))\b"
    rf"|\b(?:i|im|we|{_US}) (?:just |really |also )?(?:got|was|were|been|getting)"
    r" (?:elbowed|kicked|punched|slapped|shoved|tackled|tripped"
    r"|headbutted|knocked (?:over|down))\b"
)
_OF_A_BALL: Final = regex(
    r"\bwith (?:(?:a|an|the|his|her|their|that) )?(?:\w+ )?(?:ball|drive|smash|shot|serve|return"
    r"|dink|speed ?up|overhead|bodybag|lob|spin|forehand|backhand|flick|counter|volley|roll)"
    r"(?:e?s)?\b|\boff (?:his|her|the|their|my|a) paddle\b|\bball (?:kick|knock)"
)
_NOT_TOLD: Final = regex(r"\b(?:not|never|nobody|didnt|doesnt|dont|if|almost|nearly)\b")


def tells_of_contact(words: str, *, ours: Iterable[str] = ()) -> bool:
    """Whether somebody's body or paddle is told to have struck one of us, of these names."""
    named = {part for name in ours for part in folded(name).split()}
    said = " ".join("ourname" if word in named else word for word in folded(words).split())
    if _STRUCK.search(said) is None:
        return False
    return _OF_A_BALL.search(said) is None and _NOT_TOLD.search(said) is None


def advise() -> Advice:
    """The body first, then who judges what it was."""
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call=CALL,
        reasons=(
            Reason(text="No referee: the desk, before the next serve", source=COMMON_PRACTICE),
            Reason(text="Swollen, numb, dizzy, no grip: done for today", source=COMMON_PRACTICE),
            Reason(text="Medical time-out: up to 15 minutes", source=rule("10.B")),
        ),
        unless="Head or eye took it? No more play today.",
        caution=DEFERS,
    )
