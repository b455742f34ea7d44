"""Stacking: all formations of our two, what each gains, and where both stand.

Judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import product
from random import Random
from types import MappingProxyType

import numpy as np
import pytest
from aim_cases import Case, cases, situation_of
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import often_noted, player
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from told_ball_cases import acting, idle, names, said_of

from knowledge.advice import CALL_LIMIT, MatchFact
from knowledge.court import HALF_WIDTH_M, METRES_PER_FOOT
from knowledge.court_picture import CourtPicture
from knowledge.effects import OptionId
from knowledge.evidence import FactEstimate
from knowledge.game import GameFormat, GameState, Lineup, after, courts, stacked, start
from knowledge.general_rule import LINE_LIMIT
from knowledge.reach import Feet
from knowledge.situation import Agreement, Asked, Familiarity, Formation, OnCourt, Situation
from knowledge.tactics import advise, stack_sizes
from knowledge.tactics.return_time import run_s
from knowledge.tactics.stack_answer import LEAST_GAIN, STRAIGHT, answer_stack, pair_of
from knowledge.tactics.stack_formations import (
    KEEPS,
    SCORE_SHARE,
    Keep,
    Plan,
    court_of,
    inside_share,
    plans,
)
from knowledge.tactics.stack_run import (
    ACROSS_M,
    EXTRA_FT,
    OVER_M,
    STRAIGHT_M,
    aside_s,
    crossing_of,
    server_spare_s,
    there_s,
)
from knowledge.tactics.stack_said import formation_agreed, stack_said
from knowledge.tactics.stack_words import call_of
from knowledge.tactics.transition_time import FOLLOW_THROUGH_S, over_ground_s
from knowledge.vocabulary import AgreementKey, Hand, PlayerId, Side, Topic, Trait, Value
from knowledge.wind import DRAG_PER_M, TYPICAL, Stroke

CASES = cases("stack_or_not.toml")
MIRA, TOM = PlayerId(1), PlayerId(2)


def _situation(case: Case) -> Situation:
    situation = situation_of(
        {key: value for key, value in case.items() if key != "formation"}, Topic.STACK_OR_NOT
    )
    return replace(
        situation,
        familiarity=Familiarity(case["familiarity"]) if "familiarity" in case else None,
        formation=Formation(case["formation"]) if "formation" in case else None,
    )


def _asked(words: str, *ours: OnCourt) -> Situation:
    return Situation(topic=Topic.STACK_OR_NOT, asked=Asked(words=words), ours=ours)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: Case) -> None:
    situation = _situation(case)
    advice, answer = advise(situation), answer_stack(situation)
    assert advice.call == case.get("call", advice.call)
    assert answer.plan.id.startswith(case.get("best", ""))
    if "left" in case:
        assert answer.plan.left is not None
        assert answer.plan.left.name == case["left"]
    said = said_of(advice)
    assert [text for text in case.get("says", ()) if text not in said] == []
    acts = acting(answer.ranking)
    assert set(case.get("acts", ())) - acts == set()
    assert set(case.get("idle", ())) & acts == set()


def test_every_effect_has_a_case_that_calls_for_it_and_one_that_does_not() -> None:
    rankings = [answer_stack(_situation(case)).ranking for case in CASES]
    declared = set().union(*(names(one.decision.effects) for one in rankings))
    called = set().union(*(acting(one) for one in rankings))
    assert declared - called == set()
    spared = set().union(*(idle(one) for one in rankings))
    absent = set().union(*(declared - names(one.decision.effects) for one in rankings))
    every = {name for name in declared if name not in spared | absent}
    # What crossing itself costs is there in every decision, but never on the straight plan.
    straight = [one.of(STRAIGHT).parts for one in rankings]
    of_straight = names(part.effect for parts in straight for part in parts)
    assert every & of_straight == set()


# Who may stand where: national rulebook, 2025 edition, 4.B.6 and 4.B.7 (only server, server's court
# and receiver are fixed), walked by the rulebook's state machine.


def _walk(rallies: int, seed: int) -> list[GameState]:
    """The states of some games, each rally won by a coin."""
    toss = Random(seed)
    lineup = Lineup(
        our_starter=MIRA, our_partner=TOM, their_starter=PlayerId(3), their_partner=PlayerId(4)
    )
    state = start(GameFormat(), we_serve=True, lineup=lineup)
    found = []
    for _ in range(rallies):
        found.append(state)
        state = after(state, won_by_us=toss.random() < 0.5)
        if state.is_over:
            state = start(GameFormat(), we_serve=toss.random() < 0.5, lineup=lineup)
    return found


STATES = _walk(4000, seed=7)


def _score_left(state: GameState) -> PlayerId:
    found = courts(state, ours=True)
    assert found is not None
    return found[Side.LEFT]


def test_the_formations_are_all_there_are() -> None:
    """By brute force: each of our two may end up left whichever of them the score has left.

    That is four ways for each half of the rallies, and every one of them is a formation's.
    """
    pair = (player(1, "Mira", None), player(2, "Tom", None))
    everyone = set(product((MIRA, TOM), repeat=2))
    for we_serve in (True, False):
        reached = {
            tuple(_plays_left(plan, left, we_serve=we_serve) for left in (MIRA, TOM))
            for plan in plans(pair)
            if plan.keep(we_serve=we_serve) is not Keep.SIGNAL
        }
        assert reached == everyone
    assert {plan.formation for plan in plans(pair)} == {*Formation}
    assert len({plan.id for plan in plans(pair)}) == len(plans(pair))


def _plays_left(plan: Plan, score_left: PlayerId, *, we_serve: bool) -> PlayerId:
    other = TOM if score_left == MIRA else MIRA
    return other if plan.crosses(score_left, we_serve=we_serve) else score_left


@pytest.mark.parametrize("left", [MIRA, TOM])
def test_a_stack_crosses_exactly_where_the_rulebook_leaves_the_partner_outside(
    left: PlayerId,
) -> None:
    """The second method: knowledge.game's own stacked places, at every state of some games."""
    ours = {MIRA: player(1, "Mira", None), TOM: player(2, "Tom", None)}
    right = TOM if left == MIRA else MIRA
    plan = Plan(formation=Formation.STACK_ALWAYS, left=ours[left], right=ours[right])
    for state in STATES:
        found = stacked(state, ours=True, plays_left=left)
        if found is None:
            continue
        crosses = plan.crosses(_score_left(state), we_serve=state.we_serve)
        assert crosses is (found.stands_out is not None)
        assert dict(found.plays) == {left: Side.LEFT, right: Side.RIGHT}
        assert {one: court_of(plan, one) for one in (left, right)} == dict(found.plays)


