"""The shipped claim model: fresh, bounded, and better than the rules on notes nobody has read."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache, partial

import pytest
from claim_examples import claims_digest
from note_scores import (
    LATER_VOICES,
    READ_LATER_VOICES,
    NoteScore,
    PlayerClaim,
    possible,
    rules_alone,
    score_notes,
    score_notes_under_either,
    second_labels,
    told_claims,
)
from voices import IN_TALK, OPEN_VOICES

from bot.chat.claim_model import (
    HEADS,
    MADE_FROM,
    SAID_COLUMNS,
    TAKES,
    dump_claim_model,
    head_of,
    load_claim_model,
    the_claim_model,
)
from bot.chat.names import find_mentions
from bot.chat.note_features import players_meant, see_note
from bot.chat.note_line import note_line
from bot.chat.understand import understand_note
from bot.chat.words import words
from knowledge.vocabulary import TRAITS, PlayerId, Trait, Value

RETRAIN = "run: python tests/train/train_claims.py"

NOTHING = NoteScore(labelled=0, found=0, claimed=0, invented=0)


def test_it_was_trained_on_the_notes_and_lexicon_as_they_are() -> None:
    assert the_claim_model().recipe["sources"] == claims_digest(), RETRAIN


def test_it_survives_being_written_and_read() -> None:
    model = the_claim_model()
    again = load_claim_model(dump_claim_model(model))
    seen = keys_of("ruiz pops up her backhand dinks, hale is quick")
    assert again.read(seen, above=0.01) == model.read(seen, above=0.01)


def keys_of(text: str, player: int = 5) -> list[tuple[int, ...]]:
    said = words(text)
    note = note_line(said, find_mentions(said, IN_TALK), IN_TALK)
    return [word.keys for word in see_note(note, (), PlayerId(player))]


def total(score: Callable[[str], NoteScore], voices: Sequence[str]) -> NoteScore:
    return sum((score(voice) for voice in voices), NOTHING)


def test_it_finds_more_than_the_rules_and_invents_no_more() -> None:
    """On voices that neither the rules' words nor the model come from."""
    later, alone = total(by_labeller, LATER_VOICES), total(score_by_rules, LATER_VOICES)
    assert later.found > alone.found
    assert later.invented_share <= alone.invented_share


note_of = cache(partial(understand_note, chat=IN_TALK))
"""A note is read alike whoever's labels it is compared with."""


def read_once(text: str) -> set[PlayerClaim]:
    return told_claims(note_of(text).claims)


def shown_once(text: str) -> set[PlayerClaim]:
    """What is made of the note and what is offered."""
    return told_claims((*note_of(text).claims, *note_of(text).offered))


by_labeller = partial(score_notes, read=read_once)


def score_by_rules(voice: str) -> NoteScore:
    return score_notes(voice, read=rules_alone)


SLACK = 0.01


@pytest.mark.parametrize(
    ("score", "voices", "found", "shown", "invented"),
    [
        (score_notes, OPEN_VOICES, 0.929, 0.950, 0.059),
        (score_notes_under_either, OPEN_VOICES, 0.944, 0.963, 0.033),
        (score_notes, LATER_VOICES, 0.915, 0.938, 0.056),
        (score_notes_under_either, LATER_VOICES, 0.919, 0.939, 0.047),
        (score_notes, READ_LATER_VOICES[:2], 0.859, 0.927, 0.073),
        (score_notes, READ_LATER_VOICES[2:], 0.830, 0.876, 0.118),
    ],
    ids=["open", "open, either label", "later", "later, either label", "moss, tala", "bert, yuki"],
)
def test_the_recorded_figures_hold(
    score: Callable[..., NoteScore],
    voices: Sequence[str],
    found: float,
    shown: float,
    invented: float,
) -> None:
    """Goals: 0.95 found and 0.03 invented. `shown` counts what is only a button too: a claim is
    made from a high chance, since one that is wrong costs more than a tap. The rules' words were
    mended by the open voices' misses; before any model they found 0.69 of the later voices' claims
    and invented 0.14."""
    figures = total(partial(score, read=read_once), voices)
    assert figures.found_share >= found - SLACK, figures
    assert figures.invented_share <= invented + SLACK, figures
    assert total(partial(score, read=shown_once), voices).found_share >= shown - SLACK


def test_every_value_of_a_trait_is_asked_for_once_affirmed_and_denied() -> None:
    for trait, row in TRAITS.items():
        for value in row.values:
            [head] = [
                at for at, (asked, values) in enumerate(HEADS) if asked is trait and value in values
            ]
            assert head == head_of(trait, value)
            assert all(TAKES[head, SAID_COLUMNS.index((value, denied))] for denied in (False, True))
    assert TAKES.sum() == 2 * sum(len(row.values) for row in TRAITS.values())


def test_how_often_and_how_well_are_both_heard() -> None:
    said = "ruiz drops nearly every third and half of them go in the net"
    claims = {
        (one.trait, one.value)
        for one in the_claim_model().read(keys_of(said), above=MADE_FROM)
        if not one.denied
    }
    assert claims == {
        (Trait.THIRD_SHOT_DROP, Value.OFTEN),
        (Trait.THIRD_SHOT_DROP, Value.WEAKNESS),
    }


def test_what_is_only_denied_is_heard_as_that() -> None:
    read = the_claim_model().read(keys_of("her backhand drive is nothing special"), above=0.2)
    claim = max(read, key=lambda one: one.chance)
    assert (claim.trait, claim.value, claim.denied) == (
        Trait.BACKHAND_DRIVE,
        Value.STRENGTH,
        True,
    )


def test_a_line_without_a_known_feature_claims_nothing_for_sure() -> None:
    assert the_claim_model().read([(), ()], above=0.5) == ()
    assert the_claim_model().read([], above=0.0) == ()


def test_whose_note_it_is_matters() -> None:
    """The same words, asked about either player: only the one named first poaches."""
    text = "hale poaches everything, brandt just watches"
    often = {
        player: [
            one.trait
            for one in the_claim_model().read(keys_of(text, player), above=MADE_FROM)
            if one.value is Value.OFTEN
        ]
        for player in (6, 7)
    }
    assert often == {6: [Trait.POACHING], 7: []}


def test_the_words_that_spoke_for_a_claim_are_named() -> None:
    [claim] = the_claim_model().read(keys_of("ruiz is left handed and likes tea"), above=0.5)
    assert claim.trait is Trait.HAND
    assert claim.at in (2, 3)


def test_a_note_may_be_about_everybody_named_and_whoever_says_i() -> None:
    said = words("i think hale is slower than brandt")
    note = note_line(said, find_mentions(said, IN_TALK), IN_TALK)
    assert players_meant(note) == (6, 7, 1)


@pytest.mark.parametrize("voice", [*OPEN_VOICES, *LATER_VOICES])
def test_the_second_labels_are_of_the_closed_list(voice: str) -> None:
    for row in second_labels(voice):
        for _, trait, value, _ in possible(row):
            assert Value(value) in TRAITS[Trait(trait)].values
