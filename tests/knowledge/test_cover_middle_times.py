"""Who gets to the middle in time: computed effects, the seam's shift, and the picture of both."""

from __future__ import annotations

from dataclasses import replace
from itertools import chain

import pytest
from court_pictures import court_of
from middle_table import computed_in_time, computed_strip_m, paths_of, places
from scouted import Noted, player

from knowledge.court import HALF_LENGTH_M, HALF_WIDTH_M, METRES_PER_FOOT, is_in
from knowledge.court_picture import Area
from knowledge.effects import Mechanism, OptionId
from knowledge.engine import Part
from knowledge.situation import Agreement, Asked, OnCourt, Situation
from knowledge.sources import SourceKind
from knowledge.tactics import advise
from knowledge.tactics.middle_answer import answer_middle
from knowledge.tactics.middle_effects import FOREHAND
from knowledge.tactics.middle_picture import NEAREST_M
from knowledge.tactics.middle_seam import BODY_M, seam_of
from knowledge.tactics.middle_times import Build, Place, in_time, place_points, stand, strip_half_m
from knowledge.vocabulary import AgreementKey, BallKind, Hand, PlayerId, Side, Topic, Trait, Value

MIRA, TOM = PlayerId(1), PlayerId(2)
RIGHT = Hand.RIGHT


def mira(*noted: Noted, hand: Hand = RIGHT, name: str = "Mira") -> OnCourt:
    return player(MIRA, name, hand=hand, side=Side.LEFT, noted=noted)


def tom(*noted: Noted, hand: Hand = RIGHT, name: str = "Tom") -> OnCourt:
    return player(TOM, name, hand=hand, side=Side.RIGHT, noted=noted)


def situation(*ours: OnCourt, **asking: object) -> Situation:
    asked = Asked(**asking)  # type: ignore[arg-type]
    return Situation(topic=Topic.COVER_MIDDLE, ours=ours, asked=asked)


def parts(kind: BallKind, *ours: OnCourt, **asking: object) -> dict[str, Part]:
    """The right player's effects on a ball of this kind, by name."""
    taken = answer_middle(situation(*ours, **asking)).of(kind)
    return {part.effect.id: part for part in taken.ranking.of(OptionId(Side.RIGHT)).parts}


def test_the_table_is_what_reach_computes() -> None:
    """Written by tests/support/middle_table.py; a change of reach needs it written again."""
    for place in places():
        for build in (Build.USUAL, Build.SLOW) if place.is_wide else Build:
            found, kept = computed_in_time(place, build), in_time(place, build)
            assert kept.chances == pytest.approx(found.chances, abs=0.002), (place, build)
            assert kept.slack_ms == pytest.approx(found.slack_ms, abs=2), (place, build)
    dinks = computed_strip_m(BallKind.DINK)
    assert strip_half_m(BallKind.DINK) == pytest.approx(dinks, abs=0.01)


def test_the_five_balls_are_balls_that_can_be_hit() -> None:
    """Over the net and into the court (knowledge.flight, the rulebook's sizes)."""
    for kind in BallKind:
        for ball in chain(*paths_of(kind, Side.LEFT)):
            assert ball.net_clearance_m > 0, kind
            assert is_in(ball.lands_at), kind


def test_a_slow_ball_leaves_more_time_than_a_fast_one() -> None:
    slack = {
        kind: in_time(Place(kind=kind, is_cross=True, is_wide=False)).slack_ms for kind in BallKind
    }
    assert slack[BallKind.DINK] > slack[BallKind.FLOATING] > slack[BallKind.DRIVE]
    assert slack[BallKind.DRIVE] > 0 < slack[BallKind.SPEED_UP]


QUICK: Noted = (Trait.FOOT_SPEED, Value.STRENGTH, 4)
LONG: Noted = (Trait.REACH, Value.STRENGTH, 4)


@pytest.mark.parametrize(("noted", "kind"), [(QUICK, BallKind.LOB), (LONG, BallKind.DRIVE)])
def test_feet_and_reach_count_by_what_is_computed_for_the_ball(
    noted: Noted, kind: BallKind
) -> None:
    trait = noted[0]
    part = parts(kind, mira(), tom(noted), hitter_side=Side.LEFT)[f"{trait}:right"]
    assert part.effect.source.kind is SourceKind.COMPUTED
    assert part.effect.mechanism is Mechanism.TIME
    assert part.points > 0
    assert str(part.source) == "book: 4 notes"
    unknown = parts(kind, mira(), tom(), hitter_side=Side.LEFT)[f"{trait}:right"]
    assert float(unknown.points) == 0


