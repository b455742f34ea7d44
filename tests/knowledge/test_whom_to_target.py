"""Whom to play at: by phase, both opponents weighed, and how far one may be fed.

Sizes and calls are judgement (common practice, no source); the share's arithmetic is checked
against a search over shares, and the sources of other facts stand beside their checks.
"""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from noted_players import TODAY, match, player
from scipy.optimize import minimize_scalar

from knowledge.advice import CALL_LIMIT, Advice, Confidence
from knowledge.effects import OptionId
from knowledge.evidence import RateTally, profile
from knowledge.general_rule import LINE_LIMIT
from knowledge.planning.returning import return_line
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.sources import SourceKind
from knowledge.tactics import advise
from knowledge.tactics import target_words as words
from knowledge.tactics.aim_words import NOBODY_NAMED
from knowledge.tactics.dink_answer import answer_dink
from knowledge.tactics.target_answer import Target, targets
from knowledge.tactics.target_effects import at
from knowledge.tactics.target_phases import TargetPhase
from knowledge.tactics.target_share import best_share, kept
from knowledge.tactics.whom_to_target import PARTNER_UNKNOWN
from knowledge.vocabulary import EvidenceId, PlayerId, Rate, Side, Topic, Trait, Value

CASES: list[dict[str, Any]] = tomllib.loads(
    (Path(__file__).parents[1] / "cases" / "whom_to_target.toml").read_text(encoding="utf-8")
)["case"]

OKAFOR, LINDQVIST = 3, 4


def _authored(claims: Sequence[str]) -> list[str]:
    """Each claim by an author of its own, where it names none."""
    return [
        claim if " by " in claim else f"{claim} by w{place}" for place, claim in enumerate(claims)
    ]


def okafor(*claims: str) -> OnCourt:
    return player(OKAFOR, "Okafor", Side.RIGHT, *_authored(claims))


def lindqvist(*claims: str) -> OnCourt:
    return player(LINDQVIST, "Lindqvist", Side.LEFT, *_authored(claims))


def asking(*theirs: OnCourt, said: str = "", ours: Sequence[str] = ()) -> Situation:
    pair = tuple(
        player(number, name, side, *_authored(ours))
        for number, name, side in ((1, "Mira", Side.RIGHT), (2, "Tom", Side.LEFT))
    )
    return replace(match(Topic.WHOM_TO_TARGET, *theirs, ours=pair), asked=Asked(words=said))


def ask(*theirs: OnCourt, said: str = "", ours: Sequence[str] = ()) -> Advice:
    return advise(asking(*theirs, said=said, ours=ours))


def in_phase(phase: TargetPhase, *theirs: OnCourt, mixed: bool = False) -> Target:
    found = targets(asking(*theirs), mixed=mixed)
    return next(one for one in found if one.phase is phase)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_cases(case: dict[str, Any]) -> None:
    advice = ask(
        okafor(*case.get("okafor", ())),
        lindqvist(*case.get("lindqvist", ())),
        said=case.get("words", ""),
        ours=case.get("ours", ()),
    )
    if "call" in case:
        assert advice.call == case["call"]
    for part in case.get("has", ()):
        assert part in advice.call
    for part in case.get("lacks", ()):
        assert part not in advice.call
    if "confidence" in case:
        assert advice.confidence is Confidence(case["confidence"])
    fits_a_phone(advice)


def fits_a_phone(advice: Advice) -> None:
    assert len(advice.call) <= CALL_LIMIT
    lines = [advice.number, advice.unless, *(reason.text for reason in advice.reasons)]
    assert all(len(line) <= LINE_LIMIT for line in lines if line)


def test_best_share_is_where_the_gain_peaks_and_nothing_is_left_at_all_of_them() -> None:
    """Against a numerical search (scipy) over shares; the trade's own band is 65 to 75 in 100."""
    for cover in (0.0, 0.3, 0.7, 1.0):
        found = minimize_scalar(
            lambda share, cover=cover: -kept(4.0, share, cover), bounds=(0.5, 1), method="bounded"
        )
        assert best_share(cover) == pytest.approx(found.x, abs=1e-4)
        assert 0.65 <= best_share(cover) <= 0.75
    assert kept(4.0, 1.0, 0.0) == pytest.approx(0.0)
    assert kept(4.0, 0.5, 0.0) == 0.0


