"""Balls to let fly out: above which height at our line, by how they hit; and this one, if told."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import Depth, Spin
from knowledge.dataclass import dataclass
from knowledge.engine import Ranking
from knowledge.planning.names import first_that_fits
from knowledge.side_view import SideView
from knowledge.situation import OnCourt, Situation, Wind
from knowledge.sources import COMMON_PRACTICE, computed
from knowledge.tactics.aim_words import rallies
from knowledge.tactics.leave_line import (
    Hit,
    LeaveLines,
    feet,
    leave_lines,
    leave_words,
    taken_as_spun,
    usual_hit,
)
from knowledge.tactics.leave_picture import Told, leave_picture
from knowledge.tactics.reset_answer import LEAVE, LEAVE_FROM, answer_attacked
from knowledge.tactics.reset_flight import Passing, chance_out, out_of_ten
from knowledge.tactics.reset_question import Attacked
from knowledge.vocabulary import BallKind, Topic, Trait

FLIGHT = computed("ball flight")
BOTH_FITS = computed("both lift fits")

CALL_IT = Reason(text='Say it: "bounce" or "no", loud and early', source=COMMON_PRACTICE)
NO_NUMBER = "Leave what you think flies out 6 times in 10."
LONGER_LANE = "Cross-court the lane is longer: a hand higher."
INTO_WIND = "Wind in their face: it drops; play it."
CAUTION = "A ball at the face: paddle up or duck; wear eye protection."


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """Whose balls, how they are hit, and the heights above which they fly out."""

    hitter: OnCourt | None
    is_spun: bool | None
    is_place_said: bool
    hit: Hit
    lines: LeaveLines

    @property
    def who(self) -> str:
        return "" if self.hitter is None else self.hitter.name


def advise(situation: Situation) -> Advice:
    """The one ball that was told, or the height to leave at by the hitter's spin."""
    question, ranking = answer_attacked(situation)
    asked = _asked(question)
    if question.passing is None:
        return _in_advance(situation, asked)
    return _one_ball(situation, asked, question, ranking)


def _asked(question: Attacked) -> Asked:
    facts = question.facts
    hit = usual_hit(
        is_drive=question.is_drive,
        pace_mps=facts.pace_mps,
        wind_mps=question.wind_mps,
    )
    return Asked(
        hitter=question.attacker,
        is_spun=taken_as_spun(facts.spin, question.topspin_habit),
        is_place_said=facts.theirs in (Depth.AT_LINE, Depth.BOTH_BACK),
        hit=hit,
        lines=leave_lines(hit),
    )


def _in_advance(situation: Situation, asked: Asked) -> Advice:
    known = asked.is_spun is not None
    return Advice(
        topic=Topic.LET_IT_GO,
        call=_rule(asked),
        reasons=_why(asked),
        number=NO_NUMBER,
        unless=_unless(situation),
        assumed=asked.hit.taken_as,
        caution=CAUTION,
        confidence=Confidence.LEAN if known else Confidence.GENERAL_RULE,
        numbers=_numbers(asked),
        choices=_choices(asked),
        picture=_picture(asked),
        more=_more(asked),
    )


def _picture(asked: Asked, told: Told | None = None) -> SideView:
    return leave_picture(asked.hit, asked.lines, is_spun=asked.is_spun, who=asked.who, told=told)


def _rule(asked: Asked) -> str:
    """By this hitter's spin, else by both."""
    who = f"{asked.who}: " if asked.who else ""
    if asked.is_spun is not None:
        words = leave_words(asked.lines.spun_m if asked.is_spun else asked.lines.flat_m)
        named = (f"{who}leave {words}.",) if who else ()
        return first_that_fits((*named, f"Leave {words}."))
    flat, spun = leave_words(asked.lines.flat_m), leave_words(asked.lines.spun_m)
    return first_that_fits(
        (
            f"{who}Flat: leave {flat}. Topspin: {spun}.",
            f"Flat: leave {flat}. Topspin: {spun}.",
            f"Flat: {flat}. Topspin: {spun}.",
        )
    )


def _by_spin(asked: Asked) -> str:
    """Both heights, where it is not known how they hit it: never one number for all."""
    flat, spun = leave_words(asked.lines.flat_m), leave_words(asked.lines.spun_m)
    return f"Flat: {flat}; topspin: {spun.removeprefix('above the ')}."


def _why(asked: Asked) -> tuple[Reason, ...]:
    reasons: list[Reason] = []
    if asked.hitter is not None and asked.is_spun is not None:
        estimate = asked.hitter.profile.habit(Trait.TOPSPIN)
        if estimate.evidence and taken_as_spun(None, estimate.level) is asked.is_spun:
            habit = "hits heavy topspin" if asked.is_spun else "hits flat"
            reasons.append(Reason(text=f"{asked.who} {habit}", source=estimate.source))
    if asked.is_spun is not True:
        reasons.append(Reason(text=_flat_figure(asked), source=FLIGHT))
    if asked.is_spun is not False:
        reasons.append(Reason(text=_spun_figure(asked), source=BOTH_FITS))
    return (*reasons, CALL_IT)[:3]


