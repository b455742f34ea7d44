"""The cue: one positive line of at most eight words for the rally that comes."""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import MIRA, TOM, match, often_noted, player

from knowledge.advice import Advice, Confidence, MatchFact
from knowledge.game import GameFormat, GameState, Lineup, after, start
from knowledge.given_plan import GivenLine
from knowledge.planning import cue
from knowledge.planning.plan_lines import plan_lines
from knowledge.planning.roles import roles_of
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics.serve_lanes import Lane, wing_at
from knowledge.vocabulary import Side, Topic, Wing

OKAFOR = player(
    3,
    "Okafor",
    Side.LEFT,
    "hand right",
    "forward_speed weakness",
    *often_noted("backhand_dink weakness", 3),
)
LINDQVIST = player(
    4, "Lindqvist", Side.RIGHT, "hand right", *often_noted("third_shot_drop weakness", 3)
)
LINEUP = Lineup(
    our_starter=MIRA.player,
    our_partner=TOM.player,
    their_starter=OKAFOR.player,
    their_partner=LINDQVIST.player,
)


def _situation(*, we_serve: bool, rallies: str = "", theirs: bool = True) -> Situation:
    """After rallies: "+" won by us, "-" by them."""
    state: GameState = start(GameFormat(), we_serve=we_serve, lineup=LINEUP)
    for rally in rallies:
        state = after(state, won_by_us=rally == "+")
    pair = (OKAFOR, LINDQVIST) if theirs else ()
    return replace(match(Topic.CUE, *pair), game=state)


def _cue(*, we_serve: bool, rallies: str = "", theirs: bool = True) -> Advice:
    return cue.advise(_situation(we_serve=we_serve, rallies=rallies, theirs=theirs))


@pytest.mark.parametrize("theirs", [True, False])
@pytest.mark.parametrize("we_serve", [True, False])
@pytest.mark.parametrize("rallies", ["", "+", "++", "-", "--", "-+-"])
def test_short_positive_and_without_numbers(we_serve: bool, rallies: str, theirs: bool) -> None:
    said = _cue(we_serve=we_serve, rallies=rallies, theirs=theirs).call
    assert len(said.split()) <= 8
    assert not any(character.isdigit() for character in said)
    assert "n't" not in said
    assert "not" not in said.lower().split()


def test_receiving_starts_with_the_return_and_serving_does_not() -> None:
    assert _cue(we_serve=False).call == "Mira: return deep at Lindqvist. Run in."
    assert "eturn deep" not in _cue(we_serve=True).call


def test_it_changes_with_the_point() -> None:
    assert _cue(we_serve=False).call != _cue(we_serve=False, rallies="-").call


def test_who_serves_and_receives_by_the_rulebook() -> None:
    """2025 edition, 4.B: at 0-0-2 the starters stand right; after a point they swap courts."""
    begun, scored = (_cue(we_serve=True, rallies=one).reasons for one in ("", "+"))
    assert "Mira serves from the right, to Okafor" in {reason.text for reason in begun}
    who = next(one for one in scored if one.text == "Mira serves from the left, to Lindqvist")
    assert who.source.citation.endswith("4.B")


def test_who_plays_is_left_out_where_the_call_does_not_settle_it() -> None:
    situation = _situation(we_serve=True)
    assert situation.game is not None
    open_call = replace(situation.game, ours=4, theirs=3, server=1, starter_serves=None)
    texts = [reason.text for reason in cue.advise(replace(situation, game=open_call)).reasons]
    assert not any("serves" in text for text in texts)


def test_unknown_state_is_assumed_said_and_offered() -> None:
    advice = cue.advise(match(Topic.CUE, OKAFOR, LINDQVIST))
    assert advice.assumed == "Taken as receiving."
    assert {(choice.fact, choice.value) for choice in advice.choices} == {
        (MatchFact.WE_SERVE.value, "yes"),
        (MatchFact.WE_SERVE.value, "no"),
    }


def test_what_the_question_says_of_the_serve_counts() -> None:
    asked = replace(match(Topic.CUE, OKAFOR, LINDQVIST), asked=Asked(we_serve=True))
    assert cue.advise(asked).assumed is None
    assert not cue.advise(asked).call.startswith("Return")