def test_the_share_is_said_with_why_not_all() -> None:
    advice = ask(okafor(*["body_jam weakness"] * 9), lindqvist())
    assert advice.number == "7 of 10, not all: all 10 and the edge is gone."
    covered = ask(
        okafor(*["body_jam weakness"] * 9), lindqvist(*["squeezes_middle often"] * 30), said="hands"
    )
    assert covered.number is not None
    assert covered.number.startswith("6 of 10")


@pytest.mark.parametrize("habit", ["squeezes_middle often", "poaching often"])
def test_a_partner_who_covers_halves_a_weak_player(habit: str) -> None:
    """Row 25: half. A hundred notes bring the habit to its full level."""
    weak = okafor(*["body_jam weakness"] * 9)
    alone = in_phase(TargetPhase.HANDS, weak, lindqvist())
    covered = in_phase(TargetPhase.HANDS, weak, lindqvist(*[habit] * 200))
    assert covered.points == pytest.approx(alone.points / 2, rel=0.1)
    lazy = in_phase(TargetPhase.HANDS, weak, lindqvist(*[habit.replace("often", "rarely")] * 200))
    assert lazy.points == pytest.approx(alone.points)


@pytest.mark.parametrize("habit", ["squeezes_middle often", "poaching often"])
def test_a_strong_partner_who_covers_takes_half_of_the_whole_edge(habit: str) -> None:
    """Row 25: half, whatever the edge rests on. The strong one's counters speak for the weak one,
    but only as far as the strong one does not play that ball as well."""
    weak = okafor(*["body_jam weakness"] * 9)
    counters = ["counter strength"] * 9
    alone = in_phase(TargetPhase.HANDS, weak, lindqvist(*counters))
    covered = in_phase(TargetPhase.HANDS, weak, lindqvist(*counters, *[habit] * 200))
    assert alone.points > 0
    assert covered.points == pytest.approx(alone.points / 2, rel=0.1)
    assert covered.per_100 < 0.5 * alone.per_100


def test_a_third_goes_behind_a_poacher_and_never_at_him() -> None:
    """As the plan and the third's own page say it; and a dink goes at him only because one at the
    partner is cut off."""
    advice = advise(match(Topic.WHOM_TO_TARGET, okafor("poaching often"), lindqvist()))
    reasons = [reason.text for reason in advice.reasons]
    assert "Third: behind Okafor." in advice.call
    assert "Third: behind Okafor, poaches a lot" in reasons
    assert "Dinks: at Lindqvist, Okafor poaches a lot" in reasons
    thirds = advise(
        replace(
            match(Topic.WHOM_TO_TARGET, okafor("poaching often"), lindqvist()),
            asked=Asked(words="whom do we target on thirds"),
        )
    )
    assert thirds.call.startswith("Play thirds behind Okafor")
    slow = advise(match(Topic.WHOM_TO_TARGET, okafor("forward_speed weakness"), lindqvist()))
    assert "behind" not in slow.call


def test_what_a_weak_player_is_worth_depends_on_where_they_stand() -> None:
    """The lanes: a right-hander's backhand is in the middle on the right, where a poaching partner
    gets to it, and at the sideline on the left, where nobody does (table 2.0d of the review)."""
    weak = ["hand right", *["backhand_dink weakness"] * 5]
    poacher = ["hand right", *["poaching often"] * 9]
    worth = {
        (side, bool(said)): dinks_at(weak, said, (side, side.other)).points
        for side in Side
        for said in ([], poacher)
    }
    assert worth[Side.RIGHT, False] > worth[Side.LEFT, False] > 0
    assert worth[Side.RIGHT, True] < worth[Side.RIGHT, False] / 2
    assert worth[Side.LEFT, True] == pytest.approx(worth[Side.LEFT, False])