def _flat_figure(asked: Asked) -> str:
    return f"{_hit_words(asked.hit)} flat: {_out_above(asked.lines.flat_m, asked.lines.flat_m)}"


def _spun_figure(asked: Asked) -> str:
    low, high = asked.lines.spun_low_m, asked.lines.spun_high_m
    return f"{_hit_words(asked.hit)} topspin: {_out_above(low, high)}"


def _hit_words(hit: Hit) -> str:
    return f"{hit.mph} mph {'drive' if hit.is_drive else 'speed-up'},"


def _out_above(low_m: float, high_m: float) -> str:
    if high_m == 0:
        return "all fly out"
    if low_m == high_m:
        return f"out above {feet(low_m)}"
    low = "0" if low_m == 0 else feet(low_m).removesuffix(" ft")
    return f"out above {low}-{feet(high_m)}"


def _one_ball(situation: Situation, asked: Asked, question: Attacked, ranking: Ranking) -> Advice:
    """Left, this ball is ours as often as it flies out; played, as often as the rest says."""
    assert question.passing is not None
    leave = ranking.best.option.id == LEAVE
    said = _how_many(question.passing)
    return Advice(
        topic=Topic.LET_IT_GO,
        call="Leave it, and say so early." if leave else "Play it: too few of these fly out.",
        reasons=(Reason(text=said, source=BOTH_FITS), *_why(asked))[:3],
        number=_gain(ranking, leave=leave),
        unless=_by_spin(asked) if asked.is_spun is None else _unless(situation),
        assumed=asked.hit.taken_as,
        caution=CAUTION,
        confidence=ranking.confidence,
        numbers=MappingProxyType(
            {**_numbers(asked), "chance_out": chance_out(question.passing), **_chances(ranking)}
        ),
        choices=_choices(asked),
        picture=_picture(asked, Told(height_m=question.passing.height_m, said=said)),
        more=_more(asked),
    )


def _how_many(ball: Passing) -> str:
    of_ten = out_of_ten(ball)
    return f"About {of_ten} of 10 like it fly out" if of_ten else "Hardly any like it fly out"


def _chances(ranking: Ranking) -> Mapping[str, float]:
    return {f"{one.option.id}_chance": float(one.chance) for one in ranking.ranked}


def _gain(ranking: Ranking, *, leave: bool) -> str | None:
    """How much the call is better than its opposite, in rallies."""
    chances = {one.option.id: float(one.chance) for one in ranking.ranked}
    left = chances.pop(LEAVE)
    played = max(chances.values())
    points = 100 * (left - played if leave else played - left)
    if round(points) < 1:
        return None
    return rallies(points, over="playing it" if leave else "leaving it")


def _unless(situation: Situation) -> str:
    """The wind while nobody says which way it blows; then the longer lane."""
    is_said = situation.wind in (Wind.BEHIND_US, Wind.AGAINST_US, Wind.NONE)
    return LONGER_LANE if is_said else INTO_WIND


def _numbers(asked: Asked) -> Mapping[str, float]:
    lines = asked.lines
    return MappingProxyType(
        {
            "leave_flat_m": lines.flat_m,
            "leave_topspin_m": lines.spun_m,
            "leave_topspin_low_m": lines.spun_low_m,
            "leave_topspin_high_m": lines.spun_high_m,
            "pace_mps": asked.hit.speed_mps,
        }
    )


def _choices(asked: Asked) -> tuple[Choice, ...]:
    """The other spin; the other ball, unless where they stand settles which it is."""
    is_drive, is_open = asked.hit.is_drive, not asked.is_place_said
    offered = [
        ("heavy topspin", MatchFact.SPIN, Spin.TOPSPIN.value, asked.is_spun is not True),
        ("flat", MatchFact.SPIN, Spin.FLAT.value, asked.is_spun is not False),
        ("drive", MatchFact.BALL_KIND, BallKind.DRIVE.value, is_open and not is_drive),
        ("speed-up", MatchFact.BALL_KIND, BallKind.SPEED_UP.value, is_open and is_drive),
    ]
    return tuple(
        Choice(label=label, topic=Topic.LET_IT_GO, fact=fact.value, value=value)
        for label, fact, value, is_other in offered
        if is_other
    )


def _more(asked: Asked) -> tuple[str, ...]:
    return (
        _flat_figure(asked),
        _spun_figure(asked),
        "Two published fits of topspin's lift differ fourfold: hence two heights.",
        f"Leaving pays from about {round(100 * LEAVE_FROM)} of 100 out.",
        LONGER_LANE,
        INTO_WIND,
    )
