"""The plan: about these people, ranked by points times share, with shots we own."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from court_pictures import court_of
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import MIRA, TOM, match, often_noted, player

from knowledge.advice import Advice
from knowledge.court import x_of_side_m
from knowledge.planning import plan
from knowledge.planning.dinking import dink_line
from knowledge.planning.line import Phase
from knowledge.planning.plan_lines import plan_lines
from knowledge.planning.probes import PROBES
from knowledge.planning.thirds import third_line
from knowledge.situation import OnCourt
from knowledge.sources import SourceKind
from knowledge.tactics import advise
from knowledge.vocabulary import TRAITS, PlayerId, Side, Topic, TraitKind

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


def _plan(*theirs: OnCourt, ours: tuple[OnCourt, ...] = (MIRA, TOM)) -> Advice:
    return plan.advise(match(Topic.GAME_PLAN, *theirs, ours=ours))


def _texts(advice: Advice) -> str:
    return "\n".join(line.text for line in advice.lines)


def test_a_plan_has_at_most_five_lines_of_which_three_stand_on_notes() -> None:
    advice = _plan(OKAFOR, LINDQVIST)
    from_notes = [line for line in advice.lines if line.source.kind is SourceKind.BOOK]
    assert len(advice.lines) <= 5
    assert len(from_notes) >= 3


def test_lines_name_the_trait_that_they_stand_on() -> None:
    said = _texts(_plan(OKAFOR, LINDQVIST))
    for trait in ("weak backhand dink", "weak third shot", "waits on the backhand"):
        assert trait in said


def test_nothing_noted_says_no_book_and_gives_three_probes() -> None:
    advice = _plan(player(5, "Hale", None), player(6, "Brandt", None))
    assert advice.lines == PROBES
    assert "no book" in advice.call
    assert {choice.about for choice in advice.choices} == {5, 6}


def test_one_note_is_no_plan_but_is_not_lost() -> None:
    hale = player(5, "Hale", Side.LEFT, "third_shot_drop weakness")
    advice = _plan(hale, player(6, "Brandt", Side.RIGHT))
    assert "Hale" in advice.lines[0].text
    assert advice.lines[-3:] == PROBES


def test_a_strength_that_no_aim_rests_on_is_still_told() -> None:
    strong = player(3, "Okafor", None, "backhand_dink strength")
    told = _plan(strong, player(4, "Lindqvist", None))
    assert told.call == "Look first: little book on Okafor/Lindqvist."
    assert told.lines[0].text.startswith("Okafor: strong backhand dink")
    assert told.assumed is not None


def test_our_own_notes_alone_are_no_book_on_them() -> None:
    ours = (
        player(1, "Mira", Side.RIGHT, "forward_speed weakness", "third_shot_drop weakness"),
        player(2, "Tom", Side.LEFT, "patience weakness", "lob_defense weakness"),
    )
    advice = _plan(player(5, "Hale", None), player(6, "Brandt", None), ours=ours)
    assert advice.lines == PROBES


def test_lines_are_ranked_by_points_times_share_with_respect_last() -> None:
    lines = plan_lines(match(Topic.GAME_PLAN, OKAFOR, LINDQVIST))
    aims = [line.per_100 for line in lines if line.phase is not Phase.RESPECT]
    assert aims == sorted(aims, reverse=True)
    assert lines[-1].phase is Phase.RESPECT


def test_numbers_are_points_times_share_and_add_up() -> None:
    advice = _plan(OKAFOR, LINDQVIST)
    phases = [key.removesuffix("_share") for key in advice.numbers if key.endswith("_share")]
    for phase in phases:
        points, share = advice.numbers[f"{phase}_points"], advice.numbers[f"{phase}_share"]
        assert advice.numbers[f"{phase}_per_100"] == pytest.approx(points * share / 100)
    total = math.fsum(advice.numbers[f"{one}_per_100"] for one in phases if one != "respect")
    assert advice.numbers["plan_per_100"] == pytest.approx(total)


def test_a_rare_big_effect_ranks_below_a_common_smaller_one() -> None:
    """A lob is worth as many points as a return at the worse third, in a tenth of the rallies."""
    hale = player(
        5,
        "Hale",
        Side.LEFT,
        *often_noted("lob_defense weakness", 9),
        *often_noted("third_shot_drop weakness", 9),
    )
    phases = [line.phase for line in plan_lines(match(Topic.GAME_PLAN, hale))]
    assert phases.index(Phase.RETURN) < phases.index(Phase.LOB)


def test_the_return_goes_to_the_worse_third_and_away_from_the_better() -> None:
    weak = player(5, "Hale", Side.LEFT, *often_noted("third_shot_drop weakness", 2))
    strong = player(6, "Brandt", Side.RIGHT, *often_noted("third_shot_drop strength", 2))
    said = plan_lines(match(Topic.GAME_PLAN, strong, weak))
    assert next(line.do for line in said if line.phase is Phase.RETURN) == "Return deep at Hale"


def test_the_return_goes_to_the_crasher_so_that_they_must_hit_the_third() -> None:
    crasher = player(5, "Hale", Side.LEFT, *often_noted("crash often", 3))
    lines = plan_lines(match(Topic.GAME_PLAN, player(6, "Brandt", Side.RIGHT), crasher))
    found = next(line for line in lines if line.phase is Phase.RETURN)
    assert (found.do, found.because) == ("Return deep at Hale", "crashes behind drives")


@pytest.mark.parametrize(
    ("weakness", "phase"), [("speed_up", Phase.HANDS), ("lob", Phase.LOB), ("return", Phase.RETURN)]
)
def test_no_line_needs_a_shot_that_both_of_us_lack(weakness: str, phase: Phase) -> None:
    hale = player(
        5,
        "Hale",
        Side.LEFT,
        "hand right",
        "ready_position backhand",
        *often_noted("lob_defense weakness"),
        "third_shot_drop weakness",
    )
    ours = tuple(
        player(number, name, side, f"{weakness} weakness")
        for number, name, side in ((1, "Mira", Side.RIGHT), (2, "Tom", Side.LEFT))
    )
    able = plan_lines(match(Topic.GAME_PLAN, hale))
    unable = plan_lines(match(Topic.GAME_PLAN, hale, ours=ours))
    assert any(line.phase is phase and line.is_specific for line in able)
    assert not any(line.phase is phase and line.is_specific for line in unable)


def test_who_lacks_the_drop_drives_and_the_line_says_who() -> None:
    tom = player(2, "Tom", Side.LEFT, "third_shot_drop weakness")
    hale = player(5, "Hale", Side.LEFT, *often_noted("forward_speed weakness", 3))
    line = third_line(match(Topic.GAME_PLAN, hale, ours=(MIRA, tom)))
    assert line is not None
    assert "Mira drops" in line.do
    assert "Tom drops" not in line.do


def test_no_third_of_our_own_is_no_line() -> None:
    lacking = ("third_shot_drop weakness", "forehand_drive weakness")
    ours = (player(1, "Mira", None, *lacking), player(2, "Tom", None, *lacking))
    assert third_line(match(Topic.GAME_PLAN, OKAFOR, ours=ours)) is None


def test_the_third_goes_behind_a_poacher() -> None:
    hale = player(5, "Hale", Side.LEFT, *often_noted("poaching often", 4))
    line = third_line(match(Topic.GAME_PLAN, hale, player(6, "Brandt", Side.RIGHT)))
    assert line is not None
    assert (line.do, line.because) == ("Drop thirds behind Hale", "poaches a lot")


def test_the_picture_has_the_aims_and_no_side_is_guessed() -> None:
    known = court_of(_plan(OKAFOR, LINDQVIST))
    assert known is not None
    assert max(arrow.width for arrow in known.arrows) == 1.0
    unsided = OnCourt(profile=LINDQVIST.profile, side=None)
    assert _plan(OKAFOR, unsided).picture is None


def test_whose_dinks_are_shaky_leaves_the_weak_wing_to_the_partner() -> None:
    """A right-hander on the left has the backhand at the sideline: not for shaky dinks."""
    tom = player(2, "Tom", Side.RIGHT, *often_noted("backhand_dink weakness"))
    theirs = (
        player(3, "Okafor", Side.LEFT, "hand right", *often_noted("backhand_dink weakness")),
        player(4, "Lindqvist", Side.RIGHT, "hand left"),
    )
    mira = player(1, "Mira", Side.LEFT, "hand right")
    both = dink_line(match(Topic.GAME_PLAN, *theirs))
    by_name = dink_line(match(Topic.GAME_PLAN, *theirs, ours=(mira, tom)))
    assert both is not None
    assert by_name is not None
    assert both.do == "Dink Okafor's backhand, across"
    assert by_name.do == "Mira: dink Okafor's backhand, wide"
    assert by_name.share == both.share / 2


@pytest.mark.parametrize("asker", [None, 1, 2])
def test_the_dink_of_a_plan_is_the_dinks_own_answer(asker: int | None) -> None:
    striker = None if asker is None else PlayerId(asker)
    asked = replace(match(Topic.GAME_PLAN, OKAFOR, LINDQVIST), striker=striker)
    line = dink_line(asked)
    own = advise(replace(asked, topic=Topic.AIM_DINK))
    assert line is not None
    assert own.call.replace(": ", ", ").startswith(line.do.split(":")[0].rstrip("."))
    if striker is not None:
        assert line.arrow is not None
        assert own.picture is not None
        drawn = court_of(own).arrows[0]
        assert (line.arrow.from_x_m, line.arrow.to_x_m) == (drawn.from_x_m, drawn.to_x_m)


def test_notes_for_and_against_are_told_apart_where_a_line_stands_on_them() -> None:
    hale = player(
        5, "Hale", Side.LEFT, *often_noted("third_shot_drop weakness", 3),
        "third_shot_drop strength by lena", "hand right", "poaching often", "speed_up strength",
    )  # fmt: skip
    line = next(
        line
        for line in plan_lines(match(Topic.GAME_PLAN, hale, player(6, "Brandt", Side.RIGHT)))
        if line.phase is Phase.RETURN
    )
    assert str(line.reason().source) == "book: 3 notes, 1 disagrees"


def test_one_note_for_and_one_against_make_no_line() -> None:
    hale = player(5, "Hale", Side.LEFT, "foot_speed weakness by tom", "foot_speed strength by lena")
    lines = plan_lines(match(Topic.GAME_PLAN, hale, player(6, "Brandt", Side.RIGHT)))
    assert not any("feet" in line.text for line in lines)


def test_no_note_is_said_twice() -> None:
    lines = plan_lines(match(Topic.GAME_PLAN, OKAFOR, LINDQVIST))
    used = [one for line in lines for one in line.evidence]
    assert len(used) == len(set(used))


def test_the_same_notes_give_the_same_plan() -> None:
    assert _plan(OKAFOR, LINDQVIST) == _plan(OKAFOR, LINDQVIST)


_CLAIMS = [
    f"{trait} {value}"
    for trait, row in TRAITS.items()
    if row.kind is not TraitKind.FACT
    for value in row.values
] + ["hand left", "hand right", "ready_position forehand", "ready_position backhand"]

_NAMES = st.sampled_from(["Ruiz", "Lindqvist", "Nguyen-Brandt", "Ana Ruiz-Peña", "van der Meer"])


@settings(max_examples=30)
@given(
    names=st.tuples(_NAMES, _NAMES),
    claims=st.tuples(*[st.lists(st.sampled_from(_CLAIMS), max_size=8)] * 4),
    sides=st.sampled_from([(Side.LEFT, Side.RIGHT), (None, None)]),
)
def test_any_notes_fit_a_phone(
    names: tuple[str, str], claims: tuple[list[str], ...], sides: tuple[Side | None, Side | None]
) -> None:
    theirs = [player(3 + n, names[n], sides[n], *claims[n]) for n in (0, 1)]
    ours = (
        player(1, "Mira", Side.RIGHT, *claims[2]),
        player(2, "Tom", Side.LEFT, *claims[3]),
    )
    advice = _plan(*theirs, ours=ours)
    assert len(advice.lines) <= 5
    assert all(len(line.text) <= 70 for line in advice.lines)


@pytest.mark.parametrize(("habit", "is_behind"), [("poaching often", True), (None, False)])
def test_the_thirds_arrow_ends_where_its_words_say(habit: str | None, *, is_behind: bool) -> None:
    """Behind a poacher is the place they left, towards their own sideline."""
    noted = [] if habit is None else often_noted(habit, 3)
    weak = [] if is_behind else often_noted("backhand_volley weakness", 3)
    target = player(5, "Hale", Side.RIGHT, *noted, *weak)
    line = third_line(match(Topic.GAME_PLAN, target, player(6, "Brandt", Side.LEFT)))
    assert line is not None
    assert ("behind" in line.do) is is_behind
    assert line.arrow is not None
    stands_at = x_of_side_m(Side.RIGHT, ours=False)
    assert (abs(line.arrow.to_x_m) > abs(stands_at)) is is_behind
    assert line.arrow.to_x_m * stands_at > 0