def test_the_score_has_either_of_us_left_about_half_of_the_time() -> None:
    """SCORE_SHARE, and half of the rallies on serve, against games played out by a coin."""
    for serves in (True, False):
        half = [state for state in STATES if state.we_serve is serves]
        share = sum(_score_left(state) == MIRA for state in half) / len(half)
        assert share == pytest.approx(SCORE_SHARE, abs=0.1)
        assert len(half) / len(STATES) == pytest.approx(0.5, abs=0.05)


HANDS = st.sampled_from([Value.LEFT, Value.RIGHT])
FEW = settings(max_examples=12, deadline=None)


@FEW
@given(hands=st.tuples(HANDS, HANDS))
def test_shares_are_the_average_over_the_four_equal_cases(hands: tuple[Value, Value]) -> None:
    """Second method: who has the forehand inside, counted case by case."""
    pair = (player(1, "Mira", None, f"hand {hands[0]}"), player(2, "Tom", None, f"hand {hands[1]}"))
    for plan in plans(pair):
        for one in pair:
            counted = 0.0
            for serves, score_left in product((True, False), (MIRA, TOM)):
                crosses = plan.crosses(score_left, we_serve=serves)
                for does in (True, False) if crosses is None else (crosses,):
                    is_left = (score_left == one.player) is not does
                    weight = 0.5 if crosses is None else 1.0
                    counted += weight * _is_inside(one.hand, is_left=is_left)
            assert inside_share(plan, one) == pytest.approx(counted / 4)


def test_whoever_plays_forehands_with_both_hands_has_one_inside_everywhere() -> None:
    """And so gains nothing by a side."""
    fact = FactEstimate(
        value=Value.AMBIDEXTROUS, chance=1.0, evidence=(), contradicted=False, newest_day=0
    )
    one = player(1, "Mira", None, *often_noted("forehand_volley strength"))
    both = replace(one, profile=replace(one.profile, facts={Trait.HAND: fact}))
    pair = (both, player(2, "Tom", None, "hand right"))
    assert {inside_share(plan, both) for plan in plans(pair)} == {1.0}
    assert "forehand_volley" not in acting(answer_stack(_asked("", *pair)).ranking)


