"""Where to put an overhead: by our balance and depth, their places, and who they are."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from knowledge.advice import Advice, AdvisedMix, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import BallFacts, Depth, Footing
from knowledge.effects import OptionId
from knowledge.evidence import TraitEstimate
from knowledge.mixing import advised_mix
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import overhead_words as words
from knowledge.tactics.aim_words import NOBODY_NAMED, rallies, short, sum_lines
from knowledge.tactics.overhead_answer import (
    BACK_FROM_M,
    CLOSE_M,
    DEEP_M,
    STILL_WITHIN_M,
    OverheadAnswer,
    answer_overhead,
)
from knowledge.tactics.overhead_effects import SUM, Aim
from knowledge.tactics.overhead_outcomes import Spot
from knowledge.tactics.overhead_picture import picture
from knowledge.tactics.told_reasons import shot_confidence
from knowledge.vocabulary import Topic, Trait

REASONS: Final = 3

PUNISHES: Final = MappingProxyType({Spot.HIP: Trait.COUNTER, Spot.FEET: Trait.RESET})
"""The skill that meets a guessed one. Common practice, no source."""


def advise(situation: Situation) -> Advice:
    """The call, what misses and wins say for it, what to do next, and what would change it."""
    answer = answer_overhead(situation)
    mix = _mix(answer, situation)
    change = answer.aim(mix.change_up.option) if mix is not None and mix.change_up else None
    confidence = _confidence(answer)
    return Advice(
        topic=Topic.AIM_OVERHEAD,
        call=_call(answer, situation),
        reasons=_reasons(answer),
        now=words.next_ball(
            answer.question.contact.footing,
            is_deep=answer.question.contact.from_net_m > STILL_WITHIN_M,
        ),
        number=None if confidence is Confidence.TOSS_UP else _number(answer),
        unless=_unless(answer, situation),
        assumed=_assumed(situation),
        caution=_caution(answer, situation),
        confidence=confidence,
        numbers=_numbers(answer),
        choices=_choices(situation),
        picture=picture(answer, change, _shares(mix)),
        more=sum_lines(answer.ranking.best.parts, what="Against the deep middle"),
        mix=mix,
    )


def _confidence(answer: OverheadAnswer) -> Confidence:
    """How sure the shot is; at whom is the smaller question."""
    if answer.driver is None:
        return Confidence.GENERAL_RULE
    return shot_confidence(answer.ranking)


def _call(answer: OverheadAnswer, situation: Situation) -> str:
    best = answer.best
    asked = [one for one in situation.theirs if one.player in situation.asked.about]
    about = len(asked) == 1 and best.target in asked
    return words.call(
        best,
        theirs=answer.question.theirs,
        placed=answer.is_held_back,
        named=about or answer.driver is not None,
    )


def _reasons(answer: OverheadAnswer) -> tuple[Reason, ...]:
    """Our own weak overhead first, then notes on them, the sum, and why the aim is that."""
    found: list[Reason] = []
    if answer.is_held_back and answer.hitter is not None:
        said = (f"{answer.hitter.name}'s overhead: place it first", "Your overhead: place it first")
        source = answer.hitter.profile.skill(Trait.OVERHEAD).source
        found.append(Reason(text=short(said), source=source))
    if answer.driver is not None:
        effect = answer.driver.effect
        found.append(Reason(text=effect.because, source=answer.driver.source))
    found.append(_sum(answer))
    found.append(Reason(text=_why(answer), source=COMMON_PRACTICE))
    return tuple(found[:REASONS])


def _why(answer: OverheadAnswer) -> str:
    """Why the aim; of an angle played on the move it is their place, not our balance."""
    question = answer.question
    if answer.best.spot is not Spot.ANGLE or question.contact.footing is Footing.STILL:
        return _WHY[answer.best.spot]
    return ANGLE_PAST_THE_DEEP if question.theirs is Depth.BOTH_BACK else ANGLE_ON_THE_MOVE


ANGLE_PAST_THE_DEEP: Final = "From the back nobody gets to a short angle"
ANGLE_ON_THE_MOVE: Final = "The short court is open"


_WHY: Final = {
    Spot.MIDDLE: "The middle gives them no angle back",
    Spot.FEET: "Balls at the feet come back up",
    Spot.HIP: "The hip jams the arm; a miss still lands in",
    Spot.ANGLE: "In balance you can hit the short court",
    Spot.BEHIND: "A runner has to stop and turn first",
    Spot.BOUNCE: "Set feet beat an early ball",
}


def _sum(answer: OverheadAnswer) -> Reason:
    """The misses that decide, or the winners, beside those of the plain alternative."""
    best, other = answer.best.spot, _other(answer)
    one, two = answer.question.of(best), answer.question.of(other)
    against = words.SHORT[other]
    if one.errs < two.errs:
        text = f"Misses {_in_100(one.errs)} in 100, the {against} {_in_100(two.errs)}"
    else:
        text = f"Wins {_in_100(one.wins)} in 100 outright, the {against} {_in_100(two.wins)}"
    return Reason(text=text, source=SUM)


def _other(answer: OverheadAnswer) -> Spot:
    """What the call is held against: the angle where it is a plain one, else the deep middle."""
    plain = answer.best.spot in (Spot.MIDDLE, Spot.FEET, Spot.BOUNCE)
    return Spot.ANGLE if plain else Spot.MIDDLE


def _in_100(chance: float) -> int:
    return max(1, round(100 * chance))


def _number(answer: OverheadAnswer) -> str | None:
    """What the call gains over the plain other one, with all that is known of them."""
    other = _other(answer)
    if all(aim.spot is not other for aim in answer.aims):
        return None
    gain = 100 * (answer.ranking.best.chance - answer.ranking.of(OptionId(other)).chance)
    return f"{rallies(gain).removesuffix('.')} over the {words.SHORT[other]}."


def _numbers(answer: OverheadAnswer) -> MappingProxyType[str, float]:
    found: dict[str, float] = {
        "points_over_next": float(answer.ranking.gain()),
        "p_best": answer.ranking.best.p_best,
        "chance": float(answer.ranking.best.chance),
        "chance_sd": answer.ranking.best.sd,
        "share": answer.ranking.share,
        "from_net_m": answer.question.contact.from_net_m,
        "height_m": answer.question.contact.height_m,
    }
    for spot in dict.fromkeys(aim.spot for aim in answer.aims):
        one = answer.question.of(spot)
        found |= {
            f"{spot}_wins": one.wins,
            f"{spot}_misses": one.errs,
            f"{spot}_goes_on": one.goes_on,
            f"{spot}_worth": one.worth,
        }
    return MappingProxyType(found)


def _unless(answer: OverheadAnswer, situation: Situation) -> str | None:
    """The other branch: how we meet it turns most calls, then where they stand."""
    here = words.branch(answer.best)
    for question, facts in _branches(situation.asked.facts):
        asked = replace(situation.asked, facts=facts, ball=None)
        other = words.branch(answer_overhead(replace(situation, asked=asked)).best)
        if other != here:
            return f"{question} {other}"
    return None


def _branches(facts: BallFacts) -> Iterable[tuple[str, BallFacts]]:
    """What may be otherwise, and the facts if it is."""
    yield "In balance inside 10 ft?", replace(facts, footing=Footing.STILL, from_net_m=CLOSE_M)
    yield "Moving back?", replace(facts, footing=Footing.BACKWARD, from_net_m=DEEP_M)
    yield "Both back?", replace(facts, theirs=Depth.BOTH_BACK)


def _assumed(situation: Situation) -> str | None:
    facts = situation.asked.facts
    said = situation.asked.ball is not None or facts.footing is not None
    if said or facts.from_net_m is not None or facts.bounced:
        return None if situation.theirs else NOBODY_NAMED
    return "Taken as met on the move, about 12 ft from the net."


def _caution(answer: OverheadAnswer, situation: Situation) -> str | None:
    """Falls first, then eyes, then theirs."""
    contact = answer.question.contact
    if contact.footing is Footing.BACKWARD or contact.from_net_m >= BACK_FROM_M:
        return words.TURN_IN_SUN if situation.asked.sun else words.TURN
    if situation.asked.sun:
        return words.SUN
    return words.NEVER_AT_THE_HEAD if answer.best.spot in (Spot.HIP, Spot.FEET) else None


def _choices(situation: Situation) -> tuple[Choice, ...]:
    facts, found = situation.asked.facts, []
    if facts.footing is None and situation.asked.ball is None:
        found += [
            _choice("in balance", MatchFact.FOOTING, Footing.STILL),
            _choice("moving back", MatchFact.FOOTING, Footing.BACKWARD),
        ]
    if facts.theirs is None:
        found += [
            _choice("one at the line", MatchFact.THEIRS, Depth.ONE_BACK),
            _choice("both back", MatchFact.THEIRS, Depth.BOTH_BACK),
            _choice("one running in", MatchFact.THEIRS, Depth.COMING_IN),
        ]
    return tuple(found)


def _choice(label: str, fact: MatchFact, value: str) -> Choice:
    return Choice(label=label, topic=Topic.AIM_OVERHEAD, fact=fact.value, value=str(value))


def _mix(answer: OverheadAnswer, situation: Situation) -> AdvisedMix | None:
    """How to vary between the best of each spot; None with nobody named to guess it."""
    aims = _best_of_each(answer)
    if not situation.theirs or len(aims) < 2:
        return None
    punishes: dict[str, TraitEstimate] = {
        aim.id: aim.target.profile.skill(PUNISHES[aim.spot])
        for aim in aims
        if aim.target is not None
    }
    found = advised_mix(
        situation,
        answer.ranking,
        calls={
            aim.id: words.call(
                aim, theirs=answer.question.theirs, placed=answer.is_held_back, named=True
            )
            for aim in aims
        },
        trigger="",
        punishes=punishes,
    )
    if found.change_up is None:
        return None
    sign = words.sign(answer.aim(found.change_up.option))
    return replace(found, trigger=sign)


def _best_of_each(answer: OverheadAnswer) -> list[Aim]:
    """The best deep one, angle, hip or ball behind; a ball left to bounce hides nothing."""
    found: dict[Spot, Aim] = {}
    for one in answer.ranking.ranked:
        aim = answer.aim(one.option.id)
        if aim.spot is not Spot.BOUNCE:
            found.setdefault(Spot.MIDDLE if aim.spot is Spot.FEET else aim.spot, aim)
    return list(found.values()) if answer.best.spot is not Spot.BOUNCE else []


def _shares(mix: AdvisedMix | None) -> dict[str, float]:
    return {} if mix is None else {one.option: one.share for one in mix.shares}
