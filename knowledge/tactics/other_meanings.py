"""What words may mean beside a topic's plain rule: their lobs."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from types import MappingProxyType

from knowledge.advice import CALL_LIMIT, Advice, Reason
from knowledge.general_rule import GeneralRule, load_table, read_rule
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE, Source, SourceKind
from knowledge.vocabulary import AgreementKey, Side, Topic, Wing

_THEY = r"(?:they|them|their|theirs|he|she|his|opponents?|these two|those two|those guys|us)"

_HANDLES_LOBS = re.compile(
    r"\b(?:handle|defend|deal with|stop|prevent|beat|answer|counter|return|read) (?:\w+ ){0,2}lob"
)
_WHO_RUNS = re.compile(
    r"\bwho(?:se|s)?\b(?!.*\b(?:to|should we|should i|do we|do i) lob\b).*\b(?:lob|overhead|it)\b|"
    r"\bover (?:my|our|his|her|your|the|partners) (?:head|heads|partner)\b.*\bwho\b|"
    r"\bwhose (?:ball|lob)\b|\b(?:mine|yours)\b"
)
_OVER_WHOM = re.compile(r"\bover whom?\b|\bwhom?\b.*\bto lob")
_OUR_LOB = re.compile(
    r"\b(?:should|when|can|could|do|may|where|whom?|which|how often|is it|time to|try|want to|good)"
    r"\b.*\b(?:i|we|to|a|my|our)\b.*\blob|\bwhom? (?:do|should|can|to) .*\blob|\blob over who|"
    r"\bover (?:whom|who|which)\b|\bmy lob|\bour lob|\b(?:i|we) (?:should )?lob\b"
)
_THEIR_LOB = re.compile(
    rf"\b{_THEY}\b(?: \w+){{0,4}} lob|\blobs\b|\blobb(?:ed|er|ers|ing)\b|\bover (?:my|our) head|"
    rf"\blob(?: \w+){{0,2}} {_THEY}\b.*\bus\b|\b(?:their|his|her) lobs?\b|\bgoes for the lob|"
    r"\btakes? the lob|\bgets? the lob|\blob(?:bed)? (?:us|me)\b"
)
_DESPERATE = re.compile(
    r"\b(?:desperate|desperation|stretched|in trouble|off the court|scrambl\w+|defensive|"
    r"out of position|buy time|emergency|last resort|pulled (?:wide|off))\b"
)


def meaning(situation: Situation) -> str | None:
    """The entry of other_meanings.toml that the words ask for; None for the topic's plain rule."""
    words = " ".join(re.findall(r"[\w%]+", situation.asked.words.casefold().replace("'", "")))
    return _lob(words, situation) if situation.topic is Topic.LOB else None


def _lob(words: str, situation: Situation) -> str | None:
    if _asks_who_runs(words):
        return "who_runs"
    if _HANDLES_LOBS.search(words):
        return "their_lob"
    if _OUR_LOB.search(words) and not _THEIR_LOB.search(words):
        return "desperate_lob" if _DESPERATE.search(words) else None
    if _THEIR_LOB.search(words):
        return "their_lob"
    if _DESPERATE.search(words):
        return "desperate_lob"
    return "their_lob" if _names_them_first(words, situation) else None


def _asks_who_runs(words: str) -> bool:
    return bool(_WHO_RUNS.search(words)) and not _OVER_WHOM.search(words)


def _names_them_first(words: str, situation: Situation) -> bool:
    """Whether one of them is who does it: "okafor lob" rather than "lob okafor"."""
    return any(words.startswith(one.name.casefold()) for one in situation.theirs if one.name)


def advise(situation: Situation, found: str, *, assumed: str) -> Advice:
    """The answer to that meaning, with our own agreement and hands where lobs are asked about."""
    rule = other_meanings()[found]
    advice = Advice(
        topic=situation.topic,
        call=rule.call,
        reasons=rule.reasons,
        unless=rule.unless,
        caution=rule.caution,
        assumed=assumed,
    )
    return _with_our_lobs(advice, situation) if found in ("their_lob", "who_runs") else advice


def _with_our_lobs(advice: Advice, situation: Situation) -> Advice:
    """Who runs by our agreement if there is one, else whose overhead is the forehand."""
    agreement = situation.agreements.get(AgreementKey.LOBS)
    if agreement is not None:
        said = (agreement.words or agreement.value).strip().rstrip(".")
        agreed = Source(kind=SourceKind.AGREED, citation="")
        call = f"Do as agreed: {said}."
        if len(call) <= CALL_LIMIT:
            return replace(advice, call=call, reasons=advice.reasons[-1:])
        told = Reason(text="Who runs: as you agreed", source=agreed)
        return replace(advice, reasons=(told, *advice.reasons[1:]))
    takes = forehand_overhead(situation.ours)
    if takes is None:
        return advice
    named = Reason(text=f"In the middle: {takes.name}'s forehand overhead", source=COMMON_PRACTICE)
    return replace(advice, reasons=(advice.reasons[0], named, advice.reasons[2]))


def forehand_overhead(ours: tuple[OnCourt, ...]) -> OnCourt | None:
    """Whose overhead a lob in the middle is: the one forehand there, or the left of two alike."""
    forehands = [one for one in ours if one.middle_wing() is Wing.FOREHAND]
    if len(forehands) == 1:
        return forehands[0]
    return next((one for one in forehands if one.side is Side.LEFT), None)


@cache
def other_meanings() -> Mapping[str, GeneralRule]:
    """The entries by name; RuleDataError if one does not fit."""
    table = load_table("knowledge.tactics", "other_meanings.toml")
    return MappingProxyType(
        {name: read_rule(row) for name, row in table.items() if isinstance(row, dict)}
    )
