"""Where to return: whom at or the middle, high or hard, what would flip it, and how to vary."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from knowledge.advice import Advice, AdvisedMix, Choice, Confidence, MatchFact, Reason
from knowledge.effects import OptionId
from knowledge.engine import Part
from knowledge.honest_risk import misses_paid_for
from knowledge.mixing import advised_mix
from knowledge.planning.probes import hand_choices
from knowledge.planning.sizes import RECEIVING_CHANCE
from knowledge.planning.weighing import driver_of, is_open
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import return_sizes as sizes
from knowledge.tactics import return_words as words
from knowledge.tactics.aim_words import (
    NO_NOTES_DECIDE,
    NOBODY_NAMED,
    REASONS,
    deep_pays,
    rallies,
    short,
    sum_lines,
    wind_reasons,
)
from knowledge.tactics.conditions import marks_weak, player_of, trait_of
from knowledge.tactics.return_answer import ReturnAnswer, able, answer_return
from knowledge.tactics.return_effects import MIDDLE, player_at
from knowledge.tactics.return_picture import picture
from knowledge.tactics.return_time import HARD_FLIGHT_S, HIGH_FLIGHT_S, ground_bought_ft
from knowledge.vocabulary import (
    TRAITS,
    BallQuality,
    Level,
    RallyPoints,
    Topic,
    Trait,
    TraitKind,
)

LEAST_WORTH = 0.3
"""Points below which an unknown that would flip the call is not worth a line."""


def advise(situation: Situation) -> Advice:
    """The call, why, what it is worth or how far depth pays, and what would change it."""
    answer = answer_return(situation)
    only = _only(answer)
    mix = _mix(answer, situation)
    is_general = _is_general(answer)
    change = OptionId(mix.change_up.option) if mix is not None and mix.change_up else None
    return Advice(
        topic=Topic.AIM_RETURN,
        call=words.call_for(answer, only=only),
        reasons=_reasons(answer, situation),
        number=_number(answer, situation),
        unless=_unless(answer, situation, only),
        assumed=_assumed(situation, is_general=is_general),
        confidence=Confidence.GENERAL_RULE if is_general else answer.ranking.confidence,
        numbers=_numbers(answer, situation),
        choices=_choices(answer, situation, is_general=is_general),
        picture=picture(answer, change),
        more=_more(answer),
        mix=mix,
    )


def _only(answer: ReturnAnswer) -> OnCourt | None:
    """The one of us who may aim, where the other one's return is marked weak."""
    question = answer.question
    aiming = able(question)
    if question.returner is not None or answer.option == MIDDLE:
        return None
    return aiming[0] if len(aiming) == 1 < len(question.ours) else None


def _is_general(answer: ReturnAnswer) -> bool:
    """Whether nothing known of them, of us or of where they stand is behind it."""
    is_ours = any(marks_weak(one, Trait.RETURN) for one in _returners(answer))
    return answer.option == MIDDLE and answer.driver is None and not is_ours and not _styled(answer)


def _returners(answer: ReturnAnswer) -> tuple[OnCourt, ...]:
    question = answer.question
    return question.ours if question.returner is None else (question.returner,)


def _styled(answer: ReturnAnswer) -> Part | None:
    """What notes on them say for the way it is hit."""
    return driver_of(answer.styles.best.parts, answer.question.theirs)


def _mix(answer: ReturnAnswer, situation: Situation) -> AdvisedMix | None:
    """Where they can guess it, against a stack or a poacher."""
    poached = any(one.profile.habit(Trait.POACHING).level > 0 for one in situation.theirs)
    options = [one.option.id for one in answer.ranking.ranked]
    if not (answer.question.stacked or poached) or len(options) < 2:
        return None
    found = advised_mix(
        replace(situation, topic=Topic.AIM_RETURN),
        answer.ranking,
        calls={one: words.mix_call(one, answer.question.theirs) for one in options},
        trigger="",
    )
    if found.change_up is None:
        is_close = answer.ranking.confidence is Confidence.TOSS_UP and not found.logged_aims
        return None if is_close else found  # "every ball" beside "little in it" helps nobody
    return replace(found, trigger=words.sign(OptionId(found.change_up.option), answer))


