"""Symptoms, "they do X", as data: how each is said, what to do, and what of notes bears on it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from functools import cache

from knowledge.advice import CALL_LIMIT, Reason
from knowledge.dataclass import dataclass
from knowledge.general_rule import (
    LINE_LIMIT,
    RuleDataError,
    fitting,
    load_entries,
    load_table,
    optional_line,
    read_reason,
)
from knowledge.reading.entry_model import SHOWN, Band, EntryModel, Kind, Likely, entry_model
from knowledge.regex import regex
from knowledge.said_phrases import Hit, Phrases
from knowledge.situation import Situation
from knowledge.tactics.at_the_body import AT_THE_BODY, tells_only_of_a_body
from knowledge.vocabulary import TRAITS, Trait, Value

PLAN_B = "Plan B: "

ONE_TELLING_WORDS = 6
"""Words apart so few, two symptoms are told in one breath: "drives and her partner crashes"."""


PHRASE_VOTE = 1.0
"""Nats that a phrase of a symptom adds to it, half as many the second told (by writers left out:
one line in a hundred more is right than without)."""


_ROUND_THE_POST = regex(r"\batps?\b", re.IGNORECASE)
"""The trade's short word, in which nobody told the model of it."""

GUESSED_FROM = 0.23
"""Chance from which a symptom is answered that no phrase names."""

