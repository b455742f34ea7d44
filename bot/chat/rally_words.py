"""The words of a rally told at length, loaded from data and checked at load time."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from functools import cache
from importlib.resources import files
from typing import Any

from bot.chat.common_words import common_words
from bot.chat.lexicon import Lexicon
from bot.chat.words import words_in
from knowledge.vocabulary import Stroke, Wing

_CONCEPTS: Mapping[str, frozenset[str]] = {
    "nouns": frozenset(Stroke),
    "verbs": frozenset(Stroke),
    "endings": frozenset(
        ["winner", "ace", "error", "wide", "popup", "too_high", "forced", "jammed", "unforced"]
    ),
    "wings": frozenset(Wing),
    "aims": words_in(
        "t body middle sideline soft paddle_hip other_hip right_hip left_hip hip chest"
    ),
    "depth": frozenset(["deep", "short"]),
    "forward": frozenset(["yes", "no"]),
    "acts": frozenset(["poach", "hit", "let"]),
    "skipped": frozenset(["owned", "rally"]),
}
"""What the data may speak of; every concept is `table.name`."""


class RallyWordsError(ValueError):
    """A concept that nothing reads, a list without anything in it, or a form that is no words."""


@cache
def rally_lexicon() -> Lexicon:
    """Every form with its concept, forgiving of slips."""
    data = _data()
    forms = {
        f"{table}.{name}": spellings
        for table in _CONCEPTS
        for name, spellings in data[table].items()
    }
    filling = data["filling"]
    # A word of everyday English is no slip: "gassed" is tired, not passed.
    return Lexicon(forms, guard=(*filling["guard"], *filling["words"], *common_words()))


@cache
def link_words(key: str) -> frozenset[str]:
    """`at_whom`, `of_whose` or `of_whose_error`: what a name after such a word is."""
    return frozenset(_data()["links"][key])


@cache
def passive_words(key: str) -> frozenset[str]:
    """`beside`, `beaten` or `of_a_ball`: what is done to somebody, and what makes it so."""
    return frozenset(_data()["passive"][key])


@cache
def filling_words() -> frozenset[str]:
    """Words of a rally line that carry nothing."""
    return frozenset(_data()["filling"]["words"])


@cache
def _data() -> Mapping[str, Any]:
    text = files("bot.chat.data").joinpath("rally_words.toml").read_text(encoding="utf-8")
    data = tomllib.loads(text)
    check_rally_words(data)
    return data


def check_rally_words(data: Mapping[str, Mapping[str, Sequence[str]]]) -> None:
    """RallyWordsError for data that could not be read as meant."""
    for table, known in _CONCEPTS.items():
        unknown = set(data[table]) - known
        if unknown:
            raise RallyWordsError(f"rally_words.toml: nothing reads {table}: {sorted(unknown)}")
    for table, lists in data.items():
        for name, forms in lists.items():
            wrong = [form for form in forms if not form or form != " ".join(form.lower().split())]
            if wrong or not forms:
                raise RallyWordsError(
                    f"rally_words.toml: {table}.{name} holds {wrong or 'nothing'}"
                )