def _reasons(answer: ReturnAnswer, situation: Situation) -> tuple[Reason, ...]:
    """Our own return and the day first where they decide, then notes on them, then time."""
    found = [*_own_return(answer), *_ball(answer)]
    found += wind_reasons(situation.wind, behind="aim {ft:.0f} ft shorter")
    found += [_reason(part) for part in _targeted(answer)[:2]]
    styled = _styled(answer)
    if styled is not None:
        found.append(_reason(styled))
    found += [_reason(part) for part in answer.styles.best.parts if part.points > 0][:1]
    if answer.option == MIDDLE:
        found.append(Reason(text="Deep thirds come up higher", source=COMMON_PRACTICE))
        found.append(Reason(text="The middle gives them no angle", source=COMMON_PRACTICE))
    return tuple(list(dict.fromkeys(found))[:REASONS])


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


def _own_return(answer: ReturnAnswer) -> list[Reason]:
    weak = [one for one in _returners(answer) if marks_weak(one, Trait.RETURN)]
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


def _deep_points(situation: Situation) -> RallyPoints:
    """Row 1 counts double below 4.0."""
    factor = 2 if situation.level in (Level.L3_0, Level.L3_5) else 1
    return RallyPoints(factor * sizes.DEEP.mean)


def _gain(answer: ReturnAnswer) -> float:
    return float(answer.ranking.gain(MIDDLE))


def _number(answer: ReturnAnswer, situation: Situation) -> str:
    if answer.option != MIDDLE and answer.ranking.confidence is not Confidence.TOSS_UP:
        return rallies(_gain(answer))
    return deep_pays(misses_paid_for(_deep_points(situation), RECEIVING_CHANCE))


def _numbers(answer: ReturnAnswer, situation: Situation) -> MappingProxyType[str, float]:
    ranking = answer.ranking
    gain = _gain(answer)
    return MappingProxyType(
        {
            "points_gained": gain,
            "points_over_next": float(ranking.gain()),
            "p_best": ranking.best.p_best,
            "chance": float(ranking.best.chance),
            "chance_sd": ranking.best.sd,
            "share": ranking.share,
            "rallies_in_100": gain * ranking.share / 100,
            "return_per_100": gain * ranking.share / 100,
            "deep_points": float(_deep_points(situation)),
            "deep_pays_for_misses": misses_paid_for(_deep_points(situation), RECEIVING_CHANCE),
            "high_flight_s": HIGH_FLIGHT_S,
            "hard_flight_s": HARD_FLIGHT_S,
            "ground_bought_ft": ground_bought_ft(answer.question.returner),
        }
    )


def _unless(answer: ReturnAnswer, situation: Situation, only: OnCourt | None) -> str | None:
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


def _assumed(situation: Situation, *, is_general: bool) -> str | None:
    if not situation.theirs:
        return NOBODY_NAMED
    return NO_NOTES_DECIDE if is_general else None


def _choices(answer: ReturnAnswer, situation: Situation, *, is_general: bool) -> tuple[Choice, ...]:
    found: list[Choice] = []
    if answer.question.ball is BallQuality.NEUTRAL:
        found += [
            Choice(
                label=label,
                topic=Topic.AIM_RETURN,
                fact=MatchFact.BALL.value,
                value=ball.value,
            )
            for label, ball in (
                ("jammed", BallQuality.STRETCHED),
                ("short serve", BallQuality.EASY),
            )
        ]
    if is_general and situation.theirs:
        found.append(Choice(label="what to look for", topic=Topic.PROBE))
    if is_general:
        found += hand_choices(answer.question.theirs, Topic.AIM_RETURN)
    return tuple(found)


def _more(answer: ReturnAnswer) -> tuple[str, ...]:
    """The sum behind the target and behind the way it is hit."""
    parts = (*answer.ranking.best.parts, *answer.styles.best.parts)
    sums = sum_lines(parts, what="For and against")
    flight = f"High {HIGH_FLIGHT_S:.2f} s in the air, hard {HARD_FLIGHT_S:.2f} s"
    return (*sums, flight)