def test_covering_makes_the_partner_no_target() -> None:
    covered = in_phase(TargetPhase.HANDS, okafor(), lindqvist(*["squeezes_middle often"] * 9))
    assert covered.one is None


def test_mixed_halves_part_of_it_unless_a_note_says_who_covers() -> None:
    weak = okafor(*["body_jam weakness"] * 9)
    alone = in_phase(TargetPhase.HANDS, weak, lindqvist())
    mixed = in_phase(TargetPhase.HANDS, weak, lindqvist(), mixed=True)
    noted = in_phase(TargetPhase.HANDS, weak, lindqvist("squeezes_middle rarely"), mixed=True)
    assert mixed.points < alone.points
    assert noted.points == pytest.approx(alone.points)


def test_mixed_says_when_not_to() -> None:
    weak = okafor(*["body_jam weakness"] * 9)
    said = [reason.text for reason in ask(weak, lindqvist(), said="mixed, pick on her?").reasons]
    assert "Not when stretched, or the partner is over" in said
    plain = [reason.text for reason in ask(weak, lindqvist(), said="who").reasons]
    assert "When Lindqvist squeezes: hit behind once" in plain


def test_freezing_a_strong_attacker_counts_for_dinking_the_partner() -> None:
    weak = okafor(*["backhand_dink weakness"] * 4)
    strong = in_phase(TargetPhase.DINKS, weak, lindqvist(*["speed_up strength"] * 9))
    average = in_phase(TargetPhase.DINKS, weak, lindqvist())
    poor = in_phase(TargetPhase.DINKS, weak, lindqvist(*["speed_up weakness"] * 9))
    assert 0 < strong.points - average.points < 1.5
    assert poor.points == pytest.approx(average.points)


def test_the_sign_that_it_fades_names_who_comes_over() -> None:
    advice = ask(
        okafor(*["backhand_dink weakness"] * 9),
        lindqvist("squeezes_middle often", *["third_shot_drop weakness"] * 9),
    )
    assert "When Lindqvist squeezes: hit behind once" in [one.text for one in advice.reasons]
    back = ask(okafor(*["third_shot_drop weakness"] * 9), lindqvist(), said="return")
    assert "When Lindqvist crashes in: return there" in [one.text for one in back.reasons]


def test_the_receiver_is_fixed_by_the_rulebook() -> None:
    """National rulebook, 2025 edition, 4.B: the receiver is whoever stands there by the score."""
    advice = ask(okafor(*["third_shot_drop weakness"] * 4), lindqvist(), said="who do we serve to")
    assert advice.reasons[0].source.kind is SourceKind.RULEBOOK
    assert "4.B" in advice.reasons[0].source.citation
    returned = ask(okafor(*["third_shot_drop weakness"] * 4), lindqvist(), said="serve return who")
    assert "Serve who stands there" not in returned.call


def test_where_the_return_goes_is_where_the_returns_own_page_sends_it() -> None:
    for claims in (["third_shot_drop weakness"], ["crash often"], ["forward_speed weakness"]):
        theirs = okafor(*claims * 4), lindqvist()
        line = return_line(asking(*theirs))
        target = in_phase(TargetPhase.RETURN, *theirs)
        assert line is not None
        assert target.one is not None
        assert target.one.name in line.do


def test_only_one_of_ours_owns_the_shot() -> None:
    mira = player(1, "Mira", Side.RIGHT, "speed_up weakness")
    tom = player(2, "Tom", Side.LEFT)
    theirs = okafor(*["body_jam weakness"] * 9), lindqvist()
    situation = match(Topic.WHOM_TO_TARGET, *theirs, ours=(mira, tom))
    advice = advise(replace(situation, asked=Asked(words="hands")))
    assert advice.call.startswith("Tom: speed up at Okafor")


