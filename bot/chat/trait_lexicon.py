"""The lexicon of notes: what words say of a player, loaded from data and checked at load time."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import Any

from bot.chat.phrase import PhraseBook
from knowledge.vocabulary import TRAITS, Tag, Trait, TraitKind, Value


class LexiconError(ValueError):
    """The lexicon names a value that its trait does not take."""


class Role(StrEnum):
    """What a phrase does in a note."""

    DIRECT = "direct"
    HABIT = "habit"
    NOUN = "noun"
    GOOD = "good"
    BAD = "bad"
    OFTEN = "often"
    RARELY = "rarely"
    NOT = "not"
    NO_NEGATION = "no_negation"
    MORE = "more"
    LESS = "less"
    HEDGE = "hedge"
    HEARSAY = "hearsay"
    BODY = "body"
    TAG = "tag"


@dataclass(frozen=True, slots=True, kw_only=True)
class Sense:
    """What a phrase means: its role, and with it the trait, value or tag.

    `is_verb` marks a judgement that says what happens ("misses"): its denial asserts the
    opposite, while "not weak" only denies.
    """

    role: Role
    trait: Trait | None = None
    value: Value | None = None
    tag: Tag | None = None
    is_verb: bool = False


@cache
def trait_phrases() -> PhraseBook[Sense]:
    """Every phrase of traits.toml with its sense."""
    text = files("bot.chat.data").joinpath("traits.toml").read_text(encoding="utf-8")
    data = tomllib.loads(text)
    return PhraseBook(_phrases(data), sets=data["sets"] | {"n": _NUMBERS})


_NUMBERS = (
    "(one|two|three|four|five|six|seven|eight|nine|ten|1|2|3|4|5|6|7|8|9|10|20|100|twenty|hundred)"
)


def _phrases(data: Mapping[str, Any]) -> Iterator[tuple[str, Sense]]:
    for role in (Role.DIRECT, Role.NOUN, Role.HABIT):
        for entry in data[role]:
            sense = _trait_sense(role, entry)
            yield from ((phrase, sense) for phrase in entry["words"])
    for role in (Role.GOOD, Role.BAD):
        for phrase in data["judgement"][role]["adjectives"]:
            yield phrase, Sense(role=role)
        for phrase in data["judgement"][role]["verbs"]:
            yield phrase, Sense(role=role, is_verb=True)
    for role, phrases in _plain(data):
        yield from ((phrase, Sense(role=role)) for phrase in phrases)
    for tag, phrases in data["tags"].items():
        yield from ((phrase, Sense(role=Role.TAG, tag=Tag(tag))) for phrase in phrases)


def _trait_sense(role: Role, entry: Mapping[str, Any]) -> Sense:
    trait = Trait(entry["trait"])
    value = Value(entry["value"]) if "value" in entry else None
    takes = TRAITS[trait].values
    if role is Role.DIRECT and value not in takes:
        raise LexiconError(f"{trait} takes {takes}, not {value}")
    if role is Role.HABIT and TRAITS[trait].kind is not TraitKind.HABIT:
        raise LexiconError(f"{trait} is not a habit")
    return Sense(role=role, trait=trait, value=value)


def _plain(data: Mapping[str, Any]) -> Iterator[tuple[Role, list[str]]]:
    yield Role.OFTEN, data["frequency"]["often"]
    yield Role.RARELY, data["frequency"]["rarely"]
    yield Role.NOT, data["negation"]["words"]
    yield Role.NO_NEGATION, data["negation"]["not_negation"]
    yield Role.MORE, data["intensity"]["more"]
    yield Role.LESS, data["intensity"]["less"]
    for role in (Role.HEDGE, Role.HEARSAY, Role.BODY):
        yield role, data[role]["words"]
