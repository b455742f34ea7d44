"""Where to return: whom at or the middle, high or hard, what would flip it, and how to vary."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from knowledge.advice import MAX_REASONS, Advice, AdvisedMix, Choice, Confidence, MatchFact, Reason
from knowledge.effects import OptionId
from knowledge.honest_risk import misses_paid_for
from knowledge.mixing import advised_mix
from knowledge.planning.probes import hand_choices
from knowledge.planning.sizes import RECEIVING_CHANCE
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import return_words as words
from knowledge.tactics.aim_words import (
    aim_said,
    assumed,
    deep_pays,
    rallies,
    sum_lines,
    wind_choices,
)
from knowledge.tactics.conditions import marks_weak
from knowledge.tactics.return_answer import ReturnAnswer, able, answer_return
from knowledge.tactics.return_crossed import (
    DOWN_THE_LINE,
    asks_the_line,
    behind_the_crosser,
    is_crossed,
)
from knowledge.tactics.return_depth import DEEP
from knowledge.tactics.return_picture import picture
from knowledge.tactics.return_question import MIDDLE, ReturnQuestion, asks_depth
from knowledge.tactics.return_reasons import reasons_for, returners, styled, unless_for
from knowledge.tactics.return_styles import hard_misses, time_bought_s
from knowledge.tactics.return_time import Style, chance_set, ground_ft, run_s
from knowledge.tactics.told_reasons import figures
from knowledge.vocabulary import BallQuality, RallyPoints, Topic, Trait


def advise(situation: Situation) -> Advice:
    """The call, why, what it is worth or how far depth pays, and what would change it."""
    if is_crossed(situation):
        return behind_the_crosser(situation)
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
        unless=unless_for(answer, situation, only),
        assumed=assumed(situation, is_general=is_general),
        confidence=Confidence.GENERAL_RULE if is_general else answer.ranking.confidence,
        numbers=_numbers(answer),
        choices=_choices(answer, situation, is_general=is_general),
        picture=picture(answer, change),
        more=_more(answer),
        mix=mix,
    )


def _reasons(answer: ReturnAnswer, situation: Situation) -> tuple[Reason, ...]:
    """Those of the page; asked about the line, that first."""
    found = reasons_for(answer, situation)
    return (DOWN_THE_LINE, *found)[:MAX_REASONS] if asks_the_line(situation) else found


def _only(answer: ReturnAnswer) -> OnCourt | None:
    """The one of us who may aim, where the other one's return is marked weak."""
    question = answer.question
    aiming = able(question)
    if question.returner is not None or answer.option == MIDDLE:
        return None
    return aiming[0] if len(aiming) == 1 < len(question.ours) else None


def _is_general(answer: ReturnAnswer) -> bool:
    """Whether nothing known of them, of us or of where they stand is behind it."""
    is_ours = any(marks_weak(one, Trait.RETURN) for one in returners(answer))
    return answer.option == MIDDLE and answer.driver is None and not is_ours and not styled(answer)


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


def _gain(answer: ReturnAnswer) -> float:
    return float(answer.ranking.gain(MIDDLE))


def _number(answer: ReturnAnswer, situation: Situation) -> str:
    """The target's gain; else where to aim, or what depth may cost where that was the question."""
    if asks_depth(situation.asked.words):
        return deep_pays(_pays(answer.question))
    if answer.option != MIDDLE and answer.ranking.confidence is not Confidence.TOSS_UP:
        return rallies(_gain(answer))
    if answer.style is Style.HARD:
        more = max(1, round(hard_misses(answer.question)))
        return f"Hard misses {more} in 100 more than high."
    return aim_said(answer.question.depth, answer.aim_ft)


def _pays(question: ReturnQuestion) -> float:
    """The honest risk: misses in 100 that a ball which lands deep is worth."""
    return misses_paid_for(RallyPoints(question.depth.row.worth.mean), RECEIVING_CHANCE)


def _numbers(answer: ReturnAnswer) -> MappingProxyType[str, float]:
    ranking, gain = answer.ranking, _gain(answer)
    return MappingProxyType(
        {
            **figures(ranking),
            "points_gained": gain,
            "rallies_in_100": gain * ranking.share / 100,
            "return_per_100": gain * ranking.share / 100,
            "deep_points": answer.question.depth.row.worth.mean,
            "deep_pays_for_misses": _pays(answer.question),
            **answer.question.depth.numbers(answer.aim_ft),
            **_of_time(answer.question),
        }
    )


def _of_time(question: ReturnQuestion) -> dict[str, float]:
    high, hard, short = question.high, question.hard, question.short
    return {
        "high_flight_s": high.air_s,
        "hard_flight_s": hard.air_s,
        "time_bought_s": time_bought_s(question),
        "run_s": run_s(question.contact.way_m, question.feet),
        "high_slack_s": question.slack_s(high),
        "hard_slack_s": question.slack_s(hard),
        "short_slack_s": question.slack_s(short),
        "high_set_chance": chance_set(question.slack_s(high)),
        "hard_set_chance": chance_set(question.slack_s(hard)),
        "hard_extra_misses": hard_misses(question),
        "ground_bought_ft": ground_ft(high.to_third_s, hard.to_third_s, question.feet),
    }


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
    found += wind_choices(Topic.AIM_RETURN, situation.wind)
    if is_general and situation.theirs:
        found.append(Choice(label="what to look for", topic=Topic.PROBE))
    if is_general:
        found += hand_choices(answer.question.theirs, Topic.AIM_RETURN)
    return tuple(found)


def _more(answer: ReturnAnswer) -> tuple[str, ...]:
    """The sum behind target, stroke and depth; the times, and what depth pays."""
    question = answer.question
    bests = (answer.ranking.best, answer.styles.best, answer.depth.of(DEEP))
    sums = sum_lines((part for one in bests for part in one.parts), what="For and against")
    high, hard = question.high, question.hard
    return (
        *sums,
        aim_said(question.depth, answer.aim_ft),
        f"High {high.air_s:.2f} s in the air, hard {hard.air_s:.2f} s",
        f"They hit it after {high.to_third_s:.1f} s, hard {hard.to_third_s:.1f} s",
        f"Your run to the line: {run_s(question.contact.way_m, question.feet):.1f} s",
        deep_pays(_pays(question)),
    )
