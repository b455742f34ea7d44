"""The third shot: drop, drive or lob, at whom, and the fifth ball; one decision with the plan."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from knowledge.advice import Advice, AdvisedMix, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import Depth
from knowledge.effects import OptionId, Truth
from knowledge.engine import Part, Ranked
from knowledge.planning.line import Line
from knowledge.planning.mixes import third_mix
from knowledge.planning.names import first_that_fits
from knowledge.planning.phrases import skill_words
from knowledge.planning.probes import hand_choices
from knowledge.planning.thirds import Third, best_third, third_line, thirds_of
from knowledge.planning.weighing import is_weak
from knowledge.side_view import SideView
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import third_words as words
from knowledge.tactics.aim_words import NO_NOTES_DECIDE, NOBODY_NAMED, WIND, sum_lines
from knowledge.tactics.shot_success import SUCCESS
from knowledge.tactics.third_effects import (
    DRIVE,
    DROP,
    LATE,
    LINE,
    LOB,
    scatter_of,
    third_ball,
    trait_of_shot,
    wind_words,
)
from knowledge.tactics.third_picture import picture
from knowledge.tactics.third_said import NOTHING_TOLD, Return, ThirdSaid, third_said
from knowledge.tactics.third_side import side_picture
from knowledge.tactics.third_success import HANDS, SHOTS, drive_words
from knowledge.tactics.told_reasons import (
    best_other_shot,
    figures,
    is_general,
    noted_by_name,
    plain,
    shot_confidence,
    weak_shot,
)
from knowledge.vocabulary import BallQuality, Topic, Trait, Value

REASONS = 3
TOLD_REASONS = 2

LIKELY = 0.6
"""A condition that holds this often may carry a reason, with the other branch said."""

LEAST_SAID = 0.3
"""Points below which a reason is none."""

SIT_ON_IT = "they sit on it"


def advise(situation: Situation) -> Advice:
    """The third for this ball as told; before the rally the plan's own line, or the rule."""
    said = third_said(situation)
    thirds = thirds_of(situation)
    if not thirds:
        return _no_third(situation, said)
    if said.is_told:
        return _for_this_ball(third_asked(thirds, situation), said, situation)
    line = third_line(situation)
    if line is None or not line.is_specific:
        return _rule(situation, said, thirds)
    return _as_planned(line, thirds, situation)


def _as_planned(line: Line, thirds: list[Third], situation: Situation) -> Advice:
    """The plan's line on thirds, with its reason and how to vary it."""
    mix = third_mix(situation)
    because = line.because[:1].upper() + line.because[1:]
    return Advice(
        topic=Topic.THIRD_SHOT,
        call=first_that_fits((f"{line.do}.", line.cue, words.RULE)),
        reasons=(
            Reason(text=because, source=line.reason().source),
            *(_wind(thirds) or plain(*words.RULE_WHY))[:TOLD_REASONS],
        ),
        unless=None if _lacks_a_drop(situation) else words.RULE_UNLESS,
        confidence=Confidence.LEAN,
        numbers=_numbers(best_third(thirds), third_per_100=line.per_100),
        choices=(*_branches(NOTHING_TOLD), *hand_choices(situation.theirs, Topic.THIRD_SHOT)),
        picture=picture(best_third(thirds), mix, situation),
        mix=mix,
    )


def _lacks_a_drop(situation: Situation) -> bool:
    return any(is_weak(one, Trait.THIRD_SHOT_DROP) for one in situation.ours)


def _rule(situation: Situation, said: ThirdSaid, thirds: list[Third]) -> Advice:
    """Nothing is told and no note on them decides: by the return, as good players do."""
    undriven = [one for one in situation.ours if is_weak(one, Trait.FOREHAND_DRIVE)]
    if undriven:
        return _only_drops(undriven[0], situation)
    wind = _wind(thirds)
    call = words.RULE_IN_WIND.get(situation.wind) if situation.wind else None
    why = (words.RULE_IN_SHORT, *words.RULE_WHY) if call else words.RULE_WHY
    return Advice(
        topic=Topic.THIRD_SHOT,
        call=call or words.RULE,
        reasons=(*wind, *plain(*why))[:REASONS],
        unless=words.RULE_UNLESS,
        assumed=NO_NOTES_DECIDE if situation.theirs else NOBODY_NAMED,
        choices=_branches(NOTHING_TOLD),
        mix=third_mix(situation) if said.asks_to_vary else None,
    )


def _only_drops(one: OnCourt, situation: Situation) -> Advice:
    """Our own notes mark a drive as weak: its owner drops, whatever the return."""
    other = next((each for each in situation.ours if not is_weak(each, Trait.FOREHAND_DRIVE)), None)
    return Advice(
        topic=Topic.THIRD_SHOT,
        call=words.ONLY_DROPS,
        reasons=(
            weak_shot(one, Trait.FOREHAND_DRIVE),
            *plain("Middle, or at the one who arrives late"),
        ),
        unless=f"{other.name} may drive a short return." if other else None,
        confidence=Confidence.LEAN,
        choices=_branches(NOTHING_TOLD),
    )


