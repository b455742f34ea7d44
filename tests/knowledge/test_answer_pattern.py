"""Answers to "they do X": short, for both partners, by the book's word, with shots we own.

The calls themselves are common practice, no source; what is checked here is that the right one
is given, for whom, and never one that takes a shot we own as weak.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest
from noted_players import MIRA, TOM, match, often_noted, player

from knowledge.advice import CALL_LIMIT, MAX_REASONS, Advice, MatchFact
from knowledge.general_rule import LINE_LIMIT
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.sources import SourceKind
from knowledge.tactics import answer_pattern
from knowledge.tactics.symptoms import PLAN_B, Symptom, symptoms
from knowledge.vocabulary import PlayerId, Side, Topic, Trait

OKAFOR = player(3, "Okafor", Side.LEFT)
LINDQVIST = player(4, "Lindqvist", Side.RIGHT, *often_noted("poaching often", 3))

SIGN_AND_PLAN_B = 100
"""Two short lines in one, where a note takes a reason's place."""


def ask(
    words: str,
    *theirs: OnCourt,
    ours: tuple[OnCourt, ...] = (MIRA, TOM),
    about: Sequence[int] = (),
    asker: int | None = None,
) -> Advice:
    situation = match(Topic.ANSWER_PATTERN, *theirs, ours=ours)
    asked = Asked(words=words, about=tuple(PlayerId(one) for one in about))
    return answer_pattern.advise(
        replace(situation, asked=asked, asker=None if asker is None else PlayerId(asker))
    )


def _of(id: str) -> Symptom:
    return next(one for one in symptoms() if one.id == id)


def _texts(advice: Advice) -> list[str]:
    return [reason.text for reason in advice.reasons]


@pytest.mark.parametrize("symptom", symptoms(), ids=lambda one: one.id)
def test_each_symptom_has_a_call_both_partners_a_sign_and_plan_b(symptom: Symptom) -> None:
    advice = ask(symptom.id.replace("_", " "))
    assert advice.call == symptom.call
    assert _texts(advice) == [symptom.you.text, symptom.partner.text, symptom.sign.rstrip(".")]
    assert advice.unless == PLAN_B + symptom.plan_b
    assert symptom.call[0].isupper()
    assert len(symptom.call) <= CALL_LIMIT
    assert symptom.sign.startswith("Sign: ")


@pytest.mark.parametrize("symptom", symptoms(), ids=lambda one: one.id)
def test_every_line_fits_a_phone_whoever_they_are(symptom: Symptom) -> None:
    lindqvist = player(4, "Lindqvist", Side.RIGHT, *_notes(symptom))
    advice = ask(symptom.id.replace("_", " "), OKAFOR, lindqvist, asker=1)
    assert len(advice.reasons) <= MAX_REASONS
    assert all(len(text) <= LINE_LIMIT for text in _texts(advice))
    assert advice.unless is not None
    assert len(advice.unless) <= SIGN_AND_PLAN_B


def _notes(symptom: Symptom) -> tuple[str, ...]:
    return tuple(
        claim for sign in symptom.who for claim in often_noted(f"{sign.trait} {sign.value}", 3)
    )


def test_who_does_it_is_said_with_the_notes() -> None:
    advice = ask("they poach our thirds", OKAFOR, LINDQVIST)
    assert advice.reasons[0].text == "Lindqvist: poaches a lot"
    assert str(advice.reasons[0].source) == "book: 3 notes"
    assert advice.unless is not None
    assert advice.unless.startswith("Sign: they stay home")


def test_nobody_is_blamed_without_a_note_or_for_what_others_do() -> None:
    assert all("Lindqvist" not in text for text in _texts(ask("they lob us", OKAFOR, LINDQVIST)))
    assert all("Lindqvist" not in text for text in _texts(ask("they poach", OKAFOR)))
    rarely = player(4, "Lindqvist", Side.RIGHT, *often_noted("poaching rarely", 3))
    assert all("Lindqvist" not in text for text in _texts(ask("they poach", OKAFOR, rarely)))


def test_notes_that_contradict_each_other_blame_nobody() -> None:
    open_case = player(
        4, "Lindqvist", Side.RIGHT, "poaching often by ann", "poaching rarely by bea"
    )
    assert all("Lindqvist" not in text for text in _texts(ask("they poach", OKAFOR, open_case)))


def test_the_one_who_is_named_counts_not_the_other() -> None:
    advice = ask("okafor poaches", OKAFOR, LINDQVIST, about=[3])
    assert all("Lindqvist" not in text for text in _texts(advice))


def test_one_named_without_a_note_can_be_noted_by_a_tap() -> None:
    advice = ask("okafor poaches", OKAFOR, LINDQVIST, about=[3])
    tap = next(one for one in advice.choices if one.fact == Trait.POACHING)
    assert (tap.about, tap.value) == (PlayerId(3), "often")
    noted = ask("lindqvist poaches", OKAFOR, LINDQVIST, about=[4])
    assert not [one for one in noted.choices if one.fact == Trait.POACHING]


