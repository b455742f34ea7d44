"""More ways of asking for each rule, as imagined people of different kinds type or dictate them."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from functools import cache

from knowledge.dataclass import dataclass
from knowledge.general_rule import RuleDataError, load_table
from knowledge.rulebook.entry import PARTS, rules

ELSEWHERE = "elsewhere"
"""Name that stands for questions which no entry answers."""


class Writer(StrEnum):
    """Who is imagined to ask."""

    TERSE = "terse"
    SLIPS = "slips"
    DICTATED = "dictated"
    ABROAD = "abroad"
    COACH = "coach"
    TOLD = "told"
    POLITE = "polite"
    LOUD = "loud"


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """One way of asking; no writer where it stands in the entry itself."""

    text: str
    writer: Writer | None = None


Forms = Mapping[str, tuple[Form, ...]]


@cache
def forms_by_rule() -> Forms:
    """By the names of all rules and ELSEWHERE; RuleDataError if the data names another."""
    own = {rule.name: tuple(Form(text=text) for text in rule.asked) for rule in rules()}
    tables = [
        load_table("knowledge.rulebook", f"forms/{part}.toml") for part in (*PARTS, ELSEWHERE)
    ]
    written = {name: read_forms(name, said) for table in tables for name, said in table.items()}
    unknown = set(written) ^ {*own, ELSEWHERE}
    if unknown:
        raise RuleDataError(f"forms for no rule, or a rule without forms: {sorted(unknown)}")
    read = {name: own.get(name, ()) + forms for name, forms in written.items()}
    texts = [form.text for forms in read.values() for form in forms]
    twice = {text for text in texts if texts.count(text) > 1}
    if twice:
        raise RuleDataError(f"asked in one way for two rules, or twice: {sorted(twice)}")
    return read


def read_forms(name: str, said: object) -> tuple[Form, ...]:
    """A rule's forms from its table of writers."""
    if not isinstance(said, dict) or set(said) - set(Writer):
        raise RuleDataError(f"{name}: forms stand under a writer ({', '.join(Writer)})")
    return tuple(
        Form(text=str(text), writer=Writer(writer))
        for writer, many in said.items()
        for text in many
    )
