"""Every number leads back to its evidence: take a note out, and what moves must have named it.

The oracle is the answer itself without that note: no list of ids kept by hand.
"""

from __future__ import annotations

import random

import pytest
from scouted import TODAY, observation

from knowledge.advice import Advice
from knowledge.chances import RallyTally, RingTally
from knowledge.evidence import Observation, RateTally, Ring, profile
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics import PAGES, advise, advise_traced
from knowledge.vocabulary import (
    TRAITS,
    EvidenceId,
    Hand,
    PlayerId,
    Rate,
    Side,
    Topic,
    Trait,
    Value,
)

NAMES = {1: "Mira", 2: "Tom", 3: "Okafor", 4: "Lindqvist"}
SIDES = {1: Side.RIGHT, 2: Side.LEFT, 3: Side.RIGHT, 4: Side.LEFT}
TOPICS = sorted(PAGES)
BOOKS = 2


def some_notes(rng: random.Random) -> list[Observation]:
    notes = [
        observation(Trait.HAND, Value(rng.choice(list(Hand)).value), player=who, number=who)
        for who in NAMES
    ]
    for number in range(10, 10 + rng.randrange(6, 22)):
        trait = rng.choice(list(TRAITS))
        notes.append(
            observation(
                trait,
                rng.choice(TRAITS[trait].values),
                player=rng.choice(list(NAMES)),
                number=number,
                age_days=rng.randrange(200),
                author=rng.choice(["mira", "tom", "wen"]),
            )
        )
    return notes


def some_rates(rng: random.Random) -> list[RateTally]:
    return [
        RateTally(
            player=PlayerId(who),
            rate=rate,
            day=TODAY,
            made=tuple(EvidenceId(f"rally:{who}:{n}") for n in range(rng.randrange(9))),
            missed=tuple(EvidenceId(f"rally:{who}:{n}") for n in range(20, 20 + rng.randrange(9))),
        )
        for who in NAMES
        for rate in Rate
        if rng.random() < 0.4
    ]


def situation(topic: Topic, notes: list[Observation], rates: list[RateTally]) -> Situation:
    def on_court(who: int) -> OnCourt:
        found = profile(PlayerId(who), NAMES[who], notes, today=TODAY, tallies=rates)
        return OnCourt(profile=found, side=SIDES[who])

    return Situation(
        topic=topic,
        asked=Asked(about=(PlayerId(3),) if topic is Topic.AIM_DINK else ()),
        ours=(on_court(1), on_court(2)),
        theirs=(on_court(3), on_court(4)),
        today=TODAY,
    )


def told(advice: Advice) -> object:
    return advice.call, dict(advice.numbers), advice.number, [one.text for one in advice.lines]


@pytest.mark.parametrize("topic", TOPICS)
@pytest.mark.parametrize("seed", range(BOOKS))
def test_whatever_moves_an_answer_is_among_its_evidence(topic: Topic, seed: int) -> None:
    rng = random.Random(seed)
    notes, rates = some_notes(rng), some_rates(rng)
    whole = situation(topic, notes, rates)
    traced = advise_traced(whole)
    assert told(traced) == told(advise(whole)), "looking at it changes nothing"
    assert len(set(traced.evidence)) == len(traced.evidence)
    for note in notes:
        without = advise(situation(topic, [one for one in notes if one is not note], rates))
        if told(without) != told(traced):
            assert note.evidence in traced.evidence, (note.trait, note.player)
    for rate in rates:
        without = advise(situation(topic, notes, [one for one in rates if one is not rate]))
        if told(without) != told(traced):
            assert {*rate.made, *rate.missed} <= set(traced.evidence), (rate.rate, rate.player)


@pytest.mark.parametrize("topic", [Topic.AIM_DINK, Topic.OPPONENT_REPORT, Topic.GAME_PLAN])
def test_some_of_it_is_found_at_all(topic: Topic) -> None:
    rng = random.Random(1)
    assert advise_traced(situation(topic, some_notes(rng), some_rates(rng))).evidence


def test_nothing_noted_names_nothing() -> None:
    for topic in TOPICS:
        assert advise_traced(situation(topic, [], [])).evidence == ()


def test_win_chances_lead_back_to_each_match_once() -> None:
    def tally(match: int) -> RallyTally:
        return RallyTally(served_won=9, served_lost=5, evidence=(EvidenceId(f"match:{match}"),))

    asked = Situation(
        topic=Topic.WIN_CHANCE,
        earlier_rallies=(tally(1), tally(2)),
        other_rallies=(RingTally(ring=Ring.OTHERS, tally=tally(3)),),
        rallies_today=tally(4),
    )
    assert sorted(advise_traced(asked).evidence) == ["match:1", "match:2", "match:3", "match:4"]
    assert advise(asked).evidence, "the reason itself names its matches"
