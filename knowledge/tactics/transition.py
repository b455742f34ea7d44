"""Getting to the line: when to move and when to stop, where the fifth goes, and the fourth."""

from __future__ import annotations

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import Depth
from knowledge.ball_places import HeightName
from knowledge.court import HALF_LENGTH_M, METRES_PER_FOOT
from knowledge.planning.names import first_that_fits
from knowledge.reach import Feet, mover_of
from knowledge.situation import Situation
from knowledge.tactics.aim_words import sum_lines
from knowledge.tactics.conditions import marks_weak
from knowledge.tactics.told_reasons import (
    GENERAL,
    figures,
    is_general,
    noted_by_name,
    plain,
    shot_confidence,
    told_for,
    weak_shot,
)
from knowledge.tactics.transition_answer import COMING, TransitionAnswer, answer_transition
from knowledge.tactics.transition_effects import (
    ANGLE,
    ATTACK,
    BLOCK,
    BOUNCE,
    FAR_M,
    GO,
    LIFT,
    SHORT,
    SOFT,
    SOFT_LINE,
)
from knowledge.tactics.transition_picture import picture
from knowledge.tactics.transition_said import Stage
from knowledge.tactics.transition_time import run_in_m, to_the_line_m
from knowledge.vocabulary import BallQuality, Topic, Trait
from knowledge.wind import Stroke

REASONS = 3
BODY_CAUTION = "At the feet, never at the head."


def advise(situation: Situation) -> Advice:
    """The call for the stage that is asked about, why, and what would change it."""
    answer = answer_transition(situation)
    general = is_general(answer.ranking) and not _weak(answer)
    feet = mover_of(answer.striker.profile).feet if answer.striker else Feet()
    from_net_m = answer.said.from_net_m or HALF_LENGTH_M
    drop_m, drive_m = (run_in_m(each, feet, from_net_m) for each in (Stroke.DROP, Stroke.DRIVE))
    is_move = answer.said.stage is Stage.MOVE
    call, is_hit_down = _call(answer), answer.best in (ATTACK, ANGLE)
    return Advice(
        topic=Topic.TRANSITION,
        call=call,
        reasons=_reasons(answer, situation),
        number=_number(drop_m, drive_m) if is_move and from_net_m >= FAR_M else None,
        unless=_unless(answer),
        assumed=GENERAL if general else None,
        caution=BODY_CAUTION if is_hit_down else None,
        confidence=Confidence.GENERAL_RULE if general else shot_confidence(answer.ranking),
        numbers=figures(
            answer.ranking,
            run_in_behind_a_drop_m=drop_m,
            run_in_behind_a_drive_m=drive_m,
            to_the_line_m=to_the_line_m(from_net_m),
        ),
        choices=_choices(answer),
        picture=picture(answer, situation, call=call, drop_m=drop_m, drive_m=drive_m),
        more=sum_lines(answer.ranking.best.parts, what=answer.ranking.best.option.label),
    )


def _call(answer: TransitionAnswer) -> str:
    match answer.said.stage:
        case Stage.MOVE:
            return _move_call(answer)
        case Stage.FIFTH:
            return _fifth_call(answer)
        case Stage.FOURTH:
            return _fourth_call(answer)


def _move_call(answer: TransitionAnswer) -> str:
    said = answer.said
    if answer.best == GO:
        if said.theirs is Depth.BOTH_BACK:
            return "Go up together now: they are back."
        if said.one_back:
            return "Go up level with your partner, then split."
        return "Run in now: they must hit up." if said.low else "Run in, split as they hit."
    if said.high:
        return "Stop and split: wait for one they hit up."
    if said.one_back:
        return "Come in level, together; split when they hit."
    return "Stop and split when they hit; then move again."


def _fifth_call(answer: TransitionAnswer) -> str:
    if answer.best == ATTACK:
        return "Hit down on the fifth: feet or middle."
    if answer.best == BLOCK:
        return "Block the fifth low, middle, no swing."
    if answer.best == SOFT_LINE:
        return "Play the fifth soft down the line, then step in."
    where = ", low middle"
    if answer.target is not None:
        where = f" at {answer.target.name}'s feet"
    elif answer.best.endswith("late"):
        where = ", at the one still coming in"
    return first_that_fits(
        (f"Play the fifth soft{where}; then step in.", f"Play the fifth soft{where}.")
    )


