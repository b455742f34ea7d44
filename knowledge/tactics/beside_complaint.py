"""What is asked beside a complaint: how to cover the court with it, or who may step in.

Common practice, no source. Whether somebody else may play is the event's to say, not ours.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from knowledge.advice import Advice, Reason
from knowledge.cautions import DEFERS
from knowledge.regex import regex
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.weather_said import folded
from knowledge.vocabulary import Topic

_ONE_ELSE = (
    r"(?:some(?:one|body)(?: else)?|any(?:one|body)(?: else)?|another (?:player|one|guy)|"
    r"an? (?:\w+ )?(?:friend|sub|substitute|replacement|player|guy|mate|buddy|alternate)|"
    r"(?:my|our|his|her|the) (?:friend|brother|sister|son|daughter|wife|husband|buddy|mate|sub"
    r"|substitute|alternate|reserve))"
)
_STEPS_IN = (
    r"(?:takes? (?:my|his|her|their|our|partners?) (?:place|spot)|stands? in|steps? in|fills? in|"
    r"subs?(?: in)?|substitutes?|(?:play|go|come)(?:s|es)? (?:in )?(?:for|instead of) "
    r"(?:me|him|her|my partner|us|[a-z]{3,}$)|replaces? (?:me|him|her|my partner)"
    r"|play(?:s)? instead|jump(?:s)? in)"
)
_MAY = r"(?:can|could|may|might|should|shall|is it (?:ok|okay|allowed)(?: if| for)?|am i allowed)"
_SUBSTITUTE = regex(
    rf"\b{_MAY} {_ONE_ELSE} (?:\w+ ){{0,2}}{_STEPS_IN}\b"
    rf"|\b{_MAY} (?:i|we|they|you) (?:\w+ )?(?:get|use|have|bring|find|take|call) (?:in )?"
    r"(?:an? |our |the )?(?:sub|substitute|replacement|stand in|alternate)\b"
    r"(?! (?:ball|paddle|grip|serve|shot))"
    r"|\b(?:are|is|any) (?:a )?(?:subs|substitutes?|substitutions?|replacements?) "
    r"(?:allowed|ok|legal)"
    r"|\bcan (?:we|i|you) (?:sub|substitute)\b(?! (?:the )?(?:ball|paddle))"
)
_COVERS = regex(
    r"\bcover(?:s|ing)?\b(?: \w+){0,2} (?:court|middle|lobs?|side|everything|me|him|her)\b"
    r"|\bwho (?:covers|takes|runs)\b|\b(?:cover|split|share) the court\b"
    r"|\bhow do we (?:play|stand)\b"
    r"|\bcan ?(?:t|not) (?:even |really )*(?:run|get|go|turn) back\b"
    r"|\bcan ?(?:t|not) (?:even |really )*(?:run for|chase|get to|reach|run down) "
    r"(?:the |any |their )*(?:lobs?|them)\b"
)


def asks_for_substitute(words: str) -> bool:
    """Whether it is asked if somebody else may play in the place of one of ours."""
    return _SUBSTITUTE.search(folded(words)) is not None


_WHOLE_COURT = regex(r"\b(?:cover(?:s|ing)?|split|share)\b(?: \w+){0,2} court\b")


def asks_to_cover(words: str) -> bool:
    """Whether it is asked how the court is covered, as after somebody is hurt."""
    return _WHOLE_COURT.search(folded(words)) is not None


def with_what_is_asked(advice: Advice, words: str) -> Advice:
    """The answer to a complaint with a line on what is asked beside it."""
    if asks_for_substitute(words):
        return replace(advice, unless="Somebody in your place? Ask the desk: theirs to say.")
    if _COVERS.search(folded(words)) is not None:
        return replace(advice, unless="Cleared to play? Partner takes middle and lobs.")
    return advice


def substitute() -> Advice:
    """Who may step in, where no complaint is told with it."""
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call="Ask the desk who may step in: the event decides.",
        reasons=(
            Reason(text="Ask before your friend warms up or you retire", source=COMMON_PRACTICE),
            Reason(text="Once a match has begun it is rarely allowed", source=COMMON_PRACTICE),
        ),
        unless="Somebody hurt? Off it till medical staff look.",
        caution=DEFERS,
    )


_CANNOT_MOVE = regex(
    r"\b(?:can ?not|cant|can (?:barely|hardly)|barely|hardly) (?:even |really |properly )*"
    r"(?:move|moves|run|runs|walk|walks|bend|bends|put weight|push off)\b"
    r"(?! (?:fast|quick|quickly|up|forward|back|it|him|her|them)\b)"
)


def cannot_move(words: str) -> bool:
    """Whether somebody is said not to move any more, with no word on what hurts."""
    return _CANNOT_MOVE.search(folded(words)) is not None


def unmoving() -> Advice:
    """How the court is covered where one of ours hardly moves, for whatever reason."""
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call="Can't move? Stop, and let medical staff look first.",
        reasons=(
            Reason(text="Till then nobody lunges or runs back for a lob", source=COMMON_PRACTICE),
        ),
        unless="Cleared to play? Partner takes middle and lobs.",
        caution=DEFERS,
    )


NO_ALARM: Final = "It comes after all? Stop and get medical staff."
"""Under every answer to a denied emergency: the way to help stays open."""


def no_alarm() -> Advice:
    """Where an emergency is denied and nothing else told."""
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call="Good, no alarm then. Something hurts? Tell me what.",
        reasons=(Reason(text="A sip, shade and slow breaths do no harm", source=COMMON_PRACTICE),),
        unless=NO_ALARM,
        caution=DEFERS,
    )
