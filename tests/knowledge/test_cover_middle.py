"""Who takes the middle: by kind of ball, hands and courts, and what our pair agreed.

Judgements: common practice, no source.
"""

from __future__ import annotations

import tomllib
from itertools import product
from pathlib import Path
from types import MappingProxyType
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scouted import Noted, player

from knowledge.advice import CALL_LIMIT, Advice, Confidence, MatchFact
from knowledge.situation import Agreement, Asked, Familiarity, OnCourt, Situation
from knowledge.sources import SourceKind
from knowledge.tactics import advise
from knowledge.tactics.aim_words import REASON_LIMIT
from knowledge.tactics.middle_answer import answer_middle
from knowledge.tactics.middle_both_ways import SETTLE_FIRST
from knowledge.vocabulary import (
    AgreementKey,
    BallKind,
    Hand,
    PlayerId,
    Side,
    Topic,
    Trait,
    Value,
)

CASES = tomllib.loads(
    (Path(__file__).parents[1] / "cases" / "cover_middle_balls.toml").read_text(encoding="utf-8")
)["ball"]

MIRA, TOM = PlayerId(1), PlayerId(2)


def mira(*noted: Noted, hand: Hand | None = Hand.RIGHT, side: Side | None = Side.LEFT) -> OnCourt:
    return player(MIRA, "Mira", hand=hand, side=side, noted=noted)


def tom(*noted: Noted, hand: Hand | None = Hand.RIGHT, side: Side | None = Side.RIGHT) -> OnCourt:
    return player(TOM, "Tom", hand=hand, side=side, noted=noted)


def asked(
    *ours: OnCourt,
    agreed: str | None = None,
    familiarity: Familiarity | None = None,
    theirs: tuple[OnCourt, ...] = (),
    **asking: object,
) -> Situation:
    agreements = {}
    if agreed is not None:
        key = AgreementKey.MIDDLE
        agreements[key] = Agreement(key=key, value=agreed, words=agreed)
    return Situation(
        topic=Topic.COVER_MIDDLE,
        ours=ours,
        theirs=theirs,
        agreements=MappingProxyType(agreements),
        familiarity=familiarity,
        asked=Asked(**asking),  # type: ignore[arg-type]
    )


def middle(*ours: OnCourt, **asking: object) -> Advice:
    return advise(asked(*ours, **asking))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "case", CASES, ids=lambda c: f"{c['kind']}-{'-'.join(c['hands'])}-{c.get('from')}"
)
def test_each_kind_of_ball_has_its_owner(case: dict[str, Any]) -> None:
    left, right = case["hands"]
    hitter = None if "from" not in case else Side(str(case["from"]))
    answer = answer_middle(
        asked(mira(hand=Hand(str(left))), tom(hand=Hand(str(right))), hitter_side=hitter)
    )
    owner = answer.of(BallKind(str(case["kind"]))).owner
    if hitter is None:
        assert owner == case["owner"]
    else:
        seat = answer.player(owner)
        assert seat is not None
        assert seat.side == case["owner"]


@pytest.mark.parametrize("hitter", list(Side))
@pytest.mark.parametrize(("left", "right"), list(product([Hand.LEFT, Hand.RIGHT], repeat=2)))
def test_mirroring_hands_and_courts_mirrors_every_owner(
    hitter: Side, left: Hand, right: Hand
) -> None:
    flip = {Hand.LEFT: Hand.RIGHT, Hand.RIGHT: Hand.LEFT}
    here = answer_middle(asked(mira(hand=left), tom(hand=right), hitter_side=hitter))
    there = answer_middle(
        asked(mira(hand=flip[right]), tom(hand=flip[left]), hitter_side=hitter.other)
    )
    for kind in BallKind:
        one, other = here.player(here.of(kind).owner), there.player(there.of(kind).owner)
        assert one is not None
        assert other is not None
        assert one.side is other.side.other


