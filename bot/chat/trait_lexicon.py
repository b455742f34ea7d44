"""The lexicon of notes: what words say of a player, loaded from data and checked at load time."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from enum import StrEnum
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from bot.chat.phrase import PhraseBook
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.vocabulary import TRAITS, Tag, Trait, TraitKind, Value, Wing


class LexiconError(ValueError):
    """The lexicon names a value that its trait does not take."""


NAME = "@"
"""Stands in the line for every word of a name, so that no name is read as a trait."""


class Role(StrEnum):
    """What a phrase does in a note."""

    DIRECT = "direct"
    HABIT = "habit"
    NOUN = "noun"
    STROKE = "stroke"
    WING = "wing"
    GOOD = "good"
    BAD = "bad"
    OFTEN = "often"
    RARELY = "rarely"
    NOT = "not"
    NO_NEGATION = "no_negation"
    FORMER = "former"
    MORE = "more"
    LESS = "less"
    HEDGE = "hedge"
    HEARSAY = "hearsay"
    BODY = "body"
    TAG = "tag"


class Family(StrEnum):
    """A stroke played on either wing."""

    DINK = "dink"
    DRIVE = "drive"
    VOLLEY = "volley"
    COUNTER = "counter"


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
    family: Family | None = None
    wings: tuple[Wing, ...] = ()


TRAIT_OF_STROKE: Mapping[tuple[Family, Wing], Trait] = MappingProxyType(
    {
        (Family.DINK, Wing.BACKHAND): Trait.BACKHAND_DINK,
        (Family.DINK, Wing.FOREHAND): Trait.FOREHAND_DINK,
        (Family.DRIVE, Wing.BACKHAND): Trait.BACKHAND_DRIVE,
        (Family.DRIVE, Wing.FOREHAND): Trait.FOREHAND_DRIVE,
        (Family.VOLLEY, Wing.BACKHAND): Trait.BACKHAND_VOLLEY,
        (Family.VOLLEY, Wing.FOREHAND): Trait.FOREHAND_VOLLEY,
        (Family.COUNTER, Wing.BACKHAND): Trait.COUNTER_BACKHAND,
        (Family.COUNTER, Wing.FOREHAND): Trait.COUNTER_FOREHAND,
    }
)

BOTH = (Wing.BACKHAND, Wing.FOREHAND)

WINGLESS: Mapping[Family, tuple[Trait, ...]] = MappingProxyType(
    {
        Family.DINK: (Trait.BACKHAND_DINK, Trait.FOREHAND_DINK),
        Family.DRIVE: (Trait.FOREHAND_DRIVE,),
        Family.VOLLEY: (Trait.BACKHAND_VOLLEY, Trait.FOREHAND_VOLLEY),
        Family.COUNTER: (Trait.COUNTER,),
    }
)
"""What a stroke without a wing means: "drives" are forehands, "dinks" are both."""


@cache
def traits_data() -> Mapping[str, Any]:
    """The lexicon of notes as it is written, which the list of private words shares."""
    text = files("bot.chat.data").joinpath("traits.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


@cache
def trait_phrases() -> PhraseBook[Sense]:
    """Every phrase of traits.toml with its sense."""
    data = traits_data()
    phrases = ((_IN_FORMS.sub(r"{\1}", phrase), sense) for phrase, sense in _phrases(data))
    return PhraseBook(phrases, sets=data["sets"] | {"n": _NUMBERS})


_IN_FORMS = regex(
    r"(?<![{\w])(doesnt|dont|cant|wont|isnt|didnt|hates|loves|struggles|handles)(?![}\w])"
)
"""In a phrase, `doesnt` stands for "does not" too, and `hates` for "hate" of two players."""


_NUMBERS = (
    "(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty"
    "|hundred|half|0|1|2|3|4|5|6|7|8|9|10|11|12|13|14|15|16|17|18|19|20|30|40|50|100)"
)


def _phrases(data: Mapping[str, Any]) -> Iterator[tuple[str, Sense]]:
    for role in (Role.DIRECT, Role.NOUN, Role.HABIT):
        for entry in data[role]:
            sense = sense_of_entry(role, entry)
            yield from ((phrase, sense) for phrase in entry["words"])
    for entry in data[Role.STROKE]:
        sense = Sense(role=Role.STROKE, family=Family(entry["family"]))
        yield from ((phrase, sense) for phrase in entry["words"])
    for wing, phrases in data[Role.WING].items():
        wings = BOTH if wing == "both" else (Wing(wing),)
        yield from ((phrase, Sense(role=Role.WING, wings=wings)) for phrase in phrases)
    for role in (Role.GOOD, Role.BAD):
        for phrase in data["judgement"][role]["adjectives"]:
            yield phrase, Sense(role=role)
        for phrase in data["judgement"][role]["verbs"]:
            yield phrase, Sense(role=role, is_verb=True)
    for role, phrases in _plain(data):
        yield from ((phrase, Sense(role=role)) for phrase in phrases)
    for tag, phrases in data["tags"].items():
        yield from ((phrase, Sense(role=Role.TAG, tag=Tag(tag))) for phrase in phrases)


def sense_of_entry(role: Role, entry: Mapping[str, Any]) -> Sense:
    """The sense of one entry of the file; LexiconError for a value the trait does not take."""
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
    yield Role.FORMER, data["negation"]["former"]
    yield Role.MORE, data["intensity"]["more"]
    yield Role.LESS, data["intensity"]["less"]
    for role in (Role.HEDGE, Role.HEARSAY, Role.BODY):
        yield role, data[role]["words"]
