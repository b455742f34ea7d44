"""What the models of entries learn from: ways of asking in our data, and lines of writers."""

from __future__ import annotations

import hashlib
import json
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from rules_asked import asked_lines
from topic_examples import writer_examples

from knowledge.general_rule import read_forms
from knowledge.reading.entry_model import NONE, Kind
from knowledge.rulebook.forms import ELSEWHERE, forms_by_rule
from knowledge.vocabulary import Topic

TESTS = Path(__file__).parents[1]
ENTRY_WRITERS = TESTS / "train" / "entry_writers"

WRITERS = ("odile", "jax", "marlene", "desmond")
"""Each is left out once for the figures."""

OURS = "ours"
"""Who wrote the forms in our data."""

OWN = "own"
"""Who wrote the forms that stand in a rule's entry itself: each has to find its rule."""

OTHERS = "others"
OTHER_LINES = 300
"""Lines of the practice writers on other topics, spread evenly over all of them: no entry answers
them."""

TOPIC = {
    Kind.RULES: Topic.RULES_QUESTION,
    Kind.SYMPTOMS: Topic.ANSWER_PATTERN,
    Kind.WEATHER: Topic.WEATHER_OR_BODY,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """A message, the entry that answers it (or NONE) and others that do as well."""

    kind: Kind
    text: str
    id: str
    writer: str
    also: tuple[str, ...] = ()

    @property
    def right(self) -> frozenset[str]:
        return frozenset({self.id, *self.also})


def examples(kind: Kind) -> list[Example]:
    """All examples of a kind, each text once."""
    ours = {Kind.RULES: _rules, Kind.SYMPTOMS: _symptoms, Kind.WEATHER: _weather}[kind]()
    found = [*ours, *_written(kind), *_others(kind)]
    return list({one.text: one for one in reversed(found)}.values())[::-1]


def digest(kind: Kind) -> str:
    """A hash of what a model learns: one that was trained on other lines is stale."""
    said = [(one.text, one.id, one.also, one.writer) for one in examples(kind)]
    return hashlib.sha256(json.dumps(said).encode()).hexdigest()


def _written(kind: Kind) -> Iterator[Example]:
    for name in (*WRITERS, f"labelled.{kind}"):
        path = ENTRY_WRITERS / f"{name}.jsonl"
        for line in path.read_text(encoding="utf-8").splitlines() if path.exists() else ():
            row = json.loads(line)
            if row["kind"] == kind:
                yield Example(
                    kind=kind,
                    text=row["text"],
                    id=row["id"],
                    writer=row.get("writer", name),
                    also=tuple(row.get("also", ())),
                )


def _others(kind: Kind) -> Iterator[Example]:
    topic = TOPIC[kind]
    lines = [one for one in writer_examples() if topic not in one.right and one.after is None]
    for one in lines[:: len(lines) // OTHER_LINES][:OTHER_LINES]:
        yield Example(kind=kind, text=one.text, id=NONE, writer=OTHERS)


def _rules() -> Iterator[Example]:
    for name, forms in forms_by_rule().items():
        for form in forms:
            id = NONE if name == ELSEWHERE else name
            writer = OWN if form.writer is None else OURS
            yield Example(kind=Kind.RULES, text=form.text, id=id, writer=writer)
    for line in asked_lines():
        if not line.before:
            first, *also = line.rules or (NONE,)
            yield Example(
                kind=Kind.RULES, text=line.text, id=first, writer=line.writer, also=tuple(also)
            )


def _symptoms() -> Iterator[Example]:
    said = dict(read_forms("pattern_forms.toml"))
    for id, case in _cases("patterns.toml").items():
        said[id] = (*said.get(id, ()), *(one for one in case["said"] if isinstance(one, str)))
    for id, forms in said.items():
        for form in forms:
            yield Example(kind=Kind.SYMPTOMS, text=form, id=id, writer=OURS)


def _weather() -> Iterator[Example]:
    said = dict(read_forms("weather_forms.toml"))
    for id, case in _cases("body_complaints.toml").items():
        if id in said:
            said[id] = (*said[id], *(one for one in case["said"] if isinstance(one, str)))
    for id, forms in said.items():
        for form in forms:
            yield Example(kind=Kind.WEATHER, text=form, id=id, writer=OURS)
    for row in _cases("weather_asked.toml")["case"]:
        first, *also = [id for id in row["right"] if id in said] or [None]
        if first is not None:
            yield Example(
                kind=Kind.WEATHER, text=row["text"], id=first, writer=row["voice"], also=tuple(also)
            )


def _cases(name: str) -> dict[str, Any]:
    return tomllib.loads((TESTS / "cases" / name).read_text(encoding="utf-8"))
