"""Lobs, each question kept apart: ours off a dead dink, a desperate one, theirs, its bounce."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType
from typing import Final

from knowledge.advice import Advice, AdvisedMix, Choice, Confidence, MatchFact, Reason
from knowledge.effects import Truth
from knowledge.engine import Part
from knowledge.planning.probes import hand_choices
from knowledge.situation import OnCourt, Situation, Wind
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import lob_desperate, lob_theirs, lob_unrun, take_or_let_bounce
from knowledge.tactics import lob_words as words
from knowledge.tactics.aim_words import (
    NOBODY_NAMED,
    SUN_CAUTION,
    rallies,
    short,
    sum_lines,
)
from knowledge.tactics.general_rule import NO_NOTES_DECIDE
from knowledge.tactics.lob_answer import LobAnswer, answer_lob
from knowledge.tactics.lob_lanes import LANE, wind_feet
from knowledge.tactics.lob_meaning import LobMeaning, meaning
from knowledge.tactics.lob_mix import lob_mix, lobs_a_game
from knowledge.tactics.lob_picture import picture
from knowledge.tactics.sun_said import SunSide, sun_of_our_lob
from knowledge.vocabulary import BallQuality, Topic, Trait

REASONS: Final = 3
SAYS_NO: Final = -1.5
"""Points that what is known must take from a lob before the call is to leave it. Our guess."""

NAMED_FROM: Final = 0.5
"""Points that notes must give a lob over somebody for the name to be said. Our guess."""


def advise(situation: Situation) -> Advice:
    """The question that the words ask."""
    match meaning(situation):
        case LobMeaning.ATTACK:
            return _attack(situation)
        case LobMeaning.DESPERATE:
            return lob_desperate.advise(situation)
        case LobMeaning.BOUNCE:
            return replace(take_or_let_bounce.advise(situation), topic=Topic.LOB)
        case _ if lob_unrun.who_cannot_run(situation):
            return lob_unrun.advise(situation)
        case asked:
            return lob_theirs.advise(situation, asked)


def _attack(situation: Situation) -> Advice:
    answer = answer_lob(situation)
    if answer is None:
        return _not_ours(situation)
    mix = lob_mix(answer) if answer.is_specific else None
    against = _against(answer)
    leaves = not answer.is_specific and bool(against)
    return Advice(
        topic=Topic.LOB,
        call=_call(answer, situation, leaves=leaves),
        reasons=_reasons(answer, against, leaves=leaves),
        number=_number(answer),
        unless=_unless(situation, leaves=leaves),
        assumed=_assumed(answer, situation, leaves=leaves),
        caution=_caution(answer),
        confidence=answer.weighed.ranking.confidence
        if answer.is_specific or leaves
        else Confidence.GENERAL_RULE,
        numbers=_numbers(answer, mix),
        choices=_choices(situation),
        picture=picture(answer, situation) if answer.is_specific else None,
        more=(words.TURN, *sum_lines(answer.weighed.ranking.best.parts, what="Against a dink")),
        mix=mix,
    )


def _call(answer: LobAnswer, situation: Situation, *, leaves: bool) -> str:
    if answer.is_specific:
        return words.call(answer)
    if leaves and answer.question.ball is BallQuality.EASY:
        return words.HIT_DOWN
    if leaves:
        return words.NO_LOB_CALL
    if answer.question.sun is SunSide.THEM:
        return words.INTO_THE_SUN
    return words.general(situation.theirs, situation.asked.about, situation.asked.words)


def _against(answer: LobAnswer) -> list[Part]:
    """What is known to speak against every lob in question, the largest first."""
    overs = [one for one in answer.weighed.ranking.ranked if one.option.id.startswith("over:")]
    found = [
        part
        for one in overs
        for part in one.parts
        if part.points < SAYS_NO and part.effect.source != LANE and _is_known(part)
    ]
    if not overs or any(not any(part in found for part in one.parts) for one in overs):
        return []
    return sorted(found, key=lambda part: part.points)


def _is_known(part: Part) -> bool:
    return bool(part.evidence) or (part.effect.scale is None and part.truth is Truth.YES)


def _reasons(answer: LobAnswer, against: list[Part], *, leaves: bool) -> tuple[Reason, ...]:
    if leaves:
        texts = [Reason(text=_said(part, answer), source=part.source) for part in against]
        general = Reason(text="A lob without surprise is an overhead", source=COMMON_PRACTICE)
        return tuple(dict.fromkeys([*texts, general]))[:REASONS]
    found = _of_the_day(answer)
    if answer.is_specific:
        driver = answer.weighed.driver
        if driver is not None:
            found.append(Reason(text=_said(driver, answer), source=driver.source))
        found += _helping(answer)
    else:
        found += _if_at_all(answer)
    found += [Reason(text=text, source=COMMON_PRACTICE) for text in _GENERAL]
    return tuple(dict.fromkeys(found))[:REASONS]


def _if_at_all(answer: LobAnswer) -> list[Reason]:
    """Over whom notes would have it, where they are too few to have it at all."""
    for one in answer.weighed.ranking.ranked:
        noted = [part for part in one.parts if part.evidence]
        driver = max(noted, key=lambda part: part.points, default=None)
        if driver is not None and sum(part.points for part in noted) > NAMED_FROM:
            said = _said(driver, answer)
            return [Reason(text=short((f"If at all, {said}", said)), source=driver.source)]
    return []


_GENERAL: Final = (
    "It needs disguise and someone leaning in",
    "Cross is the longer court",
    "Once or twice a game; the surprise is the shot",
)


def _helping(answer: LobAnswer) -> list[Reason]:
    """What else is known to help over the target: the day, their places."""
    return [
        Reason(text=part.effect.because, source=part.effect.source)
        for part in answer.weighed.ranking.best.parts
        if part.points > 0 and part.effect.scale is None and part.truth is Truth.YES
    ]


def _of_the_day(answer: LobAnswer) -> list[Reason]:
    """What sun and wind do to a lob: first where no notes decide, or the day is asked about."""
    kinds: tuple[str, ...] = () if answer.is_specific else (":sun", ":wind")
    if answer.is_specific and answer.question.asks_wind:
        kinds = (":wind",)
    overs = [one for one in answer.weighed.ranking.ranked if one.option.id.startswith("over:")]
    found = [
        Reason(text=part.effect.because, source=part.effect.source)
        for kind in kinds
        for part in overs[0].parts
        if part.effect.id.endswith(kind)
    ]
    return [SUN_IS_THEIRS, *found] if answer.question.sun is SunSide.US else found


SUN_IS_THEIRS: Final = Reason(
    text="Sun in your eyes: it helps their lob, not yours", source=COMMON_PRACTICE
)


def _said(part: Part, answer: LobAnswer) -> str:
    """What speaks for or against it, with the name of whom it is about."""
    text, scale = part.effect.because, part.effect.scale
    about = next(
        (one for one in answer.question.pair if scale is not None and one.player == scale.player),
        None,
    )
    return f"{about.name}: {text}" if about is not None and about.name else text


def _number(answer: LobAnswer) -> str | None:
    """What it gains over a dink; under a rally a toss-up says the same already."""
    is_close = answer.weighed.ranking.confidence is Confidence.TOSS_UP
    if not answer.is_specific or (is_close and round(answer.weighed.gain) < 1):
        return None
    return rallies(answer.weighed.gain)


def _unless(situation: Situation, *, leaves: bool) -> str | None:
    """The wind flips the call, and a quick tall one does."""
    if leaves:
        return "Dead dink and one leans in: then once."
    if sun_of_our_lob(situation.asked) is SunSide.US:
        return "Their lob in the sun: let it bounce."
    if situation.wind in (None, Wind.SOME):
        feet = wind_feet(10.0)
        return f"Wind behind you? 10 mph is {feet:.0f} ft longer: no lob."
    return "A tall quick one under it: no lob."


def _assumed(answer: LobAnswer, situation: Situation, *, leaves: bool) -> str | None:
    if not situation.theirs:
        return NOBODY_NAMED
    if not answer.is_specific and not leaves:
        return NO_NOTES_DECIDE
    return "Taken as off a dead dink." if situation.asked.ball is None and not leaves else None


def _caution(answer: LobAnswer) -> str | None:
    return SUN_CAUTION if answer.question.sun is SunSide.US else None


def _numbers(answer: LobAnswer, mix: AdvisedMix | None) -> MappingProxyType[str, float]:
    ranking = answer.weighed.ranking
    gain = float(answer.weighed.gain)
    found = {
        "lob_per_100": gain * ranking.share / 100,
        "points_gained": gain,
        "p_best": ranking.best.p_best,
        "chance": float(ranking.best.chance),
        "chance_sd": ranking.best.sd,
        "share": ranking.share,
        "wind_behind_10_mph_ft": wind_feet(10.0),
        "wind_against_10_mph_ft": wind_feet(-10.0),
    }
    if mix is not None and mix.change_up is not None:
        found |= {
            "lob_share": mix.change_up.share,
            "lobs_a_game": lobs_a_game(mix.change_up.share),
        }
    return MappingProxyType(found)


def _choices(situation: Situation) -> tuple[Choice, ...]:
    """Wind first, since it flips the call; then hands, which settle the shoulder; then theirs."""
    found: list[Choice] = []
    if situation.wind in (None, Wind.SOME):
        found += [
            _choice("wind behind us", MatchFact.WIND, Wind.BEHIND_US),
            _choice("wind against us", MatchFact.WIND, Wind.AGAINST_US),
        ]
    return (*found, *hand_choices(situation.theirs, Topic.LOB))


def _choice(label: str, fact: MatchFact, value: str) -> Choice:
    return Choice(label=label, topic=Topic.LOB, fact=fact.value, value=str(value))


def _not_ours(situation: Situation) -> Advice:
    """Both of us, or who asks, have a weak lob by our own notes."""
    weak: OnCourt = next(
        (one for one in situation.ours if one.player == situation.striker), situation.ours[0]
    )
    source = weak.profile.skill(Trait.LOB).source
    return Advice(
        topic=Topic.LOB,
        call=words.NOT_OURS,
        reasons=(
            Reason(text=f"{weak.name}: weak lob", source=source),
            Reason(text="A short lob is an overhead for them", source=COMMON_PRACTICE),
        ),
        unless="In trouble? Block it soft to the middle.",
        confidence=Confidence.LEAN,
        choices=_choices(situation),
    )
