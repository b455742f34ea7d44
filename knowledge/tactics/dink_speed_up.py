"""What a speed-up of an easy ball gains over dinking it, as far as the dink's page weighs it."""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.effects import Effect, Mechanism
from knowledge.situation import OnCourt
from knowledge.tactics.conditions import grows_with, rule_of_thumb
from knowledge.tactics.dink_aims import DinkQuestion, attack_at
from knowledge.tactics.dink_sizes import SET_COUNTER, SPEED_UP_EASY, STRAIGHT_AHEAD, WEAK_HANDS
from knowledge.vocabulary import Trait, Value


def attack_effects(question: DinkQuestion, target: OnCourt) -> Iterator[Effect]:
    """What a speed-up of an easy ball gains over dinking it."""
    on = attack_at(target).id
    yield rule_of_thumb(
        "above the net",
        on,
        SPEED_UP_EASY,
        Mechanism.THEIR_REPLY,
        "Above the net: attack beats dink",
    )
    yield rule_of_thumb(
        "straight",
        on,
        STRAIGHT_AHEAD,
        Mechanism.COVER,
        "Straight: the counter comes to you",
        when=question.in_front(target),
    )
    for trait in (Trait.COUNTER, Trait.COUNTER_FOREHAND, Trait.COUNTER_BACKHAND):
        yield grows_with(
            target,
            trait,
            Value.STRENGTH,
            SET_COUNTER,
            Mechanism.THEIR_REPLY,
            on=(on,),
            because=f"{target.name} counters well",
        )
    for trait in (Trait.COUNTER, Trait.BODY_JAM, Trait.HANDLES_PACE):
        yield grows_with(
            target,
            trait,
            Value.WEAKNESS,
            WEAK_HANDS,
            Mechanism.THEIR_ERROR,
            on=(on,),
            because=f"{target.name} is late with the hands",
        )
