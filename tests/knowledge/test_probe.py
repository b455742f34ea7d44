"""What to find out first: by what the answers are worth, with the ball or the look, and when."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from noted_players import match, player
from scipy import stats

from knowledge.advice import CALL_LIMIT, Advice
from knowledge.game import GameFormat, MatchState, state_at
from knowledge.general_rule import LINE_LIMIT
from knowledge.planning.probes import MEANWHILE
from knowledge.planning.worth_knowing import worth_knowing
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics import probe, risk_at_score
from knowledge.tactics.probe_data import probes
from knowledge.tactics.probe_moment import Moment, moment_of, more_often_than_not
from knowledge.tactics.return_answer import answer_return
from knowledge.vocabulary import TRAITS, PlayerId, Side, Topic, Trait, TraitKind

STRANGERS = (player(3, "Okafor", None), player(4, "Lindqvist", None))


def ask(words: str = "", *theirs: OnCourt, **more: Any) -> Advice:
    about = tuple(PlayerId(one) for one in more.pop("about", ()))
    situation = match(Topic.PROBE, *theirs)
    return probe.advise(replace(situation, asked=Asked(words=words, about=about), **more))


def _texts(advice: Advice) -> list[str]:
    return [reason.text for reason in advice.reasons]


def _all_noted(
    number: int, name: str, side: Side, *, but: frozenset[Trait] = frozenset()
) -> OnCourt:
    """A player about whom a dozen watchers agree on everything."""
    claims = [
        f"{trait} {row.values[0]} by watcher{watcher}"
        for trait, row in TRAITS.items()
        if trait not in but
        for watcher in range(40)
    ]
    return player(number, name, side, *claims)


def test_strangers_get_hands_first_then_what_is_worth_most() -> None:
    advice = ask("first points vs them, what do we test", *STRANGERS)
    assert advice.call == "Test hands, ready paddles and third drops first."
    assert _texts(advice)[0] == "Lefty? Watch each hit one forehand"
    assert advice.assumed == MEANWHILE


def test_in_the_warm_up_only_what_can_be_seen_there_is_asked() -> None:
    advice = ask("warm up: what do i look at", *STRANGERS)
    looks = {one.look for one in probes() if one.look is not None}
    assert advice.call.startswith("Look at hands")
    assert all(any(_fits(text, look) for look in looks) for text in _texts(advice))


def _fits(text: str, pattern: str) -> bool:
    before, _, after = pattern.partition("{each}")
    return text.startswith(before) and text.endswith(after)


def test_what_is_known_is_not_probed_again() -> None:
    known = (
        player(3, "Okafor", Side.LEFT, "hand right"),
        player(4, "Lindqvist", Side.RIGHT, "hand right"),
    )
    assert "hands" not in ask("what do we test in the first points", *known).call
    one_left = (known[0], player(4, "Lindqvist", Side.RIGHT))
    assert _texts(ask("warm up", *one_left))[0] == "Lefty? Watch Lindqvist hit one forehand"


def test_with_everything_known_it_says_so() -> None:
    pair = (_all_noted(3, "Okafor", Side.LEFT), _all_noted(4, "Lindqvist", Side.RIGHT))
    advice = ask("what do we test in the first points", *pair)
    assert advice.call == "Play your plan: you know Okafor/Lindqvist."
    assert [one.topic for one in advice.choices] == [Topic.GAME_PLAN]


def test_the_only_gap_is_tested_first() -> None:
    gap = frozenset({Trait.THIRD_SHOT_DROP})
    pair = (
        _all_noted(3, "Okafor", Side.LEFT, but=gap),
        _all_noted(4, "Lindqvist", Side.RIGHT, but=gap),
    )
    advice = ask("what do we test in the first points", *pair)
    assert _texts(advice)[0] == "Return deep at each: does the drop float?"


def test_a_fact_is_worth_its_points_times_share() -> None:
    """The definition, for the one decision that third shots touch: E[best if known] - best now."""
    known = (
        player(3, "Okafor", Side.LEFT, "hand right"),
        player(4, "Lindqvist", Side.RIGHT, "hand right"),
    )
    situation = match(Topic.PROBE, *known)
    ranking = answer_return(replace(situation, topic=Topic.AIM_RETURN)).ranking
    unknown = next(one for one in ranking.unknowns if one.fact.endswith("third_shot_drop"))
    found = next(one for one in worth_knowing(situation) if one.trait is Trait.THIRD_SHOT_DROP)
    assert found.per_100 == pytest.approx(unknown.worth * ranking.share / 100)


def test_a_hand_known_is_worth_nothing_more_and_unknown_never_less_than_nothing() -> None:
    facts = worth_knowing(match(Topic.PROBE, *STRANGERS))
    assert all(one.per_100 > 0 for one in facts)
    known = (player(3, "Okafor", Side.LEFT, "hand left"), STRANGERS[1])
    assert not [
        one
        for one in worth_knowing(match(Topic.PROBE, *known))
        if one.trait is Trait.HAND and one.player == PlayerId(3)
    ]


def test_what_the_question_names_comes_first() -> None:
    advice = ask("how do i find out if his backhand is trash", *STRANGERS)
    assert advice.call.startswith("Look at backhands")
    for words, noun in (("forehands", "forehands"), ("forehand dinks", "forehand dinks")):
        told = ask(f"in the first points how do I test their {words}", *STRANGERS)
        assert told.call.startswith((f"Test {noun},", f"Test {noun} and"))
    body = ask("in warm up, does he hate balls at the body", *STRANGERS)
    assert body.call.startswith("Look at body balls")


def test_the_one_who_is_named_is_the_one_tested() -> None:
    advice = ask("how do i test okafor's backhand early", *STRANGERS, about=[3])
    assert _texts(advice)[0] == "One soft dink to Okafor's backhand: does it pop?"
    assert {one.about for one in advice.choices} == {PlayerId(3)}


def test_without_a_pair_the_general_three_are_given() -> None:
    advice = ask("warm up, what do i look at")
    assert advice.call == "Look at hands, feet and counters first."
    assert advice.unless == MEANWHILE
    assert not advice.choices


def test_buttons_note_the_answer_by_tap() -> None:
    advice = ask("warm up", *STRANGERS)
    assert [(one.fact, one.value) for one in advice.choices[:2]] == [
        ("hand", "left"),
        ("hand", "right"),
    ]
    assert all(one.about in (PlayerId(3), PlayerId(4)) for one in advice.choices)


@pytest.mark.parametrize("one", probes(), ids=lambda one: one.id)
def test_every_probe_fits_and_its_taps_note_what_it_tells(one: Any) -> None:
    assert all(len(line.format(each="each")) <= LINE_LIMIT for line in (one.look, one.ball) if line)
    assert {tap.trait for tap in one.taps} <= set(one.traits)


def test_every_trait_that_decides_something_has_a_probe() -> None:
    """A trait of theirs that is worth knowing cannot be left without a way to find out."""
    testable = {trait for one in probes() for trait in one.traits}
    pairs = [
        STRANGERS,
        (player(3, "Okafor", Side.LEFT, "hand right"), player(4, "Lindqvist", Side.RIGHT)),
    ]
    for pair in pairs:
        assert {one.trait for one in worth_knowing(match(Topic.PROBE, *pair))} <= testable


@pytest.mark.parametrize(
    ("words", "moment"),
    [
        ("what do i look at in the warm-up", Moment.LOOK),
        ("5 min knock up", Moment.LOOK),
        ("i can watch them from the fence", Moment.LOOK),
        ("first 4 pts, what do we throw at em", Moment.PLAY),
        ("how to test early without giving away points", Moment.PLAY),
        ("never met them", Moment.LOOK),
    ],
)
def test_the_words_say_when(words: str, moment: Moment) -> None:
    assert moment_of(Situation(topic=Topic.PROBE, asked=Asked(words=words))) is moment


def _at(ours: int, theirs: int) -> dict[str, Any]:
    game = state_at(GameFormat(), ours=ours, theirs=theirs, we_serve=True, server=1)
    return {"game": game, "match": MatchState(game=game, games_ours=1, games_theirs=1)}


@pytest.mark.parametrize("points", [(0, 0), (1, 2), (5, 5), (9, 9), (10, 9), (9, 10), (10, 10)])
def test_when_a_test_is_cheap_agrees_with_what_the_rally_weighs(points: tuple[int, int]) -> None:
    """The same question put to the page on risk, in a deciding game."""
    situation = replace(match(Topic.RISK_AT_SCORE, *STRANGERS), **_at(*points))
    cheap = "Cheap" in (risk_at_score.advise(situation).unless or "")
    advice = ask("what do we test in the points", *STRANGERS, **_at(*points))
    assert (advice.unless == "Cheap to test now.") is cheap


def test_early_in_a_deciding_game_a_test_is_cheap_and_at_its_end_not() -> None:
    early = ask("what do we test", *STRANGERS, **_at(1, 2))
    late = ask("what do we test", *STRANGERS, **_at(10, 9))
    assert early.unless == "Cheap to test now."
    assert late.unless == "Too heavy a rally: test it in a lighter one."
    assert early.call.startswith("Test")


@pytest.mark.parametrize("tries", range(1, 9))
def test_how_sure_a_few_tries_make_is_the_beta_distribution(tries: int) -> None:
    """scipy.stats.beta: the chance that the share is above one half."""
    for seen in range(tries + 1):
        assert more_often_than_not(seen, tries) == pytest.approx(
            stats.beta.sf(0.5, seen + 1, tries - seen + 1)
        )


def test_asked_how_many_balls_it_answers_with_a_count() -> None:
    advice = ask("how many balls before I trust a read? 3? 8?", *STRANGERS)
    assert advice.call == "Act on two of two; trust three of three."
    assert advice.numbers["3_of_3"] == pytest.approx(15 / 16)
    assert len(advice.call) <= CALL_LIMIT
    assert all(len(text) <= LINE_LIMIT for text in _texts(advice))


def test_facts_can_be_told_from_one_look() -> None:
    """A fact needs no ball of ours: the look and the ball are the same line where both exist."""
    facts = {trait for trait, row in TRAITS.items() if row.kind is TraitKind.FACT}
    for one in probes():
        if set(one.traits) <= facts and one.look is not None:
            assert one.look == one.ball
