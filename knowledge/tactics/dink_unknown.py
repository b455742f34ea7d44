"""What is not known of a dink: what would turn the call, and the buttons that settle it."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from knowledge.advice import Choice, MatchFact
from knowledge.effects import OptionId
from knowledge.engine import Unknown
from knowledge.evidence import FactEstimate
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import dink_words as words
from knowledge.tactics.conditions import player_of, trait_of
from knowledge.tactics.dink_answer import DinkAnswer, answer_dink
from knowledge.tactics.dink_ball import quality
from knowledge.tactics.dink_sideless import on_that_side
from knowledge.vocabulary import (
    TRAITS,
    BallQuality,
    PlayerId,
    Side,
    Topic,
    Trait,
    TraitKind,
    Value,
)

CHOICES_AT_MOST = 6


def unless(answer: DinkAnswer, ask: Unknown | None, situation: Situation) -> str | None:
    best = answer.best
    if best is None and answer.question.ball is BallQuality.EASY and answer.aims:
        order = [answer.aim(one.option.id) for one in answer.ranking.ranked]
        dink = next((aim for aim in order if aim is not None), None)
        return None if dink is None else f"Below the net? {words.call(dink)}"
    sided = on_that_side(answer, situation)
    if sided is not None:
        return sided
    if best is not None and best.wing is None and best.target.side is not None:
        flipped = _other_hand(answer, best.target, situation)
    else:
        flipped = None if ask is None else _flip(answer, ask, situation)
    if flipped is not None:
        return flipped
    is_stretched = answer.question.ball is BallQuality.STRETCHED
    return None if is_stretched else words.STRETCHED_BRANCH


def _flip(answer: DinkAnswer, ask: Unknown, situation: Situation) -> str | None:
    """What would change the call, and to what, by answering again as if it were known."""
    player, trait = player_of(ask.fact), trait_of(ask.fact)
    if player is None or trait is None:
        return None
    one = situation.find(player)
    if one is None:
        return None
    if trait is Trait.HAND:
        return _other_hand(answer, one, situation)
    if trait is Trait.TWO_HANDED_BACKHAND:
        return _if_known(answer, one, situation, trait, Value.YES, "two-handed")
    now = answer.ranking.best.option.id
    if TRAITS[trait].kind is not TraitKind.SKILL or ask.if_yes == ask.if_no:
        return None
    is_strong = ask.if_yes != now
    if trait in words.MOVES:
        return f"Changes if {one.name} {words.MOVES[trait][is_strong]}."
    how = "strong" if is_strong else "weak"
    return f"Changes if {one.name}'s {TRAITS[trait].label} is {how}."


def _other_hand(answer: DinkAnswer, one: OnCourt, situation: Situation) -> str | None:
    return _if_known(answer, one, situation, Trait.HAND, Value.LEFT, "left-handed")


def _if_known(
    answer: DinkAnswer, one: OnCourt, situation: Situation, trait: Trait, value: Value, what: str
) -> str | None:
    """The call if the fact were so; None if the call would stay."""
    other = answer_dink(_supposing(situation, one, trait, value))
    if other.best is None or other.best.id == answer.ranking.best.option.id:
        return None
    return f"{one.name} {what}? {words.call(other.best)}"


def _supposing(situation: Situation, one: OnCourt, trait: Trait, value: Value) -> Situation:
    fact = FactEstimate(value=value, chance=1.0, evidence=(), contradicted=False, newest_day=0)
    profile = replace(one.profile, facts=MappingProxyType({**one.profile.facts, trait: fact}))
    theirs = tuple(
        replace(each, profile=profile) if each.player == one.player else each
        for each in situation.theirs
    )
    return replace(situation, theirs=theirs)


def choices(
    answer: DinkAnswer, ask: Unknown | None, situation: Situation, *, is_general: bool
) -> tuple[Choice, ...]:
    found: list[Choice] = []
    named = [one for one in answer.question.pair if one.name]
    best = answer.best
    order = [best.target, *named] if best and best.target.name else named
    for one in {each.player: each for each in order}.values():
        found += [] if any(each.fact == MatchFact.SIDE for each in found) else _open_facts(one)
    if ask is not None:
        found += _skill_choice(ask, answer.ranking.best.option.id, situation)
    found = found[: CHOICES_AT_MOST - 2]
    if quality(situation) is None:
        found += [
            _choice(ball.value, MatchFact.BALL, ball.value)
            for ball in (BallQuality.STRETCHED, BallQuality.EASY)
        ]
    room = CHOICES_AT_MOST - len(found) - is_general
    if answer.question.striker_side is None and room >= len(Side):
        found += [
            _choice(f"from our {side}", MatchFact.STRIKER, side.value)
            for side in (Side.LEFT, Side.RIGHT)
        ]
    if is_general:
        found = [*found[: CHOICES_AT_MOST - 1], Choice(label="what to look for", topic=Topic.PROBE)]
    return tuple(found)


def _open_facts(one: OnCourt) -> list[Choice]:
    """Two buttons for a side that is not known, or else for a hand."""
    if one.side is None:
        return [
            _choice(f"{one.name} {side}", MatchFact.SIDE, side.value, one.player)
            for side in (Side.LEFT, Side.RIGHT)
        ]
    if one.profile.fact(Trait.HAND) is None:
        return [
            _choice(f"{one.name} is lefty", Trait.HAND, Value.LEFT, one.player),
            _choice(f"{one.name} is a righty", Trait.HAND, Value.RIGHT, one.player),
        ]
    return []


def _skill_choice(ask: Unknown, now: OptionId, situation: Situation) -> list[Choice]:
    """The button that would flip the call."""
    player, trait = player_of(ask.fact), trait_of(ask.fact)
    one = None if player is None else situation.find(player)
    if one is None or trait is None or TRAITS[trait].kind is not TraitKind.SKILL:
        return []
    value = Value.STRENGTH if ask.if_yes != now else Value.WEAKNESS
    how = "strong" if value is Value.STRENGTH else "weak"
    return [_choice(f"{one.name}: {how} {TRAITS[trait].label}", trait, value, one.player)]


def _choice(label: str, fact: str, value: str, about: PlayerId | None = None) -> Choice:
    return Choice(label=label, topic=Topic.AIM_DINK, fact=str(fact), value=str(value), about=about)