def test_the_call_in_advance() -> None:
    advice = middle(mira(), tom())
    assert advice.call == "Slow: cross from the ball. High or fast: Mira's forehand."
    assert advice.number == "Lob in the middle: Mira's forehand."
    assert advice.unless == "One of you pulled wide? The other takes all inside."


def test_the_call_for_a_known_hitter_names_people() -> None:
    assert middle(mira(), tom(), hitter_side=Side.RIGHT).call == (
        "Slow: Tom. High or fast: Mira's forehand."
    )
    assert middle(mira(), tom(), hitter_side=Side.LEFT).call == (
        "Give Mira's forehand the middle, slow and fast."
    )


def test_a_rule_for_every_ball_is_said_by_who_stands_opposite() -> None:
    """A lefty on the right of a right-hander: two forehands meet (common practice, no source)."""
    both = middle(mira(hand=Hand.RIGHT, side=Side.LEFT), tom(hand=Hand.LEFT, side=Side.RIGHT))
    assert both.call == "From opposite Mira: Tom. From opposite Tom: Mira."


def test_one_kind_asked_about_is_answered_alone() -> None:
    assert middle(mira(), tom(), ball_kind=BallKind.LOB).call == "Let Mira's forehand take the lob."
    assert middle(mira(), tom(), ball_kind=BallKind.DINK).call == (
        "Take the dink if you're cross from the ball."
    )


def test_a_lob_comes_with_the_usual_caution() -> None:
    """Falls when backpedalling: common practice; other balls need none."""
    assert middle(mira(), tom(), ball_kind=BallKind.LOB).caution is not None
    assert middle(mira(), tom(), ball_kind=BallKind.DINK).caution is None
    assert middle(mira(), tom()).caution is None


@pytest.mark.parametrize("wide", [MIRA, TOM])
@pytest.mark.parametrize("hitter", [None, *Side])
def test_whoever_is_pulled_wide_leaves_all_inside_to_the_other(
    wide: PlayerId, hitter: Side | None
) -> None:
    advice = middle(mira(), tom(), pulled_wide=wide, hitter_side=hitter)
    inside, out = ("Tom", "Mira") if wide == MIRA else ("Mira", "Tom")
    assert advice.call == f"Give {inside} all inside while {out} is wide."
    answer = answer_middle(asked(mira(), tom(), pulled_wide=wide, hitter_side=hitter))
    for taken in answer.taken:
        seat = answer.player(taken.owner)
        assert seat is not None
        assert seat.who.name == inside


def test_switching_courts_moves_the_forehand() -> None:
    switched = middle(mira(side=Side.RIGHT), tom(side=Side.LEFT))
    assert switched.call == "Slow: cross from the ball. High or fast: Tom's forehand."


def test_a_strong_backhand_counter_takes_the_speed_ups() -> None:
    strong: Noted = (Trait.COUNTER_BACKHAND, Value.STRENGTH, 8)
    before = answer_middle(asked(mira(), tom(), hitter_side=Side.RIGHT))
    after = answer_middle(asked(mira(), tom(strong), hitter_side=Side.RIGHT))
    assert before.player(before.of(BallKind.SPEED_UP).owner) == before.seat(Side.LEFT)
    assert after.player(after.of(BallKind.SPEED_UP).owner) == after.seat(Side.RIGHT)
    assert after.of(BallKind.DRIVE).owner is before.of(BallKind.DRIVE).owner
    advice = middle(mira(), tom(strong), hitter_side=Side.RIGHT)
    assert str(advice.reasons[0].source) == "book: 8 notes"


def test_a_wing_that_is_not_in_the_middle_does_not_count() -> None:
    before = answer_middle(asked(mira(), tom())).of(BallKind.SPEED_UP)
    forehand: Noted = (Trait.COUNTER_FOREHAND, Value.STRENGTH, 8)
    after = answer_middle(asked(mira(), tom(forehand))).of(BallKind.SPEED_UP)
    assert after.gain == pytest.approx(before.gain)