def test_nothing_noted_is_a_general_rule() -> None:
    assert _cue(we_serve=True, theirs=False).confidence is Confidence.GENERAL_RULE


def test_the_other_one_of_us_is_not_told_how_to_return() -> None:
    """They serve and score: at an even score Mira stands right and receives, at an odd one Tom."""
    slow = player(2, "Tom", Side.LEFT, *often_noted("forward_speed weakness"))

    def cues(*points: str) -> list[str]:
        states = [_situation(we_serve=False, rallies=one) for one in points]
        return [cue.advise(replace(one, ours=(MIRA, slow))).call for one in states]

    assert not any("Tom" in line for line in cues("", "--", "----"))
    assert any("Tom" in line for line in cues("-", "---", "-----"))


@pytest.mark.parametrize("we_serve", [True, False])
def test_the_partner_gets_a_line_of_their_own_that_is_no_first_ball(we_serve: bool) -> None:
    """At 0-0 Mira, who started right, serves or receives: Tom's line is for another ball."""
    second = _cue(we_serve=we_serve).reasons[0].text
    assert second.startswith("Tom: ")
    assert not {"serve", "return"} & set(second.lower().replace(",", "").split())


@pytest.mark.parametrize(("asker", "first"), [(MIRA, "Mira"), (TOM, "Tom")])
def test_whoever_asks_reads_their_own_line_first(asker: OnCourt, first: str) -> None:
    advice = cue.advise(replace(_situation(we_serve=False), asker=asker.player))
    other = "Tom" if first == "Mira" else "Mira"
    assert advice.call.startswith(f"{first}: ")
    assert advice.reasons[0].text.startswith(f"{other}: ")


def test_late_in_a_game_the_best_line_is_said_every_time() -> None:
    """The score changes no ball's worth, only how much it is needed: nothing takes turns then."""
    game = _situation(we_serve=False).game
    assert game is not None
    late = [replace(game, ours=9, theirs=points) for points in (5, 6, 7, 9)]
    calls = {
        cue.advise(replace(_situation(we_serve=False), game=one)).call.partition(": ")[2]
        for one in late
    }
    assert calls == {"return deep at Lindqvist. Run in."}


def test_the_plan_given_comes_before_a_line_it_does_not_have() -> None:
    """All are for any rally; the one from the plan goes first, though it is worth less."""
    waits = player(3, "Okafor", Side.LEFT, "hand right", "ready_position backhand")
    situation = match(Topic.CUE, waits, LINDQVIST)
    at_any_time = [
        line
        for line in plan_lines(situation)
        if line.we_serve is None and line.is_specific and line.per_100 > 0
    ]
    assert len(at_any_time) >= 2
    least = at_any_time[-1]
    given = replace(
        situation,
        asked=Asked(we_serve=True),
        given_plan=(GivenLine(do=least.do, per_100=least.per_100),),
    )
    roles = roles_of(given, we_serve=True)
    lines = [line.do for line in cue.usable_lines(given, roles) if line.we_serve is None]
    assert lines[0] == least.do


@pytest.mark.parametrize(
    ("hand", "court", "corner"),
    [
        ("right", Side.RIGHT, "T"),
        ("right", Side.LEFT, "wide"),
        ("left", Side.RIGHT, "wide"),
        ("left", Side.LEFT, "T"),
    ],
)
def test_the_backhand_corner_by_hand_and_court(hand: str, court: Side, corner: str) -> None:
    receiver = player(3, "Okafor", None, f"hand {hand}")
    found = {lane for lane in Lane if wing_at(lane, receiver, court) is Wing.BACKHAND}
    assert found == {Lane(corner.lower())}
    assert wing_at(Lane.T, player(5, "Hale", None), court) is None


def test_the_serve_goes_to_the_noted_backhand_of_the_one_who_receives() -> None:
    hale = player(3, "Okafor", None, "hand right", *often_noted("backhand_drive weakness"))
    situation = replace(_situation(we_serve=True), theirs=(hale, LINDQVIST))
    assert cue.advise(situation).call == "Mira: serve Okafor deep backhand, down the T."
    weak = player(1, "Mira", Side.RIGHT, "serve weakness")
    assert "Serve Okafor" not in cue.advise(replace(situation, ours=(weak, TOM))).call
