"""The third shot: drop, drive or lob, at whom, and the fifth ball; one decision with the plan."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from knowledge.advice import MAX_REASONS, Advice, AdvisedMix, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import Depth
from knowledge.ball_places import HeightName
from knowledge.planning.line import Line
from knowledge.planning.mixes import third_mix
from knowledge.planning.names import first_that_fits
from knowledge.planning.probes import hand_choices
from knowledge.planning.thirds import Third, best_third, drives_of, third_line, thirds_of
from knowledge.planning.weighing import is_weak
from knowledge.side_view import SideView
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import third_words as words
from knowledge.tactics.aim_words import assumed, sum_lines
from knowledge.tactics.fourth_asked import fourth_instead
from knowledge.tactics.third_crash import our_crash
from knowledge.tactics.third_drive import asks_whom_to_drive, drive_at
from knowledge.tactics.third_effects import scatter_of, third_ball
from knowledge.tactics.third_options import DRIVE, DROP, LATE, trait_of_shot
from knowledge.tactics.third_picture import picture
from knowledge.tactics.third_reasons import over_the_other_shot, reasons_of, rule_why, wind_reasons
from knowledge.tactics.third_said import NOTHING_TOLD, Return, ThirdSaid, third_said
from knowledge.tactics.third_side import side_picture
from knowledge.tactics.third_success import SHOTS
from knowledge.tactics.told_reasons import (
    figures,
    is_general,
    plain,
    shot_confidence,
    weak_shot,
)
from knowledge.vocabulary import BallQuality, Topic, Trait, Value

TOLD_REASONS = 2

SIT_ON_IT = "they sit on it"


def advise(situation: Situation) -> Advice:
    """The third for this ball as told; before the rally the plan's own line, or the rule."""
    fourth = fourth_instead(situation, Topic.THIRD_SHOT)
    if fourth is not None:
        return fourth
    said = third_said(situation)
    if said.asks_to_crash and said.came is None:
        return our_crash(situation)
    thirds = thirds_of(situation)
    if not thirds:
        return _no_third(situation, said)
    if asks_whom_to_drive(situation) and said.came is None and (drives := drives_of(situation)):
        return drive_at(situation, drives)
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
            *(wind_reasons(thirds) or rule_why(situation))[:TOLD_REASONS],
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
    wind = wind_reasons(thirds)
    call = words.RULE_IN_WIND.get(situation.wind) if situation.wind else None
    why = (*plain(words.RULE_IN_SHORT), *rule_why(situation)) if call else rule_why(situation)
    return Advice(
        topic=Topic.THIRD_SHOT,
        call=call or words.RULE,
        reasons=(*wind, *why)[:MAX_REASONS],
        unless=words.RULE_UNLESS,
        assumed=assumed(situation, is_general=True),
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
    other, points = over_the_other_shot(third)
    call = words.call(third)
    return Advice(
        topic=Topic.THIRD_SHOT,
        call=call,
        reasons=reasons_of(third, said, situation),
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


def _label(third: Third) -> str:
    label = third.weighed.ranking.of(third.option).option.label
    return f"{third.hitter.name}: {label}" if third.hitter else label


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
    _, points = over_the_other_shot(third)
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
    """The return that was not told, or the other one; another height; a pair still coming in."""
    no_height = said.met.height_m is None
    rows = (
        ("short return", MatchFact.BALL, BallQuality.EASY, said.came is Return.POOR),
        ("deep or stretched", MatchFact.BALL, BallQuality.STRETCHED, said.came is Return.GOOD),
        ("hip high", MatchFact.HEIGHT, HeightName.HIP, not (no_height and said.met.deep)),
        ("below the knee", MatchFact.HEIGHT, HeightName.SHIN, not (no_height and said.met.short)),
        ("one still coming in", MatchFact.THEIRS, Depth.COMING_IN, said.moving is not None),
    )
    return tuple(
        Choice(label=label, topic=Topic.THIRD_SHOT, fact=fact.value, value=value.value)
        for label, fact, value, is_told in rows
        if not is_told
    )