@pytest.mark.parametrize(
    ("trait", "kind"),
    [
        (Trait.OVERHEAD, BallKind.LOB),
        (Trait.FOOT_SPEED, BallKind.LOB),
        (Trait.FOOT_SPEED, BallKind.FLOATING),
        (Trait.REACH, BallKind.DINK),
        (Trait.HANDLES_PACE, BallKind.DRIVE),
        (Trait.COUNTER, BallKind.SPEED_UP),
        (Trait.BACKHAND_DINK, BallKind.DINK),
        (Trait.BACKHAND_VOLLEY, BallKind.FLOATING),
    ],
)
def test_our_own_shots_move_the_estimate(trait: Trait, kind: BallKind) -> None:
    def right_seat(value: Value) -> float:
        ranking = (
            answer_middle(asked(mira(), tom((trait, value, 3)), hitter_side=Side.LEFT))
            .of(kind)
            .ranking
        )
        return next(one.chance for one in ranking.ranked if one.option.id == "right")

    assert right_seat(Value.STRENGTH) > right_seat(Value.WEAKNESS)


def test_two_forehands_and_two_backhands_are_said() -> None:
    forehands = [r.text for r in middle(mira(), tom(hand=Hand.LEFT)).reasons]
    backhands = [r.text for r in middle(mira(hand=Hand.LEFT), tom()).reasons]
    assert any("Two forehands" in text for text in forehands)
    assert any("Two backhands" in text for text in backhands)
    one_of_each = [r.text for r in middle(mira(), tom()).reasons]
    assert not any(text.startswith("Two") for text in one_of_each)


def test_the_agreement_wins_and_a_disagreement_is_pointed_out() -> None:
    advice = middle(mira(), tom(), agreed="Tom takes the middle")
    assert advice.call == "Give Tom the middle, slow and fast."
    assert advice.reasons[0].text == "You agreed: Tom takes the middle"
    assert advice.reasons[0].source.kind is SourceKind.AGREED
    assert advice.reasons[1].text == "In a break: rather Mira's forehand for floaters"


@pytest.mark.parametrize("left", ["Mira", "Lindqvist", "Bartholomew-Fitzgerald", "Maximilienne"])
@pytest.mark.parametrize("kind", [None, *BallKind])
def test_a_disagreement_fits_a_reasons_line(left: str, kind: BallKind | None) -> None:
    """A long name loses its wing first, then gives way to its court."""
    named = player(MIRA, left, hand=Hand.RIGHT, side=Side.LEFT)
    reasons = middle(named, tom(), agreed="Tom takes the middle", ball_kind=kind).reasons
    said = [reason.text for reason in reasons if reason.text.startswith("In a break: ")]
    assert len(said) == (0 if kind is BallKind.LOB else 1)
    assert all(len(text) <= REASON_LIMIT for text in said)


@pytest.mark.parametrize(
    ("words", "owner"),
    [
        ("forehand takes middle", "left"),
        ("left side has it", "left"),
        ("cross player", "cross"),
        ("diagonal always", "cross"),
        ("mira", "left"),
        ("whoever shouts", None),
        ("slow cross, fast forehand", "left"),
        ("dinks are cross", None),
    ],
)
def test_what_an_agreement_says(words: str, owner: str | None) -> None:
    taken = answer_middle(asked(mira(), tom(), agreed=words)).of(BallKind.DRIVE)
    assert taken.agreed == owner


def test_an_agreement_on_slow_and_fast_balls_holds_for_each() -> None:
    answer = answer_middle(asked(mira(), tom(), agreed="slow cross, fast forehand"))
    assert answer.of(BallKind.DINK).agreed == "cross"
    assert answer.of(BallKind.FLOATING).agreed == "cross"
    assert answer.of(BallKind.SPEED_UP).agreed == "left"


