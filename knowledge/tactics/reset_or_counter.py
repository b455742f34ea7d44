"""A ball sped up at us: counter it and where to, reset it, or leave it because it flies out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import BallFacts, Footing
from knowledge.ball_places import FROM_NET_M, PlaceName
from knowledge.effects import Truth
from knowledge.engine import Part, Ranking
from knowledge.planning.hands import hands_aim
from knowledge.planning.names import first_that_fits
from knowledge.planning.weighing import is_open
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.aim_words import rallies, short, sum_lines
from knowledge.tactics.ball_words import ball_choices, taken_as
from knowledge.tactics.leave_line import taken_as_spun, usual_hit
from knowledge.tactics.reset_answer import (
    BLOCK,
    COUNTER,
    FLIES,
    LEAVE,
    RESET,
    SOFT,
    answer_attacked,
    counters_of,
    is_weak,
)
from knowledge.tactics.reset_flight import chance_out, out_of_ten
from knowledge.tactics.reset_question import Attacked
from knowledge.tactics.standing_words import capital
from knowledge.vocabulary import BallQuality, Topic, Trait

REASONS = 3

IN_ADVANCE = "Counter waist up at the line; low or moving: reset."
NO_COUNTER = "Reset it soft to the middle, every time."
NO_RESET = "Counter waist up at the line; low: block it middle."
NEITHER = "Block it to the middle: no swing."

RESET_CALL = "Reset it soft into the middle of the kitchen."

BEST_RESET = Reason(text="Middle of the kitchen: no angle back", source=COMMON_PRACTICE)
STRAIGHT_BACK = Reason(text="Straight back: no time to change sides", source=COMMON_PRACTICE)

GENERAL = (
    Reason(text="Below the net a counter rises", source=COMMON_PRACTICE),
    Reason(text="Moving, you lose the second ball", source=COMMON_PRACTICE),
    Reason(text="Best reset: soft, middle, into the kitchen", source=COMMON_PRACTICE),
)

LEAVE_FLAT = "Flat, above your belt and rising: leave it."
LEAVE_SPUN = "Heavy topspin: leave only chest high and up."
LOW = "Below the net or moving: reset it."
HIGH = "Waist up, set, at the line: counter."
IT_DIPS = "It dips or comes slower: counter it."
IT_DIPS_SOFT = "It dips or comes slower: reset it."

LEAVE_FROM = "Leaving pays from about 6 of 10 on."

_OVER = {
    COUNTER: "a counter",
    RESET: "a reset",
    BLOCK: "a block",
    LEAVE: "leaving it",
}

SET_AT_LINE = BallFacts(from_net_m=FROM_NET_M[PlaceName.AT_LINE], footing=Footing.STILL)
"""How we are taken to meet a ball of which only the height is said."""

CAUTION = "Paddle up in front of you; wear eye protection."
"""Eyes: the ball does 43% of the injuries (JAMA Ophthalmology 2025)."""


def advise(situation: Situation) -> Advice:
    """The call for this ball; asked in advance, both answers by height in one line."""
    question, ranking = answer_attacked(situation)
    is_told = question.leaning or question.asleep
    if not question.is_ball_said and not is_told:
        return _in_advance(situation, question, ranking)
    best = ranking.best.option.id
    return Advice(
        topic=Topic.RESET_OR_COUNTER,
        call=_call(situation, question, ranking),
        reasons=_reasons(situation, question, ranking),
        number=_number(ranking),
        unless=_unless(question, ranking),
        assumed=_assumed(question, leaves=best == LEAVE),
        caution=CAUTION if best == COUNTER else None,
        confidence=ranking.confidence,
        numbers=_numbers(question, ranking),
        choices=_choices(question),
        more=_more(ranking),
    )


def _in_advance(situation: Situation, question: Attacked, ranking: Ranking) -> Advice:
    no_counter = is_weak(situation, question, *counters_of(question))
    no_reset = is_weak(situation, question, Trait.RESET)
    call = {
        (False, False): IN_ADVANCE,
        (True, False): NO_COUNTER,
        (False, True): NO_RESET,
        (True, True): NEITHER,
    }[no_counter, no_reset]
    own = list(_own_reasons(situation, question))
    return Advice(
        topic=Topic.RESET_OR_COUNTER,
        call=call,
        reasons=tuple([*own, *GENERAL][:REASONS]),
        unless=_when_to_leave(question),
        assumed=None if own else "General rule: the ball decides, not who hits it.",
        confidence=Confidence.GENERAL_RULE,
        numbers=_numbers(question, ranking),
        choices=_choices(question),
        more=_more(ranking),
    )


def _call(situation: Situation, question: Attacked, ranking: Ranking) -> str:
    best = ranking.best.option.id
    if best == COUNTER:
        return _counter_call(situation, question)
    if best == LEAVE and question.passing is not None:
        return f"Leave it: about {out_of_ten(question.passing)} of 10 fly out."
    return NEITHER if best == BLOCK else RESET_CALL


def _counter_call(situation: Situation, question: Attacked) -> str:
    """Where to: at a partner who sleeps, else back at the hitter: hip, or feet while he leans."""
    if question.asleep:
        who = question.sleeper.name if question.sleeper else "the partner"
        return first_that_fits((f"Counter at {who}: not ready.", "Counter at the partner."))
    spot = _spot_of(situation, question.attacker)
    if question.leaning:
        return first_that_fits((f"Counter at {spot}: still leaning.", "Counter at the hip."))
    return first_that_fits((f"Counter straight back at {spot}.", f"Counter at {spot}."))


def _spot_of(situation: Situation, attacker: OnCourt | None) -> str:
    """The hip that a speed-up of ours would take too: one decision."""
    if attacker is None:
        return "the hip"
    found = hands_aim(replace(situation, theirs=(attacker,)))
    return f"{attacker.name}'s hip" if found.spot is None else found.spot.at


def _reasons(situation: Situation, question: Attacked, ranking: Ranking) -> tuple[Reason, ...]:
    best = ranking.best.option.id
    found = [*_own_reasons(situation, question)] if best in SOFT else []
    found += [_said(part) for part in ranking.best.parts if part.points > 0 and _may_say(part)]
    found += _against_the_others(ranking)
    if best == RESET:
        found.insert(min(1, len(found)), BEST_RESET)
    if best == COUNTER and not question.asleep:
        found.append(STRAIGHT_BACK)
    return tuple(list(dict.fromkeys(found))[:REASONS])


def _against_the_others(ranking: Ranking) -> Iterator[Reason]:
    for other in ranking.ranked[1:]:
        for part in other.parts:
            if part.points < 0 and _may_say(part) and other.option.id != LEAVE:
                yield _said(part)


def _own_reasons(situation: Situation, question: Attacked) -> Iterator[Reason]:
    """What our own profile forbids."""
    for traits, what in ((counters_of(question), "counter"), ((Trait.RESET,), "reset")):
        if not is_weak(situation, question, *traits):
            continue
        one = question.striker or situation.ours[0]
        trait = next(each for each in traits if one.profile.skill(each).is_weak)
        yield Reason(text=f"{one.name}'s {what} is weak", source=one.profile.skill(trait).source)


def _may_say(part: Part) -> bool:
    return part.truth is Truth.YES and not is_open(part) and abs(part.points) >= LEAST_SAID


LEAST_SAID = 0.3
"""Points below which a part is no reason."""


def _said(part: Part) -> Reason:
    return Reason(text=capital(part.effect.because), source=part.effect.source)


def _number(ranking: Ranking) -> str | None:
    if len(ranking.ranked) == 1:
        return None
    if ranking.best.option.id == LEAVE:
        return LEAVE_FROM
    return rallies(ranking.gain(), over=_OVER[ranking.ranked[1].option.id])


def _unless(question: Attacked, ranking: Ranking) -> str:
    best = ranking.best.option.id
    if best == LEAVE:
        return IT_DIPS if ranking.ranked[1].option.id == COUNTER else IT_DIPS_SOFT
    if best == COUNTER:
        return _when_to_leave(question) if question.is_waist_up else LOW
    can_counter = any(one.option.id == COUNTER for one in ranking.ranked)
    return HIGH if can_counter and not question.is_waist_up else LEAVE_FLAT


def _when_to_leave(question: Attacked) -> str:
    """The third choice, by the spin said, else noted of the hitter; never one number for all."""
    one, said = question.attacker, question.facts.spin
    is_spun = taken_as_spun(said, question.topspin_habit)
    general = LEAVE_SPUN if is_spun else LEAVE_FLAT
    if one is None or is_spun is None or said is not None:
        return general
    told = "heavy topspin: leave chest high" if is_spun else "flat: leave above the belt"
    return short((f"{one.name} hits {told}.", general))


def _assumed(question: Attacked, *, leaves: bool) -> str | None:
    if question.is_waist_up is None:
        return "Height not said: taken as any."
    if leaves and question.facts.pace_mps is None:
        return usual_hit(is_drive=question.is_drive).taken_as
    if not (question.is_moving or question.is_in_mid_court) and question.facts.footing is None:
        return taken_as(question.facts, SET_AT_LINE, uses=(MatchFact.PLACE, MatchFact.FOOTING))
    return None


def _numbers(question: Attacked, ranking: Ranking) -> Mapping[str, float]:
    numbers = {f"{one.option.id}_chance": float(one.chance) for one in ranking.ranked}
    numbers |= {"points_over_next": float(ranking.gain()), "share": ranking.share}
    if question.passing is not None:
        numbers["chance_out"] = chance_out(question.passing)
    return MappingProxyType(numbers)


def _choices(question: Attacked) -> tuple[Choice, ...]:
    offered = [
        Choice(
            label=label,
            topic=Topic.RESET_OR_COUNTER,
            fact=MatchFact.BALL.value,
            value=value.value,
        )
        for label, value in (
            ("waist up, set", BallQuality.EASY),
            ("low or moving", BallQuality.STRETCHED),
        )
        if question.facts.height_m is None and question.ball is not value
    ]
    return (*offered, *_otherwise(question), Choice(label="out balls", topic=Topic.LET_IT_GO))


def _otherwise(question: Attacked) -> tuple[Choice, ...]:
    """Where else and how else we may meet a ball of which the height is said."""
    if question.facts.height_m is None or question.is_moving or question.is_in_mid_court:
        return ()
    return ball_choices(
        Topic.RESET_OR_COUNTER,
        question.facts,
        (MatchFact.PLACE, MatchFact.FOOTING),
        defaults=SET_AT_LINE,
    )


def _more(ranking: Ranking) -> tuple[str, ...]:
    lines: list[str] = []
    for one in ranking.ranked:
        lines += sum_lines(one.parts, what=one.option.label.capitalize())
    return (
        *lines,
        f"Left, you win it as often as it flies out ({FLIES.kind}).",
        LEAVE_FROM,
        "Where a reset goes: soft, middle of the kitchen.",
    )