def _is_inside(hand: Hand | None, *, is_left: bool) -> bool:
    return hand is Hand.AMBIDEXTROUS or (hand is Hand.RIGHT) is is_left


TRAITS_OF_OURS = st.lists(
    st.sampled_from(
        [
            "forehand_volley strength",
            "forehand_volley weakness",
            "backhand_dink weakness",
            "poaching often",
            "two_handed_backhand yes",
            "fitness weakness",
            "foot_speed strength",
        ]
    ),
    max_size=3,
    unique=True,
)


@FEW
@given(
    hands=st.tuples(HANDS, HANDS),
    traits=st.tuples(TRAITS_OF_OURS, TRAITS_OF_OURS),
    sides=st.sampled_from([(None, None), ("left", "right"), ("right", None)]),
)
def test_left_and_right_are_mirrored(
    hands: tuple[Value, Value],
    traits: tuple[list[str], list[str]],
    sides: tuple[str | None, str | None],
) -> None:
    """With every hand and side the other way round, the same plan is best with the other left."""
    turned = {"left": "right", "right": "left", Value.LEFT: Value.RIGHT, Value.RIGHT: Value.LEFT}

    def ours(*, mirrored: bool) -> Situation:
        people = []
        for number, (hand, claims, side) in enumerate(zip(hands, traits, sides, strict=True), 1):
            played = turned.get(side, side) if mirrored and side else side
            notes = [f"hand {turned.get(hand, hand) if mirrored else hand}", *claims]
            notes += [f"side_played {played}"] if played else []
            people.append(player(number, f"P{number}", None, *notes))
        return _asked("", *people)

    plain, mirror = answer_stack(ours(mirrored=False)), answer_stack(ours(mirrored=True))
    for plan in plans(plain.pair):
        other = "" if plan.left is None else f"@{3 - plan.left.player}"
        there = OptionId(f"{plan.formation}{other}")
        assert plain.gain_of(OptionId(plan.id)) == pytest.approx(mirror.gain_of(there), abs=1e-9)


@FEW
@given(hands=st.tuples(HANDS, HANDS), traits=st.tuples(TRAITS_OF_OURS, TRAITS_OF_OURS))
def test_the_plan_gains_about_as_much_as_the_best_one(
    hands: tuple[Value, Value], traits: tuple[list[str], list[str]]
) -> None:
    people = [
        player(number, f"P{number}", None, f"hand {hand}", *claims)
        for number, (hand, claims) in enumerate(zip(hands, traits, strict=True), 1)
    ]
    answer = answer_stack(_asked("", *people))
    best = max(answer.gain_of(one.option.id) for one in answer.ranking.ranked)
    assert best - answer.gain < LEAST_GAIN
    advice = advise(_asked("", *people))
    assert all(len(one.text) <= LINE_LIMIT for one in advice.reasons)
    assert all(len(line) <= LINE_LIMIT for line in (advice.number, advice.unless or "") if line)


# The run, computed.


def test_the_ways_are_those_of_the_court() -> None:
    """2025 edition, 2.A: half a court is 10 ft wide, so its middles are 10 ft apart."""
    assert pytest.approx(10 * METRES_PER_FOOT) == OVER_M
    assert math.sqrt(STRAIGHT_M**2 + OVER_M**2) == pytest.approx(ACROSS_M)
    assert pytest.approx((ACROSS_M - STRAIGHT_M) / 0.3048) == EXTRA_FT


@pytest.mark.parametrize("way_m", [STRAIGHT_M, ACROSS_M])
def test_the_time_of_a_run_against_a_root_of_its_formula(way_m: float) -> None:
    """scipy's brentq on x(t) = V (t - T (1 - exp(-t/T))), the sprint model of facts section 5."""
    feet = Feet()

    def left(t: float) -> float:
        gone = feet.forward_mps * (t - feet.rise_s * (1 - math.exp(-t / feet.rise_s)))
        return gone - way_m

    assert run_s(way_m, feet) == pytest.approx(brentq(left, 0.01, 6.0), abs=1e-3)


