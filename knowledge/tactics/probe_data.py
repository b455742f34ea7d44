"""Probes as data: what each tells of a player, how to look for it and with which ball."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from knowledge.dataclass import dataclass
from knowledge.general_rule import LINE_LIMIT, RuleDataError, fitting, load_entries, optional_line
from knowledge.said_phrases import Phrases
from knowledge.vocabulary import TRAITS, Trait, Value


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerTap:
    """A button that notes what a probe showed."""

    label: str
    trait: Trait
    value: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Probe:
    """A thing to find out: `look` for it without playing (None: only play shows it), or `ball`."""

    id: str
    noun: str
    traits: tuple[Trait, ...]
    look: str | None
    ball: str
    taps: tuple[AnswerTap, ...]


@cache
def probes() -> tuple[Probe, ...]:
    """All probes; RuleDataError if a line does not fit, or two share an id or a trait."""
    read = tuple(_probe(row) for row in _rows())
    if len({one.id for one in read}) < len(read):
        raise RuleDataError("probe.toml has two probes of one id")
    traits = [trait for one in read for trait in one.traits]
    twice = {trait for trait in traits if traits.count(trait) > 1}
    if twice:
        raise RuleDataError(f"probe.toml tells of {sorted(twice)} twice")
    return read


@cache
def asked_for() -> Phrases:
    """How a question asks for each probe."""
    return Phrases(entries={str(row["id"]): tuple(map(str, row["says"])) for row in _rows()})


def _rows() -> tuple[Mapping[str, list[object]], ...]:
    return load_entries("knowledge.tactics", "probe.toml")  # type: ignore[return-value]


def _probe(row: Mapping[str, object]) -> Probe:
    traits, taps = row.get("traits"), row.get("taps")
    if not isinstance(traits, list) or not isinstance(taps, list):
        raise RuleDataError(f"a probe needs traits and taps: {row}")
    return Probe(
        id=fitting(row.get("id"), LINE_LIMIT),
        noun=fitting(row.get("noun"), LINE_LIMIT),
        traits=tuple(Trait(trait) for trait in traits),
        look=optional_line(row, "look"),
        ball=fitting(row.get("ball"), LINE_LIMIT),
        taps=tuple(_tap(*map(str, tap)) for tap in taps),
    )


def _tap(label: str, trait: str, value: str) -> AnswerTap:
    if Value(value) not in TRAITS[Trait(trait)].values:
        raise RuleDataError(f"{trait} takes no {value}")
    return AnswerTap(label=label, trait=Trait(trait), value=Value(value))