def test_one_opponent_known_is_compared_with_an_average_partner() -> None:
    weak = ask(okafor(*["third_shot_drop weakness"] * 4))
    assert "Return: Okafor" in weak.call
    assert weak.assumed == PARTNER_UNKNOWN
    strong = ask(okafor(*["third_shot_drop strength"] * 4))
    assert "Return: the other" in strong.call


def test_nothing_known_offers_probes_and_says_so() -> None:
    bare = advise(Situation(topic=Topic.WHOM_TO_TARGET))
    assert bare.assumed == NOBODY_NAMED
    assert bare.confidence is Confidence.GENERAL_RULE
    assert bare.reasons == words.PROBES
    unknown = ask(okafor(), lindqvist())
    assert unknown.assumed != NOBODY_NAMED
    assert unknown.reasons == words.PROBES


def test_contradicting_notes_are_named_as_worth_a_try() -> None:
    split = ["third_shot_drop weakness by a", "third_shot_drop strength by b"]
    advice = ask(okafor(*split), lindqvist(), said="return")
    assert advice.unless is not None
    assert "disagree" in advice.unless
    assert "disagree" not in (ask(okafor(split[0]), lindqvist(), said="return").unless or "")


def test_a_left_hander_moves_the_place_not_the_player() -> None:
    claims = ["backhand_dink weakness"] * 6
    for hand in ("left", "right"):
        target = in_phase(TargetPhase.DINKS, okafor(f"hand {hand}", *claims), lindqvist())
        assert target.one is not None
        assert target.one.name == "Okafor"
        assert target.place.place == "backhand"


_SKILLS = (
    Trait.THIRD_SHOT_DROP,
    Trait.BACKHAND_DINK,
    Trait.BODY_JAM,
    Trait.COUNTER,
    Trait.NERVES,
    Trait.FORWARD_SPEED,
)
_CLAIMS = st.lists(
    st.builds(
        lambda trait, value: f"{trait} {value}",
        st.sampled_from(_SKILLS),
        st.sampled_from((Value.STRENGTH, Value.WEAKNESS)),
    )
    | st.sampled_from(["squeezes_middle often", "poaching often", "crash often"]),
    max_size=8,
)


@settings(max_examples=40, deadline=None)
@given(first=_CLAIMS, second=_CLAIMS)
@example(
    first=["squeezes_middle often", "backhand_dink strength", "squeezes_middle often"],
    second=["poaching often"],
)
def test_swapping_the_opponents_swaps_nothing_but_the_order(
    first: list[str], second: list[str]
) -> None:
    one, other = okafor(*first), lindqvist(*second)
    there = targets(asking(one, other), mixed=False)
    back = targets(asking(other, one), mixed=False)
    for this, that in zip(there, back, strict=True):
        assert (this.one and this.one.player) == (that.one and that.one.player)
        assert this.p_better == pytest.approx(that.p_better)


@settings(max_examples=40, deadline=None)
@given(claims=_CLAIMS)
@example(claims=["nerves strength", *["squeezes_middle often"] * 4])
def test_notes_on_the_other_one_make_the_other_the_target(claims: list[str]) -> None:
    """The same notes on the other number, on the same side with the same hand, mirror the call."""
    here = targets(
        asking(player(3, "A", None, *_authored(claims)), player(4, "B", None)), mixed=False
    )
    there = targets(
        asking(player(3, "A", None), player(4, "B", None, *_authored(claims))), mixed=False
    )
    for this, that in zip(here, there, strict=True):
        assert this.ranking.of(at(this.pair[0])).chance == pytest.approx(
            that.ranking.of(at(that.pair[1])).chance
        )
        assert this.p_better == pytest.approx(that.p_better)
        mirrored = {"A": "B", "B": "A"}
        assert (this.one and mirrored[this.one.name]) == (that.one and that.one.name)


