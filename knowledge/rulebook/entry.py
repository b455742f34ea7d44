"""A rule as data: what holds without and with a referee, where it stands, how it is asked for."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache

from knowledge.advice import CALL_LIMIT, MAX_REASONS, Reason
from knowledge.dataclass import dataclass
from knowledge.general_rule import LINE_LIMIT, RuleDataError, fitting, load_entries, optional_line
from knowledge.sources import COMMON_PRACTICE, Source, rule_of_edition

PARTS = ("kitchen", "serve", "calls", "play", "breaks", "score", "court")
"""The data files, in the order in which a tie between two rules is settled."""

EDITIONS = ("2025", "2026", "2024", "2022", "2021-22", "2020-24", "2018")
"""Editions quoted. A range stands where the copy read names no year, or where the text stayed."""

LABEL_LIMIT = 24
"""Characters of a rule's name, so that it fits a button."""

FEWEST_FORMS = 3
"""Ways of asking that every rule needs, so that common words weigh little."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ruling:
    """What holds, why, and the one thing to do now."""

    call: str
    reasons: tuple[Reason, ...]
    now: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """An entry of the rulebook.

    `officiated` is the ruling with a referee where it differs from `ruling`, the one without.
    `asked` are ways of asking for it; one of `subject` has to be said, or it is hardly meant.
    `covers` names the statements of the rulebook that it answers.
    """

    name: str
    ruling: Ruling
    officiated: Ruling | None
    asked: tuple[str, ...]
    subject: frozenset[str] = frozenset()
    covers: tuple[str, ...] = ()
    unless: str | None = None
    caution: str | None = None


@cache
def rules() -> tuple[Rule, ...]:
    """All entries; RuleDataError if one does not fit, or two have one name."""
    read = [
        read_entry(row)
        for part in PARTS
        for row in load_entries("knowledge.rulebook", f"{part}.toml")
    ]
    names = [rule.name for rule in read]
    twice = {name for name in names if names.count(name) > 1}
    if twice:
        raise RuleDataError(f"two rules of one name: {sorted(twice)}")
    return tuple(read)


@cache
def _by_name() -> Mapping[str, Rule]:
    return {rule.name: rule for rule in rules()}


def rule_named(name: str) -> Rule | None:
    """The entry of that name; None for any other text."""
    return _by_name().get(name)


def read_entry(row: Mapping[str, object]) -> Rule:
    """A rule from its data; RuleDataError for one that does not fit a phone or lacks something."""
    unknown = set(row) - _KEYS
    if unknown:
        raise RuleDataError(f"an entry has no {sorted(unknown)}")
    ruling = _read_ruling(row)
    asked = _texts(row, "asked")
    if len(set(asked)) < FEWEST_FORMS:
        raise RuleDataError(f"at least {FEWEST_FORMS} ways of asking, not {asked}")
    return Rule(
        name=fitting(row.get("id"), LABEL_LIMIT),
        ruling=ruling,
        officiated=_with_referee(row.get("ref"), ruling),
        asked=asked,
        subject=frozenset(_texts(row, "subject")),
        covers=_texts(row, "covers"),
        unless=optional_line(row, "unless"),
        caution=optional_line(row, "caution"),
    )


_KEYS = {"id", "call", "reasons", "now", "ref", "asked", "subject", "covers", "unless", "caution"}


def _read_ruling(row: Mapping[str, object]) -> Ruling:
    return Ruling(
        call=fitting(row.get("call"), CALL_LIMIT),
        reasons=_reasons(row.get("reasons")),
        now=fitting(row.get("now"), LINE_LIMIT),
    )


def _with_referee(said: object, ruling: Ruling) -> Ruling | None:
    """The ruling with what a referee changes of it."""
    if said is None:
        return None
    if not isinstance(said, dict) or not said or set(said) - {"call", "reasons", "now"}:
        raise RuleDataError(f"a referee changes call, reasons or now, not {said!r}")
    return replace(
        ruling,
        call=fitting(said.get("call", ruling.call), CALL_LIMIT),
        reasons=_reasons(said["reasons"]) if "reasons" in said else ruling.reasons,
        now=fitting(said.get("now", ruling.now), LINE_LIMIT),
    )


def _reasons(said: object) -> tuple[Reason, ...]:
    if not isinstance(said, list) or not 0 < len(said) <= MAX_REASONS:
        raise RuleDataError(f"1 to {MAX_REASONS} reasons, not {said!r}")
    return tuple(_reason(one) for one in said)


def _reason(said: object) -> Reason:
    if not isinstance(said, dict) or set(said) != {"text", "source"}:
        raise RuleDataError(f"a reason has a text and a source: {said!r}")
    return Reason(text=fitting(said["text"], LINE_LIMIT), source=read_source(str(said["source"])))


def read_source(said: str) -> Source:
    """Where a statement stands: "2025 10.A", "2025 section 9", or "practice".

    A number is given only where that edition's own text was read; "from memory" marks the rest.
    """
    if said == "practice":
        return COMMON_PRACTICE
    edition, _, place = said.partition(" ")
    if edition not in EDITIONS or not place:
        raise RuleDataError(f"a source is an edition with a place, or practice, not {said!r}")
    return rule_of_edition(edition, place)


def _texts(row: Mapping[str, object], key: str) -> tuple[str, ...]:
    said = row.get(key, [])
    if not isinstance(said, list) or not all(isinstance(text, str) and text for text in said):
        raise RuleDataError(f"{key} is a list of texts, not {said!r}")
    return tuple(said)