@pytest.mark.parametrize("stroke", [Stroke.SERVE, Stroke.RETURN, Stroke.DROP])
def test_the_time_of_flight_is_that_of_drag_alone(stroke: Stroke) -> None:
    """Against scipy's solve_ivp of x'' = -k x'^2."""
    launch = TYPICAL[stroke]
    speed = launch.speed_mps * math.cos(math.radians(launch.angle_deg))
    flown = solve_ivp(
        lambda _t, s: [s[1], -DRAG_PER_M * s[1] ** 2],
        (0, over_ground_s(stroke, 10.0)),
        [0, speed],
        rtol=1e-10,
        atol=1e-12,
    )
    assert flown.y[0, -1] == pytest.approx(10.0, abs=1e-6)


def test_the_longer_way_costs_a_slow_returner_more_time() -> None:
    quick = player(1, "Q", None, *often_noted("forward_speed strength"))
    slow = player(2, "S", None, *often_noted("forward_speed weakness"))
    assert crossing_of(slow).extra_s > crossing_of(quick).extra_s > 0
    assert crossing_of(quick).points < 0
    assert -stack_sizes.AT_THE_LINE < crossing_of(slow).points < 0


def test_points_of_a_run_against_simulated_runs() -> None:
    """Second method: times of a run drawn from its normal spread, counted."""
    one = player(1, "Mira", None)
    draw = np.random.default_rng(3).normal(0.0, stack_sizes.RUN_SPREAD_S, 200_000)
    feet = Feet()
    lost = []
    for ball in (Stroke.RETURN, Stroke.HIGH_RETURN):
        for third in (Stroke.DRIVE, Stroke.DROP):
            there = there_s(ball, third)
            straight, across = (
                float(np.mean(run_s(way, feet) + draw < there)) for way in (STRAIGHT_M, ACROSS_M)
            )
            lost.append(straight - across)
    assert crossing_of(one).points == pytest.approx(
        -stack_sizes.AT_THE_LINE * sum(lost) / len(lost), abs=0.05
    )


def test_a_server_has_the_time_to_go_over() -> None:
    """Serve and return are in the air for well over a second: a shuffle of 10 ft fits in."""
    one = player(1, "Mira", None)
    balls = sum(over_ground_s(stroke, 2 * TYPICAL[Stroke.RETURN].from_net_m) for stroke in
                (Stroke.SERVE, Stroke.RETURN))  # fmt: skip
    assert server_spare_s(one) == pytest.approx(balls - FOLLOW_THROUGH_S - aside_s(Feet(), OVER_M))
    assert server_spare_s(one) > 0.2


# What is said.


@pytest.mark.parametrize("formation", [*Formation])
def test_calls_fit_a_lock_screen_whatever_the_names(formation: Formation) -> None:
    pair = tuple(player(number, "Maximiliane-Annabelle", None) for number in (1, 2))
    has_home = {Keep.HOME, Keep.SIGNAL} & set(KEEPS[formation])
    left, right = pair if has_home else (None, None)
    assert 0 < len(call_of(Plan(formation=formation, left=left, right=right))) <= CALL_LIMIT


def test_the_call_names_the_formation_and_both_positions() -> None:
    ours = player(1, "Mira", None, "hand left"), player(2, "Tom", None, "hand right")
    situation = replace(_asked("", *ours), familiarity=Familiarity.REGULAR)
    advice = advise(situation)
    assert advice.call == "Stack on serve, Tom always left. On return: straight."
    assert "Tom serves right: Mira waits outside right; then Tom left, Mira right." in advice.more
    assert "Tom returns right: stay, Mira left, Tom right." in advice.more


def test_the_picture_shows_who_waits_outside_and_who_ends_up_where() -> None:
    ours = player(1, "Mira", None, "hand left"), player(2, "Tom", None, "hand right")
    picture = advise(replace(_asked("", *ours), familiarity=Familiarity.REGULAR)).picture
    assert isinstance(picture, CourtPicture)
    outside = [one.label for one in picture.markers if abs(one.x_m) > HALF_WIDTH_M]
    assert outside == ["Mira: serve"]
    assert "Mira waits outside the right sideline; then Tom plays left, Mira right" in picture.alt
    ends = [arrow.to_x_m for arrow in picture.arrows if arrow.label == "serve"]
    assert all(x < 0 for x in ends)


