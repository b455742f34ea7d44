"""The shipped claim model: fresh, bounded, and better than the rules on notes nobody has read."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import pytest
from claim_training import sources_digest
from note_scores import (
    LATER_VOICES,
    NoteScore,
    possible,
    rules_alone,
    score_notes,
    score_notes_under_either,
    second_labels,
)
from voices import OPEN_VOICES

from bot.chat.claim_model import (
    COLUMNS,
    candidates,
    dump_claim_model,
    load_claim_model,
    the_claim_model,
)
from knowledge.vocabulary import TRAITS, Trait, Value

RETRAIN = "run: python tests/train/train_claims.py"

NOTHING = NoteScore(labelled=0, found=0, claimed=0, invented=0)


def test_it_was_trained_on_the_notes_and_lexicon_as_they_are() -> None:
    assert the_claim_model().recipe["sources"] == sources_digest(), RETRAIN


def test_it_survives_being_written_and_read() -> None:
    model = the_claim_model()
    again = load_claim_model(dump_claim_model(model))
    assert (again.linear.weights == model.linear.weights).all()
    assert (again.bias, again.curve, again.made_from) == (model.bias, model.curve, model.made_from)


def total(score: Callable[[str], NoteScore], voices: Sequence[str]) -> NoteScore:
    return sum((score(voice) for voice in voices), NOTHING)


def test_it_finds_more_than_the_rules_and_invents_no_more() -> None:
    """On voices that neither the rules' words nor the model come from."""
    later, alone = total(score_notes, LATER_VOICES), total(score_by_rules, LATER_VOICES)
    assert later.found > alone.found
    assert later.invented_share <= alone.invented_share


def score_by_rules(voice: str) -> NoteScore:
    return score_notes(voice, read=rules_alone)


SLACK = 0.01


@pytest.mark.parametrize(
    ("score", "voices", "found", "invented"),
    [
        (score_notes, OPEN_VOICES, 0.922, 0.090),
        (score_notes_under_either, OPEN_VOICES, 0.937, 0.067),
        (score_notes, LATER_VOICES, 0.828, 0.132),
        (score_notes_under_either, LATER_VOICES, 0.827, 0.123),
    ],
    ids=["open", "open, either label", "later", "later, either label"],
)
def test_the_recorded_figures_hold(
    score: Callable[[str], NoteScore], voices: Sequence[str], found: float, invented: float
) -> None:
    """Goals: 0.95 found and 0.03 invented. The rules' words were mended by the open voices'
    misses; before the model they found 0.69 of the later voices' claims and invented 0.14."""
    figures = total(score, voices)
    assert figures.found_share >= found - SLACK, figures
    assert figures.invented_share <= invented + SLACK, figures


def test_a_claim_is_of_a_value_that_its_trait_takes() -> None:
    scores = the_claim_model().linear.scale * 0 + 1
    for one in candidates(scores, 5, {}):
        trait, value = one.label
        assert value in TRAITS[trait].values


def test_what_the_rules_read_is_weighed_however_little_stands_out() -> None:
    nothing = the_claim_model().linear.scale * 0
    assert candidates(nothing, 5, {}) == ()
    ruled = (Trait.LOB, Value.OFTEN)
    assert [one.label for one in candidates(nothing, 5, {ruled: None})] == [ruled]


def test_the_columns_are_those_of_the_file() -> None:
    assert the_claim_model().linear.weights.shape[1] == len(COLUMNS)


@pytest.mark.parametrize("voice", [*OPEN_VOICES, *LATER_VOICES])
def test_the_second_labels_are_of_the_closed_list(voice: str) -> None:
    for row in second_labels(voice):
        for _, trait, value, _ in possible(row):
            assert Value(value) in TRAITS[Trait(trait)].values