def test_nobody_needs_feet_for_a_dink_from_cross() -> None:
    """0.6 s to spare: the effect is left out, where the player in front of the ball has it."""
    assert "foot_speed:right" not in parts(
        BallKind.DINK, mira(), tom(QUICK), hitter_side=Side.RIGHT
    )
    assert "foot_speed:right" in parts(BallKind.DINK, mira(), tom(QUICK), hitter_side=Side.LEFT)


def test_each_trait_is_counted_once() -> None:
    """A computed effect replaces the rule of thumb (engine: one voice per mechanism)."""
    found = parts(BallKind.FLOATING, mira(), tom(QUICK, LONG), hitter_side=Side.LEFT)
    about = [name for name in found if "foot_speed" in name or "reach" in name]
    assert sorted(about) == ["foot_speed:right", "reach:right"]


@pytest.mark.parametrize(("height", "sign"), [(Value.TALL, 1), (Value.SHORT, -1)])
def test_a_noted_height_counts_and_an_unknown_one_does_not(height: Value, sign: int) -> None:
    noted: Noted = (Trait.HEIGHT, height, 2)
    found = parts(BallKind.DRIVE, mira(), tom(noted), hitter_side=Side.LEFT)["height:right"]
    assert sign * found.points > 0
    assert "height:right" not in parts(BallKind.DRIVE, mira(), tom(), hitter_side=Side.LEFT)


@pytest.mark.parametrize("kind", list(BallKind))
@pytest.mark.parametrize("is_cross", [True, False])
def test_being_out_wide_costs_more_than_any_wing_is_worth(kind: BallKind, is_cross: bool) -> None:
    """Whoever is pulled wide leaves all inside to the other (common practice).

    Least on a lob, which leaves time to run.
    """
    here = Place(kind=kind, is_cross=is_cross, is_wide=False)
    assert place_points(replace(here, is_wide=True)).mean < -FOREHAND[kind].mean
    assert abs(place_points(here).mean) < 1


def test_the_player_out_wide_is_late_and_nobody_else() -> None:
    wide = parts(BallKind.DRIVE, mira(), tom(), pulled_wide=TOM)["in time:right"]
    assert wide.effect.mechanism is Mechanism.COVER
    assert wide.points < -10
    usual = parts(BallKind.DRIVE, mira(), tom())["in time:right"]
    assert usual.effect.mechanism is Mechanism.TIME
    assert abs(usual.points) < 1


@pytest.mark.parametrize(("wide", "who", "side"), [(TOM, "Tom", "right"), (MIRA, "Mira", "left")])
def test_the_reply_tells_how_far_the_seam_moves(wide: PlayerId, who: str, side: str) -> None:
    """Equal partners meet halfway (geometry): from 4 ft to 11 ft out of the centre, 7 ft, the
    middle moves 3.5 ft."""
    advice = advise(situation(mira(), tom(), pulled_wide=wide))
    assert advice.reasons[0].text == f"{who} wide: your middle moves 3.5 ft {side}"
    assert advice.reasons[0].source.kind is SourceKind.COMPUTED
    moved = advice.numbers["seam_moves_right_ft"]
    assert abs(moved) == pytest.approx(3.5, abs=0.25)
    assert (moved > 0) is (side == "right")


def test_a_long_name_is_left_out_of_the_reason_and_no_one_wide_has_none() -> None:
    long = tom(name="Bartholomew-Fitzgerald of Ashby")
    advice = advise(situation(mira(), long, pulled_wide=TOM))
    assert advice.reasons[0].text == "Your middle moves 3.5 ft right"
    usual = advise(situation(mira(), tom()))
    assert "seam_moves_right_ft" not in usual.numbers
    assert not any("moves" in reason.text for reason in usual.reasons)


def test_a_slow_partner_out_wide_leaves_more() -> None:
    slow: Noted = (Trait.FOOT_SPEED, Value.WEAKNESS, 4)
    usual, more = (
        advise(situation(mira(), one, pulled_wide=TOM)).numbers["seam_moves_right_ft"]
        for one in (tom(), tom(slow))
    )
    seams = [
        seam_of(answer_middle(situation(mira(), one, pulled_wide=TOM)), None)
        for one in (tom(), tom(slow))
    ]
    assert seams[1].mean_x_m > seams[0].mean_x_m
    assert min(usual, more) > 3


