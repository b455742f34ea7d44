"""Why a return is called so, and what would change it."""

from __future__ import annotations

from knowledge.advice import MAX_REASONS, Reason
from knowledge.engine import Part
from knowledge.flight import Shot
from knowledge.planning.weighing import driver_of, is_open
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.aim_words import aim_said, naive_said, short, wind_reasons
from knowledge.tactics.conditions import marks_weak, player_of, trait_of
from knowledge.tactics.return_answer import ReturnAnswer, able
from knowledge.tactics.return_question import MIDDLE, asks_depth, asks_pace, player_at
from knowledge.tactics.shot_success import SUCCESS
from knowledge.vocabulary import TRAITS, BallQuality, Trait, TraitKind

LEAST_WORTH = 0.3
"""Points below which an unknown that would flip the call is not worth a line."""


def returners(answer: ReturnAnswer) -> tuple[OnCourt, ...]:
    question = answer.question
    return question.ours if question.returner is None else (question.returner,)


def styled(answer: ReturnAnswer) -> Part | None:
    """What notes on them say for the way it is hit."""
    return driver_of(answer.styles.best.parts, answer.question.theirs)


def reasons_for(answer: ReturnAnswer, situation: Situation) -> tuple[Reason, ...]:
    """Our own return and the day first where they decide, then notes on them, then time."""
    found = [*_asked(answer, situation.asked.words)]
    found += [*_own_return(answer), *_ball(answer), *_not_deep(answer)]
    wind_mps = answer.question.contact.wind_mps
    found += wind_reasons(situation.wind, Shot.RETURN, wind_mps)
    targeted = [_reason(part) for part in _targeted(answer)]
    noted = styled(answer)
    found += targeted[:1]
    found += [_reason(noted)] if noted is not None else []
    found += [*_of_style(answer), *targeted[1:]]
    if answer.option == MIDDLE:
        found.append(Reason(text="Deep thirds come up higher", source=COMMON_PRACTICE))
        found.append(Reason(text="The middle gives them no angle", source=COMMON_PRACTICE))
    return tuple(list(dict.fromkeys(found))[:MAX_REASONS])


def _reason(part: Part) -> Reason:
    effect = part.effect
    return Reason(text=short((effect.because, _shorter(effect.because))), source=effect.source)


def _shorter(because: str) -> str:
    """The same without the second name: a long name costs words."""
    if because.startswith("Hitting the third"):
        return "Then the crasher must hit the third"
    return because.split(": ")[0] if ": " in because else because[: because.rfind(" ", 0, 50)]


def _targeted(answer: ReturnAnswer) -> list[Part]:
    """What is known to speak for this target, then what notes say against the next."""
    best, *others = answer.ranking.ranked
    parts = [
        part
        for part in best.parts
        if part.points > 0
        and (part.evidence or part.effect.when.name == "always")
        and not is_open(part)
        and (part.effect.scale is None or part.evidence)
        and part.effect.on != frozenset({MIDDLE})
    ]
    if answer.option == MIDDLE:
        parts = [part for part in best.parts if part.evidence and part.points > 0]
    against = [
        part
        for other in others[:1]
        for part in other.parts
        if part.points < -LEAST_WORTH and part.evidence and not is_open(part)
    ]
    return [*sorted(parts, key=lambda one: not one.evidence), *against]


def _asked(answer: ReturnAnswer, words: str) -> list[Reason]:
    """What is asked comes first: how deep, or how hard."""
    found = _of_style(answer) if asks_pace(words) else []
    if asks_depth(words):
        said = aim_said(answer.question.depth, answer.aim_ft).rstrip(".")
        found.append(Reason(text=said, source=SUCCESS))
    return found


def _of_style(answer: ReturnAnswer) -> list[Reason]:
    """What speaks most for the way it is hit: mostly time. That a serve is short is said before."""
    parts = answer.styles.best.parts
    spoken = [part for part in parts if part.points > 0 and not _is_step_in(part)]
    return [_reason(part) for part in spoken[:1]]


def _is_step_in(part: Part) -> bool:
    return part.effect.id.startswith("step in:")


def _not_deep(answer: ReturnAnswer) -> list[Reason]:
    """What a deep aim would cost, where that is too much."""
    if answer.is_deep:
        return []
    return [Reason(text=naive_said(answer.question.depth), source=SUCCESS)]


def _own_return(answer: ReturnAnswer) -> list[Reason]:
    weak = [one for one in returners(answer) if marks_weak(one, Trait.RETURN)]
    if not weak or (able(answer.question) and answer.option == MIDDLE):
        return []
    estimate = weak[0].profile.skill(Trait.RETURN)
    source = estimate.source
    said = (f"{weak[0].name}'s return: get it in, no aiming", "Own return: get it in, no aiming")
    return [Reason(text=short(said), source=source)]


def _ball(answer: ReturnAnswer) -> list[Reason]:
    match answer.question.ball:
        case BallQuality.STRETCHED:
            text = "Jammed, you can't aim: height buys time"
        case BallQuality.EASY:
            text = "A short serve brings you in: use it"
        case _:
            return []
    return [Reason(text=text, source=COMMON_PRACTICE)]


def unless_for(answer: ReturnAnswer, situation: Situation, only: OnCourt | None) -> str | None:
    if only is not None:
        other = next(one for one in answer.question.ours if one != only)
        return f"{other.name} returns? High, deep and middle."
    if answer.question.ball is BallQuality.STRETCHED:
        return None
    flipped = _flip(answer, situation)
    if flipped is not None:
        return flipped
    if answer.question.ball is BallQuality.EASY:
        return "It comes deep after all? High, deep, middle."
    return "Jammed? High, deep and middle."


def _flip(answer: ReturnAnswer, situation: Situation) -> str | None:
    """The unknown most worth knowing that would move the target, and to where."""
    now = answer.ranking.best.option.id
    for unknown in answer.ranking.unknowns:
        player, trait = player_of(unknown.fact), trait_of(unknown.fact)
        one = None if player is None else situation.find(player)
        moves = unknown.if_yes != now or unknown.if_no != now
        if unknown.worth < LEAST_WORTH or not moves or one is None or trait is None:
            continue
        is_up = unknown.if_yes != now
        to = player_at(unknown.if_yes if is_up else unknown.if_no, situation.theirs)
        there = "middle" if to is None else f"at {to.name}"
        if TRAITS[trait].kind is TraitKind.HABIT:
            if trait is Trait.CRASH and is_up:
                return f"{one.name} crashes? Return {there}."
            continue
        if trait is Trait.THIRD_SHOT_DROP:
            how = "strong" if is_up else "weak"
            return f"{one.name}'s third is {how}? Return {there}."
    return None