def test_a_weak_shot_of_both_makes_plan_b_the_call() -> None:
    """Waiting with the backhand to block needs a backhand volley."""
    both = (
        player(1, "Mira", Side.RIGHT, "backhand_volley weakness"),
        player(2, "Tom", Side.LEFT, "backhand_volley weakness"),
    )
    advice = ask("he speeds up at my hip", ours=both)
    assert advice.call == "Dink lower: no high ball, no speed-up."
    assert advice.reasons[0].text == "Mira: weak backhand volley, so not for Mira"
    assert advice.reasons[0].source.kind is SourceKind.BOOK


def test_a_weak_shot_of_one_gives_each_partner_their_own() -> None:
    tom = player(2, "Tom", Side.LEFT, "third_shot_drop weakness")
    advice = ask("they return so deep", ours=(MIRA, tom))
    assert advice.call == "Mira: stand a step back and drop it, high arc."
    assert "Tom: serve deeper: they can't return so deep" in _texts(advice)


def test_a_strong_shot_changes_nothing() -> None:
    tom = player(2, "Tom", Side.LEFT, "third_shot_drop strength")
    assert ask("they return so deep", ours=(MIRA, tom)).call == _of("deep_returns").call


@pytest.mark.parametrize("symptom", [one for one in symptoms() if one.needs], ids=lambda s: s.id)
def test_a_pair_that_owns_neither_shot_is_never_told_to_play_it(symptom: Symptom) -> None:
    claims = [f"{trait} weakness" for trait in (*symptom.needs, *symptom.plan_b_needs)]
    pair = (player(1, "Mira", Side.RIGHT, *claims), player(2, "Tom", Side.LEFT, *claims))
    advice = ask(symptom.id.replace("_", " "), ours=pair)
    assert advice.call != symptom.call
    assert symptom.you.text not in _texts(advice)
    if symptom.plan_b_needs:
        assert advice.call == "Play deep and middle; give no angle."


# Points and shares are the coach's judgement (shared notes on coaching, section 3, by row).
@pytest.mark.parametrize(
    ("symptom", "points", "share"),
    [
        ("bang", 45, 4),  # row 19, leave a ball that goes out
        ("crash", 4, 15),  # row 4, return to the crasher
        ("short_returns", 4, 15),  # row 8, drive a short return
        ("deep_returns", 4, 25),  # row 7, drop a deep one
        ("wall", 2, 30),  # row 13, move the dink
        ("topspin", 2, 30),  # row 20, take it in the air
        ("erne", 2, 35),  # row 12, across or middle, not down the line
        ("counter", 6, 15),  # row 15, no speed-up of a low ball
        ("mid_court", 6, 15),  # row 18, reset in mid-court
        ("kept_back", 5, 25),  # row 9, wait in mid-court
        ("stack", 2, 30),  # runner-up: return at the crosser
        ("middle", 1.5, 100),  # row 24, agreed in words
    ],
)
def test_sizes_are_those_of_the_trade(symptom: str, points: float, share: float) -> None:
    advice = ask(symptom.replace("_", " "))
    assert advice.numbers["per_100"] == pytest.approx(points * share / 100)
    assert advice.number is not None
    assert len(advice.number) <= LINE_LIMIT


def test_a_symptom_without_a_number_gives_none() -> None:
    assert ask("they quick serve us").number is None
    assert not ask("they quick serve us").numbers


def test_the_second_symptom_is_a_button() -> None:
    advice = ask("they bang everything and our dinks pop up")
    first = advice.choices[0]
    assert (first.fact, first.value) == (MatchFact.SYMPTOM, "pop_up")
    assert advice.call == _of("bang").call


@pytest.mark.parametrize(
    ("words", "asker", "targeted", "helper"),
    [
        ("they pick on tom", None, "Tom:", "Mira:"),
        ("everything goes to my partner", 1, "Tom:", "Mira:"),
        ("every ball goes to me", 1, "Mira:", "Tom:"),
        ("they target my partner", None, "Targeted:", "Partner:"),
        ("they target tom and mira", None, "Targeted:", "Partner:"),
    ],
)
def test_whom_they_target_is_told_by_name_where_known(
    words: str, asker: int | None, targeted: str, helper: str
) -> None:
    texts = _texts(ask(words, asker=asker))
    assert texts[0].startswith(targeted)
    assert texts[1].startswith(helper)


def test_the_partner_is_named_where_it_is_known_who_asks() -> None:
    assert _texts(ask("they bang", asker=1))[1].startswith("Tom:")
    assert _texts(ask("they bang"))[1].startswith("Partner:")


def test_an_unnamed_symptom_is_still_answered_and_offers_the_commonest() -> None:
    advice = answer_pattern.advise(
        Situation(topic=Topic.ANSWER_PATTERN, asked=Asked(words="zebra"))
    )
    assert advice.assumed == answer_pattern.NOT_READ
    assert [one.value for one in advice.choices] == list(answer_pattern.COMMONEST)


def test_who_may_stop_a_quick_serve_is_the_rulebooks() -> None:
    """Not-ready signal before the score is called: rulebook 2025, section 4, from memory."""
    assert ask("they quick serve us").reasons[0].source.kind is SourceKind.RULEBOOK
