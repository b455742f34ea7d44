"""How entries are found for writers that no model had read: at once, shown, misled, none."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from enum import StrEnum

from entry_examples import WRITERS, Example
from entry_training import Taught, train

from knowledge.emergencies import emergency_of
from knowledge.reading.entry_model import NONE, EntryModel, Kind
from knowledge.rulebook.finding import Finder, vocabulary_of
from knowledge.rulebook.forms import forms_by_rule
from knowledge.situation import Asked, Situation
from knowledge.tactics.symptoms import symptoms_of
from knowledge.tactics.weather_entries import BODY, entry_named
from knowledge.tactics.weather_finding import entries_of
from knowledge.vocabulary import Topic

EMERGENCY = "emergency"


class Outcome(StrEnum):
    """What comes of a line: the right answer; the right one on a button; and so on."""

    RIGHT = "right"
    OFFERED = "right one offered"
    ASKED = "asked, right one not offered"
    MISLED = "answered wrong, right one not offered"
    HARMED = "a body answered with the weather"
    NONE_KEPT = "none: no sure answer"
    NONE_ANSWERED = "none: answered surely"


Reply = tuple[str | None, Sequence[str]]
"""The entry answered, if any, and those on buttons."""


def reply_of(kind: Kind, model: EntryModel) -> Callable[[str], Reply]:
    """How a message is answered by the whole finder with this model in it."""
    if kind is Kind.RULES:
        finder = Finder(model=model, vocabulary=vocabulary_of(forms_by_rule()))
        return lambda text: _rule(finder, text)
    if kind is Kind.SYMPTOMS:
        return lambda text: _symptom(model, text)
    return lambda text: _weather(model, text)


def _rule(finder: Finder, text: str) -> Reply:
    found = finder.find(text)
    named = None if found.rule is None else found.rule.name
    return named, [one.name for one in found.others]


def _symptom(model: EntryModel, text: str) -> Reply:
    situation = Situation(topic=Topic.ANSWER_PATTERN, asked=Asked(words=text))
    found = symptoms_of(situation, model=model)
    named = [one.id for one in found.named]
    return (named[0] if named else None), [*named[1:], *(one.id for one in found.others)]


def _weather(model: EntryModel, text: str) -> Reply:
    if emergency_of(text) is not None:
        return EMERGENCY, ()
    found = entries_of(text, model=model)
    named = None if found.entry is None else found.entry.id
    return named, [one.id for one in found.others]


def outcome_of(one: Example, reply: Reply) -> Outcome:
    answered, offered = reply
    if one.id == NONE:
        is_kept = answered is None or bool(offered)
        return Outcome.NONE_KEPT if is_kept else Outcome.NONE_ANSWERED
    if answered in one.right or answered == EMERGENCY:
        return Outcome.RIGHT
    if one.right & set(offered):
        return Outcome.OFFERED
    if answered is None:
        return Outcome.ASKED
    return Outcome.HARMED if _harms(one, answered) else Outcome.MISLED


def _harms(one: Example, answered: str) -> bool:
    """Whether a body's complaint got an answer about the weather: the worst fault."""
    if one.kind is not Kind.WEATHER:
        return False
    return entry_named(answered).kind != BODY and all(
        entry_named(id).kind == BODY for id in one.right
    )


def outcomes(lines: Iterable[Example], model: EntryModel) -> Counter[Outcome]:
    lines = list(lines)
    reply = reply_of(lines[0].kind, model)
    return Counter(outcome_of(one, reply(one.text)) for one in lines)


def left_out(taught: Taught, writer: str) -> Counter[Outcome]:
    """Outcomes of a writer's lines by a model of everybody else's."""
    own = [one for one in taught.examples if one.writer == writer]
    return outcomes(own, train(taught.without(writer)))


def all_left_out(kind: Kind) -> dict[str, Counter[Outcome]]:
    taught = Taught.of(kind)
    return {writer: left_out(taught, writer) for writer in WRITERS}


def line_of(found: Counter[Outcome]) -> str:
    """Shares of the lines that an entry answers, and counts of the others."""
    none = found[Outcome.NONE_KEPT] + found[Outcome.NONE_ANSWERED]
    asked = max(1, found.total() - none)
    right, shown = found[Outcome.RIGHT], found[Outcome.RIGHT] + found[Outcome.OFFERED]
    misled = found[Outcome.MISLED] + found[Outcome.HARMED]
    return (
        f"right {right / asked:6.1%}  shown {shown / asked:6.1%}  misled {misled / asked:6.1%}  "
        f"harmed {found[Outcome.HARMED]}  of {asked};  none kept {found[Outcome.NONE_KEPT]}/{none}"
    )