ASKED_FROM = 0.2
"""Chance of the three likeliest together from which they are asked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sign:
    """What a note on one of them would say if it is they who do it."""

    trait: Trait
    value: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Symptom:
    """A symptom and its answer; `you` plays the ball, `partner` is the other one.

    `needs` and `plan_b_needs` are the shots that the call and plan B take. `points` is what the
    answer is worth in the rallies where it comes up, `share` how many of 100 those are; None
    where the trade has no number. `outranks` names symptoms that its words only seem to tell.
    """

    id: str
    label: str
    call: str
    you: Reason
    partner: Reason
    sign: str
    plan_b: str
    outranks: frozenset[str] = frozenset()
    needs: tuple[Trait, ...] = ()
    plan_b_needs: tuple[Trait, ...] = ()
    who: tuple[Sign, ...] = ()
    points: float | None = None
    share: float | None = None
    worth: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundSymptoms:
    """The symptoms that the words tell of, in order; `others` are what else may be meant.

    `is_guess`: no phrase of it stands in the words and it is not sure.
    """

    named: tuple[Symptom, ...]
    others: tuple[Symptom, ...] = ()
    is_guess: bool = False


def find_symptoms(situation: Situation) -> tuple[Symptom, ...]:
    """The symptoms that the words tell of and, where that is unsure, others that may be meant."""
    found = symptoms_of(situation)
    return (*found.named, *found.others) if found.named else ()


def symptoms_of(situation: Situation, *, model: EntryModel | None = None) -> FoundSymptoms:
    """What phrases and the model of ways of telling find together; `model`: not the shipped one."""
    words = situation.asked.words
    tapped = _by_id().get(words.strip().replace(" ", "_"))
    if tapped is not None:
        return FoundSymptoms(named=(tapped,))
    hits = told_in(situation, phrases())
    told = [hit.id for hit in hits if not _only_seems(hit, hits)]
    if told == [AT_THE_BODY] and tells_only_of_a_body(words):
        return FoundSymptoms(named=_all(told))
    votes = {id: PHRASE_VOTE / (1 + place) for place, id in reversed([*enumerate(told)])}
    in_full = _ROUND_THE_POST.sub("around the post", words)
    likely = (model or entry_model(Kind.SYMPTOMS)).likely(in_full, votes)
    if likely is None:
        return FoundSymptoms(named=_all(told))
    is_settled = likely.band is Band.SURE and likely.ids[0] in told
    denied = frozenset[str]() if is_settled else phrases().denied(words)
    ids = [id for id, _ in likely.ranked if id not in denied][:SHOWN]
    return _together(told, ids, likely)


def _together(told: Sequence[str], ids: Sequence[str], likely: Likely) -> FoundSymptoms:
    """Phrases say the order of what is told; the model says what comes first, if it is fairly sure.

    `ids` are its likeliest. Where no phrase stands, a guess takes more.
    """
    first, chances = ids[0], dict(likely.ranked)
    is_weak = likely.is_none or likely.band is Band.UNSURE
    if told and (first in told or is_weak):
        others = () if likely.band is Band.SURE else [id for id in ids if id not in told]
        return FoundSymptoms(named=_all(told), others=_all(others))
    if is_weak or (not told and chances[first] < GUESSED_FROM):
        is_lost = likely.is_none or sum(chances[id] for id in ids) < ASKED_FROM
        return FoundSymptoms(named=(), others=() if is_lost else _all(ids))
    if likely.band is Band.SURE:
        return FoundSymptoms(named=_all([first, *(id for id in told if id != first)]))
    others = [id for id in dict.fromkeys([*told, *ids]) if id != first]
    return FoundSymptoms(named=_all([first]), others=_all(others), is_guess=True)


def _all(ids: Iterable[str]) -> tuple[Symptom, ...]:
    return tuple(_by_id()[id] for id in ids)


def told_in(situation: Situation, known: Phrases) -> tuple[Hit, ...]:
    """What of these the words tell, with the names of everybody on court read as roles."""
    return known.find(
        situation.asked.words,
        ours=[one.name for one in situation.ours if one.name],
        theirs=[one.name for one in situation.theirs if one.name],
    )


def _only_seems(hit: Hit, hits: Sequence[Hit]) -> bool:
    """Whether the words are part of how another symptom is told, which outranks this one."""
    return any(
        hit.id in _by_id()[other.id].outranks and hit.is_near(other, words=ONE_TELLING_WORDS)
        for other in hits
    )


@cache
def symptoms() -> tuple[Symptom, ...]:
    """All symptoms; RuleDataError if a line does not fit."""
    read = tuple(_symptom(row) for row in _rows())
    by_id = {one.id: one for one in read}
    for one in read:
        for other in one.outranks:
            if other not in by_id or one.id in by_id[other].outranks:
                raise RuleDataError(f"{one.id} cannot outrank {other}")
    return read


@cache
def phrases() -> Phrases:
    """How each symptom is said."""
    table = load_table("knowledge.tactics", "patterns.toml")
    return read_phrases(table, {str(row["id"]): row["says"] for row in _rows()})


def read_phrases(table: Mapping[str, object], says: Mapping[str, object]) -> Phrases:
    """Phrases with the sets, the shorthand and the guard of their data file."""
    sets, shorthand, guard = (table.get(key, {}) for key in ("sets", "shorthand", "guard"))
    if not isinstance(sets, dict) or not isinstance(shorthand, dict):
        raise RuleDataError("sets and shorthand are tables")
    return Phrases(
        entries={id: _texts(said) for id, said in says.items()},
        sets={name: _texts(words) for name, words in sets.items()},
        shorthand=shorthand,
        guard=frozenset(str(guard or "").split()),
    )


@cache
def _rows() -> tuple[Mapping[str, object], ...]:
    return load_entries("knowledge.tactics", "patterns.toml")


@cache
def _by_id() -> Mapping[str, Symptom]:
    return {one.id: one for one in symptoms()}


def _symptom(row: Mapping[str, object]) -> Symptom:
    return Symptom(
        id=fitting(row.get("id"), LINE_LIMIT),
        label=fitting(row.get("label"), LINE_LIMIT),
        call=fitting(row.get("call"), CALL_LIMIT),
        you=read_reason(row.get("you")),
        partner=read_reason(row.get("partner")),
        sign=fitting(row.get("sign"), LINE_LIMIT),
        plan_b=fitting(row.get("plan_b"), LINE_LIMIT - len(PLAN_B)),
        outranks=frozenset(_texts(row.get("outranks", []))),
        needs=_traits(row.get("needs", [])),
        plan_b_needs=_traits(row.get("plan_b_needs", [])),
        who=tuple(_sign(said) for said in _list(row.get("who", []))),
        points=_number(row.get("points")),
        share=_number(row.get("share")),
        worth=optional_line(row, "worth"),
    )


def _sign(said: object) -> Sign:
    trait, value = _texts(said)
    if Value(value) not in TRAITS[Trait(trait)].values:
        raise RuleDataError(f"{trait} takes no {value}")
    return Sign(trait=Trait(trait), value=Value(value))


def _traits(said: object) -> tuple[Trait, ...]:
    return tuple(Trait(trait) for trait in _texts(said))


def _number(said: object) -> float | None:
    return float(said) if isinstance(said, int | float) else None


def _texts(said: object) -> tuple[str, ...]:
    return tuple(str(each) for each in _list(said))


def _list(said: object) -> list[object]:
    if not isinstance(said, list):
        raise RuleDataError(f"expected a list, not {said!r}")
    return said