def test_each_partners_time_to_spare_is_among_the_numbers() -> None:
    numbers = advise(situation(mira(), tom(QUICK), hitter_side=Side.LEFT)).numbers
    plain = advise(situation(mira(), tom(), hitter_side=Side.LEFT)).numbers
    for kind in BallKind:
        assert numbers[f"{kind}_right_slack_ms"] >= plain[f"{kind}_right_slack_ms"]
        assert numbers[f"{kind}_left_slack_ms"] == plain[f"{kind}_left_slack_ms"]
    wide = advise(situation(mira(), tom(), pulled_wide=TOM)).numbers
    assert wide["drive_right_slack_ms"] < 0 < wide["drive_left_slack_ms"]


def test_a_quick_partner_takes_the_lob_but_an_agreement_stays_first() -> None:
    told = advise(situation(mira(), tom(QUICK), ball_kind=BallKind.LOB))
    assert told.call == "Let Tom take the lob."
    asked = situation(mira(), tom(QUICK, LONG))
    key = AgreementKey.MIDDLE
    agreed = replace(asked, agreements={key: Agreement(key=key, value="mira", words="Mira has it")})
    assert advise(agreed).call == "Give Mira's forehand the middle, slow and fast."


def test_the_seam_stops_short_of_a_partners_body() -> None:
    """Body and line belong to whoever stands there (common practice)."""
    slow: Noted = (Trait.FOOT_SPEED, Value.WEAKNESS, 6)
    found = seam_of(answer_middle(situation(mira(QUICK), tom(slow))), BallKind.LOB)
    assert max(found.x_m) <= stand(Side.RIGHT).x_m - BODY_M
    assert max(found.x_m) > 0.3


def _size_m2(area: Area) -> float:
    """By the shoelace formula."""
    corners = area.corners
    turned = [
        one[0] * other[1] - other[0] * one[1]
        for one, other in zip(corners, (*corners[1:], corners[0]), strict=True)
    ]
    return abs(sum(turned)) / 2


@pytest.mark.parametrize("asking", [{}, {"pulled_wide": TOM}, {"hitter_side": Side.LEFT}])
def test_the_picture_shares_out_our_whole_half(asking: dict[str, object]) -> None:
    picture = court_of(advise(situation(mira(QUICK), tom(), **asking)))
    mine, his = picture.areas[:2]
    assert (mine.owner, his.owner) == ("Mira", "Tom")
    half_m2 = 2 * HALF_WIDTH_M * (HALF_LENGTH_M - NEAREST_M)
    assert _size_m2(mine) + _size_m2(his) == pytest.approx(half_m2, abs=0.02)
    assert set(picture.lines[0].points) <= set(mine.corners) & set(his.corners)


def test_the_picture_labels_the_seam_from_the_net_back() -> None:
    picture = court_of(advise(situation(mira(), tom())))
    strips = picture.areas[2:]
    assert [strip.label for strip in strips] == [
        "dink: diagonal one",
        "high: Mira",
        "fast: Mira",
        "lob: Mira",
    ]
    assert [strip.owner for strip in strips] == ["diagonal one", "Mira", "Mira", "Mira"]
    depths = [min(y_m for _, y_m in strip.corners) for strip in strips]
    assert depths == sorted(depths, reverse=True)
    assert {marker.label: marker.x_m < 0 for marker in picture.markers} == {
        "Mira": True,
        "Tom": False,
    }


def test_the_caption_says_the_same_in_words() -> None:
    advice = advise(situation(mira(), tom()))
    alt = court_of(advice).alt
    assert alt.startswith(advice.call)
    assert "Left of the middle is Mira's, right of it Tom's." in alt
    assert all(strip.label in alt for strip in court_of(advice).areas[2:])
    wide = court_of(advise(situation(mira(), tom(), pulled_wide=TOM)))
    assert "Left of a line 3.5 ft right of the middle is Mira's" in wide.alt


def test_while_one_is_wide_the_seam_alone_shares_the_half_out() -> None:
    picture = court_of(advise(situation(mira(), tom(), pulled_wide=TOM)))
    assert [area.label for area in picture.areas] == ["all inside: Mira", ""]
    x_m = {marker.label: marker.x_m for marker in picture.markers}
    assert x_m["Tom"] > 10 * METRES_PER_FOOT > -x_m["Mira"]  # 20 ft wide (2025 edition, 2.A)
    assert all(0.5 < x < x_m["Tom"] for x, _ in picture.lines[0].points)
