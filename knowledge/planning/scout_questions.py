"""The questions of a scout card as data: what is asked of a player, and the note of each tap."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from knowledge.dataclass import dataclass
from knowledge.general_rule import RuleDataError, fitting, load_entries
from knowledge.vocabulary import TRAITS, Trait, TraitKind, Value

LONGEST_ID = 10
"""Characters: a tap carries it beside three numbers, and has 64 bytes in all."""

LONGEST_ASKED = 28
LONGEST_LABEL = 12
LONGEST_NOTE = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A tap: its label, what it says of a player, and the note that it writes in words."""

    label: str
    trait: Trait
    value: Value
    words: str

    @property
    def is_habit(self) -> bool:
        return self.value in (Value.OFTEN, Value.RARELY)


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoutQuestion:
    """One thing to watch a player for; `warm_up` where no rally is needed to see it."""

    id: str
    asks: str
    warm_up: bool
    answers: tuple[Answer, ...]

    @property
    def trait(self) -> Trait:
        return self.answers[0].trait

    @property
    def is_habit(self) -> bool:
        return self.answers[0].is_habit

    @property
    def is_fact(self) -> bool:
        return TRAITS[self.trait].kind is TraitKind.FACT


@cache
def scout_questions() -> Mapping[str, ScoutQuestion]:
    """All questions by id; RuleDataError if one does not fit, or two ask the same."""
    read = [_question(row) for row in load_entries("knowledge.planning", "scout_card.toml")]
    asked = [(one.trait, one.is_habit) for one in read]
    if len({*asked}) < len(read) or len({one.id for one in read}) < len(read):
        raise RuleDataError("scout_card.toml asks the same twice")
    return {one.id: one for one in read}


def _question(row: Mapping[str, object]) -> ScoutQuestion:
    answers = row.get("answers")
    if not isinstance(answers, list) or len(answers) < 2:
        raise RuleDataError(f"a question needs two answers or more: {row}")
    read = tuple(_answer(*map(str, answer)) for answer in answers)
    if len({(one.trait, one.is_habit) for one in read}) > 1:
        raise RuleDataError(f"the answers speak of one thing: {row}")
    return ScoutQuestion(
        id=fitting(row.get("id"), LONGEST_ID),
        asks=fitting(row.get("asks"), LONGEST_ASKED),
        warm_up=row.get("warm_up") is True,
        answers=read,
    )


def _answer(label: str, trait: str, value: str, words: str) -> Answer:
    if Value(value) not in TRAITS[Trait(trait)].values:
        raise RuleDataError(f"{trait} takes no {value}")
    if not words.startswith("{name} "):
        raise RuleDataError(f"a note begins with the name: {words}")
    return Answer(
        label=fitting(label, LONGEST_LABEL),
        trait=Trait(trait),
        value=Value(value),
        words=fitting(words, LONGEST_NOTE),
    )
