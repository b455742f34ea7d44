""" "They do X, what now": one call, a change for each partner, the sign it works, and plan B."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from knowledge.advice import CALL_LIMIT, Advice, Choice, Reason
from knowledge.general_rule import LINE_LIMIT, fitting, load_entries, overlap, read_words
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.vocabulary import Topic


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """A symptom and its answer; `you` plays the ball, `partner` is the other one."""

    words: tuple[str, ...]
    call: str
    you: str
    partner: str
    sign: str
    plan_b: str


NO_PATTERN = Pattern(
    words=(),
    call="Slow it to the middle; see which ball hurts.",
    you="Low, soft, middle: nobody bangs that",
    partner="Partner: watch who hits it and from where",
    sign="Sign: you can name the ball that hurts",
    plan_b="Tell me that ball and I give one answer.",
)
"""Where the words name no symptom that we know."""


def advise(situation: Situation, *, assumed: str | None = None) -> Advice:
    """The answer to the symptom that the words name."""
    found = find_pattern(situation.asked.words) or NO_PATTERN
    lines = (found.you, found.partner, found.sign)
    return Advice(
        topic=Topic.ANSWER_PATTERN,
        call=found.call,
        reasons=tuple(Reason(text=line, source=COMMON_PRACTICE) for line in lines),
        unless=found.plan_b,
        assumed=assumed,
        choices=(Choice(label="still bad", topic=Topic.ADJUST),) if found is not NO_PATTERN else (),
    )


def find_pattern(words: str) -> Pattern | None:
    """The symptom that covers most of the words, the earlier one if equal; None if none does."""
    best = max(patterns(), key=lambda pattern: overlap(pattern.words, words))
    return best if overlap(best.words, words) else None


@cache
def patterns() -> tuple[Pattern, ...]:
    """All symptoms; RuleDataError if a line does not fit."""
    return tuple(_pattern(row) for row in load_entries("knowledge.tactics", "patterns.toml"))


def _pattern(row: Mapping[str, object]) -> Pattern:
    return Pattern(
        words=read_words(row),
        call=fitting(row.get("call"), CALL_LIMIT),
        you=fitting(row.get("you"), LINE_LIMIT),
        partner=fitting(row.get("partner"), LINE_LIMIT),
        sign=fitting(row.get("sign"), LINE_LIMIT),
        plan_b=fitting(row.get("plan_b"), LINE_LIMIT),
    )