@settings(max_examples=60, deadline=None)
@given(claims=_CLAIMS, others=_CLAIMS, trait=st.sampled_from(_SKILLS))
def test_a_note_of_weakness_never_lowers_the_chance_at_that_player(
    claims: list[str], others: list[str], trait: Trait
) -> None:
    """Nor that of the best dink at that player, which the page of dinks has."""
    before = asking(okafor(*claims), lindqvist(*others))
    more = okafor(*_authored(claims), f"{trait} weakness by another")
    after = asking(more, lindqvist(*others))
    assert best_dink(after) >= best_dink(before) - 1e-9
    phases = zip(targets(before, mixed=False), targets(after, mixed=False), strict=True)
    for was, now in phases:
        assert chance_at(now) >= chance_at(was) - 1e-9
        if was.one is not None and was.one.player == OKAFOR:
            assert now.one is None or now.one.player == OKAFOR


def best_dink(situation: Situation) -> float:
    """Our chance with the best dink at Okafor, on the page of dinks."""
    ranked = answer_dink(replace(situation, topic=Topic.AIM_DINK)).ranking.ranked
    return max(one.chance for one in ranked if one.option.id.startswith(f"{OKAFOR}:"))


def chance_at(target: Target) -> float:
    return target.ranking.of(at(target.pair[0])).chance


@given(said=st.text(max_size=200))
@settings(max_examples=30, deadline=None)
def test_any_words_get_an_answer_that_fits(said: str) -> None:
    fits_a_phone(ask(okafor("third_shot_drop weakness"), lindqvist(), said=said))


def test_long_names_still_fit() -> None:
    long = player(3, "Nguyen-Brandt-Castellano", Side.RIGHT, *_authored(["body_jam weakness"] * 9))
    other = player(4, "Featherstonehaugh-Szymanski", Side.LEFT)
    for said in ("", "hands", "mixed", "serve"):
        fits_a_phone(ask(long, other, said=said))


def test_numbers_by_name() -> None:
    numbers = ask(okafor(*["third_shot_drop weakness"] * 4), lindqvist()).numbers
    assert numbers["return_per_100"] == pytest.approx(
        kept(numbers["return_points"], numbers["return_target_share"], 0.0) * 50 / 100
    )
    assert numbers["per_100"] == pytest.approx(
        sum(numbers[f"{phase}_per_100"] for phase in TargetPhase)
    )
    assert numbers[f"return_at_{PlayerId(3)}"] > numbers[f"return_at_{PlayerId(4)}"]


def ended_on(one: OnCourt, ended: int, of: int, *, is_settled: bool = True) -> OnCourt:
    """The player with `ended` of `of` rallies that the pair lost by an error on their paddle."""
    names = [EvidenceId(f"rally:1:{n}") for n in range(of)]
    missed = names[:ended] if one.player == OKAFOR else names[of - ended :]
    tally = RateTally(
        player=one.player,
        rate=Rate.STEADY,
        day=TODAY,
        made=tuple(each for each in names if each not in missed),
        missed=tuple(missed),
        is_settled=is_settled,
    )
    found = profile(one.player, one.name, [], today=TODAY, tallies=[tally])
    return replace(one, profile=replace(one.profile, rates=found.rates, settled=found.settled))


def ends(ended: int, of: int, *, is_settled: bool = True) -> tuple[OnCourt, OnCourt]:
    return (
        ended_on(okafor(), ended, of, is_settled=is_settled),
        ended_on(lindqvist(), of - ended, of, is_settled=is_settled),
    )


def test_lost_rallies_that_ended_on_one_make_that_one_the_target() -> None:
    """Row 25's size (common practice, no source), scaled by the rate's place among players."""
    advice = ask(*ends(9, 12), said="dinks")
    assert "Okafor" in advice.call
    told = advice.reasons[0]
    assert str(told.text) == "Dinks: 9 of 12 lost rallies ended on Okafor"
    assert str(told.source) == "book: 12 rallies"
    assert "Lindqvist" in ask(*ends(3, 12), said="dinks").call
    few = ask(*ends(1, 2), said="dinks")
    assert not [each for each in few.reasons if "ended on" in each.text], "one rally tells nothing"