@pytest.mark.parametrize(
    ("agreed", "call"),
    [
        ("Tom takes the middle", "Tom takes the middle."),
        ("slow Tom, fast Mira", "Slow: Tom. Fast: Mira."),
        ("forehand", "Slow, speed-ups: cross. High, drives: left player."),
        ("whoever shouts", "Slow, speed-ups: cross. High, drives: left player."),
    ],
)
def test_an_agreement_by_name_holds_before_the_sides_are_known(agreed: str, call: str) -> None:
    advice = middle(mira(side=None), tom(hand=Hand.LEFT, side=None), agreed=agreed)
    assert advice.call == call
    assert "left" in (advice.assumed or "")


def test_two_forehands_make_a_forehand_agreement_ambiguous() -> None:
    taken = answer_middle(asked(mira(), tom(hand=Hand.LEFT), agreed="forehand takes it"))
    assert taken.of(BallKind.DRIVE).agreed is None


def test_being_pulled_wide_breaks_an_agreement() -> None:
    advice = middle(mira(), tom(), agreed="Tom takes the middle", pulled_wide=TOM)
    assert advice.call.startswith("Give Mira all inside")


def test_a_new_pair_is_told_that_deciding_is_worth_more_than_who() -> None:
    new = middle(mira(), tom(), familiarity=Familiarity.NEW)
    regular = middle(mira(), tom(), familiarity=Familiarity.REGULAR)
    assert new.number is not None
    assert "New pair: call it out loud" in new.number
    assert new.numbers["no_hesitation_points"] == 3.0  # row 24: new pair +3, regular +1.5
    assert regular.numbers["no_hesitation_points"] == 1.5
    assert MatchFact.FAMILIARITY in {choice.fact for choice in middle(mira(), tom()).choices}


def test_unknown_courts_name_no_one_and_ask() -> None:
    advice = middle(mira(side=None), tom(side=None))
    assert "Mira" not in advice.call
    assert "Tom" not in advice.call
    assert advice.assumed == "I don't know who plays left."
    assert [c.label for c in advice.choices if c.fact == MatchFact.SIDE] == [
        "Mira left",
        "Tom left",
    ]


def test_unknown_hands_are_assumed_aloud() -> None:
    advice = middle(mira(hand=None), tom(hand=None))
    assert advice.confidence is Confidence.GENERAL_RULE
    assert advice.assumed == "Taking Mira and Tom as right-handed."
    assert "forehand" not in advice.call


FOREHAND_THERE = "A right-hander's forehand is there"


@pytest.mark.parametrize("kind", [None, BallKind.LOB, BallKind.DRIVE])
@pytest.mark.parametrize("left_hand", [Hand.LEFT, None])
def test_a_guessed_right_hander_on_the_right_has_no_forehand_in_the_middle(
    left_hand: Hand | None, kind: BallKind | None
) -> None:
    """Beside a lefty on the left both have the backhand there, as the stack's answer says too."""
    advice = middle(mira(hand=left_hand), tom(hand=None), ball_kind=kind)
    texts = [reason.text for reason in advice.reasons]
    assert any("Two backhands" in text for text in texts) is (left_hand is Hand.LEFT)
    assert "Tom" not in advice.call or FOREHAND_THERE not in texts


@pytest.mark.parametrize("left_hand", [Hand.RIGHT, None])
def test_on_the_left_a_guessed_right_hander_has_it_there(left_hand: Hand | None) -> None:
    advice = middle(mira(hand=left_hand), tom(hand=None), ball_kind=BallKind.LOB)
    texts = [reason.text for reason in advice.reasons]
    assert (FOREHAND_THERE in texts) is (left_hand is None)
    assert not any("Two backhands" in text for text in texts)


def test_a_hitter_known_to_speed_up_is_named_if_there_is_room() -> None:
    fast = player(3, "Okafor", noted=[(Trait.SPEED_UP, Value.STRENGTH, 4)])
    advice = middle(mira(), tom(), theirs=(fast,), hitter_side=Side.RIGHT)
    assert any(reason.text.startswith("Okafor speeds up") for reason in advice.reasons)
    unknown = middle(mira(), tom(), theirs=(player(3, "Okafor"),), hitter_side=Side.RIGHT)
    assert not any("Okafor" in reason.text for reason in unknown.reasons)


