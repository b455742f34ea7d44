"""The symptom that a message is likest to where no phrase of one stands in it: a guess."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache

from knowledge.general_rule import UNTELLING, RuleDataError, load_table
from knowledge.nearest_form import NearestForm
from knowledge.tactics.symptoms import Symptom, phrases, symptoms

NO_IDEAS = frozenset({"they", "their", "us", "our", "in", "one_of_us", "every"})
"""Sets of words that stand in every message."""

FIRST_WORDS = 4
"""Words of a set that stand for it in a phrase spelled out."""


def likest_symptom(words: str) -> Symptom | None:
    """The symptom meant in all likelihood; None where no way of telling is like enough."""
    meant = _finder().meant(words)
    return next((one for one in symptoms() if one.id == meant), None)


@cache
def _finder() -> NearestForm:
    return finder(read_forms("pattern_forms.toml"))


def finder(forms: Mapping[str, Sequence[str]]) -> NearestForm:
    """Symptoms by these ways of telling and by their phrases."""
    known = phrases()
    spelled = {
        id: " . ".join(_spelled(phrase, known.sets) for phrase in said)
        for id, said in known.entries.items()
    }
    return NearestForm(
        forms={id: (*said, spelled[id]) for id, said in forms.items()},
        untelling=UNTELLING,
        ideas={name: words for name, words in known.sets.items() if name not in NO_IDEAS},
    )


def read_forms(name: str) -> dict[str, tuple[str, ...]]:
    """The ways of telling of a data file; RuleDataError where they are no lists."""
    table = load_table("knowledge.tactics", name)
    read = {id: tuple(said) for id, said in table.items() if isinstance(said, list)}
    if len(read) != len(table):
        raise RuleDataError(f"{name} has a list of texts for each entry")
    return read


def _spelled(phrase: str, sets: Mapping[str, Sequence[str]]) -> str:
    """A phrase as plain words: of its sets and choices all that it may have."""
    choices = [
        one for part in phrase.split() if part != ".." for one in part.lstrip("?").split("|")
    ]
    return " ".join(
        " ".join(sets[one[1:-1]][:FIRST_WORDS])
        if one.startswith("{")
        else one.replace("_", " ").replace("*", "")
        for one in choices
    )