@pytest.mark.parametrize("of", [4, 12])
def test_lost_rallies_that_ended_on_both_alike_set_nobody_apart(of: int) -> None:
    advice = ask(*ends(of // 2, of))
    assert advice.call == words.EVEN_CALL
    assert advice.confidence is Confidence.TOSS_UP


def test_a_game_under_way_sets_nobody_apart() -> None:
    assert not any(
        effect.id.startswith("ended on")
        for target in targets(asking(*ends(3, 3, is_settled=False)), mixed=False)
        for effect in target.ranking.decision.effects
    )


def test_a_lost_rally_speaks_once_behind_a_target_and_not_for_a_lob() -> None:
    """No evidence stands twice behind one number."""
    for target in targets(asking(*ends(9, 12)), mixed=False):
        scales = {
            id(effect.scale)
            for effect in target.ranking.decision.effects
            if effect.id.startswith("ended on")
        }
        assert len(scales) == (target.phase is not TargetPhase.LOBS)


def test_where_errors_end_weighs_less_than_notes_on_the_shot_itself() -> None:
    """Many notes on the partner's weak backhand dink outweigh a few rallies that ended here."""
    here, there = ends(7, 12)
    weak = lindqvist(*["backhand_dink weakness"] * 9)
    there = replace(there, profile=replace(weak.profile, settled=there.profile.settled))
    assert "Lindqvist" in ask(here, there, said="dinks").call


def test_rallies_behind_a_trait_are_named_where_a_target_rests_on_them() -> None:
    missed = RateTally(
        player=PlayerId(OKAFOR),
        rate=Rate.THIRD_FORWARD,
        day=TODAY,
        made=(EvidenceId("rally:1:1"),),
        missed=tuple(EvidenceId(f"rally:1:{n}") for n in range(2, 12)),
        logged=40,
    )
    found = profile(PlayerId(OKAFOR), "Okafor", [], today=TODAY, tallies=[missed])
    one = replace(okafor(), profile=found)
    advice = ask(one, lindqvist(), said="returns")
    assert "Okafor" in advice.call
    assert str(advice.reasons[0].source) == "book: 11 of 40 rallies tagged"
    line = return_line(asking(one, lindqvist()))
    assert line is not None
    assert str(line.reason().source) == "book: 11 of 40 rallies tagged"


SKILLS = (
    Trait.BACKHAND_DINK,
    Trait.FOREHAND_DINK,
    Trait.PATIENCE,
    Trait.GETS_LOW,
    Trait.MOVES_LEFT,
    Trait.MOVES_RIGHT,
    Trait.REACH,
)
HABITS = (Trait.SQUEEZES_MIDDLE, Trait.POACHING, Trait.AROUND_POST, Trait.ERNIE)


def claims_of(traits: Sequence[Trait], values: Sequence[Value]) -> st.SearchStrategy[list[str]]:
    """A profile's claims: some traits, each said so by one to four of them."""
    one = st.tuples(st.sampled_from(traits), st.sampled_from(values), st.integers(1, 4))
    return st.lists(one, max_size=4, unique_by=lambda each: each[0]).map(
        lambda said: [f"{trait} {value}" for trait, value, times in said for _ in range(times)]
    )


profiles = st.tuples(
    claims_of(SKILLS, (Value.STRENGTH, Value.WEAKNESS)),
    claims_of(HABITS, (Value.OFTEN, Value.RARELY)),
    st.sampled_from([[], ["hand right"], ["hand left"]]),
).map(lambda parts: [claim for part in parts for claim in part])

sides = st.sampled_from([(Side.RIGHT, Side.LEFT), (Side.LEFT, Side.RIGHT), (None, None)])


def dinks_at(one: Sequence[str], two: Sequence[str], at: tuple[Side | None, Side | None]) -> Target:
    theirs = (
        player(OKAFOR, "Okafor", at[0], *_authored(one)),
        player(LINDQVIST, "Lindqvist", at[1], *_authored(two)),
    )
    found = targets(asking(*theirs), mixed=False)
    return next(target for target in found if target.phase is TargetPhase.DINKS)


def lead_of_okafor(target: Target) -> tuple[float, float, int]:
    """Over even and over the partner in log-odds, and 1 where he is named, -1 where the other."""
    him, other, even = (target.ranking.of(OptionId(id)).logit for id in ("at:3", "at:4", "even"))
    named = 0 if target.one is None else 1 if target.one.player == OKAFOR else -1
    return him - even, him - other, named


@settings(max_examples=40, deadline=None)
@given(
    profiles,
    profiles,
    sides,
    st.sampled_from([Trait.BACKHAND_DINK, Trait.FOREHAND_DINK]),
    st.sampled_from([Value.WEAKNESS, Value.STRENGTH]),
    st.integers(1, 3),
)
@example(
    ["forehand_dink weakness"] * 2,
    [],
    (Side.LEFT, Side.RIGHT),
    Trait.BACKHAND_DINK,
    Value.WEAKNESS,
    1,
)
def test_a_weaker_dinker_is_never_the_lesser_target_nor_a_stronger_one_the_better(
    his: list[str],
    others: list[str],
    at_sides: tuple[Side | None, Side | None],
    trait: Trait,
    value: Value,
    more: int,
) -> None:
    """All else equal. Were only the dink's best foot weighed, 3 of 100 random profiles would break
    it: a note more moves the ball to a foot of which less is noted."""
    before = lead_of_okafor(dinks_at(his, others, at_sides))
    after = lead_of_okafor(dinks_at(his + [f"{trait} {value}"] * more, others, at_sides))
    way = 1 if value is Value.WEAKNESS else -1
    for was, now in zip(before, after, strict=True):
        assert way * (now - was) >= -1e-9


def test_a_foot_that_the_lane_makes_dear_counts_for_less() -> None:
    """The same weak wing: in the middle it is there for nothing, at the sideline it costs."""
    weak = ["backhand_dink weakness"] * 4
    middle = dinks_at([*weak, "hand right"], [], (Side.RIGHT, Side.LEFT))
    outside = dinks_at([*weak, "hand right"], [], (Side.LEFT, Side.RIGHT))
    assert (middle.place.spot, outside.place.spot) == ("middle", "sideline")
    assert lead_of_okafor(middle)[0] > lead_of_okafor(outside)[0] > 0
    tolls = [part.effect.id for part in outside.ranking.of(OptionId("at:3")).parts]
    assert any(id.startswith("foot:3:sideline") for id in tolls)
    assert not any(
        part.effect.id.startswith("foot:") for part in middle.ranking.of(OptionId("at:3")).parts
    )


@settings(max_examples=25, deadline=None)
@given(profiles, profiles, sides)
def test_a_wing_is_named_only_where_the_dinks_own_page_plays_to_that_foot(
    his: list[str], others: list[str], at_sides: tuple[Side | None, Side | None]
) -> None:
    target = dinks_at(his, others, at_sides)
    if target.one is None or not target.place.place:
        return
    theirs = (
        player(OKAFOR, "Okafor", at_sides[0], *_authored(his)),
        player(LINDQVIST, "Lindqvist", at_sides[1], *_authored(others)),
    )
    answer = answer_dink(replace(asking(*theirs), topic=Topic.AIM_DINK))
    aims = [answer.aim(one.option.id) for one in answer.ranking.ranked]
    best = next(aim for aim in aims if aim and aim.target.player == target.one.player)
    assert best.spot == target.place.spot


def test_one_note_makes_a_shade_of_a_target_and_not_none() -> None:
    plain, weak = player(1, "Mcnab", None), player(2, "Farkas", None, "backhand_dink weakness")
    advice = advise(match(Topic.WHOM_TO_TARGET, plain, weak))
    assert advice.confidence is Confidence.TOSS_UP
    assert advice.call == "Both alike, a shade more at Farkas."
    assert advice.reasons[0].text == "Farkas's backhand dink is weak"
