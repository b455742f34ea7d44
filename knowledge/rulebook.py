"""Answers to the commonest rules questions, with the edition; the referee has the last word."""

from __future__ import annotations

from functools import cache

from knowledge.advice import Advice
from knowledge.general_rule import GeneralRule, groups_said, load_entries, overlap, read_rule
from knowledge.situation import Situation
from knowledge.vocabulary import Topic

EDITION_NOTE = "I know the common rules only; the referee decides."

UNKNOWN_RULE = "Ask the referee before the next serve."


def advise(situation: Situation) -> Advice:
    """The rule that the words ask for, or whom to ask."""
    found = find_rule(situation.asked.words)
    if found is None:
        return Advice(topic=Topic.RULES_QUESTION, call=UNKNOWN_RULE, assumed=EDITION_NOTE)
    return Advice(
        topic=Topic.RULES_QUESTION,
        call=found.call,
        reasons=found.reasons,
        unless=found.unless,
        assumed=EDITION_NOTE,
    )


def find_rule(words: str) -> GeneralRule | None:
    """The entry whose groups of words are all said, else the one that covers most of the words.

    The earlier one if equal; None if none does.
    """
    best = max(rules(), key=lambda entry: _fit(entry, words))
    return best if any(_fit(best, words)) else None


def _fit(entry: GeneralRule, words: str) -> tuple[int, int]:
    return groups_said(entry, words), overlap(entry.words, words)


@cache
def rules() -> tuple[GeneralRule, ...]:
    """All entries; RuleDataError if one does not fit."""
    return tuple(read_rule(row) for row in load_entries("knowledge", "rulebook.toml"))