def _for_this_ball(third: Third, said: ThirdSaid, situation: Situation) -> Advice:
    mix, ranking = _mix(situation, said), third.weighed.ranking
    is_at_someone = third.target is not None or third.where == LATE
    other, points = _over_the_other_shot(third)
    call = words.call(third)
    return Advice(
        topic=Topic.THIRD_SHOT,
        call=call,
        reasons=_reasons(third, said, situation),
        number=words.number(other, points) if other and mix is None else None,
        unless=words.unless(third, said, two_handed=_two_handed(third.hitter)),
        assumed=words.assumed(said),
        caution=words.BODY_CAUTION if third.shot == DRIVE and is_at_someone else None,
        confidence=Confidence.GENERAL_RULE if is_general(ranking) else shot_confidence(ranking),
        numbers=_numbers(third, **_successes(third, said, situation)),
        choices=_branches(said),
        picture=_from_the_side(third, said, situation, call),
        mix=mix,
        more=sum_lines(ranking.of(third.option).parts, what=_label(third)),
    )


def _from_the_side(third: Third, said: ThirdSaid, situation: Situation, call: str) -> SideView:
    ranked = third.weighed.ranking.ranked
    scatters = {
        shot: scatter_of(third.hitter, shot, said, situation)
        for shot in dict.fromkeys(one.option.id.partition(":")[0] for one in ranked)
    }
    ball = third_ball(said, situation)
    return side_picture(third.shot, ball, scatters, call=call, moving=bool(said.moving))


def third_asked(thirds: list[Third], situation: Situation) -> Third:
    """That of whoever of us is named or hits it; else the one that gains most."""
    named = [one.player for one in situation.ours if one.player in situation.asked.about]
    who = named[0] if len(named) == 1 else situation.striker
    for third in thirds:
        if third.hitter is not None and third.hitter.player == who:
            return third
    return max(thirds, key=lambda third: third.weighed.ranking.best.chance)


def _mix(situation: Situation, said: ThirdSaid) -> AdvisedMix | None:
    """How to vary on such a ball; None where the ball itself decides."""
    mix = None if said.came is not None else third_mix(situation)
    if mix is None or mix.change_up is None:
        return None
    return replace(mix, trigger=SIT_ON_IT)


def _reasons(third: Third, said: ThirdSaid, situation: Situation) -> tuple[Reason, ...]:
    """Notes first, then how often it works, the wind, the ball; the fifth where no call says it."""
    fifth = plain(words.FIFTH[third.shot]) if third.shot in words.FIFTH else ()
    parts = third.weighed.ranking.of(third.option).parts
    noted = noted_by_name([part for part in parts if not _is_success(part)], situation)
    works = [_reason(part) for part in parts if _is_success(part)]
    told = [_reason(part) for part in _told(third, said)]
    asked = told[:1] if said.asks_lob or said.asks_line else []
    found = (
        *(*noted, *_our_note(third, said))[:1],
        *asked,
        *_blown(third, situation),
        *works,
        *told,
        *_against(third, said, situation),
    )
    return (*dict.fromkeys(found),)[: REASONS - len(fifth)] + fifth


def _reason(part: Part) -> Reason:
    return Reason(text=part.effect.because, source=part.effect.source)


def _is_success(part: Part) -> bool:
    return part.effect.source == SUCCESS


def _our_note(third: Third, said: ThirdSaid) -> tuple[Reason, ...]:
    """What our notes say for this shot of the hitter's, which is in its scatter already."""
    trait = trait_of_shot(third.shot, said)
    estimate = None if third.hitter is None else third.hitter.profile.skill(trait)
    if third.hitter is None or estimate is None or not estimate.evidence:
        return ()
    if estimate.level <= 0 or estimate.is_open:
        return ()
    text = f"{third.hitter.name}: {skill_words(trait, strong=True)}"
    return (Reason(text=text, source=estimate.source),)


def _blown(third: Third, situation: Situation) -> tuple[Reason, ...]:
    """How to aim this shot in today's wind, where that is known."""
    because = wind_words(situation.wind, third.shot)
    return () if because is None else (Reason(text=because, source=WIND),)


def _against(third: Third, said: ThirdSaid, situation: Situation) -> tuple[Reason, ...]:
    """Where the drop is the call and a drive is ours too: how a drive would get there."""
    other, _ = _over_the_other_shot(third)
    if third.shot != DROP or other != DRIVE or said.both_back:
        return ()
    scatter = scatter_of(third.hitter, DRIVE, said, situation)
    return (Reason(text=drive_words(third_ball(said, situation), scatter), source=HANDS),)


