"""Their lob: who calls it, who runs, and what to hit from back there."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from knowledge.advice import CALL_LIMIT, Advice, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import Depth
from knowledge.effects import Decision, Effect, EffectId, Mechanism, Option, OptionId, Points
from knowledge.engine import Ranking, rank
from knowledge.evidence import TraitEstimate
from knowledge.normal import logit
from knowledge.planning.names import first_that_fits
from knowledge.planning.phrases import skill_words
from knowledge.situation import Agreement, OnCourt, Situation, Wind
from knowledge.sources import COMMON_PRACTICE, Source, SourceKind
from knowledge.tactics import lob_sizes as sizes
from knowledge.tactics.conditions import marks_weak, other_of, rule_of_thumb, skill
from knowledge.tactics.lob_meaning import LobMeaning
from knowledge.tactics.lob_race import RACE, Run, crossing_run, own_run
from knowledge.vocabulary import (
    LOGIT_PER_POINT,
    AgreementKey,
    RallyChance,
    Side,
    Topic,
    Trait,
    Wing,
)

CROSS, OWN = OptionId("partner crosses"), OptionId("turn and run yourself")
LOB_BACK, DROP, DRIVE = OptionId("lob back"), OptionId("drop"), OptionId("drive")

RUN_SD: Final = 3.0
"""Doubt of the race's points: places and starts differ. Common practice."""

FROM_THE_BACK: Final = RallyChance(0.40)
"""Our chance in the rally, running after their lob. Common practice, no source."""

CAUTION: Final = "Turn and run; never backpedal."
FALLS: Final = Source(kind=SourceKind.PUBLISHED, citation="Weiss et al. 2021")
FALLS_SAID: Final = (
    "Falls: 63.3% of emergency visits of players over 60 (Weiss et al. 2021).",
    "Hurt after a fall? Stop. Medical staff decide.",
)
"""Injury Epidemiology 8:34 (read); of 92 players 42% had fallen, most of them lunging or moving
backward (Myers and Hanks 2024, read)."""


def advise(situation: Situation, asked: LobMeaning) -> Advice:
    """The part that was asked first, the other two after it."""
    back = answer_from_the_back(situation)
    runs = tuple(who_runs(situation, one) for one in _under_it(situation))
    call, reasons = _said(situation, asked, runs, back)
    return Advice(
        topic=Topic.LOB,
        call=call,
        reasons=reasons,
        unless=_UNLESS[asked],
        assumed=None if situation.ours or asked is LobMeaning.WHAT_BACK else _NOBODY_OF_OURS,
        caution=CAUTION,
        confidence=_confidence(situation, runs, back, asked),
        numbers=_numbers(runs, back),
        choices=_choices(situation, asked),
        more=(*FALLS_SAID, *_both_runs(runs)),
    )


_NOBODY_OF_OURS: Final = "General rule: name your pair and I use your notes."

