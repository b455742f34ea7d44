"""Plan B: what a change of theirs costs, the ranking it makes, the sign; summed a second way."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import MIRA, TOM, match, often_noted, player

from knowledge.planning import plan_b
from knowledge.planning.plan_b import Variant, changed_lines, sign_of, variants
from knowledge.planning.plan_lines import most_targeted, phase_lines, plan_lines
from knowledge.planning.shifts import SUPPOSED, shifts
from knowledge.situation import OnCourt, Situation
from knowledge.sources import SourceKind
from knowledge.vocabulary import TRAITS, Side, Topic, Trait, TraitKind

OKAFOR = player(
    3,
    "Okafor",
    Side.LEFT,
    "hand right",
    "ready_position backhand",
    "poaching often",
    "speed_up strength",
    *often_noted("backhand_dink weakness", 3),
)
LINDQVIST = player(
    4,
    "Lindqvist",
    Side.RIGHT,
    "hand right",
    "forward_speed weakness",
    *often_noted("third_shot_drop weakness", 2),
)


def _asked(*theirs: OnCourt) -> Situation:
    return match(Topic.GAME_PLAN, *(theirs or (OKAFOR, LINDQVIST)), ours=(MIRA, TOM))


def _variants(situation: Situation) -> tuple[Variant, ...]:
    return variants(situation, plan_lines(situation))


def _by_id(situation: Situation) -> dict[str, Variant]:
    return {one.shift.id: one for one in _variants(situation)}


def test_a_covered_target_is_worth_less_and_another_aim_takes_over() -> None:
    """Row 25 of the trade's sizes: whose partner squeezes is worth half; the rest is computed."""
    situation = _asked()
    cover = _by_id(situation)["cover"]
    assert cover.shift.sign == "Lindqvist slides over to cover Okafor"
    assert cover.kept < cover.now
    assert cover.switched >= cover.kept
    dinks = [line.do for line in changed_lines(cover, plan_lines(situation)) if "Dink" in line.do]
    assert dinks
    assert not any("Dink Okafor's backhand" in do for do in dinks)


def test_the_likeliest_change_is_the_costliest_by_how_likely_it_is() -> None:
    found = _variants(_asked())
    appeals = [one.shift.weight * (one.now - one.kept) for one in found]
    assert appeals == sorted(appeals, reverse=True)


def test_worths_agree_with_a_second_sum() -> None:
    """Each part of the rally answered again by hand: its own option looked up in the new table."""
    situation = _asked()
    lines = plan_lines(situation)
    for one in _variants(situation):
        then = {line.phase: line for line in phase_lines(one.shift.situation)}
        now, kept, switched = 0.0, 0.0, 0.0
        for line in lines:
            if not line.worth:
                continue
            now += line.points * line.share / 100
            table = then[line.phase].worth if line.phase in then else {}
            same = table.get(one.shift.kept(line.option), 0.0)
            best = max(table.values(), default=0.0)
            kept += same * line.share / 100
            switched += max(same, min(best, float(then[line.phase].points)) if table else 0.0) * (
                line.share / 100
            )
        assert math.isclose(one.now, now, abs_tol=1e-9)
        assert math.isclose(one.kept, kept, abs_tol=1e-9)
        assert math.isclose(one.switched, switched, abs_tol=1e-9)


def test_a_lines_worth_table_has_its_own_points_at_its_own_option() -> None:
    for line in phase_lines(_asked()):
        if line.worth:
            assert line.worth[line.option] == pytest.approx(float(line.points))


def test_changing_sides_keeps_the_wing() -> None:
    """A right-hander on the left has the backhand at the sideline, on the right in the middle."""
    swap = next(one for one in shifts(_asked(), OKAFOR) if one.id == "swap")
    assert swap.kept("3:sideline") == "3:middle"
    assert swap.kept("soft") == "soft"
    assert [one.side for one in swap.situation.theirs] == [Side.RIGHT, Side.LEFT]
    assert swap.sign == "Okafor moves to the right side"


def test_who_stacks_already_changes_sides_more_readily() -> None:
    stacker = player(4, "Lindqvist", Side.RIGHT, "stacks often")
    plain, stacks = (
        next(each for each in shifts(_asked(OKAFOR, one), OKAFOR) if each.id == "swap").weight
        for one in (LINDQVIST, stacker)
    )
    assert stacks > plain


def test_nobody_changes_sides_where_the_sides_are_not_known() -> None:
    unsided = OnCourt(profile=LINDQVIST.profile, side=None)
    assert "swap" not in {one.id for one in shifts(_asked(OKAFOR, unsided), OKAFOR)}