def _told(third: Third, said: ThirdSaid) -> list[Part]:
    """What is likely of the ball and speaks for this shot, or against the best of the others."""
    ranking = third.weighed.ranking
    against = [
        one
        for one in (best_other_shot(third.weighed.ranking, third.shot), _asked_about(third, said))
        if one is not None
    ]
    found = [part for part in ranking.of(third.option).parts if part.points > LEAST_SAID]
    found += [part for other in against for part in other.parts if part.points < -LEAST_SAID]
    likely = [one for one in found if one.effect.scale is None and _is_likely(one)]
    said_here = [one for one in likely if not _is_success(one) and one.effect.source != WIND]
    return sorted(said_here, key=lambda part: -abs(part.points))


def _is_likely(part: Part) -> bool:
    return part.truth is Truth.YES or part.effect.when.prevalence >= LIKELY


def _asked_about(third: Third, said: ThirdSaid) -> Ranked | None:
    """The lob, or the same shot down the line, where that was asked about and is not the call."""
    ranked = third.weighed.ranking.ranked
    if said.asks_lob and third.shot != LOB:
        return next((one for one in ranked if one.option.id.startswith(LOB)), None)
    if said.asks_line and third.where != LINE and third.shot != LOB:
        return third.weighed.ranking.of(OptionId(f"{third.shot}:{LINE}"))
    return None


def _over_the_other_shot(third: Third) -> tuple[str, float]:
    other = best_other_shot(third.weighed.ranking, third.shot)
    if other is None:
        return "", 0.0
    best = third.weighed.ranking.of(third.option)
    return other.option.id.partition(":")[0], 100 * (best.chance - other.chance)


def _label(third: Third) -> str:
    label = third.weighed.ranking.of(third.option).option.label
    return f"{third.hitter.name}: {label}" if third.hitter else label


def _wind(thirds: list[Third], shot: str | None = None) -> tuple[Reason, ...]:
    """What the wind does to this shot today, or to the one it does most to."""
    ranked = [each for one in thirds for each in one.weighed.ranking.ranked]
    of_shot = [one for one in ranked if shot in (None, one.option.id.partition(":")[0])]
    blown = [part for one in of_shot for part in one.parts if part.effect.source == WIND]
    blown.sort(key=lambda part: -abs(part.points))
    return tuple(dict.fromkeys(_reason(part) for part in blown))[:1]


def _no_third(situation: Situation, said: ThirdSaid) -> Advice:
    """Neither shot is ours by our own notes: depth buys the way in."""
    found = [
        weak_shot(one, trait)
        for one in situation.ours
        for trait in (trait_of_shot(DROP, said), trait_of_shot(DRIVE, said))
        if is_weak(one, trait)
    ]
    return Advice(
        topic=Topic.THIRD_SHOT,
        call=words.NO_THIRD,
        reasons=(*found[:TOLD_REASONS], *plain("Deep and middle gives no angle back")),
        unless="Practise one of them: the drop first.",
        choices=_branches(said),
    )


def _two_handed(hitter: OnCourt | None) -> bool | None:
    value = None if hitter is None else hitter.profile.fact(Trait.TWO_HANDED_BACKHAND)
    return None if value is None else value is Value.YES


def _numbers(third: Third, **more: float) -> MappingProxyType[str, float]:
    _, points = _over_the_other_shot(third)
    ranking = third.weighed.ranking
    return figures(
        ranking,
        points_over_the_other_shot=points,
        **{"rallies_in_100": points * ranking.share / 100, **more},
    )


def _successes(third: Third, said: ThirdSaid, situation: Situation) -> dict[str, float]:
    """Of each shot that is ours: how often it is in play, and how often it works."""
    ball, found = third_ball(said, situation), {}
    shots = {one.option.id.partition(":")[0] for one in third.weighed.ranking.ranked}
    for shot in sorted(shots):
        aim = ball.aimed(SHOTS[shot], scatter_of(third.hitter, shot, said, situation))
        found[f"{shot}_in_play"], found[f"{shot}_works"] = aim.legal, aim.meant
    return {"height_m": ball.contact.height_m, "from_net_m": ball.contact.from_net_m, **found}


def _branches(said: ThirdSaid) -> tuple[Choice, ...]:
    """The return that was not told, or the other one; and a pair still coming in."""
    rows = (
        ("short return", MatchFact.BALL, BallQuality.EASY, said.came is Return.POOR),
        ("deep or stretched", MatchFact.BALL, BallQuality.STRETCHED, said.came is Return.GOOD),
        ("one still coming in", MatchFact.THEIRS, Depth.COMING_IN, said.moving is not None),
    )
    return tuple(
        Choice(label=label, topic=Topic.THIRD_SHOT, fact=fact.value, value=value.value)
        for label, fact, value, is_told in rows
        if not is_told
    )