_UNLESS: Final = {
    LobMeaning.THEIRS: "One step back is enough? Hit it in the air.",
    LobMeaning.WHO_RUNS: "You can hit it moving one step back: it's yours.",
    LobMeaning.WHAT_BACK: "It sits up short? Then step in and hit down.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Lobbed:
    """A lob over one of us: whoever stands under it, the partner, and who should run."""

    under: OnCourt | None
    partner: OnCourt | None
    ranking: Ranking
    own: Run
    crossing: Run

    @property
    def partner_runs(self) -> bool:
        return self.ranking.best.option.id == CROSS


def who_runs(situation: Situation, under: OnCourt | None) -> Lobbed:
    """The race of both to a lob over one of us, as far as we know their feet."""
    partner = None if under is None else other_of(under, situation.ours)
    own, crossing = own_run(under), crossing_run(partner)
    effects = tuple(_race(option, run) for option, run in ((OWN, own), (CROSS, crossing)))
    options = (Option(id=CROSS, label="partner crosses"), Option(id=OWN, label="turn and run"))
    decision = Decision(
        options=options,
        effects=effects,
        neutral=FROM_THE_BACK,
        share=sizes.LOB_SHARE,
    )
    return Lobbed(
        under=under,
        partner=partner,
        ranking=rank(decision, situation),
        own=own,
        crossing=crossing,
    )


def _race(option: OptionId, run: Run) -> Effect:
    points = (logit(run.worth) - logit(FROM_THE_BACK)) / LOGIT_PER_POINT
    return Effect(
        id=EffectId(f"race:{option}"),
        on=frozenset({option}),
        points=Points(mean=points, sd=RUN_SD),
        mechanism=Mechanism.TIME,
        because=f"{run.spare_s:.1f} s to spare",
        source=RACE,
    )


def _under_it(situation: Situation) -> tuple[OnCourt | None, ...]:
    """Over whom of ours it may go: who is named, or "my head", else either of us."""
    ours = situation.ours
    named = tuple(one for one in ours if one.player in situation.asked.about)
    if named:
        return named
    if " my head" in f" {situation.asked.words.casefold()}":
        mine = tuple(one for one in ours if one.player == situation.asker)
        if mine:
            return mine
    return ours or (None,)


def answer_from_the_back(situation: Situation) -> Ranking:
    """Lob back, drop or drive; a shot that all of ours mark as weak is no choice."""
    options = [Option(id=DRIVE, label="drive")]
    for id, label, needs in (
        (LOB_BACK, "lob back high and deep", Trait.LOB),
        (DROP, "soft to the middle", Trait.THIRD_SHOT_DROP),
    ):
        if not _all_weak(situation, needs):
            options.append(Option(id=id, label=label))
    if len(options) == 1:
        options.append(Option(id=LOB_BACK, label="lob back high and deep"))
    known = {option.id for option in options}
    return rank(
        Decision(
            options=tuple(options),
            effects=tuple(one for one in _back_effects(situation) if one.on <= known),
            neutral=FROM_THE_BACK,
            share=sizes.LOB_SHARE,
        ),
        situation,
    )


def _all_weak(situation: Situation, trait: Trait) -> bool:
    runner = tuple(one for one in situation.ours if one.player == situation.asker)
    ours = runner or situation.ours
    return bool(ours) and all(marks_weak(one, trait) for one in ours)


def _back_effects(situation: Situation) -> list[Effect]:
    found = [
        rule_of_thumb(
            "back",
            LOB_BACK,
            sizes.BACK_BUYS_TIME,
            Mechanism.TIME,
            "High and deep buys the way back in",
        ),
        rule_of_thumb(
            "drive",
            DRIVE,
            sizes.DRIVE_FROM_BACK,
            Mechanism.THEIR_REPLY,
            "No drive from the back: two set volleys wait",
        ),
    ]
    if situation.wind is Wind.BEHIND_US:
        found.append(
            rule_of_thumb(
                "wind",
                LOB_BACK,
                sizes.WIND_BEHIND_10_MPH,
                Mechanism.OUR_ERROR,
                "Wind behind: a lob back sails out",
            )
        )
    if situation.asked.facts.theirs is Depth.COMING_IN:
        found.append(
            rule_of_thumb(
                "coming in",
                DROP,
                sizes.DROP_AT_RUNNER,
                Mechanism.THEIR_REPLY,
                "They follow it in: low at the feet",
            )
        )
    for one in situation.theirs:
        found.append(
            skill(
                one,
                Trait.OVERHEAD,
                sizes.THEIR_OVERHEAD,
                Mechanism.THEIR_ERROR,
                on=(LOB_BACK,),
                named=f"{one.name}'s overhead",
            )
        )
    for one in situation.ours:
        for trait, on in ((Trait.LOB, LOB_BACK), (Trait.THIRD_SHOT_DROP, DROP)):
            found.append(
                skill(
                    one,
                    trait,
                    sizes.OWN_TOUCH.times(1 / len(situation.ours)),
                    Mechanism.OUR_ERROR,
                    on=(on,),
                    named=f"{one.name}'s {'lob' if trait is Trait.LOB else 'drop'}",
                )
            )
    return found


def _said(
    situation: Situation, asked: LobMeaning, runs: tuple[Lobbed, ...], back: Ranking
) -> tuple[str, tuple[Reason, ...]]:
    answer = Reason(text=_BACK_SAID[back.best.option.id], source=COMMON_PRACTICE)
    if asked is LobMeaning.WHAT_BACK:
        return _BACK_CALLS[back.best.option.id], _back_reasons(back)
    agreement = situation.agreements.get(AgreementKey.LOBS)
    if agreement is not None:
        return _as_agreed(agreement, asked, _runner_call(runs), answer)
    who = _who_reasons(situation, runs)
    if asked is LobMeaning.WHO_RUNS:
        return _runner_call(runs), (*who, answer)
    over = Reason(text=_over_you(runs), source=RACE)
    return BACK_OFF, (over, *who[1:], answer)


BACK_OFF: Final = "Back off half a step; turn and run for the lob."

_BACK_SAID: Final = {
    LOB_BACK: "Back there: high and deep, or soft to the middle",
    DROP: "Back there: soft to the middle, or high and deep",
    DRIVE: "Back there: nothing flat; take pace off",
}

_BACK_CALLS: Final = {
    LOB_BACK: "Lob it back high and deep, to the middle.",
    DROP: "Drop it soft to the middle, then come in.",
    DRIVE: "Roll it low to the middle; no full swing.",
}


def _as_agreed(
    agreement: Agreement, asked: LobMeaning, call: str, answer: Reason
) -> tuple[str, tuple[Reason, ...]]:
    """The pair's own word goes first, as a call where it fits."""
    said = (agreement.words or agreement.value).strip().rstrip(".")
    agreed = f"Do as agreed: {said}."
    if len(agreed) <= CALL_LIMIT:
        return agreed, (answer,)
    told = Reason(
        text="Who runs: as you agreed", source=Source(kind=SourceKind.AGREED, citation="")
    )
    return (BACK_OFF if asked is LobMeaning.THEIRS else call), (told, answer)


def _runner_call(runs: tuple[Lobbed, ...]) -> str:
    """Who runs, by name for one lob, or where the two differ."""
    general = "Let partner cross and run for it; you switch sides."
    if len(runs) == 1 and runs[0].under is not None and runs[0].partner is not None:
        under, partner = runs[0].under.name, runs[0].partner.name
        if runs[0].partner_runs:
            return first_that_fits(
                (
                    f"Let {partner} cross and run for it; {under} switches.",
                    f"Let {partner} cross and run; you switch sides.",
                    general,
                )
            )
        return first_that_fits(
            (
                f"Let {under} turn and run for it; {partner} goes back too.",
                f"Let {under} turn and run for it.",
                "Turn and run for it; partner goes back with you.",
            )
        )
    runners = {_runner(one).name for one in runs if _runner(one) is not None}  # type: ignore[union-attr]
    if len(runs) == 2 and len(runners) == 1:
        return first_that_fits(
            (f"Let {runners.pop()} run for the lobs, over either of you.", general)
        )
    if runs and not any(one.partner_runs for one in runs):
        return "Turn and run for your own; partner goes back too."
    return general


def _runner(one: Lobbed) -> OnCourt | None:
    return one.partner if one.partner_runs else one.under


def _over_you(runs: tuple[Lobbed, ...]) -> str:
    if all(one.partner_runs for one in runs):
        return "Over you: partner crosses behind, you switch"
    if len(runs) == 1 or not any(one.partner_runs for one in runs):
        return "Over you: turn and run, partner goes back too"
    runner = next((_runner(one) for one in runs if _runner(one) is not None), None)
    return f"Over either: {runner.name} runs" if runner else "Over you: partner crosses behind"


def _who_reasons(situation: Situation, runs: tuple[Lobbed, ...]) -> tuple[Reason, ...]:
    first = runs[0]
    gap = first.crossing.spare_s - first.own.spare_s
    noted = _noted_feet(situation, first)
    if noted is not None:
        race = noted
    elif gap >= 0:
        race = Reason(text=f"Partner sees it: {gap:.1f} s sooner there than you", source=RACE)
    else:
        race = Reason(text=f"You get there {-gap:.1f} s sooner than partner", source=RACE)
    takes = forehand_overhead(situation.ours)
    whose = (
        "the forehand overhead takes it" if takes is None else f"{takes.name}'s forehand overhead"
    )
    return race, Reason(text=f"In the middle: {whose}", source=COMMON_PRACTICE)


def _noted_feet(situation: Situation, first: Lobbed) -> Reason | None:
    """The foot speed that notes settle, of whoever of us it speaks for or against."""
    noted: list[tuple[OnCourt, TraitEstimate]] = [
        (one, one.profile.skill(Trait.FOOT_SPEED))
        for one in situation.ours
        if one.profile.skill(Trait.FOOT_SPEED).evidence
        and not one.profile.skill(Trait.FOOT_SPEED).is_open
    ]
    if not noted or first.under is None:
        return None
    one, estimate = max(noted, key=lambda each: abs(each[1].level))
    said = skill_words(Trait.FOOT_SPEED, strong=estimate.level > 0)
    return Reason(text=f"{one.name}: {said}", source=estimate.source)


def forehand_overhead(ours: tuple[OnCourt, ...]) -> OnCourt | None:
    """Whose overhead a lob in the middle is: the one forehand there, or the left of two alike."""
    forehands = [one for one in ours if one.middle_wing() is Wing.FOREHAND]
    if len(forehands) == 1:
        return forehands[0]
    return next((one for one in forehands if one.side is Side.LEFT), None)


def _back_reasons(back: Ranking) -> tuple[Reason, ...]:
    """What speaks for the answer, and against a drive."""
    best = [
        Reason(text=part.effect.because, source=part.effect.source)
        for part in back.best.parts
        if part.points > 0 and (part.evidence or part.effect.scale is None)
    ]
    no_drive = Reason(text="No drive from the back: two set volleys wait", source=COMMON_PRACTICE)
    soft = Reason(text="Soft and middle gives no angle", source=COMMON_PRACTICE)
    return tuple(dict.fromkeys([*best[:1], no_drive, soft]))[:3]


def _confidence(
    situation: Situation, runs: tuple[Lobbed, ...], back: Ranking, asked: LobMeaning
) -> Confidence:
    if asked is LobMeaning.WHAT_BACK:
        known = any(part.evidence for one in back.ranked for part in one.parts)
        return back.confidence if known else Confidence.GENERAL_RULE
    noted = _noted_feet(situation, runs[0]) is not None
    return runs[0].ranking.confidence if noted else Confidence.GENERAL_RULE


def _numbers(runs: tuple[Lobbed, ...], back: Ranking) -> MappingProxyType[str, float]:
    first = runs[0]
    found = {
        "own_spare_s": first.own.spare_s,
        "crossing_spare_s": first.crossing.spare_s,
        "points_over_other_runner": float(first.ranking.gain()),
        "back_points_over_next": float(back.gain()),
        "share": sizes.LOB_SHARE,
    }
    return MappingProxyType(found)


def _both_runs(runs: tuple[Lobbed, ...]) -> tuple[str, ...]:
    return tuple(
        f"Over {one.under.name if one.under else 'you'}: {_name(one.under, 'own run')} "
        f"{one.own.spare_s:+.1f} s, {_name(one.partner, 'partner')} {one.crossing.spare_s:+.1f} s "
        "to spare (maths)"
        for one in runs
    )


def _name(one: OnCourt | None, otherwise: str) -> str:
    return one.name if one is not None and one.name else otherwise


def _choices(situation: Situation, asked: LobMeaning) -> tuple[Choice, ...]:
    found = []
    if asked is not LobMeaning.WHAT_BACK and len(_under_it(situation)) == 2:
        found += [
            Choice(
                label=f"over {one.name}",
                topic=Topic.LOB,
                fact=MatchFact.ABOUT.value,
                about=one.player,
            )
            for one in situation.ours
            if one.name
        ]
    return tuple(found)
