"""What words may mean beside a topic's plain rule: their Ernies instead of ours."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from knowledge.advice import Advice
from knowledge.general_rule import GeneralRule, load_table, read_rule
from knowledge.situation import Situation
from knowledge.vocabulary import Topic

_THEY = r"(?:they|them|their|theirs|he|she|his|opponents?|these two|those two|those guys|us)"

_DEFENDS = re.compile(
    r"\b(?:stop|stops|stopping|defend\w*|defen[cs]e|handle|prevent|avoid|beat|counter|against|"
    r"deal with|protect|return a|answer|cover)\b"
)
_WE_ERNIE = re.compile(
    r"\b(?:i|we)\b(?: \w+){0,3} (?:ern\w*|jump|go (?:round|around)|hit|try)|\b(?:my|our) ern|"
    r"\bwhen (?:to|do|should|can)\b(?! they| he| she)"
)
_THEY_ERNIE = re.compile(
    rf"\b{_THEY}\b|\bern(?:ie|e)[sd]\b|\berneing\b|\bgoes (?:round|around)\b|\bjumps\b"
)
_POST = re.compile(r"\b(?:post|atp|round the net|around the net)\b")


def meaning(situation: Situation) -> str | None:
    """The entry of other_meanings.toml that the words ask for; None for the topic's plain rule."""
    words = " ".join(re.findall(r"[\w%]+", situation.asked.words.casefold().replace("'", "")))
    return _ernie(words, situation) if situation.topic is Topic.ERNIE_OR_POST else None


def _ernie(words: str, situation: Situation) -> str | None:
    theirs = bool(_DEFENDS.search(words)) or (
        not _WE_ERNIE.search(words)
        and (bool(_THEY_ERNIE.search(words)) or _names_them_first(words, situation))
    )
    if not theirs:
        return None
    return "their_post" if _POST.search(words) else "their_ernie"


def _names_them_first(words: str, situation: Situation) -> bool:
    """Whether one of them is who does it: "okafor lob" rather than "lob okafor"."""
    return any(words.startswith(one.name.casefold()) for one in situation.theirs if one.name)


def advise(situation: Situation, found: str, *, assumed: str) -> Advice:
    """The answer to that meaning."""
    rule = other_meanings()[found]
    return Advice(
        topic=situation.topic,
        call=rule.call,
        reasons=rule.reasons,
        unless=rule.unless,
        caution=rule.caution,
        assumed=assumed,
    )


@cache
def other_meanings() -> Mapping[str, GeneralRule]:
    """The entries by name; RuleDataError if one does not fit."""
    table = load_table("knowledge.tactics", "other_meanings.toml")
    return MappingProxyType(
        {name: read_rule(row) for name, row in table.items() if isinstance(row, dict)}
    )
