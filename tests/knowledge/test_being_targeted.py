"""They play at one of us: who, with what, a job for each partner, and plan B.

Sizes and calls are judgement (common practice, no source).
"""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from textwrap import wrap
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import match, player

from knowledge.advice import CALL_LIMIT, Advice, Confidence
from knowledge.general_rule import LINE_LIMIT
from knowledge.situation import Asked, Familiarity, OnCourt, Situation
from knowledge.sources import SourceKind
from knowledge.tactics import advise
from knowledge.tactics.being_targeted import (
    CALM,
    COLD,
    GO_HOME,
    TAKEN_AS_PARTNER,
    TAKEN_AS_YOU,
    TURN,
)
from knowledge.tactics.targeted_effects import REPLIES
from knowledge.tactics.targeted_said import HitWith, targeted_said
from knowledge.vocabulary import BallKind, PlayerId, Side, Topic

CASES: list[dict[str, Any]] = tomllib.loads(
    (Path(__file__).parents[1] / "cases" / "being_targeted.toml").read_text(encoding="utf-8")
)["case"]
PHONE_CHARACTERS, PHONE_LINES = 40, 10
"""What a phone shows without scrolling, the line of whom it is against aside: common practice."""

NUMBERS = {"mira": PlayerId(1), "tom": PlayerId(2)}


def _authored(claims: Sequence[str]) -> list[str]:
    return [f"{claim} by w{place}" for place, claim in enumerate(claims)]


def ours(
    mira: Sequence[str] = (),
    tom: Sequence[str] = (),
    *,
    hands: tuple[str, str] = ("right", "right"),
) -> tuple[OnCourt, OnCourt]:
    """Mira on the right, Tom on the left."""
    return (
        player(1, "Mira", Side.RIGHT, f"hand {hands[0]}", *_authored(mira)),
        player(2, "Tom", Side.LEFT, f"hand {hands[1]}", *_authored(tom)),
    )


def asking(
    said: str,
    *theirs: OnCourt,
    pair: tuple[OnCourt, ...] | None = None,
    asker: str | None = "mira",
    about: str | None = None,
    ball: BallKind | None = None,
    familiarity: Familiarity | None = None,
) -> Situation:
    spoken_of = () if about is None else (NUMBERS[about],)
    return replace(
        match(Topic.BEING_TARGETED, *theirs, ours=ours() if pair is None else pair),
        asked=Asked(words=said, about=spoken_of, ball_kind=ball),
        asker=None if asker is None else NUMBERS[asker],
        familiarity=familiarity,
    )


def fits_a_phone(advice: Advice) -> None:
    assert len(advice.call) <= CALL_LIMIT
    lines = [advice.number, advice.unless, advice.caution]
    said = [line for line in lines if line] + [reason.text for reason in advice.reasons]
    assert all(len(line) <= LINE_LIMIT for line in said)


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case['words'][:30]}: {case['call']}")
def test_cases(case: dict[str, Any]) -> None:
    advice = advise(
        asking(
            case["words"],
            pair=ours(case.get("mira", ()), case.get("tom", ())),
            asker=case.get("asker"),
            about=case.get("about"),
        )
    )
    assert advice.call == case["call"]
    fits_a_phone(advice)


def test_what_they_hit_with_may_come_from_the_ball_that_was_understood() -> None:
    assert targeted_said(asking("at me", ball=BallKind.DRIVE)).hit_with is HitWith.DRIVES
    assert targeted_said(asking("at me")).hit_with is HitWith.ANYTHING


def test_their_squeezer_is_named_where_notes_name_one() -> None:
    squeezer = player(4, "Lindqvist", Side.LEFT, *_authored(["squeezes_middle often"] * 3))
    named = advise(asking("they only hit to me", squeezer)).reasons[0].text
    assert "Lindqvist comes over" in named
    shy = player(4, "Lindqvist", Side.LEFT, "squeezes_middle rarely")
    assert "the squeezer comes over" in advise(asking("they only hit to me", shy)).reasons[0].text


def test_the_shot_that_is_theirs_says_so_from_the_book() -> None:
    strong = ours(["counter strength"] * 6)
    advice = advise(asking("they bang everything at me", pair=strong))
    assert str(advice.reasons[0].source) == "book: 6 notes"
    assert advice.confidence is Confidence.LEAN
    bare = advise(asking("they bang everything at me"))
    assert all(one.source.kind is SourceKind.COMMON_PRACTICE for one in bare.reasons)
    assert bare.confidence is Confidence.GENERAL_RULE


@pytest.mark.parametrize("kind", list(HitWith))
def test_no_shot_that_our_profile_marks_as_weak_is_called(kind: HitWith) -> None:
    for reply in REPLIES[kind]:
        if reply.needs is None:
            continue
        weak = ours([f"{reply.needs} weakness"])
        said = f"they hit {kind} at me"
        advice = advise(asking(said, pair=weak))
        assert reply.call.partition(" {")[0] not in advice.call
        assert reply.full.partition(" {")[0] not in advice.reasons[0].text


