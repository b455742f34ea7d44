"""One shot asked about: the plan's decision where notes decide, else the rule, honestly named."""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import match, often_noted, player

from knowledge.advice import Advice, Confidence
from knowledge.planning.line import Phase
from knowledge.planning.plan_lines import plan_lines
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.sources import SourceKind
from knowledge.tactics import advise
from knowledge.tactics.aim_words import NOBODY_NAMED
from knowledge.tactics.general_rule import NO_NOTES_DECIDE, NOTES_AGREE
from knowledge.vocabulary import PlayerId, Side, Topic

OKAFOR = player(
    3,
    "Okafor",
    Side.RIGHT,
    "hand right",
    "ready_position backhand",
    *often_noted("backhand_dink weakness", 3),
    *often_noted("body_jam weakness"),
)
LINDQVIST = player(
    4,
    "Lindqvist",
    Side.LEFT,
    "hand right",
    *often_noted("third_shot_drop weakness", 3),
    *often_noted("forward_speed weakness", 3),
    *often_noted("lob_defense weakness", 9),
)
SHOTS = {
    Topic.THIRD_SHOT: Phase.THIRD,
    Topic.AIM_ATTACK: Phase.HANDS,
    Topic.LOB: Phase.LOB,
}


def _ask(topic: Topic, *theirs: OnCourt, words: str = "", about: int | None = None) -> Advice:
    asked = Asked(words=words, about=() if about is None else (PlayerId(about),))
    return advise(replace(match(topic, *theirs), asked=asked))


@pytest.mark.parametrize(("topic", "phase"), SHOTS.items())
def test_a_shot_is_answered_as_the_plan_has_it(topic: Topic, phase: Phase) -> None:
    advice = _ask(topic, OKAFOR, LINDQVIST)
    lines = plan_lines(match(Topic.GAME_PLAN, OKAFOR, LINDQVIST))
    planned = [line for line in lines if line.phase is phase]
    assert "Okafor" in advice.call or "Lindqvist" in advice.call
    assert all(advice.call.startswith(line.do) for line in planned)
    assert advice.reasons[0].source.kind is SourceKind.BOOK
    ranked = {Topic.LOB: {Confidence.LEAN, Confidence.TOSS_UP}}  # as its own decision ranks it
    assert advice.confidence in ranked.get(topic, {Confidence.LEAN})


def test_whom_to_return_to_names_the_worse_third() -> None:
    call = _ask(Topic.AIM_RETURN, OKAFOR, LINDQVIST).call
    assert call == "Return deep at Lindqvist: high, then run in."


def test_a_serve_is_aimed_at_the_one_asked_about() -> None:
    hale = player(5, "Hale", Side.LEFT, *often_noted("body_jam weakness"))
    advice = _ask(Topic.AIM_SERVE, hale, LINDQVIST, about=5)
    assert advice.call == "Serve Hale deep into the body."


@pytest.mark.parametrize("topic", [*SHOTS, Topic.AIM_SERVE, Topic.AIM_RETURN])
def test_without_notes_the_rule_stands_and_says_so(topic: Topic) -> None:
    bare = _ask(topic, player(5, "Hale", None), player(6, "Brandt", None))
    assert bare.assumed == NO_NOTES_DECIDE
    assert bare.confidence is Confidence.GENERAL_RULE
    assert advise(Situation(topic=topic)).assumed == NOBODY_NAMED


def test_a_note_named_above_is_not_denied_below() -> None:
    """By the notes: a strong forehand speaks for the backhand, where the rule sends it anyway."""
    hale = player(5, "Hale", None, "forehand_drive strength")
    advice = _ask(Topic.AIM_SERVE, hale, player(6, "Brandt", None), about=5)
    assert "Hale's forehand drive is strong" in [one.text for one in advice.reasons]
    assert advice.assumed == NOTES_AGREE


def test_their_lob_is_never_answered_with_ours() -> None:
    advice = _ask(Topic.LOB, OKAFOR, LINDQVIST, words="they lob us to death")
    assert advice.call.startswith("Back off half a step")