def test_hands_that_nobody_noted_are_assumed_said_and_offered() -> None:
    advice = advise(_asked("", player(1, "Mira", None, "hand right"), player(2, "Tom", None)))
    assert advice.assumed == "No hand noted for Tom: took right."
    lefty = next(one for one in advice.choices if one.fact == Trait.HAND)
    assert (lefty.label, lefty.value, lefty.about) == ("Tom is a lefty", Hand.LEFT, TOM)
    assert MatchFact.FAMILIARITY in {one.fact for one in advice.choices}


def test_nobody_known_is_answered_for_two_right_handers() -> None:
    advice = advise(_asked("stack?"))
    assert advice.assumed == "Your two aren't known: I took right-handers."
    assert Trait.HAND not in {one.fact for one in advice.choices}


def test_a_partner_who_is_an_opponent_too_is_said() -> None:
    mira, tom = player(1, "Mira", None), player(2, "Tom", None)
    one_twice = replace(_asked("", mira, tom), theirs=(tom, player(3, "Okafor", None)))
    assert advise(one_twice).assumed == "Tom is on both sides: I took ours."
    themselves = replace(_asked("", mira, tom), theirs=(mira, tom))
    assert "your own pair" in (advise(themselves).assumed or "")
    alone = _asked("", mira, mira)
    assert len({one.player for one in pair_of(alone)}) == 2
    assert advise(alone).call


def test_an_agreed_formation_counts_as_habit() -> None:
    ours = player(1, "Mira", None, "hand right"), player(2, "Tom", None, "hand right")
    agreed = {
        AgreementKey.STACK: Agreement(
            key=AgreementKey.STACK, value="stack on serve", words="we stack on serve"
        ),
        AgreementKey.SIDES: Agreement(
            key=AgreementKey.SIDES, value="tom plays left", words="Tom plays left"
        ),
    }
    situation = replace(_asked("", *ours), agreements=MappingProxyType(agreed))
    answer = answer_stack(situation)
    assert stack_said(situation).habit is Formation.STACK_ON_SERVE
    assert answer.plan.id == f"{Formation.STACK_ON_SERVE}@{TOM}"


@pytest.mark.parametrize(
    ("value", "formation"),
    [
        ("stack on serve", Formation.STACK_ON_SERVE),
        ("to stack when serving", Formation.STACK_ON_SERVE),
        ("stack on serve and return", Formation.STACK_ALWAYS),
        ("full stack", Formation.STACK_ALWAYS),
        ("stack on serve, signal on return", Formation.ON_SIGNAL),
        ("no stack", Formation.STRAIGHT),
        ("straight, no stacking", Formation.STRAIGHT),
        ("stack on return only", Formation.STACK_ON_RETURN),
        ("swap sides after the serve", Formation.STACK_ON_SERVE),
        ("see how it goes", None),
    ],
)
def test_what_an_agreement_says(value: str, formation: Formation | None) -> None:
    agreement = Agreement(key=AgreementKey.STACK, value=value, words=value)
    assert formation_agreed(agreement) is formation


@pytest.mark.parametrize(
    ("words", "what"),
    [
        ("new partner, stack?", "is_new"),
        ("never played together", "is_new"),
        ("i'm new with Tom, stack?", "is_new"),
        ("we've never stacked before", "never_done"),
        ("they keep hitting behind the switch", "hit_at_crosser"),
        ("too hot to stack?", "is_hot"),
        ("2-7 down, stack?", "is_behind"),
        ("down 1-6 should we stack", "is_behind"),
    ],
)
def test_what_the_question_tells(words: str, what: str) -> None:
    mira, tom = player(1, "Mira", None), player(2, "Tom", None)
    assert getattr(stack_said(_asked(words, mira, tom)), what)
    assert not getattr(stack_said(_asked("should we stack", mira, tom)), what)


def test_only_a_lead_of_theirs_is_behind() -> None:
    mira, tom = player(1, "Mira", None), player(2, "Tom", None)
    behind = replace(_asked("", mira, tom), game=GameState(format=GameFormat(), ours=2, theirs=7))
    ahead = replace(_asked("", mira, tom), game=GameState(format=GameFormat(), ours=7, theirs=2))
    assert stack_said(behind).is_behind
    assert not stack_said(ahead).is_behind
