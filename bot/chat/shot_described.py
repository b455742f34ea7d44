"""What somebody's shot is like: "okafor's erne is nasty", "hale's lob, watch it". No rally ended.

A rally is told in the past or without a verb: "okafor's erne", "okafor with a nasty winner".
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.words import Word, folded_line, words_in
from knowledge.regex import regex

_LIKE = "(?:" + "|".join(sorted(word_set("what_a_shot_is_like"))) + ")"
_IS = r"(?:is|are|looks?|seems?|feels?)"
_HOW = r"(?:so|really|very|too|pretty|just|scary|super|absolutely|always|damn|a bit|the most)"
_DESCRIBED = regex(
    rf"\b{_IS} (?:{_HOW} )*{_LIKE}\b"
    rf"|\b{_IS} (?:his|her|their|the|a|an|my|our|all|such) (?:\w+ ){{0,3}}"
    r"(?:shot|weapon|danger|threat|problem|thing|play|move|strength|bread|killer|trouble|joke|beast)\b"
    rf"|\b{_LIKE} (?:\w+ ){{1,2}}(?:hurts?|kills|worries|scares|bothers) (?:us|me|we|him|her)\b"
    rf"|\b{_IS} (?:{_HOW} )+good\b|\b(?:erne|ernie|atp|overhead|smash) {_IS} good\b"
    rf"|\b(?:has|have) (?:an?|the|such an?) (?:{_HOW} )*{_LIKE}\b"
    r"|\b(?:threats?|weapon|danger)\b"
    r"|\b(?:watch (?:it|out|for|that|this|her|his|their)|careful|beware|look out|heads up)\b"
)
"""In the present, or a warning. "Is good" and "is out" tell of one ball, so that neither is here,
and a past "was nasty" may be of the rally that ended."""

_SHOTS = words_in(
    "erne ernie atp lob lobs drive dink serve return drop third overhead smash backhand forehand"
    " bh fh winner putaway away poach volley flick counter roll speedup"
)
_OWN_IS = regex(rf"(?:{_HOW} )*{_LIKE}\b")
"""Behind a stroke's own "is": "okafor's erne's nasty"."""


def describes_a_shot(said: Sequence[Word]) -> bool:
    """Whether the words tell what holds of a shot, or warn of it, without saying whose rally."""
    line = folded_line(said)
    if _DESCRIBED.search(line) is not None:
        return True
    return any(
        word.is_possessive
        and word.folded in _SHOTS
        and _OWN_IS.match(folded_line(said[at + 1 :])) is not None
        for at, word in enumerate(said)
    )
