"""Where to speed up, and whether this ball is one: spot, lane, what comes back, and the mix."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from types import MappingProxyType

from knowledge.advice import Advice, AdvisedMix, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import Depth
from knowledge.flight import MPS_PER_MPH, TOPSPIN_RPM, attackable
from knowledge.planning.probes import hand_choices
from knowledge.planning.weighing import is_open
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import attack_words as words
from knowledge.tactics import drop_on_deep_opponents
from knowledge.tactics.aim_words import (
    NOBODY_NAMED,
    REASON_LIMIT,
    short,
    sum_lines,
)
from knowledge.tactics.attack_answer import Aimed, aimed
from knowledge.tactics.attack_mix import attack_mix
from knowledge.tactics.attack_picture import picture
from knowledge.tactics.attack_question import AttackQuestion, Contact
from knowledge.tactics.attack_spots import Spot
from knowledge.tactics.attack_whether import (
    ATTACK,
    HIGH_LEVELS,
    Whether,
    gain_over_dink,
    whether,
)
from knowledge.tactics.conditions import marks_weak
from knowledge.tactics.general_rule import NO_NOTES_DECIDE
from knowledge.tactics.standing_words import capital
from knowledge.vocabulary import BallQuality, Side, Topic, Trait

REASONS = 3
BESIDE_THE_CHANGE = 2
CHOICES_AT_MOST = 5


def advise(situation: Situation) -> Advice:
    """The spot and why, or why this ball is none to speed up, and what would change it.

    At a pair that is back it is another shot: hard and short, or deep; never one more dink, which
    lets them in.
    """
    if situation.asked.facts.theirs is Depth.BOTH_BACK:
        return replace(drop_on_deep_opponents.advise(situation), topic=Topic.AIM_ATTACK)
    facing = _facing(situation)
    found = aimed(facing)
    one = whether(facing, found)
    if not one.attacks:
        return _dink(situation, found, one)
    rather = _rather(situation, facing)
    if rather is None and not found.is_settled and not _is_aimed_anyway(found):
        return _general(situation, found, one)
    answer = _attack(situation, facing, found, one)
    if rather is None:
        return answer
    return replace(answer, reasons=(rather, *answer.reasons)[:REASONS], assumed=None)


def _facing(situation: Situation) -> Situation:
    """Only whoever of them is asked about, where that is one of the two."""
    asked = tuple(one for one in situation.theirs if one.player in situation.asked.about)
    return replace(situation, topic=Topic.AIM_ATTACK, theirs=asked or situation.theirs)


def _rather(situation: Situation, facing: Situation) -> Reason | None:
    """What notes say against the one of two who is asked about."""
    if len(facing.theirs) == len(situation.theirs):
        return None
    both = aimed(replace(situation, topic=Topic.AIM_ATTACK))
    asked_about = {one.player for one in facing.theirs}
    is_spared = both.spared is not None and both.spared[0].player in asked_about
    return words.rather_the_other(both) if is_spared else None


def _is_aimed_anyway(found: Aimed) -> bool:
    """Whether what is said of this ball picks the spot, without a note."""
    return found.spot is not None and (
        found.spot.spot in (Spot.FEET, Spot.SHOULDER) or found.question.facts.partner_set is False
    )


def _attack(situation: Situation, facing: Situation, found: Aimed, one: Whether) -> Advice:
    call = words.attack_call(found, situation)
    mix = attack_mix(facing, found) if situation.theirs else None
    is_general = not found.is_settled
    return Advice(
        topic=Topic.AIM_ATTACK,
        call=call,
        reasons=_reasons(found, mix),
        number=_number(found, one),
        unless=_unless(found),
        assumed=_assumed(situation, is_general=is_general),
        caution=words.CAUTION,
        confidence=Confidence.GENERAL_RULE if is_general else Confidence.LEAN,
        numbers=_numbers(found, one),
        choices=_choices(situation, found),
        picture=picture(found, mix, situation, call=call),
        more=_more(found, one),
        mix=mix,
    )


def _general(situation: Situation, found: Aimed, one: Whether) -> Advice:
    """Nothing noted says at whom: the rule for either of them, and which hip that is."""
    hips = [
        spot.at
        for spot in found.spots
        if spot.spot is Spot.PADDLE_HIP and spot.hip is not None and spot.target.name
    ]
    reasons = words.GENERAL_REASONS
    text = f"That is {'; '.join(hips)}"
    if hips and len(text) <= REASON_LIMIT:
        reasons = (reasons[0], Reason(text=text, source=COMMON_PRACTICE), reasons[1])
    return Advice(
        topic=Topic.AIM_ATTACK,
        call=words.general_call(found.question),
        reasons=reasons,
        number=words.time_number(found.question) if _is_place_said(found) else None,
        unless=_unless(found),
        assumed=_assumed(situation, is_general=True),
        caution=words.CAUTION,
        confidence=Confidence.GENERAL_RULE,
        numbers=_numbers(found, one),
        choices=_choices(situation, found),
        more=_more(found, one),
    )


def _dink(situation: Situation, found: Aimed, one: Whether) -> Advice:
    question = found.question
    reasons = [
        Reason(text=part.effect.because, source=part.effect.source)
        for part in (one.ranking.of(ATTACK).parts if one.owned else ())
        if part.points < 0 and not is_open(part)
    ]
    own = _own_weakness(situation, one)
    reasons = [*own, *(replace(each, text=capital(each.text)) for each in reasons)]
    reasons.append(Reason(text="The one who hits up loses the hands", source=COMMON_PRACTICE))
    return Advice(
        topic=Topic.AIM_ATTACK,
        call=words.dink_call(question, one),
        reasons=tuple(list(dict.fromkeys(reasons))[: REASONS - 1]),
        number=_number(found, one) if question.is_ball_said and one.owned else None,
        unless=_unless_dinking(question, one, situation),
        confidence=one.ranking.confidence if one.owned else Confidence.CLEAR,
        numbers=_numbers(found, one),
        choices=_choices(situation, found),
        more=_more(found, one),
    )


def _own_weakness(situation: Situation, one: Whether) -> list[Reason]:
    if one.owned:
        return []
    weak = [each for each in situation.ours if marks_weak(each, Trait.SPEED_UP)]
    asked = [each for each in weak if each.player == situation.striker] or weak
    return [
        Reason(
            text=f"{each.name}'s speed-up is weak",
            source=each.profile.skill(Trait.SPEED_UP).source,
        )
        for each in asked[:1]
    ]


def _reasons(found: Aimed, mix: AdvisedMix | None) -> tuple[Reason, ...]:
    """Notes and geometry, where the counter comes back, and the second ball.

    Beside a change-up a third would not be read: "why" has it.
    """
    has_change = mix is not None and mix.change_up is not None
    told = list(words.why(found))
    reasons = [*told[:1], words.comes_back(found), *told[1:2], words.second_ball(found)]
    return tuple(list(dict.fromkeys(reasons))[: BESIDE_THE_CHANGE if has_change else REASONS])


def _is_place_said(found: Aimed) -> bool:
    return found.question.facts.from_net_m is not None


def _number(found: Aimed, one: Whether) -> str | None:
    if _is_place_said(found) and one.attacks:
        return words.time_number(found.question)
    gain = gain_over_dink(one)
    if one.attacks:
        return words.worth(gain)
    lost = round(-gain)
    if lost < 1:
        return "Little between them: under 1 rally in 100."
    return f"Speeding it up costs {lost} {'rally' if lost == 1 else 'rallies'} in 100."


def _unless(found: Aimed) -> str:
    """What would change the call; of a ball not described also which one was taken."""
    question = found.question
    if not question.is_ball_said:
        return words.TAKEN_AS_HIGH
    if question.contact is Contact.AT_NET:
        return "Pulled wide or late on it: dink it back."
    if question.facts.partner_set is None and question.striker_side is not None:
        partner = question.partner.name if question.partner else ""
        then = "not ready: straight, or one more dink."
        return short((f"{partner or 'Partner'} {then}", f"Partner {then}"))
    return words.TOO_LOW


def _unless_dinking(question: AttackQuestion, one: Whether, situation: Situation) -> str:
    if not one.owned:
        able = [each for each in situation.ours if not marks_weak(each, Trait.SPEED_UP)]
        named = [f"{each.name} can: leave it to {each.name}." for each in able]
        return short((*named[:1], words.TO_PARTNER)) if able else words.HIGHER_SOFT
    if question.contact is Contact.AT_NET and question.level not in HIGH_LEVELS:
        return words.ROLL_IT
    if question.contact in (None, Contact.ABOVE_NET) and not question.is_stretched:
        return words.NOT_SET
    return words.NOT_SET if not question.out_of_place else words.HIGHER


def _assumed(situation: Situation, *, is_general: bool) -> str | None:
    if not situation.theirs:
        return NOBODY_NAMED
    return NO_NOTES_DECIDE if is_general else None


def _choices(situation: Situation, found: Aimed) -> tuple[Choice, ...]:
    question = found.question
    offered = []
    if not question.is_ball_said:
        offered += [
            _choice("above the net", MatchFact.BALL, BallQuality.EASY),
            _choice("low or stretched", MatchFact.BALL, BallQuality.STRETCHED),
        ]
    offered += hand_choices([one for one in situation.theirs if one.name], Topic.AIM_ATTACK)
    if situation.theirs and situation.asked.striker_side is None:
        offered += [
            _choice(f"from our {side}", MatchFact.STRIKER, side) for side in (Side.LEFT, Side.RIGHT)
        ]
    return tuple(offered[:CHOICES_AT_MOST])


def _choice(label: str, fact: MatchFact, value: BallQuality | Side) -> Choice:
    return Choice(label=label, topic=Topic.AIM_ATTACK, fact=fact.value, value=value.value)


def _numbers(found: Aimed, one: Whether) -> Mapping[str, float]:
    ranking, question = found.weighed.ranking, found.question
    rolled = attackable(question.height_m, question.from_net_m, topspin_rpm=TOPSPIN_RPM)
    numbers = {
        "points_over_chest": float(found.weighed.gain),
        "p_best": ranking.best.p_best,
        "chance": float(ranking.best.chance),
        "share": one.ranking.share,
        "they_have_ms": 1000 * question.they_have_s,
        "window_deg_at_35_mph": question.flat.margin_deg,
        "fastest_topspin_mph": rolled.fastest_safe_mps / MPS_PER_MPH,
    }
    if one.owned:
        gain = gain_over_dink(one)
        numbers |= {
            "attack_points_over_dink": gain,
            "rallies_in_100": max(0.0, gain) * one.ranking.share / 100,
        }
    if ranking.share:
        numbers["hands_per_100"] = float(found.weighed.gain) * ranking.share / 100
    return MappingProxyType(numbers)


def _more(found: Aimed, one: Whether) -> tuple[str, ...]:
    """The sums of where and whether, where the counter goes, and the balls after it."""
    where = sum_lines(found.weighed.ranking.best.parts, what=_what(found))
    if_at_all = (
        sum_lines(one.ranking.of(ATTACK).parts, what="Speed-up or dink") if one.owned else ()
    )
    return (*where, *if_at_all, *_after(found))


def _what(found: Aimed) -> str:
    return capital("the seam" if found.spot is None else found.spot.at)


def _after(found: Aimed) -> Iterable[str]:
    yield "The counter goes straight ahead of whoever hits it."
    yield "First one jams, the second goes to the open side."
    yield "Expect it back: paddle up, play the third ball too."
    if not _is_place_said(found):
        yield words.time_number(found.question).replace(" from there", " from the line")