@pytest.mark.parametrize(
    ("words", "assumed"),
    [
        ("who takes middle if we are both lefties", "both left-handed"),
        ("two left-handers, who has the middle", "both left-handed"),
        ("lefty on the right, who takes it", "lefty on the right"),
        ("lefty plays left", "lefty on the left"),
    ],
)
def test_hands_said_in_the_question_are_used_and_repeated(words: str, assumed: str) -> None:
    advice = middle(words=words)
    assert advice.assumed == f"As you said: {assumed}."
    known_otherwise = middle(mira(), tom(), words=words)
    assert known_otherwise.assumed is not None
    assert "your book has you otherwise" in known_otherwise.assumed
    assert "Mira" not in known_otherwise.call


def test_two_lefties_mirror_two_right_handers() -> None:
    """The forehand in the middle is the right player's for two left-handers (geometry)."""
    lefties = middle(words="both lefties", ball_kind=BallKind.FLOATING)
    righties = middle(words="both righties", ball_kind=BallKind.FLOATING)
    assert lefties.call.replace("right", "left") == righties.call
    assert lefties.call != righties.call


def test_hands_said_of_us_keep_our_names() -> None:
    advice = middle(mira(hand=None), tom(hand=None), words="mira is a lefty, who takes drives")
    assert advice.assumed == "As you said: lefty on the left."
    assert "player" not in advice.call


NAMES = ["Mira", "Bartholomew-Fitzgerald", "Maria Fernanda de la Torre-Villanueva y Quesada"]


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(NAMES),
    st.sampled_from(NAMES),
    st.sampled_from([None, *Hand]),
    st.sampled_from([None, *Hand]),
    st.sampled_from([None, *Side]),
    st.sampled_from([None, *Side]),
    st.sampled_from([None, *BallKind]),
    st.sampled_from([None, PlayerId(1)]),
    st.sampled_from([None, "forehand", "cross"]),
)
def test_every_call_fits_a_lock_screen(
    first: str,
    second: str,
    first_hand: Hand | None,
    second_hand: Hand | None,
    side: Side | None,
    hitter: Side | None,
    kind: BallKind | None,
    wide: PlayerId | None,
    agreed: str | None,
) -> None:
    ours = (
        player(1, first, hand=first_hand, side=side),
        player(2, second, hand=second_hand, side=side.other if side else None),
    )
    advice = middle(*ours, hitter_side=hitter, ball_kind=kind, pulled_wide=wide, agreed=agreed)
    assert 0 < len(advice.call) <= CALL_LIMIT
    assert advice.call.endswith(".")
    assert 1 <= len(advice.reasons) <= 3


def test_a_lefty_and_a_righty_without_sides_are_answered_both_ways() -> None:
    advice = middle(mira(hand=Hand.LEFT, side=None), tom(hand=None, side=None))
    texts = [reason.text for reason in advice.reasons]
    assert texts == [
        "Tom left: two forehands meet: say it early",
        "Mira left: two backhands meet: swap sides",
    ]
    assert advice.call == "From opposite Tom: Mira. From opposite Mira: Tom."
    assert advice.assumed == "Who plays left? Taking Tom as right-handed."


def test_where_the_sides_decide_each_has_its_own_call() -> None:
    strong = ((Trait.COUNTER_BACKHAND, Value.STRENGTH, 5),)
    advice = middle(
        mira(*strong, hand=Hand.LEFT, side=None),
        tom((Trait.COUNTER_FOREHAND, Value.WEAKNESS, 5), side=None),
        ball_kind=BallKind.SPEED_UP,
    )
    assert advice.call == SETTLE_FIRST
    assert [reason.text.split(":")[0] for reason in advice.reasons] == ["Tom left", "Mira left"]
