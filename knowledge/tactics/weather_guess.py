"""The entry on weather or bodies that a message is likest to where no word of one stands in it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache

from knowledge.general_rule import UNTELLING
from knowledge.nearest_form import NearestForm
from knowledge.tactics.symptom_guess import read_forms


def likest_entry(words: str, known: Mapping[str, Sequence[str]]) -> str | None:
    """The name of the entry meant in all likelihood; `known` are the words that pick each."""
    return _finder(tuple((id, tuple(said)) for id, said in known.items())).meant(words)


@cache
def _finder(known: tuple[tuple[str, tuple[str, ...]], ...]) -> NearestForm:
    return finder(read_forms("weather_forms.toml"), dict(known))


def finder(forms: Mapping[str, Sequence[str]], known: Mapping[str, Sequence[str]]) -> NearestForm:
    """Entries by these ways of telling and by the words that pick them."""
    return NearestForm(
        forms={id: (*said, " . ".join(known[id])) for id, said in forms.items()},
        untelling=UNTELLING,
    )
