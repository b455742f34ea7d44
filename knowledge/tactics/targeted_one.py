"""Whom of us a symptom speaks of: "they pick on Tom", "everything comes at me"."""

from __future__ import annotations

import re
from dataclasses import replace

from knowledge.advice import Reason
from knowledge.general_rule import LINE_LIMIT
from knowledge.regex import regex
from knowledge.said_phrases import fold
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.symptoms import Symptom

SPOKEN_OF = ("Targeted:", "Frozen one:")
PARTNER = "Partner:"

_PARTNER = regex(r"\b(?:partner|pard|my p)\b")
_ME = regex(r"\b(?:me|my|i|im)\b")


def with_names(symptom: Symptom, situation: Situation) -> Symptom:
    """The lines that speak to one of us by name, where the words and the asker settle who."""
    one = spoken_of(situation)
    speaks_of_one = symptom.you.text.startswith(SPOKEN_OF)
    if not speaks_of_one:
        one = next((each for each in situation.ours if each.player == situation.asker), None)
    other = next((each for each in situation.ours if one and each.player != one.player), None)
    if one is None or other is None:
        return symptom
    you = symptom.you
    for prefix in SPOKEN_OF:
        you = _named(you, prefix, one)
    return replace(symptom, you=you, partner=_named(symptom.partner, PARTNER, other))


def spoken_of(situation: Situation) -> OnCourt | None:
    """The one of us that the words name, or the partner of whoever asks, or the asker."""
    words = fold(situation.asked.words)
    named = [
        one
        for one in situation.ours
        if one.name and re.search(rf"\b{re.escape(fold(one.name))}s?\b", words)
    ]
    if len(named) == 1:
        return named[0]
    asker = next((one for one in situation.ours if one.player == situation.asker), None)
    if named or asker is None:
        return None
    if _PARTNER.search(words):
        return next((one for one in situation.ours if one.player != asker.player), None)
    return asker if _ME.search(words) else None


def _named(line: Reason, prefix: str, one: OnCourt) -> Reason:
    if not line.text.startswith(prefix):
        return line
    text = f"{one.name}:{line.text.removeprefix(prefix)}"
    return replace(line, text=text) if len(text) <= LINE_LIMIT else line
