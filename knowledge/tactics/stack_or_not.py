"""Stacking: which formation of our two gains most, and the two positions to remember."""

from __future__ import annotations

from types import MappingProxyType

from knowledge.advice import Advice, Choice, Confidence, MatchFact
from knowledge.engine import Ranked, confidence_of
from knowledge.normal import chances_of_being_best
from knowledge.situation import Familiarity, Formation, Situation
from knowledge.tactics.stack_answer import (
    STRAIGHT,
    StackAnswer,
    answer_stack,
    unknown_hands,
    when_new,
    when_used,
)
from knowledge.tactics.stack_picture import picture_of
from knowledge.tactics.stack_run import EXTRA_FT, crossing_of, server_spare_s
from knowledge.tactics.stack_words import assumed_of, call_of, number_of, positions, reasons_of
from knowledge.vocabulary import Hand, Topic, Trait


def advise(situation: Situation) -> Advice:
    """The formation to play, why, what it gains over straight, and who stands where."""
    answer = answer_stack(situation)
    return Advice(
        topic=Topic.STACK_OR_NOT,
        call=call_of(answer.plan),
        reasons=reasons_of(answer),
        number=number_of(answer),
        unless=_unless(situation, answer),
        assumed=_both_sides(situation) or assumed_of(answer),
        confidence=_confidence(answer),
        numbers=_numbers(answer),
        choices=_choices(answer),
        picture=picture_of(answer.plan, answer.pair),
        more=(*positions(answer), *_sums(answer)),
    )


def _both_sides(situation: Situation) -> str | None:
    """Somebody who is set down as ours and as theirs; a stack does not ask who they are."""
    theirs = {one.player for one in situation.theirs}
    twice = [one.name for one in situation.ours if one.player in theirs]
    if len(twice) > 1:
        return "That's your own pair on both sides: took ours."
    return f"{twice[0]} is on both sides: I took ours." if twice else None


def _unless(situation: Situation, answer: StackAnswer) -> str | None:
    """What would change it most: being new together, being used to it, or a left-hander."""
    if answer.plan.formation is not Formation.STRAIGHT:
        new = when_new(situation).plan.formation
        if answer.said.is_new is None and new is not answer.plan.formation:
            return _FIRST_TIME.get(new, "First time together? Keep it to the serve.")
        return "In a muddle over who goes where? Play straight."
    used = when_used(situation)
    has_no_habit = answer.said.habit is None
    if has_no_habit and used.plan.left is not None and used.gain > 0 and answer.is_named:
        return f"Used to it? Stack on serve, {used.plan.left.name} left."
    if unknown_hands(answer.pair):
        return "A lefty and a righty: forehands to the middle."
    return None


_FIRST_TIME = {
    Formation.STRAIGHT: "First time together? Play straight.",
    Formation.STACK_ON_SERVE: "First time together? On serve only.",
}


def _confidence(answer: StackAnswer) -> Confidence:
    """Against straight; of straight, against the best stack. No hands and notes: a general rule."""
    known = any(one.hand is not None for one in answer.pair)
    if not known and not any(part.evidence for part in answer.parts):
        return Confidence.GENERAL_RULE
    best, other = _compared(answer)
    p_best = chances_of_being_best(
        [best.logit, other.logit], [best.logit_variance, other.logit_variance]
    )[0]
    return confidence_of(p_best)


def _compared(answer: StackAnswer) -> tuple[Ranked, Ranked]:
    straight = answer.ranking.of(STRAIGHT)
    if answer.plan.formation is Formation.STRAIGHT:
        return straight, next(one for one in answer.ranking.ranked if "@" in one.option.id)
    found = next(one for one in answer.ranking.ranked if one.option.id == answer.plan.id)
    return found, straight


def _numbers(answer: StackAnswer) -> MappingProxyType[str, float]:
    numbers: dict[str, float] = {
        f"gain_{one.option.id}": answer.gain_of(one.option.id) for one in answer.ranking.ranked
    }
    numbers["gain"] = answer.gain
    numbers["extra_run_ft"] = EXTRA_FT
    for one in answer.pair:
        crossing = crossing_of(one)
        numbers[f"{one.name}_extra_run_s"] = crossing.extra_s
        numbers[f"{one.name}_crossing_points"] = crossing.points
        numbers[f"{one.name}_server_spare_s"] = server_spare_s(one)
    return MappingProxyType(numbers)


def _choices(answer: StackAnswer) -> tuple[Choice, ...]:
    """The other branches: a left-hander, a first time, a habit."""
    found: list[Choice] = []
    topic = Topic.STACK_OR_NOT
    if answer.is_named:
        found += [
            Choice(
                label=f"{one.name} is a lefty",
                topic=topic,
                fact=Trait.HAND,
                value=Hand.LEFT,
                about=one.player,
            )
            for one in unknown_hands(answer.pair)[:1]
        ]
    if not answer.said.is_new:
        found.append(
            Choice(
                label="First time together",
                topic=topic,
                fact=MatchFact.FAMILIARITY,
                value=Familiarity.NEW,
            )
        )
    if answer.said.habit is None:
        found.append(
            Choice(
                label="We stack already",
                topic=topic,
                fact=MatchFact.FORMATION,
                value=Formation.STACK_ON_SERVE,
            )
        )
    return tuple(found)


def _sums(answer: StackAnswer) -> tuple[str, ...]:
    """Every formation with what it gains or loses against straight."""
    return tuple(
        f"{one.option.label}: {answer.gain_of(one.option.id):+.1f} in 100"
        for one in answer.ranking.ranked
        if one.option.id != STRAIGHT
    )
