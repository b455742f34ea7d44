"""General rules for topics without an engine of their own yet: data, checked at load."""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType

from knowledge.advice import CALL_LIMIT, Advice, Choice, Reason
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE, Source, SourceKind, computed, rule
from knowledge.vocabulary import Topic

GENERAL_NOTE = "General rule: I don't work this one out from your notes yet."
"""Said with every answer from this module that notes could sharpen."""

LINE_LIMIT = 50
"""Characters of a reason or an `unless`: about a line and a bit on a phone."""

MAX_REASONS = 3

OWN_ENGINE = frozenset(
    {
        Topic.COVER_MIDDLE,
        Topic.AIM_DINK,
        Topic.WHERE_TO_STAND,
        Topic.OPPONENT_REPORT,
        Topic.GAME_PLAN,
        Topic.CUE,
    }
)
"""Topics answered elsewhere."""

PICKED_ELSEWHERE = frozenset(
    {
        Topic.RULES_QUESTION,
        Topic.ANSWER_PATTERN,
        Topic.WEATHER_OR_BODY,
        Topic.SMALLTALK_OR_UNKNOWN,
    }
)
"""Topics with several answers of which the words pick one."""


class GeneralRuleError(ValueError):
    """The data file lacks a topic, or has a line too long for a phone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GeneralRule:
    """What holds where nothing about these people is used."""

    call: str
    reasons: tuple[Reason, ...]
    unless: str | None = None


def advise(situation: Situation) -> Advice:
    """The general rule of the situation's topic."""
    picked = _PICKERS.get(situation.topic)
    if picked is not None:
        return picked(situation)
    return _advice(situation.topic, general_rules()[situation.topic])


@cache
def general_rules() -> Mapping[Topic, GeneralRule]:
    """All general rules; GeneralRuleError names what the data lacks."""
    text = files("knowledge.tactics").joinpath("general_rules.toml").read_text(encoding="utf-8")
    rules = {Topic(name): read_rule(row) for name, row in tomllib.loads(text).items()}
    missing = set(Topic) - OWN_ENGINE - PICKED_ELSEWHERE - set(rules)
    if missing:
        raise GeneralRuleError(f"general_rules.toml lacks {sorted(missing)}")
    return MappingProxyType(rules)


def read_rule(row: Mapping[str, object]) -> GeneralRule:
    """A rule from its data; GeneralRuleError for one that does not fit a phone."""
    reasons = row.get("reasons", [])
    if not isinstance(reasons, list) or len(reasons) > MAX_REASONS:
        raise GeneralRuleError(f"at most {MAX_REASONS} reasons, not {reasons}")
    unless = row.get("unless")
    return GeneralRule(
        call=_fitting(str(row["call"]), CALL_LIMIT),
        reasons=tuple(read_reason(reason) for reason in reasons),
        unless=None if unless is None else _fitting(str(unless), LINE_LIMIT),
    )


def read_reason(said: object) -> Reason:
    """A reason from its data: a text of common practice, or a text with its source."""
    if isinstance(said, str):
        return Reason(text=_fitting(said, LINE_LIMIT), source=COMMON_PRACTICE)
    if isinstance(said, dict) and {"text", "source"} == set(said):
        text = _fitting(str(said["text"]), LINE_LIMIT)
        return Reason(text=text, source=read_source(str(said["source"])))
    raise GeneralRuleError(f"a reason is a text or has text and source, not {said!r}")


def read_source(said: str) -> Source:
    """A source from its data: "rule 5.B", "computed MODEL" or "published CITATION"."""
    kind, _, citation = said.partition(" ")
    if kind == "rule" and citation:
        return rule(citation)
    if kind == "computed" and citation:
        return computed(citation)
    if kind == "published" and citation:
        return Source(kind=SourceKind.PUBLISHED, citation=citation)
    raise GeneralRuleError(f"a source is rule, computed or published, not {said!r}")


def _fitting(text: str, limit: int) -> str:
    if not text or len(text) > limit:
        raise GeneralRuleError(f"{len(text)} characters, 1 to {limit} fit: {text!r}")
    return text


def _advice(topic: Topic, found: GeneralRule) -> Advice:
    return Advice(
        topic=topic,
        call=found.call,
        reasons=found.reasons,
        unless=found.unless,
        assumed=GENERAL_NOTE,
    )


def _smalltalk(situation: Situation) -> Advice:
    """A polite line and an example."""
    return Advice(
        topic=situation.topic,
        call="Ask me about the match: I'm here for that.",
        assumed='For example: "who covers the middle?"',
        choices=(
            Choice(label="who covers the middle?", topic=Topic.COVER_MIDDLE),
            Choice(label="game plan", topic=Topic.GAME_PLAN),
        ),
    )


_PICKERS: Mapping[Topic, Callable[[Situation], Advice]] = MappingProxyType(
    {Topic.SMALLTALK_OR_UNKNOWN: _smalltalk}
)