def _fourth_call(answer: TransitionAnswer) -> str:
    best = answer.best
    if best == BOUNCE:
        return "Let the fourth bounce; soft to the middle."
    if best == LIFT:
        return "Lift the fourth soft, middle; hold the line."
    if best == SHORT:
        return "Drop the fourth short: they are slow forward."
    if best == ANGLE:
        return "Angle the fourth short, away from the nearer."
    if answer.target is not None:
        return f"Volley the fourth deep at {answer.target.name}'s feet."
    if answer.said.theirs in COMING or best.endswith("late"):
        return "Volley the fourth deep: feet of the one coming in."
    return "Volley the fourth deep, middle, at their feet."


_GOING = ("Split as they hit, wherever you are",)
_USUAL = {
    Stage.MOVE: ("Still feet beat two steps nearer", "Good low third: go. High third: wait"),
    Stage.FIFTH: ("Low middle gives no angle and no attack", "Two drops get you in, one rarely"),
    Stage.FOURTH: ("Short ones let them in for free", "Hold the line as you hit it"),
}


def _reasons(answer: TransitionAnswer, situation: Situation) -> tuple[Reason, ...]:
    told = told_for(answer.ranking) if answer.said.is_told or answer.said.one_back else ()
    noted = noted_by_name(answer.ranking.best.parts, situation)
    found = (*_weak(answer), *noted[:1], *told[:2])
    return tuple(dict.fromkeys((*found, *plain(*_usual(answer)))))[:REASONS]


def _usual(answer: TransitionAnswer) -> tuple[str, ...]:
    """What holds whoever plays; the middle is a reason only where the fifth goes there."""
    if answer.best == GO:
        return _GOING
    usual = _USUAL[answer.said.stage]
    is_fifth_elsewhere = answer.said.stage is Stage.FIFTH and answer.best not in (SOFT, BLOCK)
    return usual[1:] if is_fifth_elsewhere else usual


def _weak(answer: TransitionAnswer) -> tuple[Reason, ...]:
    """The weak shot of our own that the call goes round."""
    avoided = {BLOCK: Trait.RESET, BOUNCE: Trait.BACKHAND_VOLLEY}.get(answer.best)
    one = answer.striker
    if avoided is None or one is None or not marks_weak(one, avoided):
        return ()
    return (weak_shot(one, avoided),)


def _number(drop_m: float, drive_m: float) -> str:
    """How far behind each third one gets before they hit."""
    drop, drive = (round(each / METRES_PER_FOOT) for each in (drop_m, drive_m))
    return f"Before they hit: {drop} ft in behind a drop, {drive} a drive."


def _unless(answer: TransitionAnswer) -> str | None:
    said = answer.said
    if said.stage is Stage.MOVE:
        if answer.best == GO:
            return "It pops up? Stop and split where you are."
        return "Their ball is below the tape: run in now."
    owns_attack = any(one.option.id == ATTACK for one in answer.ranking.ranked)
    if said.stage is Stage.FIFTH:
        if answer.best == ATTACK:
            return "Below the net: soft, low middle."
        return "It sits up above the net: hit down on it." if owns_attack else None
    if answer.best == LIFT:
        return "Above the net: deep at their feet."
    return None if answer.best == BOUNCE else "Below the net: lift it soft, middle."


def _choices(answer: TransitionAnswer) -> tuple[Choice, ...]:
    said = answer.said
    rows: list[tuple[str, MatchFact, str]] = []
    if said.stage is Stage.MOVE:
        if said.low is not True:
            rows.append(("they hit up", MatchFact.HEIGHT, HeightName.BELOW_NET.value))
        if said.high is not True:
            rows.append(("it's high", MatchFact.HEIGHT, HeightName.ABOVE_NET.value))
    else:
        if said.low is not True:
            rows.append(("at my feet", MatchFact.BALL, BallQuality.STRETCHED.value))
        if said.high is not True:
            rows.append(("it sits up", MatchFact.BALL, BallQuality.EASY.value))
    if said.stage is Stage.FOURTH and said.theirs is None:
        rows.append(("they're back", MatchFact.THEIRS, Depth.BOTH_BACK.value))
    return tuple(
        Choice(label=label, topic=Topic.TRANSITION, fact=fact.value, value=value)
        for label, fact, value in rows
    )