def test_nothing_supposed_is_told_as_noted() -> None:
    """What is only supposed has no note behind it: such lines say that they are computed."""
    advice = plan_b.advise(_asked())
    assert not any(one.startswith(SUPPOSED) for one in advice.evidence)
    noted = {one for each in (OKAFOR, LINDQVIST) for one in _evidence(each)}
    for reason in advice.lines:
        if reason.source.kind is SourceKind.BOOK:
            assert set(reason.source.evidence) <= noted
        else:
            assert reason.source.kind is SourceKind.COMPUTED


def _evidence(one: OnCourt) -> set[str]:
    found = {each for estimate in one.profile.skills.values() for each in estimate.evidence}
    return found | {each for fact in one.profile.facts.values() for each in fact.evidence}


def test_the_page_has_the_sign_what_changes_and_that_it_is_a_guess() -> None:
    advice = plan_b.advise(_asked())
    assert advice.lines[0].text.startswith("Sign: ")
    assert advice.lines[0].text.endswith(", my guess")
    assert len(advice.lines) <= 5
    assert any(key.startswith("if_") for key in advice.numbers)


def test_one_opponent_alone_covers_nobody() -> None:
    assert _variants(_asked(OKAFOR)) == ()
    assert sign_of(_asked(OKAFOR), plan_lines(_asked(OKAFOR))) is None


def test_a_plan_that_nothing_changes_says_to_keep_it() -> None:
    hale = player(5, "Hale", None, *often_noted("third_shot_drop weakness", 3))
    brandt = player(6, "Brandt", None)
    advice = plan_b.advise(_asked(hale, brandt))
    if not _variants(_asked(hale, brandt)):
        assert advice.call.startswith("Keep the plan")


_CLAIMS = [
    f"{trait} {value}"
    for trait, row in TRAITS.items()
    if row.kind is not TraitKind.FACT
    for value in row.values
] + ["hand left", "hand right", "ready_position forehand"]


@settings(max_examples=15)
@given(claims=st.tuples(*[st.lists(st.sampled_from(_CLAIMS), max_size=6)] * 2))
def test_switching_never_loses_to_keeping(claims: tuple[list[str], ...]) -> None:
    theirs = (
        player(3, "Okafor", Side.LEFT, *claims[0]),
        player(4, "Lindqvist", Side.RIGHT, *claims[1]),
    )
    for one in _variants(_asked(*theirs)):
        assert one.switched >= one.kept - 1e-9
        assert one.cost > 0


def test_a_noted_habit_is_not_made_weaker_by_supposing_it() -> None:
    poacher = player(4, "Lindqvist", Side.RIGHT, *often_noted("poaching often", 9))
    level = poacher.profile.habit(Trait.POACHING).level
    poach = next(one for one in shifts(_asked(OKAFOR, poacher), OKAFOR) if one.id == "poach")
    found = poach.situation.find(poacher.player)
    assert found is not None
    assert found.profile.habit(Trait.POACHING).level >= level


def test_who_takes_most_of_the_court_is_played_behind() -> None:
    """The partner who plays the hidden one's balls squeezes and crosses: both are supposed."""
    situation = _asked()
    target = most_targeted(situation, plan_lines(situation))
    assert target is not None
    shift = next(one for one in shifts(situation, target) if one.id == "takes")
    partner = next(one for one in shift.situation.theirs if one.player != target.player)
    assert shift.sign == f"{partner.name} takes most of the court"
    for habit in (Trait.POACHING, Trait.SQUEEZES_MIDDLE):
        assert partner.profile.habit(habit).level > 0.5


@pytest.mark.parametrize("change", ["cover", "poach", "takes", "deep", "swap"])
def test_the_change_asked_about_is_the_one_that_is_answered(change: str) -> None:
    """Its sign is on the page, and the plan stands exactly where no other aim is better then."""
    situation = _asked()
    target = most_targeted(situation, plan_lines(situation))
    assert target is not None
    sign = next(one.sign for one in shifts(situation, target) if one.id == change)
    advice = plan_b.advise(situation, change=change)
    told = " ".join([advice.call, *(one.text for one in (*advice.lines, *advice.reasons))])
    if advice.call.startswith("Keep the plan"):
        assert sign in told or advice.call == "Keep the plan, even then."
    else:
        assert f"Sign: {sign}" in told


def test_a_change_that_cannot_be_supposed_keeps_the_plan() -> None:
    """Nobody knows on which sides they play: a swap means nothing."""
    nowhere = [OnCourt(profile=one.profile) for one in (OKAFOR, LINDQVIST)]
    assert plan_b.advise(_asked(*nowhere), change="swap").call.startswith("Keep the plan")
