"""Named three-valued conditions and effects from traits that several topics share."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from knowledge.advice import MatchFact
from knowledge.effects import (
    ALWAYS,
    Condition,
    Effect,
    EffectId,
    FactId,
    Mechanism,
    OptionId,
    Points,
    TraitScale,
    trait_fact,
)
from knowledge.evidence import TraitEstimate
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE, Source
from knowledge.tactics.told_ball import told
from knowledge.vocabulary import Hand, PlayerId, Side, Trait, Value, Wing

RIGHT_HANDERS = 0.9
"""Share of right-handers where nobody noted the hand. From memory: about nine in ten."""

TWO_HANDERS = 0.35
"""Share with a two-handed backhand where nobody noted it. Common practice, no source."""

EVEN = 0.5

WEAK_LEVEL = -0.3
"""A level this low needs a whole note of our own: then a profile marks a weakness."""

VOLLEYS = {Wing.FOREHAND: Trait.FOREHAND_VOLLEY, Wing.BACKHAND: Trait.BACKHAND_VOLLEY}
DINKS = {Wing.FOREHAND: Trait.FOREHAND_DINK, Wing.BACKHAND: Trait.BACKHAND_DINK}
"""What each wing's shot is called in a profile."""


def right_handed(one: OnCourt) -> Condition:
    known = None if one.hand in (None, Hand.AMBIDEXTROUS) else one.hand is Hand.RIGHT
    fact = trait_fact(one.player, Trait.HAND)
    return told(f"{one.player} right-handed", known, usual=RIGHT_HANDERS, fact=fact)


def plays_left(one: OnCourt, partner: OnCourt | None) -> Condition:
    """Whether this player plays the left court; partners share the fact, so one answer is both's.

    The player with the lower number carries it.
    """
    side = one.side or (partner.side.other if partner and partner.side else None)
    known = None if side is None else side is Side.LEFT
    if partner is not None and partner.player < one.player:
        return ~plays_left(partner, one)
    fact = trait_fact(one.player, Trait.SIDE_PLAYED)
    return told(f"{one.player} plays left", known, usual=EVEN, fact=fact)


def backhand_in_middle(one: OnCourt, partner: OnCourt | None) -> Condition:
    """Whether the backhand is the wing next to the centre line.

    A right-hander's is when they play right, a left-hander's when they play left. With neither
    hand nor side known the side is what to ask for.
    """
    if one.side is Side.LEFT:
        return ~right_handed(one)
    if one.side is Side.RIGHT:
        return right_handed(one)
    left = plays_left(one, partner)
    return left if one.hand is Hand.LEFT else ~left


def striker_right(side: Side | None) -> Condition:
    """Whether our ball is played from our right court."""
    known = None if side is None else side is Side.RIGHT
    return told("we play it from our right", known, usual=EVEN, fact=MatchFact.STRIKER)


def in_front(one: OnCourt, partner: OnCourt | None, striker_side: Side | None) -> Condition:
    """Whether this opponent stands straight across the net from our striker.

    Our right court faces their left court.
    """
    if one.side is not None:
        right = striker_right(striker_side)
        return right if one.side is Side.LEFT else ~right
    left = plays_left(one, partner)
    return ~left if striker_side is Side.LEFT else left


def two_handed(one: OnCourt) -> Condition:
    value = one.profile.fact(Trait.TWO_HANDED_BACKHAND)
    known = None if value is None else value is Value.YES
    fact = trait_fact(one.player, Trait.TWO_HANDED_BACKHAND)
    return told(f"{one.player} two-handed", known, usual=TWO_HANDERS, fact=fact)


def rule_of_thumb(
    name: str,
    on: OptionId,
    points: Points,
    mechanism: Mechanism,
    because: str,
    *,
    when: Condition = ALWAYS,
    source: Source = COMMON_PRACTICE,
) -> Effect:
    """An effect of the shot itself on one option, whoever plays it; `source` may be better."""
    return Effect(
        id=EffectId(f"{name}:{on}:{when.name}"),
        on=frozenset({on}),
        points=points,
        mechanism=mechanism,
        because=because,
        source=source,
        when=when,
    )


def grows_with(
    one: OnCourt,
    trait: Trait,
    value: Value,
    points: Points,
    mechanism: Mechanism,
    *,
    on: Iterable[OptionId],
    because: str,
    when: Condition = ALWAYS,
) -> Effect:
    """An effect as large as the notes say that the trait has this value."""
    habit = value in (Value.OFTEN, Value.RARELY)
    estimate = one.profile.habit(trait) if habit else one.profile.skill(trait)
    where = frozenset(on)
    return Effect(
        id=EffectId(f"{one.player}:{trait}:{value}:{when.name}:{'/'.join(sorted(where))}"),
        on=where,
        points=points,
        mechanism=mechanism,
        because=because,
        source=_source_of(estimate),
        when=when,
        scale=TraitScale(
            estimate=estimate,
            towards=1 if value in (Value.STRENGTH, Value.OFTEN) else -1,
            player=one.player,
            trait=trait,
            habit=habit,
        ),
    )


def _source_of(estimate: TraitEstimate) -> Source:
    return estimate.source if estimate.evidence else COMMON_PRACTICE


def how_good(estimate: TraitEstimate) -> str:
    """ "Weak" or "strong"; of what was only said not to be weak, that."""
    if estimate.level < 0:
        return "weak"
    return "not weak" if estimate.only_denied else "strong"


def skill(
    one: OnCourt,
    trait: Trait,
    if_strong: Points,
    mechanism: Mechanism,
    *,
    on: Iterable[OptionId],
    named: str,
    when: Condition = ALWAYS,
) -> Effect:
    """An effect both ways: these points for a clear strength, the opposite for a weakness."""
    value = Value.STRENGTH
    effect = grows_with(one, trait, value, if_strong, mechanism, on=on, because="", when=when)
    assert effect.scale is not None
    how = how_good(effect.scale.estimate)
    return replace(effect, because=f"{named} is {how}", scale=replace(effect.scale, both_ways=True))


def first_of_ours(situation: Situation, *players: PlayerId | None) -> OnCourt | None:
    """The first of these who is one of us."""
    for player in players:
        found = None if player is None else situation.find(player)
        if found is not None and found in situation.ours:
            return found
    return None


def marks_weak(one: OnCourt | None, *traits: Trait) -> bool:
    """Whether a profile marks any of these shots as a weakness: more against it than for it.

    No threshold, since a note loses weight with age but a shot does not get better by it.
    """
    if one is None:
        return False
    return any(one.profile.skill(trait).is_weak for trait in traits)


def marked_wing(one: OnCourt) -> Wing | None:
    """The wing whose dinks the notes mark as weak; None for neither or both."""
    weak = [wing for wing, trait in DINKS.items() if marks_weak(one, trait)]
    return weak[0] if len(weak) == 1 else None


def other_of(one: OnCourt, pair: Iterable[OnCourt]) -> OnCourt | None:
    """The partner, if the pair has one."""
    return next((each for each in pair if each.player != one.player), None)


def player_of(fact: FactId) -> PlayerId | None:
    """The player whose trait a fact is; None for a fact of the match."""
    parts = fact.split(":")
    return PlayerId(int(parts[1])) if len(parts) == 3 and parts[0] == "trait" else None


def trait_of(fact: FactId) -> Trait | None:
    """The trait that a fact is; None for a fact of the match."""
    parts = fact.split(":")
    return Trait(parts[2]) if len(parts) == 3 and parts[0] == "trait" else None