def test_hit_behind_sends_the_helper_home_and_nothing_else_does() -> None:
    burnt = advise(asking("everything at me and they go behind tom when he helps"))
    assert burnt.number == GO_HOME
    assert advise(asking("everything at me")).number != GO_HOME


def test_a_new_pair_does_not_start_with_a_poach() -> None:
    quick = ours(tom=["poaching often"] * 6)
    old = advise(asking("they only hit to me", pair=quick))
    new = advise(asking("they only hit to me", pair=quick, familiarity=Familiarity.NEW))
    assert "poach once" in old.call
    assert "poach once" not in new.call


def test_plan_b_is_the_stack_only_where_it_brings_a_forehand_inside() -> None:
    """A lefty on the left and a righty on the right have both backhands in the middle."""
    apart = advise(asking("all at me", pair=ours(hands=("right", "left"))))
    assert apart.unless == "Four more lost? Stack: forehands in the middle."
    inside = advise(asking("all at me", pair=ours(hands=("left", "right"))))
    assert inside.unless == "Four more lost? Time-out; stay on your sides."
    alike = advise(asking("all at me"))
    assert alike.unless == "Four more lost? Swap sides for two points."
    new = asking("all at me", pair=ours(hands=("right", "left")), familiarity=Familiarity.NEW)
    assert advise(new).unless == "Four more lost? Swap sides for two points."


def test_lobs_come_with_the_caution_about_falls() -> None:
    """Never backpedal for a lob: usual advice against falls (common practice, no source)."""
    assert advise(asking("they lob me every ball")).caution == TURN
    assert advise(asking("they dink me every ball")).caution is None


@pytest.mark.parametrize("said", ["they dink me every ball", "they lob me", "im iced out"])
def test_no_blame_is_said_behind_why(said: str) -> None:
    """The call, two jobs, the limit of poaching and plan B come first: a phone shows no more."""
    advice = advise(asking(said))
    assert CALM in advice.more
    texts = [f"· {reason.text} ({reason.source})" for reason in advice.reasons]
    shown = [advice.call, *texts, advice.number, advice.unless, advice.caution]
    lines = [line for text in shown if text for line in wrap(text, PHONE_CHARACTERS)]
    assert len(lines) <= PHONE_LINES


def test_the_frozen_one_is_told_to_stay_warm() -> None:
    assert advise(asking("im iced out")).number == COLD
    assert advise(asking("they only hit to me")).number != COLD


def test_who_is_meant_is_said_where_it_was_assumed() -> None:
    assert advise(asking("they pick on my partner", asker=None)).assumed == TAKEN_AS_PARTNER
    assert advise(asking("they pick on my partner")).assumed is None


def test_who_was_told_to_be_played_at_stays_so_whatever_the_other_pair_does() -> None:
    def told(said: str, before: str) -> str:
        asked = asking(said, asker=None)
        return advise(replace(asked, asked=replace(asked.asked, before=before))).assumed or ""

    before = "brandt targeted me 8 of 10"
    assert told("if she goes line 30% does it still pay", before) == TAKEN_AS_YOU
    assert told("and if she goes at him", before) == TAKEN_AS_PARTNER
    assert told("if she goes line", "they pick on my partner") == TAKEN_AS_PARTNER


def test_nobody_known_still_gets_both_jobs() -> None:
    advice = advise(
        Situation(topic=Topic.BEING_TARGETED, asked=Asked(words="they hit everything at me"))
    )
    assert advice.call == "You: middle and deep. Partner: step in, show it."


def test_whoever_is_targeted_the_two_jobs_swap_with_them() -> None:
    at_mira = advise(asking("everything to mira", about="mira")).call
    at_tom = advise(asking("everything to tom", about="tom")).call
    swapped = at_mira.replace("Mira", "?").replace("Tom", "Mira").replace("?", "Tom")
    assert swapped == at_tom


@given(said=st.text(max_size=200), asker=st.sampled_from([None, "mira", "tom"]))
@settings(max_examples=40, deadline=None)
def test_any_words_get_an_answer_that_fits(said: str, asker: str | None) -> None:
    fits_a_phone(advise(asking(said, asker=asker)))


@pytest.mark.parametrize("kind", list(HitWith))
def test_long_names_still_fit(kind: HitWith) -> None:
    pair = (
        player(1, "Nguyen-Brandt-Castellano", Side.RIGHT),
        player(2, "Featherstonehaugh-Szymanski", Side.LEFT),
    )
    fits_a_phone(advise(asking(f"they hit {kind} at me", pair=pair)))
    fits_a_phone(advise(asking("im iced out", pair=pair)))
