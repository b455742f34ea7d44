"""Wishes about a plan inside a longer or mistyped message: what its key words ask, put together.

Short messages are read by their forms (plan_forms); here a sentence that talks on, is polite or
misspelt is read by the pair of things that it must name: the plan and what of it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.message import Message, is_ours
from bot.chat.near_words import mended
from bot.chat.said import PlanAsk
from bot.chat.words import words_in
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId

LONGEST_TALE = 34
"""Words of a message that may wrap such a wish; a longer one tells a story."""

_SPELT = words_in(
    "plan plans change changed changes different since last time match meeting second again "
    "student students anything something previous updates adjust"
)
_SHORT = {"tehy": "they", "thye": "they", "wat": "what", "waht": "what", "tiem": "time"}

_PLAN = r"(?:game ?)?plans?"
_WHEN = r"(?:if|when|once|should|after|in case|say)"
_THEY = r"(?:they|N|he|she)"
_CHANGE = (
    r"(?:change|changes|adjust|adjusts|adapt|adapts|twig|twigs|catch on|catches on|cotton on"
    r"|figure|work it out|work us out|read us|get wise|make other|do something else|try something"
    r"|play different|wise up)"
)
_BEFORE = (
    r"(?:last|previous|earlier|old) (?:time|match|meeting|week|game|month|tournament)"
    r"|(?:mon|tues|wednes|thurs|fri|satur|sun)day|yesterday|back then|before that"
)
_LEARNER = r"(?:students?|pupils?|learners?|beginners?|trainees?|juniors?|my class|the class)"
_PARTNER = r"(?:OUR|him|her|(?:my |the )?(?:partner|mate|teammate|team mate))"
"""Who may get a plan; OUR stands for a name of ours."""

_NEWS = r"(?:new|news|changed|change|changes|different|updates?|learned|learnt)"

_RULES: Sequence[tuple[PlanAsk, str]] = (
    (
        PlanAsk.STUDENT,
        rf"\b{_PLAN}\b.*\b{_LEARNER}\b|\b{_LEARNER}\b.*\b{_PLAN}\b"
        rf"|\b{_PLAN}\b.*\b(?:without|no|minus|but not|leave)(?: \w+)? notes\b",
    ),
    (
        PlanAsk.SHARE,
        rf"\b{_PLAN}\b.*\b(?:go|goes|pass|get|give|forward|text|over|send|hand|copy)\b"
        rf".*\b(?:to|for) {_PARTNER}\b"
        r"|\b(?:send|forward|text|pass|get|give|hand|show|message|shoot|ping|mail|drop)\b"
        rf"(?: on| over| across)?(?: to)? {_PARTNER}\b.*\b{_PLAN}\b"
        rf"|\b{_PARTNER} to (?:have|get|see|read|know)\b.*\b{_PLAN}\b"
        rf"|\bcopy of (?:\w+ )?{_PLAN}\b.*\b(?:to|for) {_PARTNER}\b"
        rf"|\b{_PARTNER} (?:needs|wants|should (?:get|have|see)|asks for|asked for)\b.*\b{_PLAN}\b",
    ),
    (
        PlanAsk.PLAN_B,
        r"\b(?:plan b|planb|b plan)\b"
        r"|\b(?:second|2nd|backup|fallback|reserve|contingency|alternative) plan\b"
        rf"|\b(?:alternative|backup|fallback) (?:if|when|for when|in case) {_THEY}\b"
        rf"|\b(?:what|wat|and)(?: then)? (?:if|when) {_THEY} (?:\w+ )?{_CHANGE}\b"
        rf"|\b{_PLAN}\b.*\b{_WHEN} {_THEY} (?:\w+ )?{_CHANGE}\b",
    ),
    (
        PlanAsk.SINCE,
        rf"\b(?:is|has|have|are|anything|something|what|whats|any|did)\b.*\b{_NEWS}\b.*\bsince\b"
        rf"|\bsince\b.*\b(?:is|has|have|anything|something|what|whats|any)\b.*\b{_NEWS}\b"
        rf"|\bN (?:(?:any|anything) )?(?:different|changed|new) (?:from|since|to) (?:{_BEFORE})\b"
        r"|\b(?:what|whats|anything|something|is there)\b.*\bnew (?:on|about|with|for) N\b"
        r"|\b(?:last|since we) (?:met|played|faced|saw)\b.*\b(?:different|new|changed)\b"
        rf"|\bN (?:\w+ )?{_NEWS} since\b"
        r"|^(?:any )?(?:news|updates?|whats new|what is new|new stuff)(?: (?:on|about|with))? N$",
    ),
    (
        PlanAsk.AGAIN,
        rf"\b{_PLAN}\b (?:that |which )?(?:we|you|i) (?:had|made|used|did|agreed|wrote|gave)\b"
        rf"|\bwe had (?:\w+ ){{0,4}}{_PLAN} (?:for|vs|against|with|on) N\b"
        rf"|\b{_PLAN}\b.*\b(?:{_BEFORE})\b|\b(?:{_BEFORE})\b.*\b{_PLAN}\b"
        rf"|\bdid we (?:have|make) (?:a|any) {_PLAN} (?:for|vs|against|with|on) N\b"
        r"|\bremind (?:me|us) (?:of )?how we (?:wanted|planned|meant|were going|agreed) to play\b"
        r"|^(?:please )?recall N$"
        rf"|\bsee (?:it |the )?again (?:the )?{_PLAN}\b"
        rf"|\bwhat did we (?:plan|agree|write|say|note|decide)(?: \w+){{0,2}} N (?:{_BEFORE})\b",
    ),
)
_MEANT = tuple((what, regex(rule)) for what, rule in _RULES)


def meant_loosely(line: str, message: Message, ours: Sequence[PlayerId]) -> PlanAsk | None:
    """What its key words ask for; None where it notes something or goes on for too long."""
    words = _with_ours(line, message, ours).split()
    if len(words) > LONGEST_TALE:
        return None
    spelt = " ".join(_mended(word) for word in words)
    meant = next((what for what, rule in _MEANT if rule.search(spelt)), None)
    return None if meant is None or message.note.claims else meant


def _with_ours(line: str, message: Message, ours: Sequence[PlayerId]) -> str:
    """The line with OUR for a chain of names that is one of ours alone, where there is one."""
    names = [one for one in message.mentions if not one.pronoun]
    mine = [at for at, one in enumerate(names) if is_ours(one, ours)]
    places = [found.start() for found in re.finditer(r"\bN\b", line)]
    if len(mine) != 1 or len(places) != len(names):
        return line
    at = places[mine[0]]
    return f"{line[:at]}OUR{line[at + 1 :]}"


def _mended(word: str) -> str:
    return word if word in ("N", "OUR") else _SHORT.get(word, mended(word, _SPELT))
